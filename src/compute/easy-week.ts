// An easy week: a percentage of the sets (or a circuit's rounds), the reps, the hold or the time.
import type { Dose, DoseKey, DoseValues, Reps } from '../model/dose.ts';
import { setsOf } from '../model/merge.ts';
import type { EasyWeeks } from '../model/plan.ts';
import { type Duration, durationMs, milliseconds } from '../units/duration.ts';
import { exactly, mapEnds } from '../units/interval.ts';

/** 100 % in thousandths of a percent. */
const WHOLE = 100_000;
const MS_PER_SECOND = 1000;

/** A share of a count, halves up, at least 1: 50 % of 3 is 2. */
export function easedCount(count: number, percent: number): number {
  return Math.max(1, Math.floor((2 * count * percent + WHOLE) / (2 * WHOLE)));
}

/** A share of a length of time in whole seconds, halves up, at least 1 s; 0 s stays. */
function easedMs(ms: number, percent: number): number {
  if (ms === 0) return 0;
  const seconds = Math.floor(
    (2 * ms * percent + WHOLE * MS_PER_SECOND) / (2 * WHOLE * MS_PER_SECOND),
  );
  return Math.max(1, seconds) * MS_PER_SECOND;
}

function easedDuration(duration: Duration, percent: number, breathMs: number): Duration {
  const ms = mapEnds(durationMs(duration, breathMs), (end) => easedMs(end, percent));
  const isWholeBreaths = ms.every((end) => end % breathMs === 0);
  return duration.unit === 'breaths' && isWholeBreaths
    ? { unit: 'breaths', range: mapEnds(ms, (end) => end / breathMs) }
    : milliseconds(ms);
}

function easedReps(reps: Reps, percent: number): Reps {
  const eased = (count: readonly [number, number]) =>
    mapEnds(count, (end) => easedCount(end, percent));
  return reps.kind === 'same'
    ? { kind: 'same', count: eased(reps.count) }
    : { kind: 'list', counts: reps.counts.map(eased) };
}

/** The dose of an easy week. A list of reps keeps its first sets; in a circuit the sets are the rounds'. */
export function easedDose(dose: Dose, easy: EasyWeeks, breathMs: number, isCircuit: boolean): Dose {
  const values: { -readonly [K in keyof DoseValues]: DoseValues[K] } = { ...dose.values };
  const touched: DoseKey[] = [];
  if (easy.sets !== null && !isCircuit) {
    const percent = easy.sets;
    values.sets = mapEnds(setsOf(values), (end) => easedCount(end, percent));
    touched.push('sets');
    if (values.reps?.kind === 'list') {
      const counts = values.reps.counts.slice(0, values.sets[1]);
      values.reps = { kind: 'list', counts };
      values.sets = exactly(counts.length);
    }
  }
  if (easy.reps !== null && values.reps) {
    values.reps = easedReps(values.reps, easy.reps);
    touched.push('reps');
  }
  for (const key of ['hold', 'time'] as const) {
    const percent = easy[key];
    const duration = values[key];
    if (percent === null || !duration) continue;
    values[key] = easedDuration(duration, percent, breathMs);
    touched.push(key);
  }
  const origins = { ...dose.origins };
  for (const key of touched) origins[key] = { layer: 'easy-week' };
  return { values, origins };
}
