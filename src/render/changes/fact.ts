// What a version of a plan says, as facts in words: each with its aspect, its value, and the sections of
// the sheet that it can show in. Two versions are compared fact by fact; how a fact is compared and
// printed is told elsewhere.
import type { SheetView } from '../sheet/sheet-view.ts';

/** A section of the sheet by its name in the view; the plan's code is a file's name and not printed. */
export type Section = Exclude<keyof SheetView, 'plan' | 'direction'>;

export interface Fact {
  /** A key below `changes.aspects` in the words pack. */
  readonly aspect: string;
  /** The side that it is of; null where it is of no side. */
  readonly side: 'left' | 'right' | null;
  readonly value: FactValue;
  /** Empty for what is never printed on the sheet. */
  readonly shows: readonly Section[];
}

export type FactValue =
  /** None, one, or a list of sentences. */
  | { readonly kind: 'whole'; readonly lines: readonly string[] }
  /** A text for each week in which there is one to tell; '' where nothing is set. */
  | { readonly kind: 'by-week'; readonly byWeek: ReadonlyMap<number, string> };

export function whole(
  aspect: string,
  value: string | null | undefined | readonly string[],
  shows: readonly Section[],
): Fact {
  const lines = typeof value === 'string' ? [value] : (value ?? []);
  return { aspect, side: null, value: { kind: 'whole', lines }, shows };
}

export function byWeek(
  aspect: string,
  weeks: ReadonlyMap<number, string>,
  shows: readonly Section[],
  side: Fact['side'] = null,
): Fact {
  return { aspect, side, value: { kind: 'by-week', byWeek: weeks }, shows };
}
