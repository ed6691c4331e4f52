// Two loads on one scale, larger being heavier, so that a dose can be held against a bound or a
// gate. Loads that nothing puts on one scale are not compared.
import type { Interval } from '../units/interval.ts';
import { type Load, loadKg } from '../units/load.ts';

export interface LoadScale {
  readonly oneRepMaxKg: Interval | null;
  /** Easiest first. */
  readonly bands: readonly string[];
}

/** How heavy each of two loads is on their common scale, or null where they have none. */
export function weighed(
  a: Load,
  b: Load,
  { oneRepMaxKg, bands }: LoadScale,
): readonly [Interval, Interval] | null {
  if (a.kind === 'percent-1rm' && b.kind === 'percent-1rm') return [a.percent, b.percent];
  if (a.kind === 'rm' && b.kind === 'rm') return [fewerIsHeavier(a.reps), fewerIsHeavier(b.reps)];
  if (a.kind === 'band' && b.kind === 'band') {
    const [first, second] = [bands.indexOf(a.band), bands.indexOf(b.band)];
    return first < 0 || second < 0
      ? null
      : [
          [first, first],
          [second, second],
        ];
  }
  if (a.kind === 'body-weight' && b.kind === 'body-weight') {
    return a.percent && b.percent ? [a.percent, b.percent] : null;
  }
  return hasKilograms(a, oneRepMaxKg) && hasKilograms(b, oneRepMaxKg)
    ? [loadKg(a, oneRepMaxKg), loadKg(b, oneRepMaxKg)]
    : null;
}

function fewerIsHeavier([low, high]: Interval): Interval {
  return [-high, -low];
}

function hasKilograms(load: Load, oneRepMaxKg: Interval | null): boolean {
  return load.kind === 'mass' || (load.kind === 'percent-1rm' && oneRepMaxKg !== null);
}
