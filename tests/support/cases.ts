// Runs a case: the base folder with the case's files over it, in a place of its own, and each line of
// its command.txt. What it gives back is what expected.txt holds.
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { main } from '../../src/main.ts';

export const CASES = join(import.meta.dirname, '..', 'cases');

/** Topic and name of every case. */
export function caseNames(): readonly string[] {
  return readdirSync(CASES, { withFileTypes: true })
    .filter((topic) => topic.isDirectory() && topic.name !== 'base')
    .flatMap((topic) => readdirSync(join(CASES, topic.name)).map((name) => `${topic.name}/${name}`))
    .sort();
}

export interface Ran {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** Runs one command line in a folder, as a person would in a terminal of 100 columns. */
export function runIn(
  cwd: string,
  args: readonly string[],
  today = '2026-10-20',
  env: Readonly<Record<string, string>> = {},
): Ran {
  let out = '';
  let err = '';
  const status = main(args, {
    cwd,
    env: { PATH: process.env.PATH, ...env },
    today,
    out: {
      write: (text) => {
        out += text;
      },
      isTerminal: false,
      columns: 100,
    },
    err: {
      write: (text) => {
        err += text;
      },
      isTerminal: false,
      columns: 100,
    },
  });
  return { status, out, err };
}

/** A copy of the base folder, with another folder's files over it; the caller removes it. */
export function freshFolder(over?: string): string {
  const root = realpathSync(mkdtempSync(join(tmpdir(), 'carryover-')));
  cpSync(join(CASES, 'base'), root, { recursive: true });
  if (over !== undefined) layOver(root, over);
  return root;
}

/** Lays a case's files over a folder; what changes only between two commands is left for then. */
function layOver(root: string, over: string): void {
  const isLaid = (path: string) => !/^((command|expected)\.txt$|then-)/.test(relative(over, path));
  cpSync(over, root, { recursive: true, filter: isLaid });
  const gone = (readdirSync(root, { recursive: true }) as string[]).filter((path) =>
    path.endsWith('.gone'),
  );
  for (const path of gone) {
    rmSync(join(root, path));
    rmSync(join(root, path.slice(0, -'.gone'.length)), { recursive: true, force: true });
  }
}

/** What a case prints, command after command. */
export function ranCase(name: string): string {
  const folder = join(CASES, name);
  const root = freshFolder(folder);
  try {
    const lines = readFileSync(join(folder, 'command.txt'), 'utf8')
      .split('\n')
      .filter((line) => line !== '');
    return lines
      .map((line) => {
        if (line.startsWith('then-')) {
          layOver(root, join(folder, line));
          return `(${line})`;
        }
        const { status, out, err } = runIn(root, line.split(' '));
        return (
          [
            `$ carryover ${line}`,
            out,
            err === '' ? '' : `--- standard error\n${err}`,
            `exit ${status}`,
          ]
            .filter((text) => text !== '')
            .map((text) => text.trimEnd())
            .join('\n')
            .replaceAll(root, '<folder>')
            // A sheet's number changes with every word of the pack, and has tests of its own.
            .replace(/\bsheet [A-Z][A-Z0-9]{3} [A-Z0-9]{4}\b/g, 'sheet <number>')
        );
      })
      .join('\n\n')
      .concat('\n');
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
}

export function expectedOf(name: string): string | null {
  const path = join(CASES, name, 'expected.txt');
  return existsSync(path) ? readFileSync(path, 'utf8') : null;
}
