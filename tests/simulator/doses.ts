// fast-check arbitraries for what stands in a dose: counts, times, loads, whole doses and layers.

import fc from 'fast-check';
import type { Count, WrittenDose } from './written.ts';

export const BANDS = ['light band', 'medium band', 'heavy band', 'iron band'];

/** What a run of the property is about; a thing that is off is never written. */
export interface Focus {
  readonly climbs: boolean;
  readonly circuits: boolean;
  readonly sides: boolean;
  readonly entries: boolean;
  readonly windows: boolean;
  readonly easy: boolean;
  /** Only whole seconds: easing rounds a hold of 1.6 s up, so half seconds break "never more". */
  readonly wholeSeconds: boolean;
}

/** Something once in so many draws, and nothing the other times. */
export function onceIn<T>(draws: number, arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> {
  const nothing = fc.constant<T | undefined>(undefined);
  return fc.oneof(
    { withCrossShrink: true },
    { arbitrary: nothing, weight: draws - 1 },
    { arbitrary, weight: 1 },
  );
}

const pair = (min: number, max: number): fc.Arbitrary<[number, number]> =>
  fc.tuple(fc.integer({ min, max }), fc.integer({ min: 1, max: 4 }));

function count(min: number, max: number): fc.Arbitrary<Count> {
  return fc.oneof(
    { arbitrary: fc.integer({ min, max }), weight: 3 },
    { arbitrary: pair(min, max).map(([low, more]) => `${low}-${low + more}`), weight: 1 },
  );
}

/** A time from so many to so many seconds, in one of the forms it may be written in. */
export function time(min: number, max: number, focus: Focus): fc.Arbitrary<string> {
  const plain = fc.integer({ min, max }).map((n) => `${n} s`);
  const range = pair(min, max).map(([low, more]) => `${low}-${low + more} s`);
  if (focus.wholeSeconds) return fc.oneof(plain, range);
  return fc.oneof(
    { arbitrary: plain, weight: 4 },
    { arbitrary: range, weight: 2 },
    { arbitrary: fc.integer({ min, max }).map((n) => `${n}.5s`), weight: 1 },
    { arbitrary: fc.constantFrom('1 breath', '3 breaths', '2-4 breaths'), weight: 1 },
    { arbitrary: fc.constantFrom('1 min', '1 min 15 s', '0.5 min', '1-2 min'), weight: 1 },
  );
}

/** A gap: one number, never a range. */
export function gap(max: number): fc.Arbitrary<string> {
  return fc.oneof(
    { arbitrary: fc.integer({ min: 0, max }).map((n) => `${n} s`), weight: 4 },
    { arbitrary: fc.constantFrom('1 min', '1 min 30 s', '2 breaths'), weight: 1 },
  );
}

const load: fc.Arbitrary<string> = fc.oneof(
  fc.integer({ min: 2, max: 12 }).map((n) => `${n} kg`),
  fc.integer({ min: 2, max: 12 }).map((n) => `${n}.25 kg`),
  pair(2, 10).map(([low, more]) => `${low}-${low + more} kg`),
  fc.integer({ min: 1, max: 6 }).map((n) => `2 x ${n}.5 kg`),
  fc.integer({ min: 5, max: 20 }).map((n) => `${n} lb`),
  fc.constantFrom(...BANDS),
  fc.constantFrom('body weight', '20 % body weight', '8 rm', '8-12 rm'),
  fc.constantFrom('60 % 1rm', '60-72.5 % 1rm'),
);

const list = fc.array(count(3, 12), { minLength: 2, maxLength: 4 });
const tempo = fc.constantFrom('3-1-2-0', '2-0-2-0', '4-0-1-1');
const effort = count(3, 6);

/** What any shape may have beside it. */
function beside(focus: Focus) {
  return {
    pause: time(0, 6, focus),
    rest: time(0, 60, focus),
    load,
    effort,
  };
}

/** A dose with these keys, of which only some are always there. */
function dose(
  keys: Record<string, fc.Arbitrary<unknown>>,
  always: string[],
): fc.Arbitrary<WrittenDose> {
  const options = { requiredKeys: always, noNullPrototype: true };
  return fc.record(keys, options);
}

/** A dose that stands by itself: counted, a hold alone, a tempo or a time. */
export function wholeDose(focus: Focus): fc.Arbitrary<WrittenDose> {
  const sets = count(1, 3);
  const more = { ...beside(focus), sets };
  const move = time(1, 4, focus);
  const hold = time(1, 12, focus);
  return fc.oneof(
    dose({ reps: count(1, 12), hold, move, ...more }, ['reps']),
    dose({ reps: list, hold, move, ...beside(focus) }, ['reps']),
    dose({ hold, move, ...more }, ['hold']),
    dose({ hold: time(3, 12, focus), move: fc.constant('0 s'), ...more }, ['hold', 'move']),
    dose({ reps: count(1, 12), tempo, ...more }, ['reps', 'tempo']),
    dose({ reps: list, tempo, ...beside(focus) }, ['reps', 'tempo']),
    dose({ time: time(5, 40, focus), reps: count(1, 3), ...more }, ['time']),
  );
}

const written = (dose: WrittenDose): boolean => Object.keys(dose).length > 0;

/** A few keys over an earlier dose; not every layer fits every dose. */
export function layer(focus: Focus): fc.Arbitrary<WrittenDose> {
  const keys = {
    sets: count(1, 4),
    reps: count(1, 12),
    hold: fc.oneof(time(1, 8, focus), fc.constant('none')),
    rest: time(0, 60, focus),
    pause: time(0, 6, focus),
    load: fc.oneof(load, load, fc.constant('none')),
    effort,
  };
  return fc.oneof(
    { arbitrary: dose(keys, []).filter(written), weight: 4 },
    { arbitrary: dose({ sets: count(1, 4) }, ['sets']), weight: 2 },
    { arbitrary: dose({ reps: count(1, 12) }, ['reps']), weight: 2 },
    { arbitrary: dose({ reps: list }, ['reps']), weight: 1 },
    { arbitrary: dose({ tempo }, ['tempo']), weight: 1 },
    { arbitrary: dose({ time: time(5, 40, focus) }, ['time']), weight: 1 },
    { arbitrary: dose({ hold: time(1, 8, focus) }, ['hold']), weight: 1 },
    { arbitrary: wholeDose(focus), weight: 2 },
  );
}

/** The keys that a side may have of its own. */
export function sideLayer(focus: Focus): fc.Arbitrary<WrittenDose> {
  const allowed = new Set(['sets', 'reps', 'hold', 'time', 'tempo', 'load', 'effort']);
  return layer(focus)
    .map(
      (dose) =>
        Object.fromEntries(Object.entries(dose).filter(([key]) => allowed.has(key))) as WrittenDose,
    )
    .filter(written);
}
