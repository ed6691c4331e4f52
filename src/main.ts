// The command line: names, options, help, exit status and streams. No work is done here.
import { Argument, Command, CommanderError, Option } from 'commander';
import { build } from './commands/build.ts';
import { check } from './commands/check.ts';
import { complete, completion, SHELLS, type Shell } from './commands/completion.ts';
import { explain } from './commands/explain.ts';
import { type FigureOptions, figure } from './commands/figure.ts';
import { type InitOptions, init } from './commands/init.ts';
import { listExercises, listPlans, REGIONS } from './commands/list.ts';
import { type NewOptions, newFile } from './commands/new.ts';
import {
  type CommandResult,
  type CommonOptions,
  type Outside,
  type Session,
  sessionOf,
  UsageError,
} from './commands/session.ts';
import { show } from './commands/show.ts';
import { LIMBS, PURPOSES } from './model/exercise.ts';
import { findingJson } from './render/json/finding-json.ts';

/** What the program ends with when something in it is wrong. */
const BUG = 70;

type Run = (session: Session) => CommandResult;

interface Running {
  readonly outside: Outside;
  readonly isJsonAsked: boolean;
  readonly isDebug: boolean;
  command: string;
  status: number;
}

/** Runs one command line; the answer is the exit status. */
export function main(args: readonly string[], outside: Outside): number {
  const running: Running = {
    outside,
    isJsonAsked: /(^|\n)--format(=|\n)json(\n|$)/.test(args.join('\n')),
    isDebug: args.includes('--debug'),
    command: '',
    status: 0,
  };
  try {
    const program = programme(running);
    // For what goes wrong before a command runs; a command then says its name in full.
    running.command = program.commands.find((one) => args.includes(one.name()))?.name() ?? '';
    if (args.length === 0) program.outputHelp();
    else program.parse(args, { from: 'user' });
    return running.status;
  } catch (cause) {
    return ended(cause, running);
  }
}

function ended(cause: unknown, running: Running): number {
  const { outside } = running;
  if (cause instanceof CommanderError) {
    if (cause.exitCode === 0) return 0;
    writeEnvelope(running, { status: 2, findings: [], data: null, out: '', log: '' });
    return 2;
  }
  if (cause instanceof UsageError) {
    outside.err.write(`carryover: ${cause.message}${/[.?]$/.test(cause.message) ? '' : '.'}\n`);
    writeEnvelope(running, { status: 2, findings: [], data: null, out: '', log: '' });
    return 2;
  }
  const doing = running.command === '' ? 'starting' : `"carryover ${running.command}"`;
  outside.err.write(
    `carryover: this is a bug in carryover, not in your files. It happened in ${doing}: ${cause instanceof Error ? cause.message : cause}\n`,
  );
  outside.err.write(
    running.isDebug && cause instanceof Error
      ? `${cause.stack}\n`
      : 'Run it again with --debug to see where.\n',
  );
  return BUG;
}

function writeEnvelope({ isJsonAsked, command, outside }: Running, result: CommandResult): void {
  if (!isJsonAsked) return;
  const { status, findings, data } = result;
  const document = {
    version: 1,
    command,
    ok: status === 0,
    findings: findings.map(findingJson),
    data,
  };
  outside.out.write(`${JSON.stringify(document, null, 2)}\n`);
}

function programme(running: Running): Command {
  const { outside } = running;
  const program = new Command('carryover')
    .description('Compiles a practice folder of plain YAML into home exercise sheets.')
    .usage('<command> [options]')
    .addHelpText('after', EXAMPLES)
    .showSuggestionAfterError()
    .exitOverride()
    .configureOutput({
      writeOut: (text) => outside.out.write(text),
      writeErr: (text) => outside.err.write(text.replace(/^error: /, 'carryover: ')),
      getOutHelpWidth: () => outside.out.columns,
      getErrHelpWidth: () => outside.err.columns,
    });
  withCommonOptions(program);
  startCommands(program, running);
  dayCommands(program, running);
  findCommands(program, running);
  completionCommands(program, running);
  program.addHelpCommand(
    new Command('help').argument('[command]').description('Help for a command').helpGroup(LOOK_UP),
  );
  return program;
}

const LOOK_UP = 'To look things up:';

const EXAMPLES = `
Examples:
  carryover init my-practice       start a folder that builds at once
  carryover check                  see what is wrong, and where
  carryover build                  make every sheet
  carryover build M-0412           make one person's sheet
  carryover show M-0412            the numbers, week by week

Sheets support a practitioner's judgement; they do not replace it. Local rules and your licence come first.`;

function startCommands(program: Command, running: Running): void {
  program.commandsGroup('To start:');
  add(
    program,
    running,
    'init',
    'Start a practice folder that builds at once; never writes over a file',
  )
    .argument('[folder]', 'where; here, if left out')
    .option('--refresh', 'only let the editor offer the ids that the folder has now')
    .action((folder: string | undefined, options: InitOptions, command: Command) =>
      run(running, command, (session) => init(session, folder, options)),
    );
  newCommand(program, running);
  figureCommand(program, running);
}

function newCommand(program: Command, running: Running): void {
  add(
    program,
    running,
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
    .addOption(
      new Option('--affected <side>', 'plan: the affected side').choices([
        'left',
        'right',
        'both',
        'none',
      ]),
    )
    .option('--goal <text>', "plan: a goal in the person's own words")
    .option('--name <text>', 'exercise: the name on the sheet')
    .addOption(new Option('--purpose <word>', 'exercise: what it is for').choices(PURPOSES))
    .option('--position <id>', 'exercise: the starting position')
    .addOption(
      new Option('--sides <word>', 'exercise: how the sides work').choices([
        'each',
        'both',
        'middle',
      ]),
    )
    .addOption(new Option('--limb <word>', 'exercise: what a side is called').choices(LIMBS))
    .addHelpText(
      'after',
      '\nExamples:\n  carryover new exercise wall-slide\n  carryover new plan K-2031 --from M-0412 --date 2026-11-25 --affected right',
    )
    .action((what: 'exercise' | 'plan', id: string, options: NewOptions, command: Command) =>
      run(running, command, (session) => newFile(session, what, id, options)),
    );
}

function dayCommands(program: Command, running: Running): void {
  program.commandsGroup('Before you hand out sheets:');
  add(program, running, 'check', 'Read everything and say what is wrong, and where')
    .argument('[what...]', 'plan codes, exercise ids or paths; everything, if left out')
    .option(
      '--handouts',
      'also hold every sheet against its inputs: missing, extra, stale or edited by hand',
    )
    .addHelpText(
      'after',
      '\nExamples:\n  carryover check\n  carryover check M-0412\n  carryover check exercises/heel-raise.yaml\n  carryover check --handouts',
    )
    .action((what: string[], options: { handouts?: boolean }, command: Command) =>
      run(running, command, (session) => check(session, what, options)),
    );
  add(
    program,
    running,
    'build',
    'Make the sheets: handouts/<plan>.html, .md, .clinic.html and index.html',
  )
    .argument('[plan...]', 'plan codes or paths; all plans, if left out')
    .addHelpText(
      'after',
      '\nExamples:\n  carryover build\n  carryover build M-0412\n  carryover build --strict',
    )
    .action((plans: string[], _: unknown, command: Command) =>
      run(running, command, (session) => build(session, plans)),
    );
}

function figureCommand(program: Command, running: Running): void {
  add(program, running, 'figure', 'Draw the figures of exercises, and a page to look at them')
    .argument('[exercise...]', 'exercise ids or paths')
    .option('--all', 'every exercise that has a figure')
    .option('--out <dir>', 'where to write them (default: handouts/figures)')
    .addHelpText(
      'after',
      '\nExamples:\n  carryover figure heel-raise\n  carryover figure --all --out /tmp/figures',
    )
    .action((exercises: string[], options: FigureOptions, command: Command) =>
      run(running, command, (session) => figure(session, exercises, options)),
    );
}

function findCommands(program: Command, running: Running): void {
  program.commandsGroup(LOOK_UP);
  add(
    program,
    running,
    'show',
    'The numbers of a plan: minutes, sets a side, sets by muscle, week by week',
  )
    .argument('<plan>', 'a plan code or path')
    .addHelpText(
      'after',
      '\nExamples:\n  carryover show M-0412\n  carryover show M-0412 --format json',
    )
    .action((plan: string, _: unknown, command: Command) =>
      run(running, command, (session) => show(session, plan)),
    );
  listCommand(program, running);
  add(program, running, 'explain', 'Why a check exists, its source, and how to settle it')
    .argument('[check]', 'the name of a check; all of them, if left out')
    .addHelpText('after', '\nExamples:\n  carryover explain side-balance\n  carryover explain')
    .action((name: string | undefined, _: unknown, command: Command) =>
      run(running, command, (session) => explain(session, name)),
    );
}

function completionCommands(program: Command, running: Running): void {
  add(
    program,
    running,
    'completion',
    'Completion for a shell: "carryover completion bash >> ~/.bashrc"',
  )
    .addArgument(new Argument('<shell>', 'for which shell').choices(SHELLS))
    .action((shell: Shell, _: unknown, command: Command) =>
      run(running, command, () => completion(shell)),
    );
  const offer = new Map<string, readonly string[]>();
  withCommonOptions(program.command('complete', { hidden: true }))
    .argument('[words...]')
    .action((words: string[], _: unknown, command: Command) =>
      run(running, command, (session) => complete(session, words, offer)),
    );
  for (const one of program.commands) {
    const isHidden = one.name() === 'complete';
    if (!isHidden)
      offer.set(
        one.name(),
        one.options.filter(({ hidden }) => !hidden).map(({ long }) => long ?? ''),
      );
  }
}

function listCommand(program: Command, running: Running): void {
  const list = program
    .command('list')
    .description('Find exercises or plans')
    .usage('exercises|plans [words...] [options]')
    .helpCommand(false);
  withCommonOptions(list.command('exercises'))
    .description('Find exercises by what they are for, need and ask')
    .argument('[words...]', 'words to look for')
    .addOption(new Option('--region <group>', 'that mainly work this region').choices(REGIONS))
    .option('--muscle <id>', 'that work this muscle')
    .option('--purpose <word>', 'for this purpose')
    .option('--position <id>', 'in this position')
    .option('--kit <id>', 'that need this')
    .addOption(new Option('--side <word>', 'done so').choices(['each', 'both', 'middle']))
    .option('--tag <word>', 'with this tag')
    .option('--demand <id>', 'that ask this of the body')
    .option('--unused', 'in no plan')
    .addHelpText(
      'after',
      '\nExamples:\n  carryover list exercises --muscle soleus\n  carryover list exercises heel --position standing\n  carryover list exercises --unused',
    )
    .action((words: string[], options: object, command: Command) =>
      run(running, command, (session) => listExercises(session, words, options)),
    );
  withCommonOptions(list.command('plans'))
    .description('Find plans')
    .argument('[words...]', 'words to look for')
    .option('--due', 'whose next visit has come, by today')
    .addHelpText('after', '\nExamples:\n  carryover list plans --due\n  carryover list plans ankle')
    .action((words: string[], options: object, command: Command) =>
      run(running, command, (session) => listPlans(session, words, options)),
    );
}

function add(program: Command, _: Running, name: string, description: string): Command {
  return withCommonOptions(program.command(name)).description(description);
}

function withCommonOptions(command: Command): Command {
  return command
    .optionsGroup('Options of all commands:')
    .option(
      '--folder <dir>',
      'the practice folder (default: the nearest upwards with a practice.yaml)',
    )
    .addOption(
      new Option('--format <kind>', 'how to print (default: text)').choices(['text', 'json']),
    )
    .option('--today <date>', 'take this for today, as 2026-10-05')
    .option('--strict', 'let warnings count as errors')
    .option('--quiet', 'show errors only')
    .addOption(
      new Option('--color <when>', 'colours (default: auto)').choices(['auto', 'always', 'never']),
    )
    .addOption(new Option('--debug').hideHelp())
    .optionsGroup('Options:');
}

function run(running: Running, command: Command, work: Run): void {
  // An option may stand before the command or after it.
  const options = command.optsWithGlobals<CommonOptions>();
  running.command = nameOf(command);
  const session = sessionOf(running.outside, options);
  const result = work(session);
  running.status = result.status;
  if (session.isJson) writeEnvelope(running, result);
  else if (result.out !== '') running.outside.out.write(result.out);
  if (!session.isJson && result.log !== '') running.outside.err.write(result.log);
}

function nameOf(command: Command): string {
  const above = command.parent;
  return above && above.name() !== 'carryover'
    ? `${above.name()} ${command.name()}`
    : command.name();
}
