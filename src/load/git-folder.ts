// A practice folder as it was in a commit, read straight from git's objects.
import { compareText } from '../finding/finding.ts';
import type { Folder, FolderEntry } from './folder.ts';
import { entries, type Run } from './run-git.ts';

/** Larger objects are never read at once with others; a picture can be 5 MiB. */
const LARGEST_TOGETHER = 256 * 1024;

export interface Listed {
  readonly name: string;
  readonly kind: FolderEntry['kind'];
  readonly size: number;
}

export function listTree(git: Run, commit: string, prefix: string): ReadonlyMap<string, Listed> {
  const lines = entries(
    git([
      'ls-tree',
      '-r',
      '-z',
      '--long',
      '--full-tree',
      commit,
      ...(prefix === '' ? [] : [prefix]),
    ]),
  );
  return new Map(
    lines.flatMap((line): [string, Listed][] => {
      const match = /^(\d+) (\w+) ([0-9a-f]+) +(\d+|-)\t([\s\S]+)$/.exec(line);
      if (!match) return [];
      const [, mode, , name = '', size = '0', path = ''] = match;
      const kind = mode === '120000' ? 'link' : mode === '160000' ? 'other' : 'file';
      return [
        [path.slice(prefix.length), { name, kind, size: kind === 'file' ? Number(size) : 0 }],
      ];
    }),
  );
}

type ReadBlobs = (names: readonly string[]) => ReadonlyMap<string, Uint8Array>;

export function treeFolder(
  tree: ReadonlyMap<string, Listed>,
  together: readonly string[],
  read: ReadBlobs,
): Folder {
  const entryOf = (path: string): FolderEntry | undefined => {
    const steps = path.split('/');
    for (let i = 1; i <= steps.length; i += 1) {
      const at = tree.get(steps.slice(0, i).join('/'));
      if (at)
        return i < steps.length && at.kind !== 'link'
          ? undefined
          : { path, kind: at.kind, size: at.size };
    }
    return undefined;
  };
  return {
    list: (under) =>
      tree.has(under)
        ? [entryOf(under)].flatMap((one) => (one?.kind === 'link' ? [one] : []))
        : [...tree]
            .filter(([path]) => path.startsWith(`${under}/`))
            .map(([path, { kind, size }]) => ({ path, kind, size }))
            .sort((a, b) => compareText(a.path, b.path)),
    entry: entryOf,
    read: (path) => {
      const one = tree.get(path);
      if (!one) throw new Error(`there is no ${path}`);
      const bytes = read(readTogether(tree, path, one.name, together)).get(one.name);
      if (!bytes) throw new Error(`git has no object for ${path}`);
      return bytes;
    },
  };
}

/** A process for each file is slow, so what lies under one of these folders comes as a whole. */
function readTogether(
  tree: ReadonlyMap<string, Listed>,
  path: string,
  name: string,
  together: readonly string[],
): readonly string[] {
  const under = together.find((one) => path.startsWith(one));
  if (under === undefined) return [name];
  const others = [...tree].filter(
    ([other, { kind, size }]) =>
      other.startsWith(under) && kind === 'file' && size <= LARGEST_TOGETHER,
  );
  return [...new Set([name, ...others.map(([, one]) => one.name)])];
}

export function readBlobs(git: Run, names: readonly string[], blobs: Map<string, Uint8Array>) {
  const wanted = names.filter((name) => !blobs.has(name));
  if (wanted.length === 0) return blobs;
  const answer = git(['cat-file', '--batch'], `${wanted.join('\n')}\n`);
  for (let at = 0; at < answer.length; ) {
    const end = answer.indexOf('\n', at);
    const [name = '', kind, size = '0'] = answer.toString('latin1', at, end).split(' ');
    // In a partial clone an object may be out of reach.
    if (kind === 'missing') at = end + 1;
    else {
      blobs.set(name, answer.subarray(end + 1, end + 1 + Number(size)));
      at = end + 1 + Number(size) + 1;
    }
  }
  return blobs;
}
