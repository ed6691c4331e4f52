// What ships with the program: templates, words packs, the folder that `init` copies. Built and
// source trees lie equally deep, so one path serves both.
import { readdirSync, readFileSync } from 'node:fs';

const root = new URL('../../', import.meta.url);

/** Paths of the files below a shipped folder, in order. */
export function shippedFiles(under: string): readonly string[] {
  const names = readdirSync(new URL(`${under}/`, root), { recursive: true, withFileTypes: true });
  const base = new URL(`${under}/`, root).pathname;
  return names
    .filter((one) => one.isFile())
    .map((one) =>
      `${one.parentPath}/${one.name}`.replace(/\/+/g, '/').slice(decodeURIComponent(base).length),
    )
    .sort();
}

export function readShipped(path: string): string {
  return readFileSync(new URL(path, root), 'utf8').replaceAll('\r\n', '\n');
}
