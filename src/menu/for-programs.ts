// The menu: what shells and git ask for.
import { Argument, type Command } from 'commander';
import { complete, completion, SHELLS, type Shell, type Takes } from '../commands/completion.ts';
import { textconv } from '../commands/textconv.ts';
import { add, nameOf, type Run, withCommonOptions } from './declare.ts';

export function completionCommands(program: Command, run: Run): void {
  add(program, 'completion', 'Completion for a shell: "carryover completion bash >> ~/.bashrc"')
    .addArgument(new Argument('<shell>', 'for which shell').choices(SHELLS))
    .action((shell: Shell, _: unknown, command: Command) => run(command, () => completion(shell)));
  const offer = new Map<string, Takes>();
  withCommonOptions(program.command('textconv', { hidden: true }))
    .description('A plan in words, as git asks for it')
    .argument('<file>')
    .action((file: string, _: unknown, command: Command) =>
      run(command, (session) => textconv(session, file)),
    );
  withCommonOptions(program.command('complete', { hidden: true }))
    .argument('[words...]')
    .action((words: string[], _: unknown, command: Command) =>
      run(command, (session) => complete(session, words, offer)),
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
