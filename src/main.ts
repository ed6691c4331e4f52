// The command line: names, options, help, exit status and streams. No work is done here.
import { Argument, Command, CommanderError, Option } from 'commander';
import { build } from './commands/build.ts';
import { check } from './commands/check.ts';
import type { DiffOptions } from './commands/compared-plans.ts';
import { complete, completion, SHELLS, type Shell, type Takes } from './commands/completion.ts';
import { diff } from './commands/diff.ts';
import { type ExerciseFilter, REGIONS } from './commands/exercise-filter.ts';
import { explain } from './commands/explain.ts';
import { type HandoverOptions, handover } from './commands/handover.ts';
import { type InitOptions, init } from './commands/init.ts';
import { listExercises, listPlans, type PlanFilter } from './commands/list.ts';
import { listWords, WORD_KINDS } from './commands/list-words.ts';
import { newFile } from './commands/new.ts';
import { AFFECTED, type NewOptions, SIDES_WORDS } from './commands/new-questions.ts';
import {
  type CommandResult,
  type CommonOptions,
  type Outside,
  type Session,
  sessionOf,
  UsageError,
} from './commands/session.ts';
import { show } from './commands/show.ts';
import { textconv } from './commands/textconv.ts';
import { type Taken, usageSentence } from './commands/usage-words.ts';
import { nearest } from './load/did-you-mean.ts';
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
  /** What that command takes after its name. */
  takes: readonly Taken[];
  status: number;
}

/** Runs one command line; the answer is the exit status. */
export function main(args: readonly string[], outside: Outside): number {
  const running: Running = {
    outside,
    isJsonAsked: /(^|\n)--format(=|\n)json(\n|$)/.test(args.join('\n')),
    isDebug: args.includes('--debug'),
    command: '',
    takes: [],
    status: 0,
  };
  try {
    const program = programme(running);
    // For what goes wrong before a command runs; a command then says its name in full.
    const asked = askedCommand(program, args);
    running.command = asked === program ? '' : nameOf(asked);
    running.takes = asked.registeredArguments.map((one) => ({
      name: one.name(),
      description: one.description,
    }));
    if (args[0] === 'help') checkHelpWord(program, args[1]);
    if (args.length === 0) program.outputHelp();
    else program.parse(args, { from: 'user' });
    return running.status;
  } catch (cause) {
    return ended(cause, running);
  }
}

/** The command that a line names, or one of its own commands. */
function askedCommand(above: Command, args: readonly string[]): Command {
  const named = above.commands.find((one) => args.includes(one.name()));
  return named ? askedCommand(named, args.slice(args.indexOf(named.name()) + 1)) : above;
}

/** Help for a command that is not there would be the whole help, as if nothing were wrong. */
function checkHelpWord(program: Command, word: string | undefined): void {
  const names = program.commands.map((one) => one.name());
  if (word === undefined || word.startsWith('-') || names.includes(word)) return;
  const near = nearest(word, names);
  const hint = near === undefined ? '"carryover help" lists them all' : `did you mean "${near}"?`;
  throw new UsageError(`there is no command "${word}"; ${hint}`);
}

function ended(cause: unknown, running: Running): number {
  const { outside } = running;
  if (cause instanceof CommanderError) {
    if (cause.exitCode === 0) return 0;
    if (cause.code !== 'commander.help')
      tellUsage(outside, usageSentence(cause.message, running.command, running.takes));
    writeEnvelope(running, { status: 2, findings: [], data: null, out: '', log: '' });
    return 2;
  }
  if (cause instanceof UsageError) {
    tellUsage(outside, cause.message);
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

function tellUsage({ err }: Outside, sentence: string): void {
  err.write(`carryover: ${sentence}${/[.?]$/.test(sentence) ? '' : '.'}\n`);
}

function writeEnvelope({ isJsonAsked, command, outside }: Running, result: CommandResult): void {
  if (!isJsonAsked) return;
  const { status, findings, data } = result;
  const document = {
    version: 1,
    command,
    ok: result.isOk ?? status === 0,
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
      writeErr: (text) => outside.err.write(text),
      // Said in plain words at the end of the run.
      outputError: () => {},
      getOutHelpWidth: () => outside.out.columns,
      getErrHelpWidth: () => outside.err.columns,
    });
  withCommonOptions(program, ALL_FORMATS);
  startCommands(program, running);
  dayCommands(program, running);
  visitCommands(program, running);
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
    .addOption(
      new Option('--git [on|off]', 'only let "git diff" and "git log -p" show plans in words')
        .choices(['on', 'off'])
        .preset('on'),
    )
    .action((folder: string | undefined, options: InitOptions, command: Command) =>
      run(running, command, (session) => init(session, folder, options)),
    );
  newCommand(program, running);
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

function visitCommands(program: Command, running: Running): void {
  program.commandsGroup('At and after the visit:');
  add(
    program,
    running,
    'handover',
    'Build a sheet and note in handovers.csv that it was handed over; --find looks a sheet up',
  )
    .argument('[plan]', 'the plan whose sheet is handed over, as a code or path')
    .option('--by <id>', 'who hands it over; the one who signs the plan, if left out')
    .option('--find <number>', 'which plan a sheet number belongs to, and whether it is current')
    .addHelpText(
      'after',
      '\nExamples:\n  carryover handover M-0412\n  carryover handover M-0412 --by rk\n  carryover handover --find "KP4T 7WQM"',
    )
    .action((plan: string | undefined, options: HandoverOptions, command: Command) =>
      run(running, command, (session) => handover(session, plan, options)),
    );
  diffCommand(program, running);
}

function diffCommand(program: Command, running: Running): void {
  add(program, running, 'diff', 'What changed in the plans since a version, in words and numbers', [
    ...FORMATS,
    'markdown',
    'html',
  ])
    .argument('[plan...]', 'plan codes or paths; every plan whose file changed, if left out')
    .option('--from <version>', 'compare with this one: anything git takes, or a folder', undefined)
    .option('--to <version>', 'up to this one; the files as they are now, if left out')
    .option('--last-handover', 'compare each plan with what was handed over last')
    .option('--all', 'list every plan that changed, also by a change of library, settings or words')
    .option(
      '--exit-code',
      'end with 0 if nothing changed, 1 if something did, 2 if it cannot be said',
    )
    .addHelpText(
      'after',
      '\nExamples:\n  carryover diff M-0412                      what changed since the last commit\n  carryover diff M-0412 --last-handover      what changed since the person got a sheet\n  carryover diff M-0412 --from HEAD~3\n  carryover diff --all                       whose sheets does a change of the library alter\n  carryover diff M-0412 --format markdown    for a letter',
    )
    .action((plans: string[], options: DiffOptions, command: Command) =>
      run(running, command, (session) => diff(session, plans, options)),
    );
}

function findCommands(program: Command, running: Running): void {
  program.commandsGroup(LOOK_UP);
  add(
    program,
    running,
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
  const offer = new Map<string, Takes>();
  withCommonOptions(program.command('textconv', { hidden: true }))
    .description('A plan in words, as git asks for it')
    .argument('<file>')
    .action((file: string, _: unknown, command: Command) =>
      run(running, command, (session) => textconv(session, file)),
    );
  withCommonOptions(program.command('complete', { hidden: true }))
    .argument('[words...]')
    .action((words: string[], _: unknown, command: Command) =>
      run(running, command, (session) => complete(session, words, offer)),
    );
  for (const one of program.commands) {
    if (['complete', 'textconv'].includes(one.name())) continue;
    for (const command of [one, ...one.commands]) offer.set(nameOf(command), takenBy(command));
  }
}

function takenBy(command: Command): Takes {
  const shown = command.options.filter(({ hidden }) => !hidden);
  return {
    options: new Map(
      shown.map(({ long, argChoices, required, optional }) => [
        long ?? '',
        required || optional ? (argChoices ?? null) : undefined,
      ]),
    ),
    words: [
      ...command.commands.map((inner) => inner.name()),
      ...(command.registeredArguments[0]?.argChoices ?? []),
    ],
  };
}

function listCommand(program: Command, running: Running): void {
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
      run(running, command, (session) => listExercises(session, words, options)),
    );
  withCommonOptions(list.command('plans'))
    .description('Find plans')
    .argument('[words...]', 'words to look for')
    .option('--due', 'whose next visit has come, by today')
    .addHelpText('after', '\nExamples:\n  carryover list plans --due\n  carryover list plans ankle')
    .action((words: string[], options: PlanFilter, command: Command) =>
      run(running, command, (session) => listPlans(session, words, options)),
    );
  withCommonOptions(list.command('words'))
    .description('List the ids that files may use, with what a sheet calls them')
    .addArgument(
      new Argument('[kind]', 'of one kind only; of all, if left out').choices(WORD_KINDS),
    )
    .addHelpText('after', '\nExamples:\n  carryover list words\n  carryover list words muscles')
    .action((kind: string | undefined, _: unknown, command: Command) =>
      run(running, command, (session) => listWords(session, kind)),
    );
}

function add(
  program: Command,
  _: Running,
  name: string,
  description: string,
  formats: readonly string[] = FORMATS,
): Command {
  return withCommonOptions(program.command(name), formats).description(description);
}

const FORMATS = ['text', 'json'] as const;
/** What one command or another can print. */
const ALL_FORMATS = [...FORMATS, 'markdown', 'html', 'note'] as const;

function withCommonOptions(command: Command, formats: readonly string[] = FORMATS): Command {
  return command
    .optionsGroup('Options of all commands:')
    .option(
      '--folder <dir>',
      'the practice folder (default: the nearest upwards with a practice.yaml)',
    )
    .addOption(new Option('--format <kind>', 'how to print (default: text)').choices(formats))
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
  refuseFormat(command, options.format);
  const session = sessionOf(running.outside, options);
  const result = work(session);
  running.status = result.status;
  if (session.isJson) writeEnvelope(running, result);
  else if (result.out !== '') running.outside.out.write(result.out);
  if (!session.isJson && result.log !== '') running.outside.err.write(result.log);
}

/** A format that stands before the command is known to some command, but maybe not to this one. */
function refuseFormat(command: Command, format: string | undefined): void {
  const choices = command.options.find(({ long }) => long === '--format')?.argChoices ?? [];
  if (format === undefined || choices.includes(format)) return;
  throw new UsageError(
    `"--format ${format}" is none of "carryover ${nameOf(command)}"; it takes ${choices.join(', ')}`,
  );
}

function nameOf(command: Command): string {
  const above = command.parent;
  return above && above.name() !== 'carryover'
    ? `${above.name()} ${command.name()}`
    : command.name();
}
