// The example clinic in memory, and edits at random of its files, for comparing versions.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { isMap, isScalar, isSeq, parseDocument, visit } from 'yaml';
import { diffPlan, type PlanDiff } from '../../src/handouts/plan-diff.ts';
import { type FolderVersion, openVersion } from '../../src/handouts/version.ts';
import { shippedWords } from '../../src/handouts/wording.ts';
import { memoryFolder } from '../../src/load/folder.ts';

export type Files = Readonly<Record<string, string | Uint8Array>>;

const root = join(import.meta.dirname, '..', '..', 'examples', 'saltmarsh');

/** All files of the example clinic but its handouts. */
export function exampleFiles(): Files {
  const paths = readdirSync(root, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile())
    .map((one) =>
      join(one.parentPath, one.name)
        .slice(root.length + 1)
        .replaceAll('\\', '/'),
    )
    .filter((path) => !path.startsWith('handouts/'));
  return Object.fromEntries(
    paths.map((path) => [
      path,
      path.endsWith('.yaml')
        ? readFileSync(join(root, path), 'utf8')
        : readFileSync(join(root, path)),
    ]),
  );
}

const versions = new WeakMap<Files, Map<string, FolderVersion>>();

/** A version of the folder with one plan, compiled once. */
export function versionOf(files: Files, plan: string): FolderVersion {
  const known = versions.get(files) ?? new Map<string, FolderVersion>();
  versions.set(files, known);
  const version = known.get(plan) ?? openVersion(memoryFolder(files), [plan]);
  known.set(plan, version);
  return version;
}

/** One plan of two versions of the folder. */
export function diffOf(
  before: Files,
  after: Files,
  plan: string,
  renamed: ReadonlyMap<string, string> = new Map(),
): PlanDiff {
  const code = (files: Files) =>
    Object.keys(files).some((path) => path.endsWith(`/${plan}.yaml`)) ? plan : null;
  return diffPlan(
    { title: 'before', version: versionOf(before, plan) },
    { title: 'after', version: versionOf(after, plan) },
    { before: code(before), after: code(after), renamed },
    shippedWords(),
  );
}

/** A file's text with one thing changed: which, and how, by numbers. */
export interface Edit {
  readonly file: number;
  readonly node: number;
  readonly kind: number;
}

export const edits: fc.Arbitrary<readonly Edit[]> = fc.array(
  fc.record({ file: fc.nat(), node: fc.nat(), kind: fc.nat({ max: 5 }) }),
  { minLength: 1, maxLength: 2 },
);

/** The files after the edits, each in one of the given paths. */
export function edited(files: Files, paths: readonly string[], all: readonly Edit[]): Files {
  const result: Record<string, string | Uint8Array> = { ...files };
  for (const edit of all) {
    const path = paths[edit.file % paths.length] as string;
    result[path] = editedText(result[path] as string, edit);
  }
  return result;
}

function editedText(text: string, { node: at, kind }: Edit): string {
  const document = parseDocument(text);
  const scalars: unknown[] = [];
  const lists: unknown[] = [];
  visit(document, {
    Pair: (_, pair) =>
      isScalar(pair.key) && NAMES.has(String(pair.key.value)) ? visit.SKIP : undefined,
    Scalar: (key, node) => {
      if (key !== 'key') scalars.push(node);
    },
    Seq: (_, node) => {
      lists.push(node);
    },
    Map: (_, node) => {
      lists.push(node);
    },
  });
  // A list cut short is a mistake more often than not, so values are edited more often.
  const nodes = kind < 4 ? scalars : lists;
  const node = nodes[at % nodes.length];
  if (isScalar(node)) {
    const value = String(node.source ?? node.value);
    node.type = undefined as never;
    node.value = scalarEdits[kind % scalarEdits.length]?.(value) ?? value;
  } else if (isSeq(node) && node.items.length > 0) {
    const i = at % node.items.length;
    if (kind === 4) node.items.splice(i, 1);
    else node.items.reverse();
  } else if (isMap(node) && node.items.length > 0) {
    const i = at % node.items.length;
    if (kind === 4) node.items.splice(i, 1);
    else node.items.reverse();
  }
  // As the practice's files are read: a comment keeps its distance, and no sentence is folded.
  visit(document, {
    Node: (_, one) => {
      one.comment = null;
      one.commentBefore = null;
    },
  });
  return document.toString({ lineWidth: 0 });
}

const scalarEdits: readonly ((value: string) => string)[] = [
  (value) => value.replace(/\d+/, (digits) => String(Number(digits) + 1)),
  (value) => value.replace(/\d+(?!.*\d)/, (digits) => String(Math.max(1, Number(digits) - 1))),
  (value) => SWAPS[value] ?? `${value} again`,
  (value) => SWAPS[value] ?? value.replace(/\d+/, (digits) => String(Number(digits) * 2)),
];

/** Ids and dates: to change one is to break what it points to. */
const NAMES = new Set([
  'plan',
  'exercise',
  'do',
  'level',
  'schema',
  'check',
  'muscles',
  'kit',
  'demands',
  'position',
  'picture',
  'concerns',
  'by',
  'language',
]);

const SWAPS: Readonly<Record<string, string>> = {
  left: 'right',
  right: 'left',
  affected: 'other',
  other: 'affected',
  must: 'could',
  should: 'must',
  could: 'should',
  'each-set': 'all-sets',
  'all-sets': 'each-rep',
  mon: 'sun',
  tue: 'sun',
  daily: 'daily',
  both: 'both',
  each: 'each',
};
