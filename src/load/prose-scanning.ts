// What the scan of a file's lines for trapped sentences keeps in mind, how a trap is told of, and what
// is put in its place. Which lines are traps is for prose-traps.ts and its neighbours.
import { type Finding, finding } from '../finding/finding.ts';
import type { SourceText } from '../finding/place.ts';
import { quoted } from './quoted-sentence.ts';
import type { Break } from './yaml-breaks.ts';

/** What belongs at a place of a file: a sentence, a list of sentences, or something else. */
export type ProseAt = (path: readonly string[]) => 'text' | 'sentences' | null;

/** The step of a path that stands for an entry of a list. */
export const ENTRY = '*';

/** A key or a list entry that is open, by its column. */
export interface Owner {
  readonly column: number;
  readonly step: string;
  /** Where its line begins to say something. */
  readonly at: number;
  /** The column of the dashes under a key, once there is one. */
  dashes?: number;
}

export interface Scanning {
  readonly source: SourceText;
  readonly proseAt: ProseAt;
  readonly findings: Finding[];
  readonly breaks: Break[];
  /** Where something else stands in the text to parse than was written. */
  readonly standIns: { readonly start: number; readonly end: number }[];
  /** The text to parse, sign by sign: trapped stretches replaced in place, so that thousands of them take no longer than one. */
  readonly mended: string[];
  readonly open: Owner[];
  /** Lines that are deeper than this belong to a block of text. */
  blockBelow: number | null;
  /** A plain sentence that ended with its line, and the column of its key or dash. */
  plainAbove: {
    readonly column: number;
    readonly start: number;
    readonly end: number;
    readonly isEntry: boolean;
  } | null;
  /** The closing quote that a sentence over several lines still waits for. */
  quote: {
    readonly sign: '"' | "'";
    readonly start: number;
    readonly column: number;
    readonly isProse: boolean;
  } | null;
  flowDepth: number;
  /** A key or dash with nothing after it yet, whose sentence may stand on the next line. */
  awaiting: Owner | null;
}

/** Tells of a trapped sentence; of a value that is no sentence only the quotes go, so that it is still read. */
export function trap(
  scanning: Scanning,
  value: string,
  at: number,
  how: string,
  isProse = true,
): void {
  const text = value.trimEnd();
  tell(
    scanning,
    `This ${isProse ? 'sentence' : 'text'} ${how}; put quotes round it: ${quoted(text)}.`,
    at,
    at + text.length,
  );
  if (isProse) return standIn(scanning, at, text.length);
  put(scanning, at, text.replace(/["']/g, ' '));
}

export function tell(scanning: Scanning, message: string, start: number, end: number): void {
  const place = { source: scanning.source, start, end };
  scanning.findings.push(finding({ check: 'text-cut-off', severity: 'error', message, place }));
}

/** Text of the same length that YAML reads as text. */
export function standIn(scanning: Scanning, start: number, length: number): void {
  scanning.standIns.push({ start, end: start + length });
  const lines = mendedPart(scanning, start, start + length).split('\n');
  const filled = lines.map((line, i) =>
    i === 0 ? 'x'.repeat(line.length) : ' '.repeat(line.length),
  );
  put(scanning, start, filled.join('\n'));
}

export function blank(scanning: Scanning, start: number, end: number): void {
  put(scanning, start, mendedPart(scanning, start, end).replace(/[^\n]/g, ' '));
}

export function mendedPart({ mended }: Scanning, start: number, end: number): string {
  return mended.slice(start, end).join('');
}

/** Puts a text in the place of as many signs. */
export function put({ mended }: Scanning, start: number, text: string): void {
  for (let i = 0; i < text.length; i += 1) mended[start + i] = text[i] as string;
}

/** Closes what the new column ends: a dash ends entries at its column, a key ends all at its column. */
export function closeTo(scanning: Scanning, column: number, isDash: boolean): void {
  for (let last = scanning.open.at(-1); last; last = scanning.open.at(-1)) {
    const isEnded =
      last.column > column || (last.column === column && (!isDash || last.step === ENTRY));
    if (!isEnded) return;
    scanning.open.pop();
  }
}

/** The keys and dashes that are open. */
export function pathOf(scanning: Scanning): readonly string[] {
  return scanning.open.map(({ step }) => step);
}
