// What was typed at a place, in the form that belongs there: a sentence after a dash, words in a list,
// one value under the key that it was meant for. Undefined where nothing sound can be made of it.
import { isMap, isScalar, isSeq, type Node } from 'yaml';
import { parseDay } from '../units/day.ts';
import { parseDuration } from '../units/duration.ts';
import { daysForm } from './own-days.ts';
import { doseForms } from './own-dose.ts';
import { ENTRY } from './prose-scanning.ts';
import { quoted } from './quoted-sentence.ts';
import { type FileKind, proseOf, type Shape, shapeAt } from './schemas.ts';
import { leadOf } from './wanted-form.ts';
import type { YamlFile } from './yaml-file.ts';

interface Typed {
  readonly file: YamlFile;
  readonly path: readonly string[];
  readonly node: unknown;
}

/** What follows "write" in a sentence. */
export function ownForm({ file, path, node }: Typed): string | undefined {
  const shape = shapeAt(file.kind, path);
  if (!shape) return undefined;
  const key = path.findLast((step) => step !== ENTRY) ?? '';
  const isEntry = path.at(-1) === ENTRY;
  const place = { kind: file.kind, path, key, shape, isEntry };
  if (isScalar(node)) return ofText(place, String(node.source ?? node.value).trim());
  if (isMap(node)) return ofKeys(place, node, file.source.text);
  return isSeq(node) ? ofList(place, node.items) : undefined;
}

interface At {
  readonly kind: FileKind;
  readonly path: readonly string[];
  readonly key: string;
  readonly shape: Shape;
  readonly isEntry: boolean;
}

function ofText(at: At, text: string): string | undefined {
  const { kind, path, key, shape, isEntry } = at;
  if (text === '') return undefined;
  if (key === 'days' && !isEntry) return daysForm(text);
  if (shape.types.includes('array')) {
    if (proseOf(kind)(path) === 'sentences')
      return isPlain(text) ? `"${key}:" and under it "- ${text}"` : undefined;
    const entry = shapeAt(kind, [...path, ENTRY]);
    const lead = entryForm(kind, [...path, ENTRY], text);
    if (lead !== undefined) return `"${key}:" and under it "${lead}"`;
    const words = entry && wordsFrom(text, entry, shape);
    return words ? `"${key}: [${words.join(', ')}]"` : undefined;
  }
  if (!shape.types.includes('object')) return undefined;
  if (isEntry) {
    const lead = entryForm(kind, path, text);
    return lead === undefined ? undefined : `"${lead}"`;
  }
  return groupForm(at, text);
}

/** An entry of a list of groups that was written as one word: the word under the key that leads the entry. */
function entryForm(kind: FileKind, path: readonly string[], text: string): string | undefined {
  const entry = shapeAt(kind, path);
  const lead = leadOf(entry);
  const shape = lead === undefined ? null : shapeAt(kind, [...path, lead]);
  const value = shape && oneValue(text, shape);
  if (!entry || lead === undefined || value === undefined || value === null) return undefined;
  const isOnlyWords = entry.required
    ?.slice(1)
    .every((key) => shapeAt(kind, [...path, key])?.isProse);
  const rest = (entry.required ?? []).slice(1).map((key) => `, ${key}: …`);
  return isOnlyWords && rest.length > 0
    ? `- {${lead}: ${value}${rest.join('')}}`
    : `- ${lead}: ${value}`;
}

/** A value that the shape takes as it is, or as the id that it was meant for. */
function oneValue(text: string, shape: Shape): string | undefined {
  if (shape.enum) return shape.enum.find((word) => word === text.toLowerCase());
  if (shape.quantity === 'date') return parseDay(text).ok ? text : undefined;
  if (shape.pattern === undefined) return /^\d+$/.test(text) ? text : undefined;
  if (new RegExp(shape.pattern, 'u').test(text)) return text;
  const id = idFrom(text);
  return shape.quantity === undefined && new RegExp(shape.pattern, 'u').test(id) ? id : undefined;
}

/** Words that were written in one line, one by one; undefined where one of them does not belong. */
function wordsFrom(text: string, entry: Shape, list: Shape): readonly string[] | undefined {
  if (/^(?:none|nothing|no|-)$/i.test(text)) return list.minItems ? undefined : [];
  if (entry.types.includes('object')) return undefined;
  const parts = text
    .replace(/^\[|\]$/g, '')
    .split(/\s*(?:[,;+&/]|\band\b|\bor\b)\s*/)
    .filter((part) => part !== '');
  if (entry.quantity === undefined && entry.pattern === undefined && !entry.enum)
    return parts.map(inList);
  const words = parts.map((part) =>
    oneValue(entry.quantity === undefined ? part : part.replace(/^weeks?\s+/i, ''), entry),
  );
  return words.every((word) => word !== undefined) ? words : undefined;
}

/** The key of a group that a bare value under the group's own key was meant for. */
const MEANT_FOR: Readonly<Record<string, readonly string[]>> = {
  MusclesFile: ['prime'],
  EasyWeeksFile: ['weeks'],
  ShortDayFile: ['time'],
  LimitsFile: ['time'],
  LevelDialFile: ['through'],
  PersonFile: ['name'],
  ClosedFile: ['date'],
};

const SHARE_LEFT = 'and the share that is left of sets, reps, hold or time, such as "sets: 50 %"';

function groupForm({ kind, path, key, shape }: At, text: string): string | undefined {
  if (shape.title === 'DoseFile') {
    const forms = doseForms(text).map((form) => `"${key}: ${form}"`);
    return forms.length > 0 ? forms.join(' or ') : undefined;
  }
  if (shape.title === 'SideOverridesFile')
    return /^(left|right|affected|other)$/.test(text) ? `"only: ${text}"` : undefined;
  if (shape.title === 'MoveOnWhenFile') {
    const counted = /^(\d+)\s*(rep|set)s?$/i.exec(text);
    return counted ? `"${key}: {${counted[2]?.toLowerCase()}s: ${counted[1]}}"` : undefined;
  }
  const [meant] = MEANT_FOR[shape.title ?? ''] ?? [];
  const child = meant === undefined ? null : shapeAt(kind, [...path, meant]);
  if (meant === undefined || !child) return undefined;
  const entry = shapeAt(kind, [...path, meant, ENTRY]);
  const words = entry ? wordsFrom(text, entry, child) : undefined;
  const value = entry ? words && `[${words.join(', ')}]` : valueIn(text, child);
  return value === undefined ? undefined : groupOf(key, shape, meant, value);
}

function groupOf(key: string, shape: Shape, meant: string, value: string): string {
  if (shape.title === 'EasyWeeksFile') return `"${key}: {${meant}: ${value}, …}" ${SHARE_LEFT}`;
  const rest = (shape.required ?? []).filter((one) => one !== meant).map((one) => `, ${one}: …`);
  return `"${key}: {${meant}: ${value}${rest.join('')}}"`;
}

function valueIn(text: string, shape: Shape): string | undefined {
  if (shape.isProse) return inList(text);
  if (shape.quantity === 'duration') return parseDuration(text).ok ? text : undefined;
  return oneValue(text, shape);
}

/** Keys where a list of groups belongs: each entry begins with a dash. */
function ofKeys(
  { kind, path, key, shape }: At,
  node: Node & { items: readonly { key: unknown; value: unknown }[] },
  text: string,
): string | undefined {
  const entryPath = [...path, ENTRY];
  const entry = shape.types.includes('array') ? shapeAt(kind, entryPath) : null;
  if (!entry?.types.includes('object')) return undefined;
  const written = (one: unknown) => text.slice(...rangeOf(one)).trimEnd();
  const [first] = node.items;
  if (!first || !isScalar(first.key)) return undefined;
  const lead = leadOf(entry);
  const isKey = shapeAt(kind, [...entryPath, String(first.key.value)]) !== null;
  if (!isKey && lead !== undefined && isMap(first.value) && first.value.flow) {
    const value = oneValue(String(first.key.value), shapeAt(kind, [...entryPath, lead]) as Shape);
    const rest = written(first.value).replace(/^\{\s*|\s*\}$/g, '');
    return (
      value && `"${key}:" and under it "- {${lead}: ${value}${rest === '' ? '' : `, ${rest}`}}"`
    );
  }
  if (!isKey) return undefined;
  const lines = node.items.map((one) => `${written(one.key)}: ${written(one.value)}`);
  const isShort =
    lines.length > 1 &&
    node.items.every((one) =>
      isScalar(one.value) ? isBare(written(one.value)) : !written(one.value).includes('\n'),
    );
  const whole = lines.length === 1 ? (lines[0] as string) : `{${lines.join(', ')}}`;
  return isShort || (lines.length === 1 && !whole.includes('\n'))
    ? `"${key}:" and under it "- ${whole}"`
    : `"${key}:" and under it a dash before each entry: "- ${(lines[0] as string).split('\n')[0]}"`;
}

/** A list where one value, or a group with a list in it, belongs. */
function ofList(
  { kind, path, key, shape, isEntry }: At,
  items: readonly unknown[],
): string | undefined {
  const words = items.map((one) => (isScalar(one) ? String(one.source ?? one.value) : null));
  if (isEntry || words.length === 0 || words.some((word) => word === null)) return undefined;
  const [only] = words as readonly string[];
  if (!shape.types.includes('object'))
    return words.length === 1 && only !== undefined && valueIn(only, shape) !== undefined
      ? `"${key}: ${valueIn(only, shape)}"`
      : undefined;
  const [meant] = MEANT_FOR[shape.title ?? ''] ?? [];
  if (meant === undefined || !shapeAt(kind, [...path, meant, ENTRY])) return undefined;
  return groupOf(key, shape, meant, `[${words.join(', ')}]`);
}

function rangeOf(node: unknown): readonly [number, number] {
  const range = (node as Node | null)?.range;
  return range ? [range[0], range[1]] : [0, 0];
}

/** Whether a sentence can stand after a dash as it is. */
function isPlain(text: string): boolean {
  return /^[\p{L}\p{N}](?:(?!: | #)[^"\n])*[^":]$/u.test(text);
}

/** Words as they can stand in brackets. */
function inList(text: string): string {
  return isBare(text) ? text : quoted(text);
}

function isBare(text: string): boolean {
  return /^[\p{L}\p{N}](?:(?!: | #)[^",[\]{}\n])*$/u.test(text);
}

/** The id that a word was meant as; empty where it has no letters or digits for one. */
export function idFrom(word: string): string {
  return word
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 63);
}
