// Writing handouts so that a build that is killed never leaves half a page: each is written beside
// its place and then put there in one step.
import {
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { compareText } from '../finding/finding.ts';
import { stamped } from '../render/pages/outdated.ts';
import { HANDOUTS, OUTDATED } from './pages.ts';

const UNFINISHED = '.unfinished';

/** Why handouts/ cannot be written to; null where it can. */
export function whyUnusable(root: string): string | null {
  for (const path of [HANDOUTS, OUTDATED]) {
    const stat = lstatSync(join(root, path), { throwIfNoEntry: false });
    if (stat?.isSymbolicLink()) return `${path}/ is a link; make it a folder`;
    if (stat && !stat.isDirectory()) return `${path} is not a folder`;
  }
  return null;
}

const REASONS: Readonly<Record<string, string>> = {
  EACCES: 'no permission',
  EPERM: 'no permission',
  EROFS: 'the disk can only be read',
  ENOSPC: 'the disk is full',
  EISDIR: 'a folder lies where a page belongs',
  ENOTEMPTY: 'a folder lies where a page belongs',
};

/** Why a page could not be written, where that is the disk's doing; null where it is a fault of ours. */
export function whyUnwritten(cause: unknown): string | null {
  const code = cause instanceof Error && 'code' in cause ? String(cause.code) : '';
  return REASONS[code] ?? null;
}

/** The pages that lie in handouts/ now, and what builds that were killed left behind. */
export function readHandouts(root: string): {
  readonly pages: readonly string[];
  readonly unfinished: readonly string[];
} {
  const folder = join(root, HANDOUTS);
  if (!existsSync(folder)) return { pages: [], unfinished: [] };
  const names = readdirSync(folder, { withFileTypes: true })
    .filter((one) => !one.isDirectory())
    .map((one) => one.name);
  const paths = names.sort(compareText).map((name) => `${HANDOUTS}/${name}`);
  return {
    pages: paths.filter((path) => !path.endsWith(UNFINISHED)),
    unfinished: paths.filter((path) => path.endsWith(UNFINISHED)),
  };
}

export function removeUnfinished(root: string, unfinished: readonly string[]): void {
  for (const path of unfinished) rmSync(join(root, path), { force: true });
}

/** The text of a page; undefined where there is none, or what lies there is no file. */
export function readPage(root: string, path: string): string | undefined {
  const stat = lstatSync(join(root, path), { throwIfNoEntry: false });
  return stat?.isFile() ? readFileSync(join(root, path), 'utf8') : undefined;
}

/** Writes a page; one that says the same already is left alone. Returns whether it was written. */
export function writePage(root: string, path: string, text: string): boolean {
  if (readPage(root, path) === text) return false;
  const target = join(root, path);
  mkdirSync(dirname(target), { recursive: true });
  const beside = `${target}.${process.pid}${UNFINISHED}`;
  writeFileSync(beside, text);
  renameSync(beside, target);
  return true;
}

/** Moves a page to handouts/outdated/, stamped; returns where it went. An older one there is kept. */
export function moveToOutdated(root: string, path: string, stamp: string): string {
  const text = readPage(root, path);
  const name = path.slice(HANDOUTS.length + 1);
  const isText = text !== undefined;
  const page = isText ? stamped(text, stamp, name.endsWith('.md') ? 'markdown' : 'html') : '';
  const to = freeName(root, name, page);
  if (isText) writePage(root, to, page);
  rmSync(join(root, path), { force: true });
  return to;
}

function freeName(root: string, name: string, page: string): string {
  const dot = name.indexOf('.');
  for (let n = 1; ; n += 1) {
    const numbered = n === 1 ? name : `${name.slice(0, dot)}.${n}${name.slice(dot)}`;
    const path = `${OUTDATED}/${numbered}`;
    const there = readPage(root, path);
    if (there === undefined || there === page) return path;
  }
}
