// Sentences that YAML would cut off, split, turn into keys or read as markup. Found in the lines as
// written, before any parsing, so that the message can show the whole sentence in quotes.
// A trapped sentence is blanked out in place (same length), so that the rest of the file is still read.
import { type Finding, finding } from '../finding/finding.ts';
import type { SourceText } from '../finding/place.ts';

/** What belongs at a place of a file: a sentence, a list of sentences, or something else. */
export type ProseAt = (path: readonly string[]) => 'text' | 'sentences' | null;

/** The step of a path that stands for an entry of a list. */
export const ENTRY = '*';

interface Scanning {
  readonly source: SourceText;
  readonly proseAt: ProseAt;
  readonly findings: Finding[];
  /** The text to parse: trapped stretches replaced. */
  mended: string;
  /** Open keys and list entries, by their column. */
  readonly open: { readonly column: number; readonly step: string }[];
  /** Lines that are deeper than this belong to a block of text. */
  blockBelow: number | null;
  /** A plain sentence that ended with its line, and the column of its key or dash. */
  plainAbove: { readonly column: number; readonly start: number; readonly end: number } | null;
  /** The closing quote that a sentence over several lines still waits for. */
  quote: { readonly sign: '"' | "'"; readonly start: number } | null;
  flowDepth: number;
}

export interface MendedText {
  readonly text: string;
  readonly findings: readonly Finding[];
}

const KEY = /^(?:"([^"]*)"|'([^']*)'|([\p{L}\p{N}_][^\s:#"']*))[ \t]*:(?=[ \t]|$)/u;

/** Finds the trapped sentences of a file, and the text without them. */
export function proseTraps(source: SourceText, proseAt: ProseAt): MendedText {
  const scanning: Scanning = {
    source, proseAt, findings: [], mended: source.text, open: [], blockBelow: null, plainAbove: null, quote: null, flowDepth: 0,
  };
  let start = 0;
  for (const line of source.text.split('\n')) {
    scanLine(scanning, line, start);
    start += line.length + 1;
  }
  return { text: scanning.mended, findings: scanning.findings };
}

function scanLine(scanning: Scanning, line: string, start: number): void {
  if (scanning.quote) {
    closeQuote(scanning, line, start);
    return;
  }
  const indent = line.length - line.trimStart().length;
  if (line.trim() === '') return;
  if (scanning.blockBelow !== null) {
    if (indent > scanning.blockBelow) return;
    scanning.blockBelow = null;
  }
  if (scanning.flowDepth > 0) {
    countBrackets(scanning, line);
    return;
  }
  if (line.startsWith('#', indent)) return;
  if (/^(---|\.\.\.)(\s|$)/.test(line) || line.startsWith('%')) return;
  if (runsOn(scanning, line, start, indent)) return;
  scanning.plainAbove = null;
  openAndCheck(scanning, line, start, indent);
}

/** A line deeper than the plain sentence above it, with no key or dash of its own, would be added to that sentence. */
function runsOn(scanning: Scanning, line: string, start: number, indent: number): boolean {
  const above = scanning.plainAbove;
  const rest = line.slice(indent);
  const isDashless = /^-[^\s-]/.test(rest);
  if (!above || indent < above.column || (indent === above.column && !isDashless)) return false;
  const sentence = scanning.source.text.slice(above.start, above.end);
  const message = isDashless
    ? `This line would become part of the sentence above it; a list entry has a space after its dash: "- ${rest.slice(1)}".`
    : `This line would become part of the sentence above it; put quotes round the whole: ${quoted(`${sentence} ${rest}`)}, or give it a dash of its own.`;
  tell(scanning, message, start + indent, start + line.trimEnd().length);
  blank(scanning, start + indent, start + line.length);
  return true;
}

function openAndCheck(scanning: Scanning, line: string, start: number, indent: number): void {
  let column = indent;
  while (/^-(\s|$)/.test(line.slice(column))) {
    closeTo(scanning, column, true);
    scanning.open.push({ column, step: ENTRY });
    const after = line.slice(column + 1);
    column += 1 + after.length - after.trimStart().length;
  }
  const owner = scanning.open.at(-1);
  const isEntry = column > indent;
  if (isEntry && owner && scanning.proseAt(pathOf(scanning)) === 'text') {
    checkSentence(scanning, line, start, column, owner.column);
    return;
  }
  const key = KEY.exec(line.slice(column));
  if (!key) {
    // Not a key: a value on a line of its own, or something for the parser to name.
    countBrackets(scanning, line.slice(column));
    return;
  }
  closeTo(scanning, column, false);
  scanning.open.push({ column, step: key[1] ?? key[2] ?? key[3] ?? '' });
  const valueColumn = valueStart(line, column + key[0].length);
  const prose = scanning.proseAt(pathOf(scanning));
  if (prose === null) checkOther(scanning, line, valueColumn, column);
  else if (prose === 'text') checkSentence(scanning, line, start, valueColumn, column);
  else checkList(scanning, line, start, valueColumn, column);
}

function valueStart(line: string, from: number): number {
  const after = line.slice(from);
  return from + after.length - after.trimStart().length;
}

/** Closes what the new column ends: a dash ends entries at its column, a key ends all at its column. */
function closeTo(scanning: Scanning, column: number, isDash: boolean): void {
  for (let last = scanning.open.at(-1); last; last = scanning.open.at(-1)) {
    const isEnded = last.column > column || (last.column === column && (!isDash || last.step === ENTRY));
    if (!isEnded) return;
    scanning.open.pop();
  }
}

function pathOf(scanning: Scanning): readonly string[] {
  return scanning.open.map(({ step }) => step);
}

/** A value that is no sentence: only blocks, quotes and brackets that reach over lines matter. */
function checkOther(scanning: Scanning, line: string, valueColumn: number, column: number): void {
  const value = line.slice(valueColumn);
  if (isBlockHeader(value)) scanning.blockBelow = column;
  else countBrackets(scanning, value);
}

/** Where a list of sentences belongs: one on the key's own line is left to the schema, unless it would break. */
function checkList(scanning: Scanning, line: string, start: number, valueColumn: number, column: number): void {
  const value = line.slice(valueColumn);
  if (value === '' || value.startsWith('#')) return;
  if (value.startsWith('[')) countBrackets(scanning, value);
  else checkSentence(scanning, line, start, valueColumn, column);
}

function isBlockHeader(value: string): boolean {
  return /^[|>](?:[+-]?[1-9]?|[1-9][+-])\s*(?:\s#.*)?$/.test(value);
}

function checkSentence(scanning: Scanning, line: string, start: number, valueColumn: number, column: number): void {
  const value = line.slice(valueColumn);
  const at = start + valueColumn;
  if (value === '') return;
  if (isBlockHeader(value)) {
    scanning.blockBelow = column;
    return;
  }
  const first = value[0] as string;
  if (first === '"' || first === "'") {
    scanning.quote = { sign: first, start: at };
    closeQuote(scanning, line, start, valueColumn + 1);
    return;
  }
  if (first === '[' || first === '{') {
    const isWhole = /^(\[[^[\]]*\]|\{[^{}]*\})\s*(#.*)?$/.test(value);
    if (isWhole || !/[\]}]/.test(value)) countBrackets(scanning, value);
    else trap(scanning, value, at, `would be read as a list because of its "${first}"`);
    return;
  }
  checkPlain(scanning, value, at, column);
}

function checkPlain(scanning: Scanning, value: string, at: number, column: number): void {
  if (/^#(?!\s|$)/.test(value)) return trap(scanning, value, at, 'would be left out because of its "#"');
  if (value.startsWith('#')) return;
  const sign = /^[*&!|>@%`]/.exec(value)?.[0] ?? /^[-?:](?=\s|$)/.exec(value)?.[0];
  if (sign) return trap(scanning, value, at, `would not be read as text because of its "${sign}"`);
  const hash = /(\s+)#(.?)/.exec(value);
  const isComment = hash && (hash[1] as string).length >= 2 && (hash[2] === '' || /\s/.test(hash[2] as string));
  if (hash && !isComment) return trap(scanning, value, at, 'would be cut off at its "#"');
  const text = (hash ? value.slice(0, hash.index) : value).trimEnd();
  if (/:(\s|$)/.test(text)) return trap(scanning, text, at, 'would be split at its ":"');
  scanning.plainAbove = { column, start: at, end: at + text.length };
}

/** Looks for the end of a quoted sentence on this line; what follows the quote is text that would break. */
function closeQuote(scanning: Scanning, line: string, start: number, from = 0): void {
  const { sign, start: opened } = scanning.quote as { sign: '"' | "'"; start: number };
  for (let i = from; i < line.length; i += 1) {
    if (sign === '"' && line[i] === '\\') i += 1;
    else if (line[i] === sign && sign === "'" && line[i + 1] === "'") i += 1;
    else if (line[i] === sign) {
      scanning.quote = null;
      const after = line.slice(i + 1);
      if (/^\s*$|^\s+#/.test(after)) return;
      const value = scanning.source.text.slice(opened, start + line.length);
      trap(scanning, value, opened, 'would end at its second quote', after.trim() === '' ? undefined : value);
      return;
    }
  }
  if (start + line.length >= scanning.source.text.trimEnd().length) {
    scanning.quote = null;
    const end = scanning.source.text.indexOf('\n', opened);
    const value = scanning.source.text.slice(opened, end === -1 ? undefined : end);
    trap(scanning, value, opened, 'opens a quote that never closes');
    blank(scanning, opened + value.length, scanning.source.text.length);
  }
}

function countBrackets(scanning: Scanning, text: string): void {
  const bare = text.replace(/"(?:\\.|[^"\\])*"|'(?:''|[^'])*'/g, '').replace(/(^|\s)#.*$/, '');
  const opens = bare.match(/[[{]/g)?.length ?? 0;
  const closes = bare.match(/[\]}]/g)?.length ?? 0;
  const isFlow = scanning.flowDepth > 0 || /^[[{]/.test(bare);
  if (isFlow) scanning.flowDepth = Math.max(0, scanning.flowDepth + opens - closes);
}

function trap(scanning: Scanning, value: string, at: number, how: string, whole = value): void {
  const text = whole.trimEnd();
  tell(scanning, `This sentence ${how}; put quotes round it: ${quoted(text)}.`, at, at + text.length);
  standIn(scanning, at, text.length);
}

/** A sentence in double quotes as YAML takes it; double quotes inside become single ones. */
export function quoted(text: string): string {
  const isLoneQuote = /^"[^"]*$/.test(text);
  const sentence = (isLoneQuote ? text.slice(1) : text).replace(/\s+/g, ' ').trim();
  return JSON.stringify(sentence.replaceAll('"', "'"));
}

function tell(scanning: Scanning, message: string, start: number, end: number): void {
  const place = { source: scanning.source, start, end };
  scanning.findings.push(finding({ check: 'text-cut-off', severity: 'error', message, place }));
}

/** Text of the same length that YAML reads as text. */
function standIn(scanning: Scanning, start: number, length: number): void {
  const lines = scanning.mended.slice(start, start + length).split('\n');
  const filled = lines.map((line, i) => (i === 0 ? 'x'.repeat(line.length) : ' '.repeat(line.length)));
  scanning.mended = scanning.mended.slice(0, start) + filled.join('\n') + scanning.mended.slice(start + length);
}

function blank(scanning: Scanning, start: number, end: number): void {
  const spaces = scanning.mended.slice(start, end).replace(/[^\n]/g, ' ');
  scanning.mended = scanning.mended.slice(0, start) + spaces + scanning.mended.slice(end);
}
