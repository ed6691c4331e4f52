// What a side does: sets, repetitions, seconds held, seconds of work, kilograms moved.
import type { DoseValues } from '../model/dose.ts';
import type { Purpose } from '../model/exercise.ts';
import { durationMs } from '../units/duration.ts';
import { type Interval, plus, scaled, times, ZERO } from '../units/interval.ts';
import { loadKg } from '../units/load.ts';
import { repetitionMs } from './completed-dose.ts';
import type { Volume } from './numbers.ts';
import { type End, repsBySet, setsAt } from './work.ts';

export const NO_VOLUME: Volume = {
  sets: ZERO,
  reps: ZERO,
  holdMs: ZERO,
  workMs: ZERO,
  volumeKg: ZERO,
};

/** A timed dose of these is held still, so its time is a hold. */
const HELD: ReadonlySet<Purpose> = new Set(['stretch', 'isometric', 'balance']);

export interface VolumeSetting {
  readonly purpose: Purpose;
  readonly rounds: number | null;
  readonly breathMs: number;
  readonly oneRepMaxKg: Interval | null;
  /** `both` moves one load with two sides, so each is credited half the kilograms. */
  readonly isBoth: boolean;
}

/** The volume of one side in one session: 2 sets of 8-12 with a hold of 2 s hold 32 to 48 s. */
export function sideVolume(values: DoseValues, setting: VolumeSetting): Volume {
  const { rounds, breathMs } = setting;
  const repsAt = (end: End) => repsBySet(values, rounds, end).reduce((sum, reps) => sum + reps, 0);
  const reps: Interval = [repsAt(0), repsAt(1)];
  const heldMs = values.hold
    ? durationMs(values.hold, breathMs)
    : values.time && HELD.has(setting.purpose)
      ? durationMs(values.time, breathMs)
      : ZERO;
  const kg = loadKg(values.load ?? null, setting.oneRepMaxKg);
  return {
    sets: [setsAt(values, rounds, 0), setsAt(values, rounds, 1)],
    reps,
    holdMs: times(reps, heldMs),
    workMs: times(reps, repetitionMs(values, breathMs)),
    volumeKg: scaled(times(reps, kg), setting.isBoth ? 0.5 : 1),
  };
}

export function volumeSum(volumes: readonly Volume[]): Volume {
  return {
    sets: plus(...volumes.map((volume) => volume.sets)),
    reps: plus(...volumes.map((volume) => volume.reps)),
    holdMs: plus(...volumes.map((volume) => volume.holdMs)),
    workMs: plus(...volumes.map((volume) => volume.workMs)),
    volumeKg: plus(...volumes.map((volume) => volume.volumeKg)),
  };
}

/** A session's volume so many times a week. */
export function volumeTimes(volume: Volume, perWeek: Interval): Volume {
  return {
    sets: times(volume.sets, perWeek),
    reps: times(volume.reps, perWeek),
    holdMs: times(volume.holdMs, perWeek),
    workMs: times(volume.workMs, perWeek),
    volumeKg: times(volume.volumeKg, perWeek),
  };
}
