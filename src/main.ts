// The command line: names, options, help, exit status and streams. No work is done here.
import { Command, CommanderError } from 'commander';
import {
  type CommandResult,
  type CommonOptions,
  type Outside,
  type Session,
  sessionOf,
  UsageError,
} from './commands/session.ts';
import { type Taken, usageSentence } from './commands/usage-words.ts';
import { nearest } from './load/did-you-mean.ts';
import { dayCommands } from './menu/before.ts';
import { ALL_FORMATS, nameOf, type Run, withCommonOptions } from './menu/declare.ts';
import { completionCommands } from './menu/for-programs.ts';
import { findCommands, LOOK_UP } from './menu/look-up.ts';
import { startCommands } from './menu/start.ts';
import { visitCommands } from './menu/visit.ts';
import { findingJson } from './render/json/finding-json.ts';

/** By the moment of the day, as the help shows them. */
const MENU = [startCommands, dayCommands, visitCommands, findCommands, completionCommands] as const;

/** What the program ends with when something in it is wrong. */
const BUG = 70;

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
  const run: Run = (command, work) => ran(running, command, work);
  for (const declare of MENU) declare(program, run);
  program.addHelpCommand(
    new Command('help').argument('[command]').description('Help for a command').helpGroup(LOOK_UP),
  );
  return program;
}

const EXAMPLES = `
Examples:
  carryover init my-practice       start a folder that builds at once
  carryover check                  see what is wrong, and where
  carryover build                  make every sheet
  carryover build M-0412           make one person's sheet
  carryover show M-0412            the numbers, week by week

Sheets support a practitioner's judgement; they do not replace it. Local rules and your licence come first.`;

function ran(running: Running, command: Command, work: (session: Session) => CommandResult): void {
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
