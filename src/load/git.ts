// The one door to git: a repository around a practice folder. Old versions are read from its objects, so
// the working tree stays as it is; nothing is changed but settings, where that is asked for.
import { createHash } from 'node:crypto';
import { resolve } from 'node:path';
import { parseDay } from '../units/day.ts';
import type { Folder } from './folder.ts';
import { type Listed, listTree, readBlobs, treeFolder } from './git-folder.ts';
import { type Environment, entries, GitTrouble, gitIn, type Run } from './run-git.ts';

/** A full commit id, in hexadecimal. */
export type Commit = string;

export interface Repository {
  /** Where the practice folder lies in the repository: empty at its top, else "clinic/north/". */
  readonly prefix: string;
  /** The commit that a name means, or the last of a day. Throws GitTrouble where there is none. */
  readonly commit: (rev: string) => Commit;
  /** What to call a commit: its short id and its day, "1a2b3c4, 2026-10-05". */
  readonly title: (commit: Commit) => string;
  /** The practice folder as it was in a commit. The plans come one by one, or all at once. */
  readonly folderAt: (commit: Commit, plans: 'one-by-one' | 'at-once') => Folder;
  /** The folder's files that are renamed between two commits, or a commit and the working tree: old to new path. */
  readonly renames: (from: Commit, to: Commit | null) => ReadonlyMap<string, string>;
  /** Of these paths, those whose working state is not what HEAD has. */
  readonly uncommitted: (paths: readonly string[]) => readonly string[];
  /** Of these paths, those that git tracks. */
  readonly tracked: (paths: readonly string[]) => readonly string[];
  /** What .gitattributes says of a path under a name; null where it says nothing. */
  readonly attribute: (path: string, name: string) => string | null;
  /** Sets a setting of this copy of the repository, or takes it away. */
  readonly set: (name: string, value: string | null) => void;
  /** The path of a file that git keeps for itself. */
  readonly ownFile: (name: string) => string;
  /** The object name that these bytes would have here. */
  readonly objectName: (bytes: Uint8Array) => string;
  /** Path to object name, in a commit. */
  readonly objectsAt: (commit: Commit) => ReadonlyMap<string, string>;
}

/** The repository that a folder lies in. Throws GitTrouble where there is no git or no repository. */
export function openRepository(root: string, env: Environment): Repository {
  const git = gitIn(root, env);
  const prefix = git(['rev-parse', '--show-prefix']).toString().replace(/\n$/, '');
  const trees = new Map<Commit, ReadonlyMap<string, Listed>>();
  const blobs = new Map<string, Uint8Array>();
  let format: string | null = null;
  const objectFormat = () => {
    format ??= git(['rev-parse', '--show-object-format']).toString().trim();
    return format;
  };
  const inFolder = (path: string) => path.slice(prefix.length);
  const tree = (commit: Commit) => {
    const known = trees.get(commit) ?? listTree(git, commit, prefix);
    trees.set(commit, known);
    return known;
  };
  return {
    commit: (rev) => commitOf(git, rev),
    title: (commit) =>
      git(['log', '-1', '--no-show-signature', '--format=%h, %cs', commit]).toString().trim(),
    folderAt: (commit, plans) => {
      const together = plans === 'at-once' ? ['exercises/', 'plans/'] : ['exercises/'];
      return treeFolder(tree(commit), together, (names) => readBlobs(git, names, blobs));
    },
    renames: (from, to) =>
      new Map(
        renamed(git, [from, ...(to === null ? [] : [to])])
          .filter((pair) => pair.every((path) => path.startsWith(prefix)))
          .map(([old, now]) => [inFolder(old), inFolder(now)]),
      ),
    uncommitted: (paths) =>
      statusPaths(
        git([
          'status',
          '--porcelain=v1',
          '-z',
          '--untracked-files=all',
          '--ignored',
          '--',
          ...literal(paths),
        ]),
      )
        .filter((path) => path.startsWith(prefix))
        .map(inFolder),
    tracked: (paths) => entries(git(['ls-files', '-z', '--', ...literal(paths)])),
    attribute: (path, name) => {
      const said = entries(git(['check-attr', '-z', name, '--', path]))[2] ?? 'unspecified';
      return said === 'unspecified' ? null : said;
    },
    objectName: (bytes) => objectName(bytes, objectFormat()),
    prefix,
    set: (name, value) => {
      if (value !== null) git(['config', '--local', name, value]);
      else if (isSet(git, name)) git(['config', '--local', '--unset-all', name]);
    },
    ownFile: (name) =>
      resolve(root, git(['rev-parse', '--git-path', name]).toString().replace(/\n$/, '')),
    objectsAt: (commit) => new Map([...tree(commit)].map(([path, { name }]) => [path, name])),
  };
}

function isSet(git: Run, name: string): boolean {
  return entries(git(['config', '--local', '--name-only', '-z', '--list'])).includes(
    name.toLowerCase(),
  );
}

function commitOf(git: Run, rev: string): Commit {
  if (parseDay(rev).ok) return commitOfDay(git, rev);
  try {
    // Two steps, for a name that means something else than a commit deserves a sentence of its own.
    const args = ['rev-parse', '--verify', '--quiet', '--end-of-options'];
    return git([...args, `${rev}^{commit}`])
      .toString()
      .trim();
  } catch {
    if (rev === 'HEAD') throw new GitTrouble('nothing has been committed here yet');
    const isShallow = git(['rev-parse', '--is-shallow-repository']).toString().trim() === 'true';
    throw new GitTrouble(
      `git knows no version "${rev}"${isShallow ? '; this clone has only the latest versions ("git fetch --unshallow" brings the others)' : ''}`,
    );
  }
}

/** The last commit of a day or before it. */
function commitOfDay(git: Run, day: string): Commit {
  const found = git(['rev-list', '-1', `--before=${day}T23:59:59`, 'HEAD'])
    .toString()
    .trim();
  if (found === '') throw new GitTrouble(`nothing had been committed here by ${day}`);
  return found;
}

function renamed(git: Run, between: readonly string[]): [string, string][] {
  const told = entries(
    git([
      'diff',
      '--no-ext-diff',
      '--no-textconv',
      '--name-status',
      '-z',
      '--find-renames',
      '--diff-filter=R',
      ...between,
    ]),
  );
  const pairs: [string, string][] = [];
  for (let i = 0; i + 2 < told.length; i += 3)
    pairs.push([told[i + 1] as string, told[i + 2] as string]);
  return pairs;
}

/** Paths from the top of the repository; a renamed file's entry is followed by its old path. */
function statusPaths(answer: Buffer): readonly string[] {
  const told = entries(answer);
  const paths: string[] = [];
  for (let i = 0; i < told.length; i += 1) {
    const one = told[i] as string;
    paths.push(one.slice(3));
    if (/^(R|C|.R|.C)/.test(one)) i += 1;
  }
  return paths;
}

function literal(paths: readonly string[]): readonly string[] {
  return paths.map((path) => `:(literal)${path}`);
}

function objectName(bytes: Uint8Array, format: string): string {
  return createHash(format === 'sha256' ? 'sha256' : 'sha1')
    .update(`blob ${bytes.length}\0`)
    .update(bytes)
    .digest('hex');
}
