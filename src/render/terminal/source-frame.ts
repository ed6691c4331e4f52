// The line of a file that a finding is about, with the place underlined. Tabs and control characters are
// shown by signs, a long line is cut around the place, and the carets stand under what is seen.
import { lineText, type Place, positionOf } from '../../finding/place.ts';
import { displayWidth, endWithin, startWithin, visible } from './terminal-text.ts';

const CUT = '...';
const LEAST_TEXT = 20;

/** What is seen of a line: before the place, the place, and after it. */
interface Shown {
  readonly before: string;
  readonly marked: string;
  readonly after: string;
}

/**
 * Two lines, `14 | text` and the carets beneath; none for a file without text. A place over several
 * lines is shown by its first line, to the end.
 */
export function sourceFrame(
  place: Place,
  width: number,
  paint: { readonly dim: (text: string) => string; readonly mark: (text: string) => string },
): string[] {
  if (place.source.text === '') return [];
  const { line, column, endLine, endColumn } = positionOf(place);
  const gutter = String(line);
  const text = lineText(place.source, line);
  const start = Math.min(column - 1, text.length);
  const end = endLine > line ? text.length : Math.min(endColumn - 1, text.length);
  const budget = Math.max(LEAST_TEXT, width - gutter.length - 3);
  const { before, marked, after } = shownAround(text, start, Math.max(start, end), budget);
  const carets = '^'.repeat(Math.max(1, displayWidth(marked)));
  return [
    `${paint.dim(`${gutter} |`)} ${`${before}${marked}${after}`.trimEnd()}`.trimEnd(),
    `${paint.dim(`${' '.repeat(gutter.length)} |`)} ${' '.repeat(displayWidth(before))}${paint.mark(carets)}`,
  ];
}

// Beyond this many UTF-16 units from the place nothing can be seen, so nothing is measured.
function reach(budget: number): number {
  return budget * 20;
}

function shownAround(text: string, start: number, end: number, budget: number): Shown {
  const far = reach(budget);
  const before = visible(text.slice(Math.max(0, start - far), start));
  const marked = visible(text.slice(start, Math.min(end, start + far)));
  const after = visible(text.slice(end, end + far)).trimEnd();
  // One column is kept for the caret of an empty place at the end of the line.
  const caret = marked === '' ? 1 : 0;
  const isWhole = start <= far && end - start <= far && text.length - end <= far;
  const wide = [before, marked, after].map(displayWidth) as [number, number, number];
  if (isWhole && wide[0] + Math.max(wide[1] + wide[2], caret) <= budget)
    return { before, marked, after };
  const middle = cutEnd(marked, budget - caret - 2 * CUT.length, end - start > far);
  const rest = budget - caret - displayWidth(middle);
  const left = Math.min(wide[0], Math.max(Math.floor(rest / 2), rest - wide[2]));
  const cutBefore = cutStart(before, left, start > far);
  return {
    before: cutBefore,
    marked: middle,
    after: cutEnd(after, rest - displayWidth(cutBefore), text.length - end > far),
  };
}

function cutEnd(text: string, width: number, isCutAlready: boolean): string {
  if (!isCutAlready && displayWidth(text) <= width) return text;
  return `${startWithin(text, width - CUT.length)}${CUT}`;
}

function cutStart(text: string, width: number, isCutAlready: boolean): string {
  if (!isCutAlready && displayWidth(text) <= width) return text;
  return `${CUT}${endWithin(text, width - CUT.length)}`;
}
