// Sentences that YAML would cut off, split, turn into keys or read as markup. Found in the lines as
// written, before any parsing, so that the message can show the whole sentence in quotes.
// A trapped sentence is blanked out in place (same length), so that the rest of the file is still read.
import type { Finding } from '../finding/finding.ts';
import type { SourceText } from '../finding/place.ts';
import { flowTraps } from './flow-prose.ts';
import { tellBareDash, tellEntryBefore, tellStrayDash } from './prose-dashes.ts';
import { closeQuote, isQuote, leaveOpen, openQuote } from './prose-quotes.ts';
import {
  blank,
  closeTo,
  ENTRY,
  mendedPart,
  type Owner,
  type ProseAt,
  pathOf,
  type Scanning,
  tell,
  trap,
} from './prose-scanning.ts';
import { quoted } from './quoted-sentence.ts';
import { type Break, badIndent } from './yaml-breaks.ts';

export interface MendedText {
  readonly text: string;
  readonly findings: readonly Finding[];
  /** Lines whose indent or dash leaves it unsure what belongs to what. */
  readonly breaks: readonly Break[];
  /** Where something else stands in the text than was written: of it nothing more is to be said. */
  readonly standIns: Scanning['standIns'];
}

const KEY = /^(?:"([^"]*)"|'([^']*)'|([\p{L}\p{N}_][^\s:#"']*))[ \t]*:(?=[ \t]|$)/u;

const LIKE_A_KEY = /^[a-z][a-z_]*:(\s|$)/;

/** Finds the trapped sentences of a file, and the text without them. */
export function proseTraps(source: SourceText, proseAt: ProseAt): MendedText {
  const scanning: Scanning = {
    source,
    proseAt,
    findings: [],
    breaks: [],
    standIns: [],
    mended: source.text.split(''),
    open: [],
    blockBelow: null,
    plainAbove: null,
    quote: null,
    flowDepth: 0,
    awaiting: null,
  };
  let start = 0;
  for (const line of source.text.split('\n')) {
    scanLine(scanning, line, start);
    start += line.length + 1;
  }
  if (scanning.quote) leaveOpen(scanning, source.text.length);
  return {
    text: scanning.mended.join(''),
    findings: scanning.findings,
    breaks: scanning.breaks,
    standIns: scanning.standIns,
  };
}

function scanLine(scanning: Scanning, line: string, start: number): void {
  if (line.trim() === '') return;
  const indent = line.length - line.trimStart().length;
  if (scanning.quote && indent > scanning.quote.column) {
    closeQuote(scanning, line, start);
    return;
  }
  if (scanning.quote) leaveOpen(scanning, start - 1);
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
  const lineEnd = start + line.trimEnd().length;
  blank(scanning, start + indent, lineEnd);
  // The first sentence stands on the key's own line, which the schema tells of: the others follow from it.
  if (/^-\s/.test(rest) && !above.isEntry && scanning.proseAt(pathOf(scanning)) === 'sentences')
    return true;
  if (!isDashless && LIKE_A_KEY.test(rest)) {
    const columns = scanning.open.filter(({ step }) => step !== ENTRY).map(({ column }) => column);
    scanning.breaks.push({
      start: start + indent,
      end: lineEnd,
      message: `${badIndent(indent, columns)} If this goes on with the sentence above, put quotes round the whole.`,
    });
    return true;
  }
  const aNewOne = above.isEntry
    ? `if it is a new one, give it a dash of its own: "- ${rest.trimEnd()}"; if it goes on, `
    : '';
  const message = isDashless
    ? `This line would become part of the sentence above it; a list entry has a space after its dash: "- ${rest.slice(1)}".`
    : `This line would become part of the sentence above it; ${aNewOne}put quotes round the whole: ${quoted(`${sentence} ${rest}`)}.`;
  tell(scanning, message, start + indent, lineEnd);
  return true;
}

function openAndCheck(scanning: Scanning, line: string, start: number, indent: number): void {
  const { awaiting } = scanning;
  scanning.awaiting = null;
  // A list or keys of its own are of the wrong kind here, which the schema says better.
  if (
    awaiting &&
    indent > awaiting.column &&
    !/^-\s/.test(line.slice(indent)) &&
    !LIKE_A_KEY.test(line.slice(indent))
  ) {
    checkSentence(scanning, line, start, indent, awaiting);
    return;
  }
  let column = indent;
  while (
    /^-(\s|$)/.test(line.slice(column)) &&
    !(column > indent && scanning.proseAt(pathOf(scanning)) === 'text')
  ) {
    tellEntryBefore(scanning, column);
    const above = scanning.open.flatMap(({ dashes }) => dashes ?? []);
    closeTo(scanning, column, true);
    if (column === indent) tellStrayDash(scanning, line, start, column, above);
    scanning.open.push({ column, step: ENTRY, at: start + column });
    const after = line.slice(column + 1);
    column += 1 + after.length - after.trimStart().length;
  }
  const owner = scanning.open.at(-1);
  const isEntry = column > indent;
  if (isEntry && owner && scanning.proseAt(pathOf(scanning)) === 'text') {
    checkSentence(scanning, line, start, column, owner);
    return;
  }
  const key = KEY.exec(line.slice(column));
  if (!key) {
    // Not a key: a value on a line of its own, or something for the parser to name.
    if (isEntry || !tellBareDash(scanning, line, start, column))
      checkFlow(scanning, line, start, column);
    return;
  }
  closeTo(scanning, column, false);
  const opened = { column, step: key[1] ?? key[2] ?? key[3] ?? '', at: start + column };
  scanning.open.push(opened);
  const valueColumn = valueStart(line, column + key[0].length);
  const prose = scanning.proseAt(pathOf(scanning));
  if (prose === null) checkOther(scanning, line, start, valueColumn, opened);
  else if (prose === 'text') checkSentence(scanning, line, start, valueColumn, opened);
  else checkList(scanning, line, start, valueColumn, opened);
}

function valueStart(line: string, from: number): number {
  const after = line.slice(from);
  return from + after.length - after.trimStart().length;
}

/** A value that is no sentence: only blocks, quotes and brackets that reach over lines matter. */
function checkOther(
  scanning: Scanning,
  line: string,
  start: number,
  valueColumn: number,
  owner: Owner,
): void {
  const value = line.slice(valueColumn);
  if (isBlockHeader(value)) scanning.blockBelow = owner.column;
  else if (isQuote(value[0])) openQuote(scanning, line, start, valueColumn, owner, false);
  else checkFlow(scanning, line, start, valueColumn);
}

/** Where a list of sentences belongs: one on the key's own line is left to the schema, unless it would break. */
function checkList(
  scanning: Scanning,
  line: string,
  start: number,
  valueColumn: number,
  owner: Owner,
): void {
  const value = line.slice(valueColumn);
  if (value === '' || value.startsWith('#')) return;
  if (value.startsWith('[')) checkFlow(scanning, line, start, valueColumn);
  else checkSentence(scanning, line, start, valueColumn, owner);
}

function isBlockHeader(value: string): boolean {
  return /^[|>](?:[+-]?[1-9]?|[1-9][+-])\s*(?:\s#.*)?$/.test(value);
}

function checkSentence(
  scanning: Scanning,
  line: string,
  start: number,
  valueColumn: number,
  owner: Owner,
): void {
  const value = line.slice(valueColumn);
  const at = start + valueColumn;
  if (value === '' || /^#(\s|$)/.test(value)) {
    scanning.awaiting = owner;
    return;
  }
  if (isBlockHeader(value)) {
    scanning.blockBelow = owner.column;
    return;
  }
  const first = value[0] as string;
  if (isQuote(first)) {
    openQuote(scanning, line, start, valueColumn, owner, true);
    return;
  }
  if (first === '[' || first === '{') {
    const isWhole = /^(\[[^[\]]*\]|\{[^{}]*\})\s*(#.*)?$/.test(value);
    if (isWhole || !/[\]}]/.test(value)) countBrackets(scanning, value);
    else trap(scanning, value, at, `would be read as a list because of its "${first}"`);
    return;
  }
  checkPlain(scanning, value, at, owner);
}

function checkPlain(scanning: Scanning, value: string, at: number, owner: Owner): void {
  if (/^#(?!\s|$)/.test(value))
    return trap(scanning, value, at, 'would be left out because of its "#"');
  if (value.startsWith('#')) return;
  const sign = /^[*&!|>@%`]/.exec(value)?.[0] ?? /^[-?:](?=\s|$)/.exec(value)?.[0];
  if (sign) return trap(scanning, value, at, `would not be read as text because of its "${sign}"`);
  const hash = /(?<!\s)(\s+)#(.?)/.exec(value);
  const isComment =
    hash && (hash[1] as string).length >= 2 && (hash[2] === '' || /\s/.test(hash[2] as string));
  if (hash && !isComment) return trap(scanning, value, at, 'would be cut off at its "#"');
  const text = (hash ? value.slice(0, hash.index) : value).trimEnd();
  if (/:(\s|$)/.test(text)) return trap(scanning, text, at, 'would be split at its ":"');
  scanning.plainAbove = {
    column: owner.column,
    start: at,
    end: at + text.length,
    isEntry: owner.step === ENTRY,
  };
}

/** Brackets that open on this line: the sentences in them, and whether they close on it. */
function checkFlow(scanning: Scanning, line: string, start: number, column: number): void {
  if (/[[{]/.test(line[column] ?? '')) {
    for (const trapped of flowTraps(line, column, pathOf(scanning), scanning.proseAt)) {
      trap(scanning, line.slice(trapped.start, trapped.end), start + trapped.start, trapped.how);
    }
  }
  countBrackets(scanning, mendedPart(scanning, start + column, start + line.length));
}

function countBrackets(scanning: Scanning, text: string): void {
  const bare = text.replace(/"(?:\\.|[^"\\])*"|'(?:''|[^'])*'/g, '').replace(/(^|\s)#.*$/, '');
  const opens = bare.match(/[[{]/g)?.length ?? 0;
  const closes = bare.match(/[\]}]/g)?.length ?? 0;
  const isFlow = scanning.flowDepth > 0 || /^[[{]/.test(bare);
  if (isFlow) scanning.flowDepth = Math.max(0, scanning.flowDepth + opens - closes);
}
