// Where a text can no longer be taken apart into keys and values, in a practitioner's words. The parser
// notices a bracket or quote that was left open only lines later; here the place is where it opens.
// Only the first break is told, since the rest follows from it.
import { type Document, visit } from 'yaml';
import { entryKeyOf } from './entry-keys.ts';
import { quoted } from './quoted-sentence.ts';

export interface Break {
  readonly start: number;
  readonly end: number;
  readonly message: string;
}

/** An indent that fits neither the lines above nor those below, and where the keys of the groups above begin. */
export function badIndent(has: number, columns: readonly number[]): string {
  const near = nearestColumns(has, columns);
  const counts = `it has ${spaces(has)}`;
  const above = near.length === 0 ? '' : `, where the keys above begin after ${near.join(' or ')}`;
  return `The indent of this line does not fit the lines around it: ${counts}${above}. Keys of one group begin below each other.`;
}

export function spaces(count: number): string {
  return `${count} ${count === 1 ? 'space' : 'spaces'}`;
}

/** The two columns that a line with another indent was most likely meant for. */
export function nearestColumns(has: number, columns: readonly number[]): readonly number[] {
  return [...new Set(columns)]
    .filter((column) => column !== has)
    .sort((a, b) => Math.abs(a - has) - Math.abs(b - has))
    .slice(0, 2);
}

const OTHER_REASONS: Readonly<Record<string, string>> = {
  BLOCK_AS_IMPLICIT_KEY: 'This line has two colons; put quotes round what follows the first.',
  BLOCK_IN_FLOW: 'Between brackets a comma is missing here, or quotes round the text.',
  MISSING_CHAR: 'Something is missing here: a colon after a key, or a closing quote or bracket.',
  UNEXPECTED_TOKEN: 'This does not fit here; look for a missing colon, comma, quote or bracket.',
  MULTILINE_IMPLICIT_KEY: 'A colon is missing here, or quotes round the text.',
  BAD_SCALAR_START: 'Text that begins with this sign needs quotes round it.',
  KEY_OVER_1024_CHARS: 'A key is far too long; look for a missing quote.',
};

const NO_BREAK: ReadonlySet<string> = new Set(['DUPLICATE_KEY', 'BAD_ALIAS', 'TAG_RESOLVE_FAILED']);

/** The first break of a text; null where the tree can be trusted. */
export function firstBreak(document: Document, text: string): Break | null {
  const first = document.errors.find(({ code }) => !NO_BREAK.has(code));
  if (!first) return null;
  const [start, end] = first.pos;
  return (
    openQuote(document, text, start) ??
    openBracket(document, text, start) ??
    onLine(text, first.code, start, end)
  );
}

/** A quote that closes only where another sentence opens one, or never: it has swallowed a line with a key or a dash. */
function openQuote(document: Document, text: string, at: number): Break | null {
  let found: Break | null = null;
  visit(document, {
    Scalar: (_, { type, range }) => {
      if ((type !== 'QUOTE_DOUBLE' && type !== 'QUOTE_SINGLE') || !range || range[0] >= at) return;
      const source = text.slice(range[0], range[1]);
      const line = source.split('\n', 1)[0] as string;
      const isOpen = source.length === 1 || source.at(-1) !== source[0];
      if (!isOpen && !/\n\s*(- |[\w-]+:\s)/.test(source)) return;
      const sentence = line.replace(/[\]}]+\s*$/, '');
      const message = `A quote opens here and is not closed; put quotes round the whole: ${quoted(sentence)}.`;
      found ??= { start: range[0], end: range[0] + line.length, message };
    },
  });
  return found;
}

/** The innermost bracket that is open where the parser gave up, and that nothing closes before the indent ends it. */
function openBracket(document: Document, text: string, at: number): Break | null {
  let outermost: number | null = null;
  visit(document, {
    Collection: (_, { flow, range }) => {
      if (!flow || !range || range[0] >= at || !/[[{]/.test(text[range[0]] ?? '')) return undefined;
      outermost = range[0];
      return visit.SKIP;
    },
  });
  const open = outermost === null ? undefined : leftOpen(text, outermost);
  if (open === undefined) return null;
  const closing = text[open] === '[' ? ']' : '}';
  return {
    start: open,
    end: open + 1,
    message: `The bracket ${text[open]} that opens here is not closed; its ${closing} is missing.`,
  };
}

/** The bracket that is left open among those that begin at a place; undefined where all are closed. */
function leftOpen(text: string, from: number): number | undefined {
  const line = lineAt(text, text.lastIndexOf('\n', from) + 1);
  const indent = line.length - line.trimStart().length;
  const open: number[] = [];
  for (const { 0: sign, index } of text
    .slice(from)
    .matchAll(/"(?:\\.|[^"\\])*"|'(?:''|[^'])*'|(?<=\s)#[^\n]*|[[\]{}]|\n[ ]*(?=\S)/g)) {
    if (sign.startsWith('\n') && sign.length - 1 <= indent) return open.at(-1);
    if (sign === '[' || sign === '{') open.push(from + index);
    if (sign !== ']' && sign !== '}') continue;
    const last = open.pop();
    if (last !== undefined && (text[last] === '[') !== (sign === ']')) return last;
    if (open.length === 0) return undefined;
  }
  return open.at(-1);
}

function onLine(text: string, code: string, start: number, end: number): Break {
  const lineStart = text.lastIndexOf('\n', start - 1) + 1;
  const line = lineAt(text, lineStart);
  const from = Math.max(start, lineStart + line.length - line.trimStart().length);
  const here = {
    start: from,
    end: Math.max(from + 1, Math.min(end, lineStart + line.trimEnd().length)),
  };
  if (/[\]}]/.test(text[start] ?? ''))
    return {
      ...here,
      message: `A bracket ${text[start]} closes here that was not opened; delete it, or open it where it belongs.`,
    };
  const squeezed = /^\s*(?:- +)?([\w-]+):(?=[^\s:])(.*)$/.exec(line);
  if (code === 'MULTILINE_IMPLICIT_KEY' && squeezed)
    return {
      ...here,
      message: `A key has a space after its colon: "${squeezed[1]}: ${squeezed[2]}".`,
    };
  const isIndent = code === 'BAD_INDENT' || (code === 'MISSING_CHAR' && line.trim() !== '');
  const bare = code === 'MULTILINE_IMPLICIT_KEY' && bareEntry(text, lineStart);
  if (bare) return { ...here, message: bare };
  if (code === 'BLOCK_AS_IMPLICIT_KEY' && !/:\s.*:(\s|$)/.test(line))
    return nextLine(text, lineStart + line.length + 1);
  return {
    ...here,
    message: isIndent
      ? badIndentAt(text, lineStart)
      : (OTHER_REASONS[code] ?? 'This line cannot be taken apart into keys and values.'),
  };
}

/** A line that stands deeper than the value above it lets. */
function nextLine(text: string, from: number): Break {
  const start = from + (/^\s*/.exec(text.slice(from))?.[0].length ?? 0);
  const message = badIndentAt(text, text.lastIndexOf('\n', start - 1) + 1);
  return { start, end: start + lineAt(text, start).trimEnd().length, message };
}

/** An entry that is one word where keys follow: the word stands without the key that such an entry begins with. */
function bareEntry(text: string, lineStart: number): string | undefined {
  const [, indent = '', word = ''] =
    /^( *)- +([^\s:#"'[{][^:#]*)$/.exec(lineAt(text, lineStart)) ?? [];
  if (word === '') return undefined;
  const list = linesAbove(text, lineStart)
    .map((line) => /^( *)(?:- +)?([a-z_]+):\s*(?:#.*)?$/.exec(line))
    .find((one) => one !== null && (one[1] as string).length <= indent.length);
  const entry = entryKeyOf(list?.[2] ?? '');
  return (
    entry &&
    `A new ${entry.noun} begins with "${entry.key}:"; write "- ${entry.key}: ${word.trim()}".`
  );
}

function badIndentAt(text: string, lineStart: number): string {
  const line = lineAt(text, lineStart);
  const columns: number[] = [];
  let limit = Number.POSITIVE_INFINITY;
  for (const above of linesAbove(text, lineStart)) {
    const column = /^ *(?:- +)*/.exec(above)?.[0].length ?? 0;
    const indent = above.length - above.trimStart().length;
    if (/^ *(?:- +)*[\w-]+:(?:\s|$)/.test(above) && column < limit) columns.push(column);
    limit = Math.min(limit, indent);
    if (limit === 0) break;
  }
  return badIndent(line.length - line.trimStart().length, columns);
}

/** The lines above a place, nearest first, without those that are empty or only a comment. */
function linesAbove(text: string, lineStart: number): readonly string[] {
  const above = text
    .slice(0, Math.max(0, lineStart - 1))
    .split('\n')
    .reverse();
  return above.filter((line) => !/^\s*(#|$)/.test(line));
}

function lineAt(text: string, start: number): string {
  const end = text.indexOf('\n', start);
  return text.slice(start, end === -1 ? undefined : end);
}
