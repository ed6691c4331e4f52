// A quantity as a practice writes it: one number, or a range of them.
// Low ends are computed from low ends and high from high; nothing is rounded here.

/** `[low, high]`, low ≤ high; a plain number n is `[n, n]`. */
export type Interval = readonly [low: number, high: number];

export const ZERO: Interval = [0, 0];

export function exactly(n: number): Interval {
  return [n, n];
}

export function plus(...terms: readonly Interval[]): Interval {
  let low = 0;
  let high = 0;
  for (const term of terms) {
    low += term[0];
    high += term[1];
  }
  return [low, high];
}

/** The product of two intervals that are not below zero. */
export function times(a: Interval, b: Interval): Interval {
  return [a[0] * b[0], a[1] * b[1]];
}

export function scaled(a: Interval, factor: number): Interval {
  return [a[0] * factor, a[1] * factor];
}

export function midpoint(a: Interval): number {
  return (a[0] + a[1]) / 2;
}

export function isExact(a: Interval): boolean {
  return a[0] === a[1];
}

export function isSame(a: Interval, b: Interval): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

/** `8-12`, or `8` where both ends are one. */
export function formatRange([low, high]: Interval): string {
  return low === high ? String(low) : `${low}-${high}`;
}

/** Each end through the same function: `mapEnds(i, Math.round)`. */
export function mapEnds(a: Interval, change: (end: number) => number): Interval {
  return [change(a[0]), change(a[1])];
}
