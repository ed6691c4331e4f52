// What one side of an item takes and does in one session, at one end of every range.
// The seconds follow the order of doing; the counts follow the sides.
import type { DoseValues } from '../model/dose.ts';
import { durationMs } from '../units/duration.ts';
import type { Interval } from '../units/interval.ts';
import type { Order } from '../units/side.ts';
import { repetitionMs } from './completed-dose.ts';

/** 0 is the low end of every range, 1 the high end. */
export type End = 0 | 1;

/** One side's work at one end: reps of each set, and the length of a repetition. */
interface LaneAtEnd {
  readonly reps: readonly number[];
  readonly repetitionMs: number;
}

/** How many sets a side does: the rounds in a circuit, else those of its dose. */
export function setsAt(values: DoseValues, rounds: number | null, end: End): number {
  return rounds ?? values.sets?.[end] ?? 1;
}

/** The reps of each set, at one end. In a circuit every round has the same. */
export function repsBySet(values: DoseValues, rounds: number | null, end: End): readonly number[] {
  const sets = setsAt(values, rounds, end);
  const { reps } = values;
  if (reps?.kind === 'list') {
    return Array.from({ length: sets }, (_, i) => reps.counts[i % reps.counts.length]?.[end] ?? 1);
  }
  return Array.from({ length: sets }, () => reps?.count[end] ?? 1);
}

/** One turn: a side's repetitions of one set with the pauses between them. */
function turnMs(reps: number, lane: LaneAtEnd, pauseMs: number): number {
  return reps * lane.repetitionMs + (reps - 1) * pauseMs;
}

export interface ItemTiming {
  readonly order: Order;
  readonly changeSidesMs: Interval;
  readonly breathMs: number;
}

/** The whole item outside a circuit: its sets with the rests between them. */
export function itemMs(doses: readonly DoseValues[], timing: ItemTiming): Interval {
  return [itemMsAt(doses, timing, 0), itemMsAt(doses, timing, 1)];
}

/** One round of the item in a circuit: one set of each side, sides in turn. */
export function roundMs(doses: readonly DoseValues[], timing: ItemTiming): Interval {
  const inRound: ItemTiming = {
    ...timing,
    order: timing.order === 'each-rep' ? 'each-rep' : 'each-set',
  };
  const once = doses.map((values) => ({ ...values, sets: [1, 1] as const }));
  return itemMs(once, inRound);
}

function itemMsAt(doses: readonly DoseValues[], timing: ItemTiming, end: End): number {
  const first = doses[0];
  if (!first) return 0;
  // Rest and pause are the item's, so any side's dose has them.
  const restMs = first.rest ? durationMs(first.rest, timing.breathMs)[end] : 0;
  const pauseMs = first.pause ? durationMs(first.pause, timing.breathMs)[end] : 0;
  const lanes = doses.map((values) => ({
    reps: repsBySet(values, null, end),
    repetitionMs: repetitionMs(values, timing.breathMs)[end],
  }));
  const changeMs = timing.changeSidesMs[end];
  if (timing.order === 'all-sets') {
    const runs = lanes.map(
      (lane) =>
        lane.reps.reduce((sum, reps) => sum + turnMs(reps, lane, pauseMs), 0) +
        restMs * (lane.reps.length - 1),
    );
    return runs.reduce((sum, run) => sum + run, 0) + changeMs * (runs.length - 1);
  }
  const sets = Math.max(...lanes.map((lane) => lane.reps.length));
  let total = restMs * (sets - 1);
  for (let set = 0; set < sets; set += 1) {
    const active = lanes.filter((lane) => set < lane.reps.length);
    total += setMs(active, set, timing.order, pauseMs, changeMs);
  }
  return total;
}

function setMs(
  active: readonly LaneAtEnd[],
  set: number,
  order: Order,
  pauseMs: number,
  changeMs: number,
): number {
  const repsOf = (lane: LaneAtEnd) => lane.reps[set] ?? 1;
  if (order === 'each-rep') {
    const moves = active.reduce((sum, lane) => sum + repsOf(lane) * lane.repetitionMs, 0);
    const reps = active.reduce((sum, lane) => sum + repsOf(lane), 0);
    return moves + (reps - 1) * pauseMs;
  }
  const turns = active.reduce((sum, lane) => sum + turnMs(repsOf(lane), lane, pauseMs), 0);
  return turns + changeMs * (active.length - 1);
}
