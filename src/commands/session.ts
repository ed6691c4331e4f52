// What every command is given and gives back: the folder, the options that all take, and a result
// that main prints. No command writes to a stream itself.
import { existsSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { Chalk } from 'chalk';
import { type Named, PRACTICE_FILE, plansOf } from '../build.ts';
import type { Finding } from '../finding/finding.ts';
import { nearest } from '../load/did-you-mean.ts';
import { diskFolder, type Folder } from '../load/folder.ts';
import { filesById } from '../load/library.ts';
import { type Day, parseDay } from '../units/day.ts';
import { type Progress, progressOn } from './progress.ts';

/** The outside world, handed in once by bin/. */
export interface Outside {
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly today: Day;
  /** What to type in a shell to run this program. */
  readonly self?: string;
  readonly out: Stream;
  readonly err: Stream;
  /** Asks in the terminal and waits for the answer; left out where nobody can answer. */
  readonly ask?: (question: string) => string;
}

export interface Stream {
  readonly write: (text: string) => void;
  readonly isTerminal: boolean;
  readonly columns: number;
}

/** Options that all commands take. */
export interface CommonOptions {
  readonly folder?: string;
  readonly format?: string;
  readonly today?: string;
  readonly strict?: boolean;
  readonly quiet?: boolean;
  readonly color?: string;
}

export interface Paint {
  readonly bold: (text: string) => string;
  readonly dim: (text: string) => string;
  readonly error: (text: string) => string;
  readonly warning: (text: string) => string;
  readonly note: (text: string) => string;
  readonly warn: (text: string) => string;
  readonly path: (text: string) => string;
  readonly added: (text: string) => string;
  readonly removed: (text: string) => string;
}

export interface Session {
  readonly outside: Outside;
  readonly today: Day;
  readonly isStrict: boolean;
  readonly isQuiet: boolean;
  readonly isJson: boolean;
  /** As asked with --format, else "text". */
  readonly format: string;
  /** For text on standard output. */
  readonly paint: Paint;
  readonly paintTo: (stream: 'out' | 'err') => Paint;
  readonly width: number;
  readonly progress: Progress;
  readonly folderOption: string | undefined;
}

/** What a command comes to. `out` is what was asked for, `log` all else. */
export interface CommandResult {
  readonly status: 0 | 1 | 2;
  /** Whether no error was found, where the status does not tell. */
  readonly isOk?: boolean;
  readonly findings: readonly Finding[];
  readonly data: object | null;
  readonly out: string;
  readonly log: string;
}

/** The command was wrong, or the folder cannot be used: exit 2. */
export class UsageError extends Error {}

export function sessionOf(outside: Outside, options: CommonOptions): Session {
  const { today } = options;
  if (today !== undefined && !parseDay(today).ok) {
    throw new UsageError(`"--today ${today}" is no day; write it as --today 2026-10-05`);
  }
  return {
    outside,
    today: today ?? outside.today,
    isStrict: options.strict ?? false,
    isQuiet: options.quiet ?? false,
    isJson: options.format === 'json',
    format: options.format ?? 'text',
    paint: paintFor(outside.out, options, outside.env),
    paintTo: (stream) => paintFor(outside[stream], options, outside.env),
    width: Math.max(60, Math.min(outside.out.columns, 120)),
    progress: progressOn(outside.err, !options.quiet && options.format !== 'json', Date.now),
    folderOption: options.folder,
  };
}

/** Colours for one stream: as asked, else where it is a terminal and NO_COLOR is not set. */
function paintFor(stream: Stream, { color = 'auto' }: CommonOptions, env: Outside['env']): Paint {
  const isOn = color === 'always' || (color === 'auto' && stream.isTerminal && !env.NO_COLOR);
  const chalk = new Chalk({ level: isOn ? 1 : 0 });
  // Chalk prints every argument that it gets, so that it is no function for `map` as it is.
  const one = (style: (text: string) => string) => (text: string) => style(text);
  return {
    bold: one(chalk.bold),
    dim: one(chalk.dim),
    warn: one(chalk.yellow),
    path: one(chalk.bold),
    added: one(chalk.green.bold),
    removed: one(chalk.red.bold),
    error: one(chalk.red.bold),
    warning: one(chalk.yellow.bold),
    note: one(chalk.cyan.bold),
  };
}

export interface OpenFolder {
  readonly root: string;
  readonly folder: Folder;
}

/** The practice folder: the one named, else the nearest upwards that has a practice.yaml. */
export function openFolder({ outside, folderOption }: Session): OpenFolder {
  if (folderOption !== undefined) {
    const root = resolve(outside.cwd, folderOption);
    if (!existsSync(root)) throw new UsageError(`there is no folder ${folderOption}`);
    if (!statSync(root).isDirectory()) throw new UsageError(`${folderOption} is not a folder`);
    if (!existsSync(join(root, PRACTICE_FILE))) {
      throw new UsageError(
        `${folderOption} has no ${PRACTICE_FILE}, so it is no practice folder; "carryover init ${folderOption}" starts one`,
      );
    }
    return { root, folder: diskFolder(root) };
  }
  for (let at = outside.cwd; ; at = dirname(at)) {
    if (existsSync(join(at, PRACTICE_FILE))) return { root: at, folder: diskFolder(at) };
    if (dirname(at) === at) break;
  }
  throw new UsageError(
    `no ${PRACTICE_FILE} here or in a folder above; go to a practice folder, name one with --folder, or start one with "carryover init"`,
  );
}

/** Codes or paths to plans; undefined names nothing, which is everything. */
export function namedPlans(
  words: readonly string[],
  open: OpenFolder,
  session: Session,
): Named | null {
  if (words.length === 0) return null;
  const plans = plansOf(open.folder).byId;
  return { plans: words.map((word) => idOf(word, plans, 'plan', open, session)), exercises: [] };
}

/** Codes, ids or paths to plans and exercises; practice.yaml names the settings alone. */
export function namedFiles(
  words: readonly string[],
  open: OpenFolder,
  session: Session,
): Named | null {
  if (words.length === 0) return null;
  const plans = plansOf(open.folder).byId;
  const exercises = filesById(open.folder, 'exercises', 'duplicate-exercise').byId;
  const named = { plans: [] as string[], exercises: [] as string[] };
  for (const word of words) {
    const path = pathIn(word, open, session);
    if (path === PRACTICE_FILE) continue;
    // A translation is looked at with its exercise.
    const exercise = word.replace(/\.[A-Za-z0-9-]+(?=\.yaml$)/, '');
    if (exercises.has(word) || path?.startsWith('exercises/'))
      named.exercises.push(idOf(exercise, exercises, 'exercise', open, session));
    else named.plans.push(idOf(word, plans, 'plan or exercise', open, session, exercises));
  }
  return named;
}

function idOf(
  word: string,
  byId: ReadonlyMap<string, string>,
  what: 'plan' | 'exercise' | 'plan or exercise',
  open: OpenFolder,
  session: Session,
  alsoKnown: ReadonlyMap<string, string> = new Map(),
): string {
  if (byId.has(word)) return word;
  const path = pathIn(word, open, session);
  const byPath = [...byId].find(([, file]) => file === path);
  if (byPath) return byPath[0];
  const near = nearest(
    word,
    word.includes('/')
      ? [...byId.values(), ...alsoKnown.values()]
      : [...byId.keys(), ...alsoKnown.keys()],
  );
  const hint = near === undefined ? '' : `; did you mean "${near}"?`;
  throw new UsageError(`there is no ${what} "${word}"${hint}`);
}

/** A path as seen from where one stands, then from the folder; undefined where it names no file of the folder. */
export function pathIn(
  word: string,
  { root }: OpenFolder,
  { outside }: Session,
): string | undefined {
  for (const base of [outside.cwd, root]) {
    const absolute = resolve(base, word);
    const inside = relative(root, absolute).split(sep).join('/');
    if (
      !inside.startsWith('..') &&
      inside !== '' &&
      existsSync(absolute) &&
      statSync(absolute).isFile()
    )
      return inside;
  }
  return undefined;
}
