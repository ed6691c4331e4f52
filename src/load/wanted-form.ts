// What belongs at a place of a file where nothing that was typed can be kept: the words that it takes,
// the ids that there are, or a form. An example is always called one, for a dose or a side that only
// stands in an example could otherwise end up on somebody's sheet.
import { knownHint } from './did-you-mean.ts';
import { ENTRY } from './prose-scanning.ts';
import { descriptionAt, type FileKind, proseOf, type Shape, shapeAt } from './schemas.ts';
import type { YamlFile } from './yaml-file.ts';

/** The ids of a practice, by the name that the schema's `ids` gives their list. */
export type IdsOf = (list: string) => readonly string[];

export const NO_IDS: IdsOf = () => [];

/** What follows "write" in a sentence, and what may be chosen from. */
export interface Wanted {
  readonly write: string;
  /** What the value says, where that is not plain from its words. */
  readonly meaning: string | null;
  readonly hints: readonly string[];
}

/** What each list of the practice holds: one, and several. */
const HELD: Readonly<Record<string, readonly [one: string, several: string]>> = {
  exercises: ['id of an exercise', 'ids of exercises'],
  levels: ['id of a level of the exercise', 'ids of levels of the exercise'],
  practitioners: ['id of a practitioner', 'ids of practitioners'],
  positions: ['id of a position', 'ids of positions'],
  kit: ['id of a piece of kit', 'ids of pieces of kit'],
  'kit-and-bands': [
    'id of a piece of kit or name of a band',
    'ids of pieces of kit and names of bands',
  ],
  bands: ['name of a band', 'names of bands'],
  muscles: ['id of a muscle', 'ids of muscles'],
  demands: ['id of a demand', 'ids of demands'],
  concerns: ['id of a concern', 'ids of concerns'],
  checks: ['name of a check', 'names of checks'],
};

export function wantedAt(file: YamlFile, path: readonly string[], ids: IdsOf): Wanted {
  const key = keyOf(path);
  const shape = shapeAt(file.kind, path);
  const own = ownName(file, path);
  if (own !== undefined) return plain(`"${key}: ${own}"`);
  if (!shape) return plain(`"${key}: …"`);
  const isEntry = path.at(-1) === ENTRY;
  const after = (what: string, hints: readonly string[] = []) =>
    ({ write: isEntry ? what : `"${key}:" with ${what}`, meaning: null, hints }) as const;
  if (shape.const !== undefined) return plain(`"${key}: ${String(shape.const)}"`);
  const words = wordsOf(file.kind, path, shape);
  if (words) return after(`one of ${words.join(', ')}`);
  if (shape.ids !== undefined)
    return after(`the ${HELD[shape.ids]?.[0] ?? 'id'}`, knownHint(ids(shape.ids)));
  const listed = shapeAt(file.kind, [...path, ENTRY]);
  if (listed?.ids !== undefined)
    return {
      write: `"${key}: […]" with the ${HELD[listed.ids]?.[1] ?? 'ids'} in it`,
      meaning: null,
      hints: knownHint(ids(listed.ids)),
    };
  const lead = leadOf(listed) ?? (isEntry ? leadOf(shape) : undefined);
  if (lead !== undefined) return leading(file, path, lead, ids);
  const meaning = meaningAt(file.kind, path);
  if (shape.isProse)
    return { write: `"${key}: …" ${OWN_WORDS[key] ?? 'in your own words'}`, meaning, hints: [] };
  const example = exampleAt(file.kind, path);
  if (example === undefined) return plain(`"${key}: …"`);
  if (proseOf(file.kind)(path) === 'sentences')
    return {
      write: `"${key}:" and under it your own sentences, each after a dash, such as "${example}"`,
      meaning,
      hints: [],
    };
  const isGroup = shape.types.includes('object') || shape.types.includes('array');
  return {
    write: `for example ${writeForm(key, example)}`,
    meaning: isGroup ? null : meaning,
    hints: [],
  };
}

const OWN_WORDS: Readonly<Record<string, string>> = {
  emergency: 'with the number that is called where you work',
};

function plain(write: string): Wanted {
  return { write, meaning: null, hints: [] };
}

/** A list of groups, or one of its entries: each begins with a key of its own. */
function leading(file: YamlFile, path: readonly string[], lead: string, ids: IdsOf): Wanted {
  const isEntry = path.at(-1) === ENTRY;
  const { write, hints } = wantedAt(file, isEntry ? [...path, lead] : [...path, ENTRY, lead], ids);
  const entry = write.replace(`"${lead}:`, `"- ${lead}:`);
  return {
    write: isEntry
      ? entry
      : `"${keyOf(path)}:" and under it ${entry.replace(/^for example/, 'an entry such as')}`,
    meaning: null,
    hints,
  };
}

/** The key that an entry of a list begins with. */
export function leadOf(entry: Shape | null): string | undefined {
  return entry?.types.includes('object') ? entry.required?.[0] : undefined;
}

/** The closed words of a place; days have two ways of writing, so their form is shown. */
function wordsOf(kind: FileKind, path: readonly string[], shape: Shape): readonly string[] | null {
  if (shape.enum) return shape.enum;
  const isList = shapeAt(kind, [...path, ENTRY])?.enum !== undefined;
  const words = /^\^\(([a-z|-]+)\)\$$/.exec(shape.pattern ?? '')?.[1]?.split('|');
  return words && isList ? words : null;
}

/** A plan and an exercise are called what their file is called; a person, if not otherwise, what the plan is; a translation names both its exercise and its language. */
function ownName({ kind, source }: YamlFile, path: readonly string[]): string | undefined {
  const [key = ''] = path;
  const name = source.file.slice(source.file.lastIndexOf('/') + 1).replace(/\.ya?ml$/, '');
  if (path.length !== 1) return undefined;
  if (kind === 'translation') {
    const [exercise, language] = name.split('.');
    return { exercise, language }[key];
  }
  const isOwn = kind === 'plan' ? /^(plan|person)$/.test(key) : kind === key;
  return isOwn && kind !== 'practice' ? name : undefined;
}

function keyOf(path: readonly string[]): string {
  return path.findLast((step) => step !== ENTRY) ?? '';
}

function meaningAt(kind: FileKind, path: readonly string[]): string | null {
  const first = /^[^;:]*?(?=[;:]|\.(?:\s|$))/.exec(descriptionAt(kind, path))?.[0];
  return first ? first.charAt(0).toLowerCase() + first.slice(1) : null;
}

/** One right form of what stands under a key, from the example in its description; what is one person's own left open. */
function exampleAt(kind: FileKind, path: readonly string[]): string | undefined {
  const toKey = path.slice(0, path.findLastIndex((step) => step !== ENTRY) + 1);
  // A sentence is shown whole; of several forms of a quantity the first.
  const example = /Example: (- .+|.+?(?=; |, or |\.?$))/.exec(descriptionAt(kind, toKey))?.[1];
  if (example === undefined) return undefined;
  if (/^\d/.test(example)) return example.replace(/, .*/, '');
  return example
    .replace(/\.$/, '')
    .replace(/\b(why|found|name): [^,}]+/g, '$1: …')
    .replace(/\b(left|right): \{[^}]*\}/g, '$1: {…}');
}

/** An example of what to write under a key, with the key; undefined where none is given that fits. */
export function exampleForm(
  file: YamlFile,
  path: readonly string[],
  fits: (example: string) => boolean,
): string | undefined {
  const example = exampleAt(file.kind, path);
  const key = keyOf(path);
  return example === undefined || key === '' || !fits(example)
    ? undefined
    : writeForm(key, example);
}

function writeForm(key: string, example: string): string {
  return example.startsWith('- ') ? `"${key}:" and under it "${example}"` : `"${key}: ${example}"`;
}
