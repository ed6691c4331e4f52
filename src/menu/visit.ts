// The menu: at and after the visit.
import type { Command } from 'commander';
import type { DiffOptions } from '../commands/compared-plans.ts';
import { diff } from '../commands/diff.ts';
import { type HandoverOptions, handover } from '../commands/handover.ts';
import { add, FORMATS, type Run } from './declare.ts';

export function visitCommands(program: Command, run: Run): void {
  program.commandsGroup('At and after the visit:');
  add(
    program,
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
      run(command, (session) => handover(session, plan, options)),
    );
  diffCommand(program, run);
}

function diffCommand(program: Command, run: Run): void {
  add(program, 'diff', 'What changed in the plans since a version, in words and numbers', [
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
      run(command, (session) => diff(session, plans, options)),
    );
}
