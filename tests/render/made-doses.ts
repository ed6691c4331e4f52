// Doses of every shape, sides and orders, for what must hold of all their sentences.
import fc from 'fast-check';
import { LIMBS, type Purpose } from '../../src/model/exercise.ts';
import type { Order } from '../../src/units/side.ts';
import type { Written } from './records.ts';

const count = (most: number) =>
  fc
    .tuple(fc.integer({ min: 1, max: most }), fc.integer({ min: 0, max: 4 }))
    .map(([low, more]) => (more === 0 ? String(low) : `${low}-${low + more}`));
const sets = fc.oneof(fc.constant('1'), fc.integer({ min: 2, max: 5 }).map(String), count(4));
const reps = fc.oneof(count(20), fc.array(count(20), { minLength: 1, maxLength: 7 }));
const seconds = fc.integer({ min: 1, max: 59 }).map((n) => `${n} s`);
const load = fc.constantFrom('medium band', '4 kg', '3 x 3.5 kg', '8 rm', '20 % body weight');

const counted = fc.record(
  { reps, sets, hold: seconds, load, effort: count(5), pause: seconds, rest: seconds },
  { requiredKeys: ['reps'] },
);
const tempo = fc.record(
  { reps, sets, tempo: fc.constantFrom('3-1-2-0', '2-0-4-1'), load, rest: seconds },
  { requiredKeys: ['reps', 'tempo'] },
);
const timed = fc.record(
  { time: seconds, reps: count(5), sets, pause: seconds, rest: seconds },
  { requiredKeys: ['time'] },
);

/** A list has its own number of sets. */
function sound(dose: Record<string, unknown>): Written {
  const { sets: _, ...rest } = dose;
  return (Array.isArray(dose.reps) ? rest : dose) as Written;
}

export const dose = fc.oneof(counted, tempo, timed).map(sound);
export const order = fc.constantFrom<Order>('each-set', 'each-rep', 'all-sets');
export const purpose = fc.constantFrom<Purpose>('strength', 'stretch', 'balance', 'cardio');
export const limb = fc.constantFrom(...LIMBS);

/** Lengths, loads and ranges beyond those of most sheets, where numbers and their words are awkward. */
export const awkward = fc.oneof(
  dose,
  fc
    .record(
      {
        reps: fc.constantFrom('1', '2', '1-2', '2-3', '7-8', '10-11', '11', '100', '101', '2-12'),
        sets: fc.constantFrom('1', '2', '1-2', '2-4', '3'),
        hold: fc.constantFrom(
          '1 s',
          '2 s',
          '0.5-1 s',
          '1-2 s',
          '2.5 s',
          '61 s',
          '1-2 breaths',
          '2 breaths',
          '11 breaths',
        ),
        load: fc.constantFrom(
          '2 x 1.25 kg',
          '10 lb',
          '2-3 kg',
          '70-80 % 1rm',
          'body weight',
          '1 rm',
        ),
        effort: fc.constantFrom('0', '1-2', '7.5', '7-8'),
        rest: fc.constantFrom('1 min', '2 min', '90 s', '1-2 min', '0 s', '1 breaths', '60-90 s'),
        pause: fc.constantFrom('1 s', '2 s', '3 s'),
        until: fc.constant('tired'),
        range: fc.constantFrom('-10-20 degrees', '0-90 degrees'),
      },
      { requiredKeys: ['reps'] },
    )
    .map((written) => written as Written),
  fc
    .record(
      {
        time: fc.constantFrom('1 min', '2 min', '5-8 min', '1 min 30 s', '10-11 min', '100 s'),
        reps: fc.constantFrom('1', '2', '3'),
        effort: fc.constantFrom('3', '1-2'),
      },
      { requiredKeys: ['time'] },
    )
    .map((written) => written as Written),
);
