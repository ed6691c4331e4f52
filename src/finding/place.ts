// Where in a practice folder something stands: a stretch of one file's text.
// Lines and columns are worked out only when a place is shown.

/** One file as read; `file` is relative to the practice folder, with `/`. */
export interface SourceText {
  readonly file: string;
  readonly text: string;
}

/** A stretch of a file in UTF-16 units, `end` exclusive. */
export interface Place {
  readonly source: SourceText;
  readonly start: number;
  readonly end: number;
}

/** Counted from 1, ends exclusive, columns in UTF-16 units. */
export interface Position {
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

const lineStartsOf = new WeakMap<SourceText, readonly number[]>();

function lineStarts(source: SourceText): readonly number[] {
  const known = lineStartsOf.get(source);
  if (known) return known;
  const starts = [0];
  for (let at = source.text.indexOf('\n'); at !== -1; at = source.text.indexOf('\n', at + 1)) {
    starts.push(at + 1);
  }
  lineStartsOf.set(source, starts);
  return starts;
}

function lineAt(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] as number) <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
}

export function positionOf(place: Place): Position {
  const starts = lineStarts(place.source);
  const first = lineAt(starts, place.start);
  const last = lineAt(starts, Math.max(place.start, place.end));
  return {
    line: first + 1,
    column: place.start - (starts[first] as number) + 1,
    endLine: last + 1,
    endColumn: Math.max(place.start, place.end) - (starts[last] as number) + 1,
  };
}

/** The text of one line (from 1), without its line end. */
export function lineText(source: SourceText, line: number): string {
  const starts = lineStarts(source);
  const from = starts[line - 1] ?? source.text.length;
  const to = starts[line] ?? source.text.length;
  return source.text.slice(from, to).replace(/\r?\n$/, '');
}

/** The start of a file: where a finding about the file as a whole stands. */
export function startOf(source: SourceText): Place {
  return { source, start: 0, end: 0 };
}

/** A place in a file that has no readable text (a picture, a file that is too big). */
export function fileOnly(file: string): Place {
  return startOf({ file, text: '' });
}
