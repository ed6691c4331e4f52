// The floor beneath all layers of a dose, and what one repetition of it takes.
import type { Dose, DoseValues } from '../model/dose.ts';
import type { Timing } from '../model/practice.ts';
import { type Duration, durationMs, milliseconds } from '../units/duration.ts';
import { exactly, type Interval, plus, ZERO } from '../units/interval.ts';

/** A dose with its pause and rest, and a counted one with its move, where no layer gives them. */
export function onFloor(dose: Dose, timing: Timing): Dose {
  const { values } = dose;
  const floor: { move?: Duration; pause?: Duration; rest?: Duration } = {};
  if (!values.pause) floor.pause = milliseconds(timing.pause);
  if (!values.rest) floor.rest = milliseconds(timing.rest);
  if (!values.move && !values.tempo && !values.time) floor.move = milliseconds(timing.move);
  const origins = { ...dose.origins };
  for (const key of Object.keys(floor) as (keyof typeof floor)[])
    origins[key] = { layer: 'timing' };
  return { values: { ...values, ...floor }, origins };
}

/** Sets and reps filled in with 1 where nothing is written. */
export function withCounts({ values, origins }: Dose): Dose {
  return {
    values: {
      ...values,
      sets: values.sets ?? exactly(1),
      reps: values.reps ?? { kind: 'same', count: exactly(1) },
    },
    origins,
  };
}

/** One repetition: the sum of a tempo, or the time, or move and hold. In milliseconds. */
export function repetitionMs(values: DoseValues, breathMs: number): Interval {
  if (values.tempo) return exactly(values.tempo.reduce((sum, phase) => sum + phase, 0));
  if (values.time) return durationMs(values.time, breathMs);
  const move = values.move ? durationMs(values.move, breathMs) : ZERO;
  const hold = values.hold ? durationMs(values.hold, breathMs) : ZERO;
  return plus(move, hold);
}
