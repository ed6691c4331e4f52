// `carryover completion`: what a shell needs to complete commands, options, plan codes and exercise
// ids. The scripts ask the program itself (`carryover complete`), so that they never grow old.

import { plansOf } from '../build.ts';
import { CHECK_NAMES } from '../finding/checks.ts';
import { filesById } from '../load/library.ts';
import { type CommandResult, openFolder, type Session, UsageError } from './session.ts';

/** The commands with the options of each, as the command line has them. */
export type Offer = ReadonlyMap<string, readonly string[]>;

export const SHELLS = ['bash', 'zsh', 'fish'] as const;
export type Shell = (typeof SHELLS)[number];

const SCRIPTS: Readonly<Record<Shell, string>> = {
  bash: `_carryover() {
  local IFS=$'\\n'
  COMPREPLY=($(carryover complete -- "\${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null))
}
complete -o default -F _carryover carryover
`,
  zsh: `#compdef carryover
_carryover() {
  local -a offered
  offered=(\${(f)"$(carryover complete -- "\${(@)words[2,CURRENT]}" 2>/dev/null)"})
  compadd -a offered
}
compdef _carryover carryover
`,
  fish: `complete -c carryover -a '(carryover complete -- (commandline -opc)[2..-1] (commandline -ct) 2>/dev/null)'
`,
};

/** The script for a shell, to be read by it at its start. */
export function completion(shell: Shell): CommandResult {
  return {
    status: 0,
    findings: [],
    data: { shell, script: SCRIPTS[shell] },
    out: SCRIPTS[shell],
    log: '',
  };
}

const IDS: Readonly<Record<string, readonly ('plans' | 'exercises' | 'checks')[]>> = {
  check: ['plans', 'exercises'],
  build: ['plans'],
  figure: ['exercises'],
  show: ['plans'],
  explain: ['checks'],
};

/** What the last of the words may become; a folder that cannot be used offers no ids. */
export function complete(session: Session, words: readonly string[], offer: Offer): CommandResult {
  const last = words.at(-1) ?? '';
  const [command = ''] = words;
  const offered =
    words.length <= 1
      ? [...offer.keys()]
      : last.startsWith('-')
        ? (offer.get(command) ?? [])
        : idsFor(session, command);
  const fitting = offered.filter((one) => one.startsWith(last));
  return {
    status: 0,
    findings: [],
    data: { offered: fitting },
    out: fitting.map((one) => `${one}\n`).join(''),
    log: '',
  };
}

function idsFor(session: Session, command: string): readonly string[] {
  return (IDS[command] ?? []).flatMap((kind): readonly string[] => {
    if (kind === 'checks') return CHECK_NAMES;
    try {
      const { folder } = openFolder(session);
      const { byId } =
        kind === 'plans' ? plansOf(folder) : filesById(folder, 'exercises', 'duplicate-exercise');
      return [...byId.keys()];
    } catch (cause) {
      if (cause instanceof UsageError) return [];
      throw cause;
    }
  });
}
