// One file's text to a tree with places: YAML in its plainest form. Every scalar is its source text,
// so that nothing is read as another kind of value than was written; what could mean two things is refused.
import {
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type Node,
  parseAllDocuments,
  visit,
} from 'yaml';
import type { CheckName } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import { positionOf, type SourceText } from '../finding/place.ts';
import { partEntries } from './forgotten-dash.ts';
import { proseTraps } from './prose-traps.ts';
import { type FileKind, proseOf } from './schemas.ts';
import { codeOf, HIDDEN } from './text-file.ts';
import { type Break, firstBreak } from './yaml-breaks.ts';
import {
  commaSentence,
  flagRanges,
  flowCommas,
  type Tell,
  tellFlow,
  withoutCommas,
} from './yaml-flow.ts';

/** A parsed file; `flagged` are nodes that a finding was already made for, and that are not read. */
export interface YamlFile {
  readonly kind: FileKind;
  readonly source: SourceText;
  readonly root: Node | null;
  readonly flagged: Set<unknown>;
  readonly findings: Finding[];
  /** False where the text could not be taken apart, so that nothing more can be said of it. */
  readonly isWhole: boolean;
}

/** Parses a file. What is found here stands in `findings`; the rest of the file is still read. */
export function parseYaml(source: SourceText, kind: FileKind): YamlFile {
  const mended = proseTraps(source, proseOf(kind));
  const findings: Finding[] = mended.findings.filter(
    ({ place }) => !isTabIndented(source.text, place.start),
  );
  const flagged = new Set<unknown>();
  // The parser counts a break at the end of a file as one sign more than there is.
  const inside = (at: number) => Math.min(Math.max(at, 0), source.text.length);
  const tell = (check: CheckName, message: string, start: number, end: number) =>
    findings.push(
      finding({
        check,
        severity: 'error',
        message,
        place: { source, start: inside(start), end: inside(end) },
      }),
    );
  const unread = (): YamlFile => ({ kind, source, root: null, flagged, findings, isWhole: false });

  if (/^%/.test(source.text)) {
    tell(
      'yaml-feature',
      'A line that begins with % is a directive, which is not used here; delete it.',
      0,
      1,
    );
    return unread();
  }
  const tabs = findTabs(mended.text, source.text);
  const indents = tabs.filter(({ isIndent }) => isIndent);
  for (const { at } of tabs.filter(({ isIndent }) => !isIndent)) {
    tell('tab-indent', 'A tab stands outside quotes; put a space in its place.', at, at + 1);
  }
  const [firstIndent] = indents;
  if (firstIndent) {
    const more =
      indents.length === 1
        ? ''
        : `, and on ${indents.length - 1} more ${indents.length === 2 ? 'line' : 'lines'}`;
    tell(
      'tab-indent',
      `A tab is used to indent here${more}; use spaces.`,
      firstIndent.at,
      firstIndent.at + 1,
    );
    return unread();
  }

  const spaced = mended.text.replaceAll('\t', ' ');
  const asWritten = parsed(spaced);
  const commas = asWritten.flatMap((document) => flowCommas(document, spaced));
  for (const comma of commas)
    tell(
      'decimal-comma',
      commaSentence(spaced.slice(comma.start, comma.end), comma),
      comma.start,
      comma.end,
    );
  const documents = commas.length === 0 ? asWritten : parsed(withoutCommas(spaced, commas));
  const [first, second] = documents;
  if (!first?.contents) {
    if (findings.length === 0)
      tell('file-empty', 'This file has nothing in it but comments.', 0, 0);
    return unread();
  }
  if (second) {
    const start = second.range?.[0] ?? 0;
    tell('several-documents', 'A second document begins here; a file holds one.', start, start + 3);
    return unread();
  }
  const file: YamlFile = {
    kind,
    source,
    root: first.contents as Node,
    flagged,
    findings,
    isWhole: true,
  };
  const broken = earliest([...mended.breaks, firstBreak(first, spaced)]);
  if (broken) tellBreak(file, broken, tell);
  // Behind a break things stand in the tree for something else than was written.
  const tellBefore: Tell = (check, message, start, end) => {
    if (!broken || start < broken.start) tell(check, message, start, end);
  };
  tellDuplicates(file, first, tellBefore);
  tellFeatures(file, first, tellBefore);
  flagRanges(file, first, [...commas, ...mended.standIns]);
  tellFlow(file, first, tellBefore);
  return { ...file, isWhole: broken === null };
}

function findTabs(text: string, written: string): readonly { at: number; isIndent: boolean }[] {
  const found: { at: number; isIndent: boolean }[] = [];
  const outside = text.replace(
    /(?<=^|[\s,[{])(?:"(?:\\.|[^"\\])*"|'(?:''|[^'])*'|#[^\n]*)/g,
    (quote) => quote.replaceAll('\t', ' '),
  );
  for (const line of outside.matchAll(/^.*$/gm)) {
    const tab = line[0].indexOf('\t');
    if (tab === -1) continue;
    const indent =
      /^[ \t]*(?=\S)/.exec(written.slice(line.index, line.index + line[0].length))?.[0] ?? '';
    found.push({
      at: line.index + tab,
      isIndent: indent.includes('\t') && line[0].slice(0, tab).trim() === '',
    });
  }
  return found;
}

/** Where a tab indents, what belongs to what is unsure; the tab is told of alone. */
function isTabIndented(text: string, at: number): boolean {
  return /^ *\t/.test(text.slice(text.lastIndexOf('\n', at - 1) + 1));
}

function parsed(text: string): readonly Document[] {
  return parseAllDocuments(text, {
    schema: 'failsafe',
    prettyErrors: false,
    logLevel: 'silent',
    uniqueKeys: true,
    keepSourceTokens: false,
  }) as readonly Document[];
}

/** A key that stands twice: the first is read, the others are told of and left out. */
function tellDuplicates({ source, flagged }: YamlFile, document: Document, tell: Tell): void {
  const starts = new Set(
    document.errors.flatMap(({ code, pos }) => (code === 'DUPLICATE_KEY' ? [pos[0]] : [])),
  );
  if (starts.size === 0) return;
  for (const start of partEntries(document, starts, tell)) starts.delete(start);
  for (const start of starts) {
    const name = /^"?([^\s:"]+)/.exec(source.text.slice(start))?.[1] ?? 'this key';
    tell('duplicate-key', `"${name}" stands twice here; keep one.`, start, start + name.length);
  }
  visit(document, {
    Pair: (_, { key }) => {
      if (isScalar(key) && key.range && starts.has(key.range[0])) flagged.add(key);
    },
  });
}

/** The first place, in the tree or in the lines before it was parsed, that could not be taken apart; null where all can be trusted. */
function earliest(breaks: readonly (Break | null)[]): Break | null {
  return breaks.filter((one) => one !== null).sort((a, b) => a.start - b.start)[0] ?? null;
}

function tellBreak({ findings, source }: YamlFile, first: Break, tell: Tell): void {
  const lineOf = (start: number) => positionOf({ source, start, end: start }).line;
  const isTold = findings.some(
    ({ check, place }) => check === 'text-cut-off' && lineOf(place.start) === lineOf(first.start),
  );
  if (!isTold) tell('yaml-broken', first.message, first.start, first.end);
}

function tellFeatures(file: YamlFile, document: Document, tell: Tell): void {
  const { source, flagged } = file;
  const text = source.text;
  visit(document, {
    Node: (_, node) => {
      const [start, end] = node.range ?? [0, 0, 0];
      if (isAlias(node)) {
        tell(
          'yaml-feature',
          `"*${node.source}" refers to another place of the file, which is not used here; write the value out, or put quotes round it if it is text.`,
          start,
          end,
        );
        flagged.add(node);
        return;
      }
      const anchor = 'anchor' in node ? node.anchor : undefined;
      if (anchor) {
        const at = text.lastIndexOf(`&${anchor}`, start + anchor.length + 1);
        tell(
          'yaml-feature',
          `"&${anchor}" names this place for use elsewhere, which is not done here; delete it.`,
          at,
          at + anchor.length + 1,
        );
      }
      if (node.tag && !/^tag:yaml\.org,2002:(str|seq|map)$/.test(node.tag)) {
        const at = explicitTag(text, start)?.at ?? start;
        tell(
          'yaml-feature',
          `A tag that begins with ! is not used here; delete it, or put quotes round it if it is text.`,
          at,
          start,
        );
        flagged.add(node);
      } else if (explicitTag(text, start)) {
        tell(
          'yaml-feature',
          'A tag that begins with ! is not used here; delete it.',
          explicitTag(text, start)?.at ?? start,
          start,
        );
      }
      if (isScalar(node) && typeof node.value === 'string')
        tellHiddenEscape(node.value, start, end, tell);
    },
    Pair: (_, pair) => {
      if (!isScalar(pair.key)) {
        const [start, end] = (pair.key as Node | null)?.range ?? [0, 0, 0];
        tell('wrong-kind', 'A key is one plain word, not a list or a group of keys.', start, end);
        flagged.add(pair.key);
        flagged.add(pair.value);
      } else if (pair.key.source === '<<' || pair.key.value === '<<') {
        const [start, end] = pair.key.range ?? [0, 0, 0];
        tell(
          'yaml-feature',
          '"<<" copies keys from elsewhere, which is not used here; write them out.',
          start,
          end,
        );
        flagged.add(pair.key);
      }
    },
  });
}

function explicitTag(text: string, start: number): { at: number } | null {
  const before = /!\S*[ \t]*$/.exec(text.slice(Math.max(0, start - 80), start));
  return before && /(^|[\s,[{:-])!\S*[ \t]*$/.test(text.slice(Math.max(0, start - 81), start))
    ? { at: Math.max(0, start - 80) + before.index }
    : null;
}

function tellHiddenEscape(value: string, start: number, end: number, tell: Tell): void {
  const hidden = HIDDEN.exec(value);
  if (hidden) {
    tell(
      'hidden-character',
      `This text holds a character that does not show (${codeOf(hidden[0])}); take it out.`,
      start,
      end,
    );
  }
}

/** Whether a node is a list, a group of keys, or one value. */
export function kindOfNode(node: unknown): 'list' | 'keys' | 'value' {
  return isSeq(node) ? 'list' : isMap(node) ? 'keys' : 'value';
}
