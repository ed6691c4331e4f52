// Findings for the terminal: where, how grave and which check; the sentence; the line with the place
// underlined; hints; related places. And the one line that sums a run up.
import type { Severity } from '../../finding/checks.ts';
import type { Finding, RelatedPlace } from '../../finding/finding.ts';
import { type Place, positionOf } from '../../finding/place.ts';
import { sourceFrame } from './source-frame.ts';
import { displayWidth, oneLine, prose, wrappedLines } from './terminal-text.ts';

export interface FindingsPaint extends Readonly<Record<Severity, (text: string) => string>> {
  readonly path: (text: string) => string;
  readonly dim: (text: string) => string;
  readonly bold: (text: string) => string;
}

export interface FindingsScreen {
  /** In columns. */
  readonly width: number;
  /** Sentences are broken for a reader at a terminal; a program gets each on one line. */
  readonly isTerminal: boolean;
  readonly paint: FindingsPaint;
}

/** Every finding with a blank line between two, and no line end after the last; nothing where nothing was found. */
export function findingsText(findings: readonly Finding[], screen: FindingsScreen): string {
  return findings.map((one) => findingText(one, screen)).join('\n\n');
}

/** The first line is never broken, so that a terminal can open the file from it. */
function findingText(one: Finding, screen: FindingsScreen): string {
  const { width, isTerminal, paint } = screen;
  const sentence = (text: string) => prose(text, isTerminal ? width : Number.POSITIVE_INFINITY);
  const { severity, check, accepted } = one;
  const grave = paint[severity](accepted ? `${severity}, accepted` : severity);
  return [
    `${paint.path(placeText(one.place))}  ${grave}  ${paint.bold(check)}`,
    sentence(one.message),
    ...sourceFrame(one.place, width, { dim: paint.dim, mark: paint[severity] }),
    ...one.hints.map((hint) => sentence(`hint: ${hint}`)),
    ...(accepted ? [sentence(`accepted: ${accepted.why}`)] : []),
    ...one.related.map((related) => relatedText(related, screen)),
  ].join('\n');
}

/** The place, and beside it what stands there; beneath it where there is no room. */
function relatedText(
  { place, message }: RelatedPlace,
  { width, isTerminal, paint }: FindingsScreen,
): string {
  const where = placeText(place);
  const says = oneLine(message);
  if (!isTerminal || displayWidth(where) + 2 + displayWidth(says) <= width)
    return `${paint.path(where)}  ${says}`;
  const lines = wrappedLines(says, width - 2).map((line) => `  ${line}`);
  return [paint.path(where), ...lines].join('\n');
}

/** `plans/M-0412.yaml:14:15`. */
function placeText(place: Place): string {
  const { line, column } = positionOf(place);
  return `${oneLine(place.source.file)}:${line}:${column}`;
}

export interface FindingCounts {
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
  /** Beside the others: what is accepted counts as nothing. */
  readonly accepted: number;
  readonly files: number;
}

/** `2 errors, 1 warning, 3 notes (2 accepted) in 14 files.` */
export function summaryText(counts: FindingCounts): string {
  const found = (['errors', 'warnings', 'notes'] as const)
    .filter((kind) => counts[kind] > 0)
    .map((kind) => counted(counts[kind], kind.slice(0, -1)));
  const accepted = counts.accepted > 0 ? ` (${counts.accepted} accepted)` : '';
  return `${found.join(', ') || 'No findings'}${accepted} in ${counted(counts.files, 'file')}.`;
}

function counted(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? '' : 's'}`;
}
