// A words pack made usable: every sentence and every name that a person reads, in one language.
// `say` fills a sentence, `look` names an id of the vocabulary, the practice's own words first.
// Which file a pack comes from, and how it is read, is left to others.
import type { VocabularyKind } from '../../model/practice.ts';
import { type Pattern, parsePattern, type WordValues } from './pattern.ts';

export interface Words {
  /** BCP 47. */
  readonly language: string;
  readonly direction: 'ltr' | 'rtl';
  /** Who has read the pack as a person would; null while nobody has. */
  readonly reviewedBy: string | null;
  /** What a sheet says of itself while nobody has: in its language, and in English where that is another. */
  readonly unreviewed: { readonly text: string; readonly english: string | null } | null;
  /** A sentence of the pack, filled. A key that the pack lacks is a fault of the program. */
  readonly say: (key: string, values?: WordValues) => string;
  readonly has: (key: string) => boolean;
  /** What an id of the vocabulary is called; null where neither practice nor pack names it. */
  readonly look: (kind: VocabularyKind, id: string) => string | null;
  /** What a band of the practice is called. */
  readonly band: (name: string) => string;
}

/** What is wrong with a words pack, at a key like `dose.round`. */
export interface WordsProblem {
  readonly key: string;
  readonly message: string;
}

export type WordsReading =
  | { readonly ok: true; readonly words: Words }
  | { readonly ok: false; readonly problems: readonly WordsProblem[] };

export interface WordsSettings {
  readonly language: string;
  /** The shipped English pack: it says which keys and placeholders there are. */
  readonly shipped: unknown;
  /** Whether the pack itself ships: then it is sound (a test says so), and taking every sentence apart is slow. */
  readonly isShipped?: boolean;
  /** The practice's own words for ids, as in its vocabulary; they win. */
  readonly own?: Readonly<Record<VocabularyKind, ReadonlyMap<string, string>>>;
  /** The practice's bands by name, where they are called otherwise in this language. */
  readonly bands?: ReadonlyMap<string, string>;
}

const VOCABULARY = 'vocabulary';
/** A name, and no sentence. */
const REVIEWED_BY = 'reviewed_by';
const UNREVIEWED = 'sheet.unreviewed';

/** A pack as a plain object of nested strings, checked against the shipped one. */
export function wordsFrom(pack: unknown, settings: WordsSettings): WordsReading {
  if (pack === settings.shipped || settings.isShipped) {
    const texts = flattened(pack, []);
    const shippedPattern = (key: string) => soundPattern(texts, key, settings.language);
    return { ok: true, words: usable(texts, shippedPattern, settings) };
  }
  const problems: WordsProblem[] = [];
  const texts = flattened(pack, problems);
  const shipped = flattened(settings.shipped, []);
  const patterns = new Map<string, Pattern>();
  for (const [key, text] of texts) {
    if (isNoPattern(key)) continue;
    const reading = parsePattern(text, settings.language);
    if (reading.ok) patterns.set(key, reading.pattern);
    else problems.push({ key, message: `"${key}" is no usable pattern: ${reading.why}.` });
  }
  for (const [key, text] of shipped) {
    if (!texts.has(key))
      problems.push({ key, message: `"${key}" is missing; in English it is "${text}".` });
    const pattern = patterns.get(key);
    if (pattern && !isNoPattern(key)) problems.push(...placeholderProblems(key, pattern, text));
  }
  for (const key of patterns.keys()) {
    if (!shipped.has(key)) problems.push({ key, message: `"${key}" is no key of a words pack.` });
  }
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, words: usable(texts, (key) => patterns.get(key), settings) };
}

function soundPattern(
  texts: ReadonlyMap<string, string>,
  key: string,
  language: string,
): Pattern | undefined {
  const text = texts.get(key);
  if (text === undefined || isVocabulary(key)) return undefined;
  const reading = parsePattern(text, language);
  if (!reading.ok) throw new Error(`the shipped words pack has a broken "${key}": ${reading.why}`);
  return reading.pattern;
}

function usable(
  texts: ReadonlyMap<string, string>,
  patternOf: (key: string) => Pattern | undefined,
  { language, shipped, own, bands }: WordsSettings,
): Words {
  const direction = texts.get('direction') === 'rtl' ? 'rtl' : 'ltr';
  const ready = new Map<string, Pattern['fill']>();
  const prepared = (key: string): Pattern['fill'] => {
    const pattern = patternOf(key);
    if (!pattern) throw new Error(`the words pack has no "${key}"`);
    const takesLowered = [...pattern.placeholders].some((name) => name.endsWith(LOWERED));
    const fill: Pattern['fill'] = takesLowered
      ? (values) => pattern.fill(withLowered(values))
      : pattern.fill;
    ready.set(key, fill);
    return fill;
  };
  const reviewedBy = texts.get(REVIEWED_BY)?.trim() || null;
  return {
    language,
    direction,
    reviewedBy,
    unreviewed: reviewedBy === null ? unreviewedIn(texts, shipped) : null,
    band: (name) => bands?.get(name) ?? name,
    has: (key) => texts.has(key) && !isVocabulary(key),
    say: (key, values = {}) => (ready.get(key) ?? prepared(key))(values),
    look: (kind, id) =>
      own?.[kind]?.get(id) ??
      texts.get(`${VOCABULARY}.${kind}.${id}`) ??
      texts.get(`${VOCABULARY}.${kind}.${id}.name`) ??
      null,
  };
}

function unreviewedIn(texts: ReadonlyMap<string, string>, shipped: unknown): Words['unreviewed'] {
  const text = texts.get(UNREVIEWED) ?? '';
  const english = flattened(shipped, []).get(UNREVIEWED) ?? text;
  return { text, english: text === english ? null : english };
}

const LOWERED = '_lower';

/** Each text also as `name_lower`, for a place after a colon where the language wants it so. */
function withLowered(values: WordValues): WordValues {
  const all: Record<string, string | number> = { ...values };
  for (const [name, value] of Object.entries(values)) {
    if (typeof value === 'string') all[`${name}${LOWERED}`] = lowered(value);
  }
  return all;
}

/** The first letter small, unless what follows says that it is a name of capitals (`TRX`, `I`). */
export function lowered(text: string): string {
  return /^\p{Lu}(\p{Ll}|(?<=A) )/u.test(text)
    ? (text[0] as string).toLowerCase() + text.slice(1)
    : text;
}

/** The first letter large, as at the start of a sentence. */
export function raised(text: string): string {
  const [first = ''] = text;
  return first.toUpperCase() + text.slice(first.length);
}

const plain = (name: string) => name.replace(/_lower$/, '');

/** A number for choosing the plural may be left out, what a sentence tells may not. */
function placeholderProblems(key: string, pattern: Pattern, shippedText: string): WordsProblem[] {
  const shipped = parsePattern(shippedText, 'en');
  if (!shipped.ok) return [];
  const known = new Set([...shipped.pattern.placeholders].map(plain));
  const used = new Set([...pattern.placeholders].map(plain));
  const listed = [...known].map((name) => `{${name}}`).join(', ') || 'none';
  const unknown = [...used].filter((name) => !known.has(name));
  const missing = [...known].filter((name) => name !== 'n' && !used.has(name));
  return [
    ...unknown.map((name) => ({
      key,
      message: `"${key}" has the placeholder {${name}}, which is not known there; known: ${listed}.`,
    })),
    ...missing.map((name) => ({
      key,
      message: `"${key}" leaves out {${name}}, so the sheet would not say it.`,
    })),
  ];
}

function isNoPattern(key: string): boolean {
  return key === REVIEWED_BY || isVocabulary(key);
}

function isVocabulary(key: string): boolean {
  return key.startsWith(`${VOCABULARY}.`);
}

/** Nested maps of strings as `dose.round` → text; anything else is a problem. */
function flattened(pack: unknown, problems: WordsProblem[], prefix = ''): Map<string, string> {
  const texts = new Map<string, string>();
  if (typeof pack !== 'object' || pack === null || Array.isArray(pack)) {
    const where = prefix === '' ? 'The words pack' : `"${prefix}"`;
    problems.push({ key: prefix, message: `${where} is no map of words.` });
    return texts;
  }
  for (const [name, value] of Object.entries(pack)) {
    const key = prefix === '' ? name : `${prefix}.${name}`;
    if (typeof value === 'string') texts.set(key, value);
    else if (typeof value === 'object' && value !== null && !Array.isArray(value)) {
      for (const [inner, text] of flattened(value, problems, key)) texts.set(inner, text);
    } else problems.push({ key, message: `"${key}" is not a text in quotes.` });
  }
  return texts;
}
