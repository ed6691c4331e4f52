// A place in a parsed file, with the type that the schema gives it: what the readers walk on.
// A value that is missing, or that a finding was already made for, is simply not there.
import { isMap, isScalar, isSeq, type Node } from 'yaml';
import type { CheckName } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import { type Reading, withSoundForm } from '../units/reading.ts';
import { keyText } from './key-findings.ts';
import { ENTRY } from './prose-scanning.ts';
import { exampleForm } from './wanted-form.ts';
import type { YamlFile } from './yaml-file.ts';

/** A node of a file; T is what the schema says of it, and is never read itself. */
export interface At<T> {
  readonly file: YamlFile;
  readonly node: Node;
  /** The key that it stands under, as written, and its place. */
  readonly key: string;
  readonly keyPlace: Place | null;
  /** The keys that lead to it, with a step for each list. */
  readonly path: readonly string[];
  readonly as?: T;
}

type Value<T, K extends keyof T> = NonNullable<T[K]>;

export function rootOf<T>(file: YamlFile): At<T> | undefined {
  return file.root && isMap(file.root)
    ? { file, node: file.root, key: '', keyPlace: null, path: [] }
    : undefined;
}

export function placeOf(at: At<unknown>): Place {
  const [start, end] = at.node.range ?? [0, 0, 0];
  return { source: at.file.source, start, end };
}

/** The start of a group of keys: where what is missing in it is told of. */
export function startPlace(at: At<unknown>): Place {
  const start = at.node.range?.[0] ?? 0;
  return { source: at.file.source, start, end: start };
}

/** What stands under a key; undefined where nothing usable does. */
export function under<T, K extends keyof T & string>(
  at: At<T> | undefined,
  key: K,
): At<Value<T, K>> | undefined {
  return at && pairs<Value<T, K>>(at).find((one) => one.key === key);
}

/** Everything that stands under keys, in order. */
export function pairs<V>(at: At<unknown>): readonly At<V>[] {
  const { file, node, path } = at;
  if (!isMap(node)) return [];
  return node.items.flatMap((pair) => {
    const { key, value } = pair;
    if (!isScalar(key) || file.flagged.has(key) || file.flagged.has(value) || !value) return [];
    if (isScalar(value) && value.type === 'PLAIN' && (value.source ?? '') === '') return [];
    const [start, end] = key.range ?? [0, 0, 0];
    const name = keyText(key);
    return [
      {
        file,
        node: value as Node,
        key: name,
        keyPlace: { source: file.source, start, end },
        path: [...path, name],
      },
    ];
  });
}

/** Everything that stands under keys of a key; nothing where that is not there. */
export function pairsUnder<T>(
  at: At<T> | undefined,
  key: keyof T & string,
): readonly At<unknown>[] {
  const found = under(at, key);
  return found ? pairs(found) : [];
}

/** The usable entries of a list; nothing where there is no list. */
export function entries<T>(at: At<readonly T[]> | undefined): readonly At<T>[] {
  if (!at || !isSeq(at.node)) return [];
  const { file, key, keyPlace } = at;
  const path = [...at.path, ENTRY];
  return at.node.items
    .filter((one) => !file.flagged.has(one))
    .map((one) => ({ file, node: one as Node, key, keyPlace, path }));
}

/** Whether a key is written at all, usable or not. */
export function hasKey(at: At<unknown>, key: string): boolean {
  return isMap(at.node) && at.node.has(key);
}

/** The keys of a group as written, usable or not. */
export function keysOf(at: At<unknown>): readonly string[] {
  return isMap(at.node)
    ? at.node.items.flatMap(({ key }) => (isScalar(key) ? [keyText(key)] : []))
    : [];
}

export function isList(at: At<unknown>): boolean {
  return isSeq(at.node);
}

/** How many entries a list has, usable or not. */
export function lengthOf(at: At<unknown>): number {
  return isSeq(at.node) ? at.node.items.length : 0;
}

/** Whether a value stands inside { } or [ ], where keys follow each other on one line. */
export function isInBraces({ file, node }: At<unknown>): boolean {
  const { text } = file.source;
  const start = node.range?.[0] ?? 0;
  return /[{[][^\]}]*$/.test(text.slice(text.lastIndexOf('\n', start - 1) + 1, start));
}

export function isGroup(at: At<unknown>): boolean {
  return isMap(at.node);
}

/** The words of a value as they stand in the file. */
export function textOf(at: At<unknown>): string {
  if (!isScalar(at.node)) return '';
  if (at.node.type === 'PLAIN') return String(at.node.source ?? at.node.value);
  // A sentence written over several lines is one sentence.
  return String(at.node.value)
    .trim()
    .replace(/\s*\n\s*/g, ' ');
}

export function textUnder<T>(at: At<T> | undefined, key: keyof T & string): string | null {
  const found = under(at, key);
  return found ? textOf(found) : null;
}

/** A closed word: the schema has made sure that it is one of them. */
export function wordUnder<T, K extends keyof T & string>(
  at: At<T> | undefined,
  key: K,
): Extract<Value<T, K>, string> | undefined {
  const found = under(at, key);
  return found ? (textOf(found) as Extract<Value<T, K>, string>) : undefined;
}

/** Sentences, or words, of a list. */
export function textsUnder<T>(at: At<T> | undefined, key: keyof T & string): readonly string[] {
  return entries(under(at, key) as At<readonly unknown[]> | undefined).map(textOf);
}

/** Tells of a mistake at a place of the file. */
export function tellAt(
  at: At<unknown>,
  check: CheckName,
  message: string,
  more: Partial<Pick<Finding, 'hints' | 'related' | 'place'>> = {},
): void {
  at.file.findings.push(
    finding({ check, severity: 'error', message, place: placeOf(at), ...more }),
  );
}

/** Reads a quantity; a misread one becomes a finding that names the key, and is not there. */
export function quantity<T>(
  at: At<unknown> | undefined,
  parse: (text: string) => Reading<T>,
): T | undefined {
  if (!at) return undefined;
  if (!isScalar(at.node)) {
    tellAt(at, 'wrong-kind', `"${at.key}" takes one value here.`);
    return undefined;
  }
  const reading = withSoundForm(parse(textOf(at)), parse);
  if (reading.ok) return reading.value;
  const { check, says, write, orWrite } = reading.misread;
  const own = [write, orWrite].flatMap((one) => (one === undefined ? [] : `"${at.key}: ${one}"`));
  const example = /^(weeks|dial)-/.test(check)
    ? undefined
    : exampleForm(at.file, at.path, (text) => parse(text).ok);
  const form = own.length > 0 ? own.join(' or ') : example && `for example ${example}`;
  tellAt(at, check, `"${at.key}" ${says}${form === undefined ? '' : `; write ${form}`}.`);
  return undefined;
}
