// What one layer does to the dose beneath it. The layers come in the order exercise, level, plan,
// from_week entries, side; a later one wins, and a change of shape drops what no longer fits.
import { exactly, type Interval, isSame } from '../units/interval.ts';
import type { Dose, DoseKey, DoseLayer, DoseValues, Origin } from './dose.ts';

export const EMPTY_DOSE: Dose = { values: {}, origins: {} };

/** A layer that cannot be laid over the dose beneath it, and the key that is to blame. */
export interface MergeProblem {
  readonly check: 'dose-reps-over-time' | 'dose-sets-and-list';
  readonly key: DoseKey;
  /** For a list: how many sets it has. */
  readonly listLength: number | null;
  /** How many the layer says instead. */
  readonly sets: number | null;
}

/** Whether a layer asks for something that the dose beneath makes unclear; null where it is fine. */
export function mergeProblem(
  beneath: Dose,
  layer: DoseLayer,
  isSide: boolean,
): MergeProblem | null {
  const { values } = beneath;
  const says = layer.values;
  const changesShape = says.time || says.hold || says.move || says.tempo;
  if (says.reps && values.time && !values.reps && !changesShape) {
    return { check: 'dose-reps-over-time', key: 'reps', listLength: null, sets: null };
  }
  const listStays = values.reps?.kind === 'list' && !says.reps && !dropsReps(values, says);
  if (says.sets && listStays && values.reps?.kind === 'list') {
    const listLength = values.reps.counts.length;
    if (isSide || !isSame(says.sets, exactly(listLength))) {
      return { check: 'dose-sets-and-list', key: 'sets', listLength, sets: says.sets[1] };
    }
  }
  return null;
}

/** A merge problem in one sentence. */
export function mergeProblemSentence(problem: MergeProblem): string {
  if (problem.check === 'dose-reps-over-time') {
    return '"reps" is put over a dose that is timed, which would ask for that many whole bouts; give "time", "hold", "move" or "tempo" beside it.';
  }
  const example = [12, 10, 8, 8, 6, 6].slice(0, problem.sets ?? 3).join(', ');
  return `"sets" is put over a list of ${problem.listLength} sets; write the list anew, such as "reps: [${example}]".`;
}

function dropsReps(beneath: DoseValues, says: DoseValues): boolean {
  if (says.time) return true;
  return beneath.time !== undefined && Boolean(says.tempo || says.hold || says.move);
}

/**
 * The dose with one layer laid over it.
 *
 * `time` drops reps, hold, tempo and move of earlier layers; `tempo` drops hold and move; `hold` or
 * `move` drops tempo; each of these three drops time and reps of a timed dose. A dropped list of
 * reps leaves its number of sets.
 */
export function mergeLayer(beneath: Dose, layer: DoseLayer, origin: Origin): Dose {
  const values: Record<string, unknown> = { ...beneath.values };
  const origins: Record<string, Origin> = { ...beneath.origins };
  const drop = (...keys: DoseKey[]) => {
    for (const key of keys) {
      delete values[key];
      delete origins[key];
    }
  };
  const says = layer.values;
  if (dropsReps(beneath.values, says)) drop('reps');
  if (says.time) drop('hold', 'tempo', 'move');
  else if (says.tempo) drop('time', 'hold', 'move');
  else if (says.hold || says.move) drop('time', 'tempo');
  drop(...layer.unset);
  for (const [key, value] of Object.entries(says)) {
    values[key] = value;
    origins[key] = origin;
  }
  if (says.reps?.kind === 'list') {
    values.sets = exactly(says.reps.counts.length);
    origins.sets = origin;
  }
  return { values: values as DoseValues, origins };
}

/** Whether a dose says how much at all. */
export function hasShape({ values }: Dose): boolean {
  return Boolean(values.reps || values.hold || values.tempo || values.time);
}

/** Sets of a dose; not written is 1. */
export function setsOf(values: DoseValues): Interval {
  return values.sets ?? exactly(1);
}
