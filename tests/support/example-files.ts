// The practice folders that the repository has, as files in memory: path in the folder to text.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export type Files = Readonly<Record<string, string>>;

const REPOSITORY = join(import.meta.dirname, '..', '..');

export const EXAMPLES = {
  saltmarsh: join(REPOSITORY, 'examples', 'saltmarsh'),
  'first-folder': join(REPOSITORY, 'examples', 'first-folder'),
  contract: join(REPOSITORY, 'tests', 'contract'),
} as const;

export type ExampleName = keyof typeof EXAMPLES;

/** The files of one of them that a practice writes: settings, exercises, plans, pictures. */
export function exampleFiles(name: ExampleName): Files {
  const root = EXAMPLES[name];
  const paths = readdirSync(root, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile() && /\.(yaml|svg)$/.test(one.name))
    .map((one) =>
      join(one.parentPath, one.name)
        .slice(root.length + 1)
        .replaceAll('\\', '/'),
    )
    .sort();
  return Object.fromEntries(paths.map((path) => [path, readFileSync(join(root, path), 'utf8')]));
}
