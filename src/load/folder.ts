// The one door to the files: a practice folder on the disk, or one held in memory.
// Paths are relative to the folder, with `/`. Links are seen and never followed.
import { lstatSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { compareText } from '../finding/finding.ts';

export interface FolderEntry {
  readonly path: string;
  readonly kind: 'file' | 'link' | 'other';
  /** In bytes. */
  readonly size: number;
}

export interface Folder {
  /** What lies under a path, in order of path; nothing where there is no such folder. */
  readonly list: (under: string) => readonly FolderEntry[];
  /** What stands at a path; undefined where there is nothing. A link anywhere on the way makes it a link. */
  readonly entry: (path: string) => FolderEntry | undefined;
  /** The bytes of a file. Throws what the system says where it cannot be read. */
  readonly read: (path: string) => Uint8Array;
}

const IS_YAML = /\.ya?ml$/;

/** A folder on the disk. */
export function diskFolder(root: string): Folder {
  const entryOf = (path: string): FolderEntry | undefined => {
    const steps = path.split('/');
    for (let i = 1; i < steps.length; i += 1) {
      const above = lstatSync(join(root, ...steps.slice(0, i)), { throwIfNoEntry: false });
      if (!above) return undefined;
      if (above.isSymbolicLink()) return { path, kind: 'link', size: 0 };
    }
    const stat = lstatSync(join(root, path), { throwIfNoEntry: false });
    if (!stat) return undefined;
    return {
      path,
      kind: stat.isSymbolicLink() ? 'link' : stat.isFile() ? 'file' : 'other',
      size: stat.size,
    };
  };
  const walk = (under: string): FolderEntry[] =>
    readdirSync(join(root, under), { withFileTypes: true }).flatMap((one) => {
      const path = `${under}/${one.name}`;
      // A folder that is called like a file was meant to be one; it is told of, not looked into.
      if (one.isDirectory() && !IS_YAML.test(path)) return walk(path);
      const entry = entryOf(path);
      return entry ? [entry] : [];
    });
  return {
    list: (under) => {
      const stat = lstatSync(join(root, under), { throwIfNoEntry: false });
      if (stat?.isSymbolicLink()) return [{ path: under, kind: 'link', size: 0 }];
      return stat?.isDirectory() ? walk(under).sort(byPath) : [];
    },
    entry: entryOf,
    read: (path) => readFileSync(join(root, path)),
  };
}

/** A folder held in memory: path to text or bytes. */
export function memoryFolder(files: Readonly<Record<string, string | Uint8Array>>): Folder {
  const bytesOf = (path: string): Uint8Array => {
    const content = files[path];
    if (content === undefined) throw new Error(`there is no ${path}`);
    return typeof content === 'string' ? new TextEncoder().encode(content) : content;
  };
  const entryOf = (path: string): FolderEntry => ({
    path,
    kind: 'file',
    size: bytesOf(path).length,
  });
  return {
    list: (under) =>
      Object.keys(files)
        .filter((path) => path.startsWith(`${under}/`))
        .map(entryOf)
        .sort(byPath),
    entry: (path) => (Object.hasOwn(files, path) ? entryOf(path) : undefined),
    read: bytesOf,
  };
}

function byPath(a: FolderEntry, b: FolderEntry): number {
  return compareText(a.path, b.path);
}
