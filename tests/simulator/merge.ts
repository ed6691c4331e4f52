// Lays one written dose over another, by the contract's paragraph "A dose has one shape": what a
// layer drops, what a list of repetitions does to the sets, what timing gives beneath all layers.
// Which layers there are, and in which week, is resolve.ts's.
//
// Readings of the contract where it leaves room:
// - `time` over a timed dose with bouts drops the bouts ("time drops the earlier reps" is literal);
// - `{reps: 8, sets: 2}` over a list ends the list, and its own sets win over the kept number;
// - `none` gives no shape and drops nothing else.

import type { Load, Range } from './quantities.ts';
import { ONE, readCount, readLoad, readTime } from './quantities.ts';
import type { WrittenDose } from './written.ts';

export interface Dose {
  readonly sets?: Range;
  /** Left out where only a hold or a time is written: it is then done once. */
  readonly reps?: Range | readonly Range[];
  readonly hold?: Range;
  readonly move?: Range;
  readonly tempo?: string;
  readonly time?: Range;
  readonly pause?: Range;
  readonly rest?: Range;
  readonly load?: Load;
  readonly effort?: Range;
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** What the practice's settings say about reading and filling a dose; times in milliseconds. */
export interface Setting {
  readonly breath: number;
  readonly bands: readonly string[];
  readonly move: number;
  readonly pause: number;
  readonly rest: number;
}

/** The plan breaks a rule of the contract; the generator uses this to keep only what is valid. */
export class NotAllowed extends Error {}

export const isList = (reps: Dose['reps']): reps is readonly Range[] =>
  reps !== undefined && Array.isArray(reps[0]);

function refuseTwoShapes(layer: WrittenDose): void {
  const counted = gives(layer, 'hold') || gives(layer, 'move');
  const shapes = [counted, gives(layer, 'tempo'), gives(layer, 'time')].filter(Boolean);
  if (shapes.length > 1) throw new NotAllowed('two shapes in one mapping');
}

const gives = (layer: WrittenDose, key: keyof WrittenDose): boolean =>
  layer[key] !== undefined && layer[key] !== 'none';

/** What is left of the dose beneath once the layer has dropped what it drops. */
function withoutDropped(under: Dose, layer: WrittenDose): Mutable<Dose> {
  const timed = under.time !== undefined;
  const dropped = new Set<keyof Dose>();
  const drop = (...keys: (keyof Dose)[]) => {
    for (const key of keys) dropped.add(key);
  };
  if (gives(layer, 'time')) drop('reps', 'hold', 'tempo', 'move');
  if (gives(layer, 'tempo')) drop('hold', 'move');
  if (gives(layer, 'hold') || gives(layer, 'move')) drop('tempo');
  if (timed && (gives(layer, 'tempo') || gives(layer, 'hold') || gives(layer, 'move'))) {
    drop('time', 'reps');
  }
  const left: Mutable<Dose> = { ...under };
  for (const key of dropped) delete left[key];
  return left;
}

function layReps(next: Mutable<Dose>, layer: WrittenDose): void {
  if (Array.isArray(layer.reps)) {
    const entries = layer.reps.map(readCount);
    next.reps = entries;
    // Set down beside the list, the number of sets outlives it when a later layer ends or drops it.
    next.sets = [entries.length, entries.length];
  } else if (layer.reps !== undefined) {
    next.reps = readCount(layer.reps);
  }
  if (layer.sets === undefined) return;
  const sets = readCount(layer.sets);
  const length = isList(next.reps) ? next.reps.length : undefined;
  if (length !== undefined && (sets[0] !== length || sets[1] !== length)) {
    throw new NotAllowed('sets beside a list of another length');
  }
  next.sets = sets;
}

/** The dose beneath with one more layer over it. */
export function layered(under: Dose, layer: WrittenDose | undefined, setting: Setting): Dose {
  if (!layer) return under;
  refuseTwoShapes(layer);
  const bouts = under.time !== undefined && under.reps === undefined && layer.reps !== undefined;
  const shaped = (['time', 'hold', 'move', 'tempo'] as const).some((key) => gives(layer, key));
  if (bouts && !shaped) throw new NotAllowed('reps over a timed dose that had none');
  const next = withoutDropped(under, layer);
  layReps(next, layer);
  for (const key of ['hold', 'move', 'time', 'pause', 'rest'] as const) {
    const written = layer[key];
    if (written === 'none') delete next[key];
    else if (written !== undefined) next[key] = readTime(written, setting.breath);
  }
  if (layer.tempo !== undefined) next.tempo = layer.tempo;
  if (layer.effort !== undefined) next.effort = readCount(layer.effort);
  if (layer.load === 'none') delete next.load;
  else if (layer.load !== undefined) next.load = readLoad(layer.load, setting.bands);
  return next;
}

/** A side's own layer: as any other, but its sets never meet a list. */
export function sideLayered(under: Dose, layer: WrittenDose | undefined, setting: Setting): Dose {
  if (layer?.sets !== undefined && (isList(under.reps) || Array.isArray(layer.reps))) {
    throw new NotAllowed('sets of a side over a list');
  }
  return layered(under, layer, setting);
}

/** The dose with what timing gives beneath all layers, held against the rules of a whole dose. */
export function complete(dose: Dose, setting: Setting): Dose {
  const whole: Mutable<Dose> = { ...dose };
  whole.sets ??= ONE;
  whole.pause ??= [setting.pause, setting.pause];
  whole.rest ??= [setting.rest, setting.rest];
  if (dose.tempo !== undefined && dose.reps === undefined) throw new NotAllowed('tempo, no reps');
  if (dose.tempo === undefined && dose.time === undefined) {
    if (dose.reps === undefined && dose.hold === undefined) throw new NotAllowed('no shape');
    whole.move ??= [setting.move, setting.move];
  }
  if (repetition(whole)[0] === 0) throw new NotAllowed('a repetition that takes no time');
  return whole;
}

/** Milliseconds of one repetition, from the quickest to the slowest. */
export function repetition(dose: Dose): Range {
  if (dose.time) return dose.time;
  if (dose.tempo !== undefined) {
    const seconds = dose.tempo.split('-').reduce((sum, part) => sum + Number(part), 0);
    return [seconds * 1000, seconds * 1000];
  }
  const hold = dose.hold ?? [0, 0];
  const move = dose.move ?? [0, 0];
  return [hold[0] + move[0], hold[1] + move[1]];
}
