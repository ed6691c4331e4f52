// The menu: to look things up.
import { Argument, type Command, Option } from 'commander';
import { type ExerciseFilter, REGIONS } from '../commands/exercise-filter.ts';
import { explain } from '../commands/explain.ts';
import { listExercises, listPlans, type PlanFilter } from '../commands/list.ts';
import { listWords, WORD_KINDS } from '../commands/list-words.ts';
import { SIDES_WORDS } from '../commands/new-questions.ts';
import { show } from '../commands/show.ts';
import { add, FORMATS, type Run, withCommonOptions } from './declare.ts';

export const LOOK_UP = 'To look things up:';

export function findCommands(program: Command, run: Run): void {
  program.commandsGroup(LOOK_UP);
  add(
    program,
    'show',
    'The numbers of a plan: minutes, sets a side, sets by muscle, week by week',
    [...FORMATS, 'note'],
  )
    .argument('<plan>', 'a plan code or path')
    .addHelpText(
      'after',
      '\nExamples:\n  carryover show M-0412\n  carryover show M-0412 --format json\n  carryover show M-0412 --format note     the last visit in a paragraph, for the notes',
    )
    .action((plan: string, _: unknown, command: Command) =>
      run(command, (session) => show(session, plan)),
    );
  listCommand(program, run);
  add(program, 'explain', 'Why a check exists, its source, and how to settle it')
    .argument('[check]', 'the name of a check; all of them, if left out')
    .addHelpText('after', '\nExamples:\n  carryover explain side-balance\n  carryover explain')
    .action((name: string | undefined, _: unknown, command: Command) =>
      run(command, (session) => explain(session, name)),
    );
}

function listCommand(program: Command, run: Run): void {
  const list = program
    .command('list')
    .description('Find exercises or plans, or list the words that files may use')
    .usage('exercises|plans|words [words...] [options]')
    .helpCommand(false);
  withCommonOptions(list.command('exercises'))
    .description('Find exercises by what they are for, need and ask')
    .argument('[words...]', 'words to look for')
    .addOption(new Option('--region <group>', 'that mainly work this region').choices(REGIONS))
    .option('--muscle <id>', 'that work this muscle')
    .option('--purpose <word>', 'for this purpose')
    .option('--position <id>', 'in this position')
    .option('--kit <id>', 'that need this')
    .addOption(new Option('--side <word>', 'done so').choices(SIDES_WORDS))
    .option('--tag <word>', 'with this tag')
    .option('--demand <id>', 'that ask this of the body')
    .option('--unused', 'in no plan')
    .addHelpText(
      'after',
      '\nExamples:\n  carryover list exercises --muscle soleus\n  carryover list exercises heel --position standing\n  carryover list exercises --unused',
    )
    .action((words: string[], options: ExerciseFilter, command: Command) =>
      run(command, (session) => listExercises(session, words, options)),
    );
  withCommonOptions(list.command('plans'))
    .description('Find plans')
    .argument('[words...]', 'words to look for')
    .option('--due', 'whose next visit has come, by today')
    .addHelpText('after', '\nExamples:\n  carryover list plans --due\n  carryover list plans ankle')
    .action((words: string[], options: PlanFilter, command: Command) =>
      run(command, (session) => listPlans(session, words, options)),
    );
  withCommonOptions(list.command('words'))
    .description('List the ids that files may use, with what a sheet calls them')
    .addArgument(
      new Argument('[kind]', 'of one kind only; of all, if left out').choices(WORD_KINDS),
    )
    .addHelpText('after', '\nExamples:\n  carryover list words\n  carryover list words muscles')
    .action((kind: string | undefined, _: unknown, command: Command) =>
      run(command, (session) => listWords(session, kind)),
    );
}
