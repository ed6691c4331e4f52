// A table of the record, worded: what the clinic copy and the list of handouts are made of.
import { plainRange } from '../words/plain-number.ts';
import type { Words } from '../words/words.ts';

export interface TableView {
  readonly heading: string;
  readonly columns: readonly string[];
  readonly rows: readonly RowView[];
  /** Said in place of a table that has no rows. */
  readonly none: string;
}

export interface RowView {
  readonly head: string;
  readonly cells: readonly string[];
}

/** A stretch of weeks in which the same holds. */
export interface Run<T> {
  readonly first: number;
  readonly last: number;
  readonly value: T;
}

/**
 * Weeks in a row with the same value as one stretch, so that six equal weeks are one row; null is a
 * week without any. Values are compared by what they hold.
 */
export function runsOf<T>(weeks: readonly { week: number; value: T | null }[]): Run<T>[] {
  const runs: Run<T>[] = [];
  for (const { week, value } of weeks) {
    if (value === null) continue;
    const before = runs.at(-1);
    if (before?.last === week - 1 && JSON.stringify(before.value) === JSON.stringify(value)) {
      runs[runs.length - 1] = { ...before, last: week };
    } else {
      runs.push({ first: week, last: week, value });
    }
  }
  return runs;
}

/** "3", or "3–5". */
export function weeksShown({ first, last }: Run<unknown>, words: Words): string {
  return plainRange([first, last], 0, words);
}
