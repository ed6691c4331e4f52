// `carryover completion`: what a shell needs to complete commands, options, plan codes and exercise
// ids. The scripts ask the program itself (`carryover complete`), so that they never grow old.

import { plansOf } from '../build.ts';
import { CHECK_NAMES } from '../finding/checks.ts';
import type { Folder } from '../load/folder.ts';
import { filesById } from '../load/library.ts';
import { compileWork } from './compiled.ts';
import { knownTo } from './exercise-filter.ts';
import {
  type CommandResult,
  type OpenFolder,
  openFolder,
  type Session,
  UsageError,
} from './session.ts';

/** What one command takes, as the command line has it. */
export interface Takes {
  /** Long options, with the words that each may be followed by; null where those are not known there, undefined where there are none. */
  readonly options: ReadonlyMap<string, readonly string[] | null | undefined>;
  /** What its first word may be, where that is known there. */
  readonly words: readonly string[];
}

/** By command: "check", "list exercises". */
export type Offer = ReadonlyMap<string, Takes>;

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

/** What the last of the words may become; a folder that cannot be used offers nothing of its own. */
export function complete(session: Session, words: readonly string[], offer: Offer): CommandResult {
  const last = words.at(-1) ?? '';
  const fitting = offeredFor(session, words, offer).filter((one) => one.startsWith(last));
  return {
    status: 0,
    findings: [],
    data: { offered: fitting },
    out: fitting.map((one) => `${one}\n`).join(''),
    log: '',
  };
}

function offeredFor(session: Session, words: readonly string[], offer: Offer): readonly string[] {
  const commands = [...offer.keys()].filter((name) => !name.includes(' '));
  if (words.length <= 1) return [...commands, 'help'];
  const [first = '', second = ''] = words;
  if (first === 'help') return commands;
  const isInner = words.length > 2 && offer.has(`${first} ${second}`);
  const command = isInner ? `${first} ${second}` : first;
  const takes = offer.get(command);
  const [before = '', last = ''] = words.slice(-2);
  const choices = takes?.options.get(before);
  if (choices !== undefined) return choices ?? valuesOf(before, command, second, session);
  if (last.startsWith('-')) return [...(takes?.options.keys() ?? [])];
  const isFirstWord = words.length === (isInner ? 3 : 2);
  const known = isFirstWord ? (takes?.words ?? []) : [];
  return known.length > 0 ? known : idsFor(session, command);
}

type Own = 'plans' | 'exercises' | 'checks';

const IDS: Readonly<Record<string, readonly Own[]>> = {
  check: ['plans', 'exercises'],
  build: ['plans'],
  diff: ['plans'],
  handover: ['plans'],
  figure: ['exercises'],
  show: ['plans'],
  explain: ['checks'],
};

function idsFor(session: Session, command: string): readonly string[] {
  return (IDS[command] ?? []).flatMap((kind): readonly string[] =>
    kind === 'checks' ? CHECK_NAMES : inFolder(session, ({ folder }) => idsIn(folder, kind)),
  );
}

function idsIn(folder: Folder, kind: 'plans' | 'exercises'): readonly string[] {
  const { byId } =
    kind === 'plans' ? plansOf(folder) : filesById(folder, 'exercises', 'duplicate-exercise');
  return [...byId.keys()];
}

/** The practice's own words for an option: who signs, what to copy, its vocabulary. */
function valuesOf(
  option: string,
  command: string,
  what: string,
  session: Session,
): readonly string[] {
  return inFolder(session, (open) => {
    if (option === '--from' && command === 'new')
      return idsIn(open.folder, what === 'plan' ? 'plans' : 'exercises');
    const exercises = option === '--tag' ? idsIn(open.folder, 'exercises') : [];
    const { practice, library } = compileWork(open, { plans: [], exercises }, session).compiled;
    switch (option) {
      case '--by':
        return [...practice.practitioners.keys()];
      case '--tag':
        return [
          ...new Set(
            library
              .loaded()
              .flatMap(({ exercise }) => exercise?.levels.flatMap(({ tags }) => tags) ?? []),
          ),
        ];
      default:
        return knownTo(option.replace(/^--/, ''), practice);
    }
  });
}

function inFolder(
  session: Session,
  offered: (open: OpenFolder) => readonly string[],
): readonly string[] {
  try {
    return offered(openFolder(session));
  } catch (cause) {
    if (cause instanceof UsageError) return [];
    throw cause;
  }
}
