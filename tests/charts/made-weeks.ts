// Weeks with any numbers, for charts: only what a chart reads of them is made up.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { parse } from 'yaml';
import type { PlanNumbers, SidesOf, Volume, WeekNumbers } from '../../src/compute/numbers.ts';
import { type Words, wordsFrom } from '../../src/render/words/words.ts';
import { type Interval, ZERO } from '../../src/units/interval.ts';
import { plan } from '../render-pages/made-plan.ts';

const NO_WORK: Volume = { sets: ZERO, reps: ZERO, holdMs: ZERO, workMs: ZERO, volumeKg: ZERO };

export interface MadeWeek {
  readonly isEasy: boolean;
  /** In minutes. */
  readonly minutes: Interval;
  readonly work: SidesOf<Interval>;
  readonly muscles: Readonly<Record<string, SidesOf<Interval>>>;
}

/** A week with something of everything. */
export const plainWeek: MadeWeek = {
  isEasy: false,
  minutes: [60, 80],
  work: { left: [20, 24], right: [12, 14], middle: [0, 0] },
  muscles: { soleus: { left: [9, 9], right: [6, 6], middle: [0, 0] } },
};

export function numbersOf(weeks: readonly MadeWeek[]): PlanNumbers {
  const ms = ([low, high]: Interval): Interval => [low * 60_000, high * 60_000];
  const work = (minutes: Interval): Volume => ({ ...NO_WORK, workMs: ms(minutes) });
  return {
    plan: { ...plan, weeks: weeks.length },
    weeks: weeks.map(
      (made, i): WeekNumbers => ({
        week: i + 1,
        isEasy: made.isEasy,
        sessions: [],
        ms: ms(made.minutes),
        left: work(made.work.left),
        right: work(made.work.right),
        middle: work(made.work.middle),
        muscles: new Map(Object.entries(made.muscles).sort(([a], [b]) => (a < b ? -1 : 1))),
        change: { all: null, strength: null },
      }),
    ),
  };
}

/** The shipped words, some of them others, read from that side. */
export function wordsWith(
  direction: 'ltr' | 'rtl' = 'ltr',
  others: Readonly<Record<string, string>> = {},
): Words {
  const pack = parse(
    readFileSync(join(import.meta.dirname, '../../templates/words/en.yaml'), 'utf8'),
  );
  Object.assign(pack.clinic.charts, others);
  const reading = wordsFrom({ ...pack, direction }, { language: 'en', shipped: pack });
  if (!reading.ok) throw new Error(reading.problems.map(({ message }) => message).join('\n'));
  return reading.words;
}

const interval = (max: number): fc.Arbitrary<Interval> =>
  fc
    .tuple(fc.double({ min: 0, max, noNaN: true }), fc.double({ min: 0, max, noNaN: true }))
    .map(([a, b]): Interval => [Math.min(a, b), Math.max(a, b)]);
const amount = (max: number) =>
  fc.oneof(
    fc.constant(ZERO),
    fc.nat(max).map((n): Interval => [n, n]),
    interval(max),
  );
const sides = (max: number) =>
  fc.record({ left: amount(max), right: amount(max), middle: amount(max) });

const madeWeek: fc.Arbitrary<MadeWeek> = fc.record({
  isEasy: fc.boolean(),
  minutes: amount(2000),
  work: sides(900),
  muscles: fc.dictionary(
    fc.constantFrom('soleus', 'hamstrings', 'multifidus', ...'abcdefghijklmn'.split('')),
    sides(200),
    { maxKeys: 15 },
  ),
});

export const madeWeeks = fc.array(madeWeek, { minLength: 1, maxLength: 52 });
