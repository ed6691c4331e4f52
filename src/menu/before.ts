// The menu: before sheets are handed out.
import type { Command } from 'commander';
import { type BuildOptions, build } from '../commands/build.ts';
import { check } from '../commands/check.ts';
import { add, type Run } from './declare.ts';

export function dayCommands(program: Command, run: Run): void {
  program.commandsGroup('Before you hand out sheets:');
  add(program, 'check', 'Read everything and say what is wrong, and where')
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
      run(command, (session) => check(session, what, options)),
    );
  add(program, 'build', 'Make the sheets: handouts/<plan>.html, .md, .clinic.html and index.html')
    .argument('[plan...]', 'plan codes or paths; all plans, if left out')
    .option('--pdf', 'also <plan>.pdf, through an installed browser (CHROMIUM names another one)')
    .addHelpText(
      'after',
      '\nExamples:\n  carryover build\n  carryover build M-0412\n  carryover build M-0412 --pdf\n  carryover build --strict',
    )
    .action((plans: string[], options: BuildOptions, command: Command) =>
      run(command, (session) => build(session, plans, options)),
    );
}
