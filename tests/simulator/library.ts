// fast-check arbitraries for the exercises that a generated plan draws on.

import fc from 'fast-check';
import type { Focus } from './doses.ts';
import { BANDS, layer, onceIn, time, wholeDose } from './doses.ts';
import { isValidLevel } from './legal.ts';
import { frameOf } from './resolve.ts';
import type { Muscles, Order, Sides, WrittenExercise, WrittenLevel } from './written.ts';

/** Something or nothing. */
export const maybe = <T>(arbitrary: fc.Arbitrary<T>, draws = 2) => onceIn(draws, arbitrary);

/** The object without the keys that are undefined. */
export function only<T extends object>(written: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  const kept = Object.entries(written).filter(([, value]) => value !== undefined);
  return Object.fromEntries(kept) as { [K in keyof T]: Exclude<T[K], undefined> };
}

const MUSCLES = ['muscle-a', 'muscle-b', 'muscle-c', 'muscle-d'];

const muscles: fc.Arbitrary<Muscles> = fc
  .tuple(fc.subarray(MUSCLES, { minLength: 1, maxLength: 2 }), fc.subarray(MUSCLES))
  .map(([prime, others]) => {
    const assist = others.filter((muscle) => !prime.includes(muscle));
    return assist.length ? { prime, assist } : { prime };
  });

const purpose = fc.oneof(
  fc.constantFrom('strength', 'stretch', 'cardio', 'isometric', 'balance', 'mobility'),
  fc.constantFrom(['stretch', 'strength'], ['strength', 'balance'], ['breathing', 'isometric']),
);

const order = fc.constantFrom<Order[]>('each-set', 'each-rep', 'all-sets');

const sidesOf = (focus: Focus) =>
  fc.constantFrom<Sides[]>(
    ...(focus.sides ? (['each', 'each'] as const) : []),
    'both',
    'each',
    'middle',
  );

function rawLevel(focus: Focus) {
  return fc.record({
    dose: fc.oneof({ arbitrary: wholeDose(focus), weight: 3 }, layer(focus)),
    sides: maybe(sidesOf(focus), 3),
    order: maybe(order, 3),
    purpose: maybe(purpose, 3),
    muscles: maybe(muscles, 3),
  });
}

/** A library of one to three exercises, each of one to four levels that are whole after merging. */
export function exercises(focus: Focus): fc.Arbitrary<WrittenExercise[]> {
  const move = time(1, 4, focus);
  const rest = time(0, 60, focus);
  const raw = fc.record({
    purpose,
    sides: sidesOf(focus),
    order: maybe(order),
    muscles: maybe(muscles),
    dose: maybe(fc.oneof(wholeDose(focus), fc.record({ move, rest }, { requiredKeys: ['rest'] }))),
    levels: fc.array(rawLevel(focus), { minLength: 1, maxLength: 4 }),
  });
  const frame = frameOf({ bands: BANDS }, { plan: '', weeks: 1, affected: 'none', sessions: [] });
  return fc.array(raw, { minLength: 1, maxLength: 3 }).map((drawn) =>
    drawn.map((each, at) => {
      const names = ['one', 'two', 'three', 'four'];
      const levels = each.levels.map((level, place): WrittenLevel => {
        const isEach = (level.sides ?? each.sides) === 'each';
        const own = isEach ? level.order : undefined;
        return only({ level: names[place] ?? '', ...level, order: own }) as WrittenLevel;
      });
      const orderHere = each.sides === 'each' ? each.order : undefined;
      const id = `exercise-${'abc'[at]}`;
      const exercise = only({ exercise: id, ...each, order: orderHere, levels }) as WrittenExercise;
      for (const [place, level] of levels.entries()) {
        // A time fits over any dose: what a layer can't make whole becomes one.
        if (!isValidLevel(exercise, place, frame)) level.dose = { time: '20 s' };
      }
      return exercise;
    }),
  );
}
