// The menu: commands to start with.
import { Argument, type Command, Option } from 'commander';
import { type FigureOptions, figure } from '../commands/figure.ts';
import { type InitOptions, init } from '../commands/init.ts';
import { newFile } from '../commands/new.ts';
import { AFFECTED, type NewOptions, SIDES_WORDS } from '../commands/new-questions.ts';
import { LIMBS, PURPOSES } from '../model/exercise.ts';
import { add, type Run } from './declare.ts';

export function startCommands(program: Command, run: Run): void {
  program.commandsGroup('To start:');
  add(program, 'init', 'Start a practice folder that builds at once; never writes over a file')
    .argument('[folder]', 'where; here, if left out')
    .option('--refresh', 'only let the editor offer the ids that the folder has now')
    .addOption(
      new Option('--git [on|off]', 'only let "git diff" and "git log -p" show plans in words')
        .choices(['on', 'off'])
        .preset('on'),
    )
    .action((folder: string | undefined, options: InitOptions, command: Command) =>
      run(command, (session) => init(session, folder, options)),
    );
  newCommand(program, run);
  figureCommand(program, run);
}

function newCommand(program: Command, run: Run): void {
  add(
    program,
    'new',
    'Write a starting file, empty or from an earlier one; never writes over a file',
  )
    .addArgument(new Argument('<what>', 'what to start').choices(['exercise', 'plan']))
    .argument('<id>', 'its id or code, which is its file name')
    .option('--from <id>', 'copy this one, with codes, dates, goals and the affected side blanked')
    .option('--in <folder>', 'a folder below exercises/ or plans/')
    .option('--title <text>', 'plan: the title on the sheet')
    .option('--by <id>', 'plan: who signs it')
    .option('--date <date>', 'plan: the day of the visit')
    .option('--starts <date>', 'plan: the first day of week 1')
    .option('--next <date>', 'plan: the day of the next visit')
    .option('--weeks <n>', 'plan: how many weeks')
    .addOption(new Option('--affected <side>', 'plan: the affected side').choices(AFFECTED))
    .option('--goal <text>', "plan: a goal in the person's own words")
    .option('--name <text>', 'exercise: the name on the sheet')
    .addOption(new Option('--purpose <word>', 'exercise: what it is for').choices(PURPOSES))
    .option('--position <id>', 'exercise: the starting position')
    .addOption(new Option('--sides <word>', 'exercise: how the sides work').choices(SIDES_WORDS))
    .addOption(new Option('--limb <word>', 'exercise: what a side is called').choices(LIMBS))
    .addHelpText(
      'after',
      '\nExamples:\n  carryover new exercise wall-slide\n  carryover new plan K-2031 --from M-0412 --date 2026-11-25 --affected right',
    )
    .action((what: 'exercise' | 'plan', id: string, options: NewOptions, command: Command) =>
      run(command, (session) => newFile(session, what, id, options)),
    );
}

function figureCommand(program: Command, run: Run): void {
  add(program, 'figure', 'Draw the figures of exercises, and a page to look at them')
    .argument('[exercise...]', 'exercise ids or paths')
    .option('--all', 'every exercise that has a figure')
    .option('--out <dir>', 'where to write them (default: handouts/figures)')
    .addHelpText(
      'after',
      '\nExamples:\n  carryover figure heel-raise\n  carryover figure --all --out drawings',
    )
    .action((exercises: string[], options: FigureOptions, command: Command) =>
      run(command, (session) => figure(session, exercises, options)),
    );
}
