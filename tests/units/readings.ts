// What comes of a reading, for a table: its value or its check, and how every property here runs.
import type { Reading } from '../../src/units/reading.ts';

/** The same draws each time. */
export const RUNS = { numRuns: 3_000, seed: 20261005 } as const;

/** The value, or null where it was refused. */
export function taken<T>(reading: Reading<T>): T | null {
  return reading.ok ? reading.value : null;
}

export function checkOf(reading: Reading<unknown>): string | null {
  return reading.ok ? null : reading.misread.check;
}
