// Sentences inside { } and [ ] on one line that YAML would cut off, split or read as markup. Found
// before any parsing, as in prose-traps.ts; a comma in a sentence is told of once the tree is there.
import { ENTRY, type ProseAt } from './prose-scanning.ts';

/** A sentence from one place of a line to another, and what would become of it. */
export interface FlowTrap {
  readonly start: number;
  readonly end: number;
  readonly how: string;
}

interface Walk {
  readonly line: string;
  readonly proseAt: ProseAt;
  readonly traps: FlowTrap[];
}

const KEY = /^(?:"([^"]*)"|([^\s,:#"'[\]{}][^,:[\]{}]*?))\s*:\s+/;

/** The trapped sentences of the brackets that open at a place of a line. */
export function flowTraps(
  line: string,
  from: number,
  path: readonly string[],
  proseAt: ProseAt,
): readonly FlowTrap[] {
  const walk: Walk = { line, proseAt, traps: [] };
  walkBrackets(walk, from, path);
  return walk.traps;
}

/** Walks one pair of brackets; the place behind it, or the end of the line where it does not close there. */
function walkBrackets(walk: Walk, from: number, path: readonly string[]): number {
  const { line } = walk;
  const isList = line[from] === '[';
  let at = from + 1;
  while (at < line.length) {
    at = pastSpaces(line, at);
    if (/[\]}]/.test(line[at] ?? '')) return at + 1;
    const key = isList ? null : KEY.exec(line.slice(at));
    if (key) at += key[0].length;
    // What has no key inside { } is the rest of a sentence, which is told of once the tree is there.
    at = walkValue(
      walk,
      at,
      isList ? [...path, ENTRY] : key ? [...path, key[1] ?? key[2] ?? ''] : null,
    );
    at = pastSpaces(line, at);
    if (line[at] === ',') at += 1;
    else if (!/[\]}]/.test(line[at] ?? '')) return line.length;
  }
  return at;
}

function walkValue(walk: Walk, at: number, path: readonly string[] | null): number {
  const { line, proseAt } = walk;
  const isText = path !== null && proseAt(path) === 'text';
  if (path !== null && !isText && /[[{]/.test(line[at] ?? '')) return walkBrackets(walk, at, path);
  const quoteEnd = endOfQuote(line, at);
  if (quoteEnd !== null && /^\s*([,\]}]|$)/.test(line.slice(quoteEnd))) return quoteEnd;
  const end = endOfSentence(line, at);
  if (!isText) return end;
  const sentence = line.slice(at, end).trimEnd();
  const how = quoteEnd === null ? howTrapped(sentence) : 'would end at its second quote';
  if (how !== null) walk.traps.push({ start: at, end: at + sentence.length, how });
  return end;
}

function howTrapped(sentence: string): string | null {
  const sign = /^[*&!|>@%`]|^[-?:](?=\s)/.exec(sentence)?.[0];
  if (sign) return `would not be read as text because of its "${sign}"`;
  if (/(^|\s)#/.test(sentence)) return 'would be cut off at its "#"';
  if (/:(\s|$)/.test(sentence)) return 'would be split at its ":"';
  const bracket = /[[\]{}]/.exec(sentence)?.[0];
  return bracket === undefined ? null : `would be taken apart at its "${bracket}"`;
}

/** Where a quote that opens here closes; null where none opens here, or none closes it. */
function endOfQuote(line: string, at: number): number | null {
  const quote = /^(?:"(?:\\.|[^"\\])*"|'(?:''|[^'])*')/.exec(line.slice(at))?.[0];
  return quote === undefined ? null : at + quote.length;
}

/** A sentence goes on to the bracket that closes its pair, or to a comma: before the next key, or any in a list. */
function endOfSentence(line: string, at: number): number {
  let depth = 0;
  for (let i = at; i < line.length; i += 1) {
    const sign = line[i] as string;
    if (sign === '[' || sign === '{') depth += 1;
    if (sign === ']' || sign === '}') depth -= 1;
    if (depth < 0 || (depth === 0 && sign === ',')) return i;
  }
  return line.length;
}

function pastSpaces(line: string, at: number): number {
  return at + (/^\s*/.exec(line.slice(at))?.[0].length ?? 0);
}
