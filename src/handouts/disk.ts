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
import { pdfSeal } from '../render/pages/pdf-seal.ts';
import { HANDOUTS, OUTDATED, sha256 } from './pages.ts';

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
  return readFile(root, path, 'utf8');
}

/** Whether anything lies there, be it a link that leads nowhere. */
export function isThere(root: string, path: string): boolean {
  return lstatSync(join(root, path), { throwIfNoEntry: false }) !== undefined;
}

/** A PDF as a text of one sign a byte. */
export function readPdf(root: string, path: string): string | undefined {
  return readFile(root, path, 'latin1');
}

function readFile(root: string, path: string, as: 'utf8' | 'latin1'): string | undefined {
  const stat = lstatSync(join(root, path), { throwIfNoEntry: false });
  return stat?.isFile() ? readFileSync(join(root, path), as) : undefined;
}

/** Writes a page; one that says the same already is left alone. Returns whether it was written. */
export function writePage(root: string, path: string, text: string): boolean {
  if (readPage(root, path) === text) return false;
  putThere(root, path, Buffer.from(text));
  return true;
}

/** Writes a PDF, given as a text of one sign a byte. */
export function writePdf(root: string, path: string, pdf: string): void {
  putThere(root, path, Buffer.from(pdf, 'latin1'));
}

function putThere(root: string, path: string, bytes: Uint8Array): void {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  const beside = unfinished(root, path);
  writeFileSync(beside, bytes);
  renameSync(beside, join(root, path));
}

/** Where a file is written before it is put in its place: a whole path. */
export function unfinished(root: string, path: string): string {
  return `${join(root, path)}.${process.pid}${UNFINISHED}`;
}

/** Moves a page to handouts/outdated/, stamped; returns where it went. An older one there is kept. */
export function moveToOutdated(root: string, path: string, stamp: string): string {
  if (path.endsWith('.pdf')) return movePdf(root, path);
  const text = readPage(root, path);
  const name = path.slice(HANDOUTS.length + 1);
  const isText = text !== undefined;
  const page = isText ? stamped(text, stamp, name.endsWith('.md') ? 'markdown' : 'html') : '';
  const to = freeName(root, name, page);
  if (isText) writePage(root, to, page);
  rmSync(join(root, path), { force: true });
  return to;
}

/** A PDF takes no stamp, so that its name says what it is, and of which sheet. */
function movePdf(root: string, path: string): string {
  const pdf = readPdf(root, path);
  const number = pdf === undefined ? undefined : pdfSeal(pdf, sha256)?.sheetNumber;
  const plan = path.slice(HANDOUTS.length + 1, -'.pdf'.length);
  const sheet = number === undefined ? '' : `.${number.replace(' ', '-')}`;
  const to = freeName(root, `${plan}.outdated${sheet}.pdf`, pdf ?? '', readPdf);
  if (pdf !== undefined) writePdf(root, to, pdf);
  rmSync(join(root, path), { force: true });
  return to;
}

function freeName(root: string, name: string, page: string, read = readPage): string {
  const dot = name.indexOf('.');
  for (let n = 1; ; n += 1) {
    const numbered = n === 1 ? name : `${name.slice(0, dot)}.${n}${name.slice(dot)}`;
    const path = `${OUTDATED}/${numbered}`;
    const there = read(root, path);
    if (there === undefined || there === page) return path;
  }
}
