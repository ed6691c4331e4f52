// What every command of the menu is made with: the options that all take, and how its work is run.
import { type Command, Option } from 'commander';
import type { CommandResult, Session } from '../commands/session.ts';

/** Runs a command's work with the session that its options make. */
export type Run = (command: Command, work: (session: Session) => CommandResult) => void;

export function add(
  program: Command,
  name: string,
  description: string,
  formats: readonly string[] = FORMATS,
): Command {
  return withCommonOptions(program.command(name), formats).description(description);
}

export const FORMATS = ['text', 'json'] as const;
/** What one command or another can print. */
export const ALL_FORMATS = [...FORMATS, 'markdown', 'html', 'note'] as const;

export function withCommonOptions(command: Command, formats: readonly string[] = FORMATS): Command {
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

/** "list plans": with what stands above it. */
export function nameOf(command: Command): string {
  const above = command.parent;
  return above && above.name() !== 'carryover'
    ? `${above.name()} ${command.name()}`
    : command.name();
}
