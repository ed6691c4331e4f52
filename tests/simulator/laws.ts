// What must hold of the numbers of any plan, whoever computes them: properties that need no second
// reading of the contract. Held of the simulator in simulator-laws.test.ts and of carryover itself
// in properties.test.ts.
//
// Where a law can't hold by the contract's own words, its plans leave that out:
// - more repetitions, and easy weeks, are tried without climbs: a dial that starts higher, or a tick
//   more, lets a climb reach shorter rests or another level sooner;
// - easy weeks are tried with whole seconds: a hold of 1.6 s at 99 % is 2 s by the rounding rule.

import fc from 'fast-check';
import { expect, it } from 'vitest';
import { differences } from './compare.ts';
import { cases, EVERYTHING, focusOn } from './plans.ts';
import type { Simulated } from './simulate.ts';
import type { Case, Count, Only, SideOverrides, WrittenDose } from './written.ts';

export type NumbersOf = (all: Case) => Simulated;

export const SEED = 20261005;

/** How every property here runs: so often, the same draws each time, each step of the shrinking told. */
export const runs = (numRuns: number) => ({
  numRuns,
  seed: SEED,
  verbose: fc.VerbosityLevel.Verbose,
});

/** Every map of a tree anew, from the leaves up. */
function mapped(tree: unknown, change: (map: Record<string, unknown>) => object): unknown {
  if (Array.isArray(tree)) return tree.map((value) => mapped(value, change));
  if (typeof tree !== 'object' || tree === null) return tree;
  const entries = Object.entries(tree).map(([key, value]) => [key, mapped(value, change)]);
  return change(Object.fromEntries(entries));
}

function upsideDown(tree: unknown, place = ''): string[] {
  if (Array.isArray(tree) && tree.length === 2 && tree.every((end) => typeof end === 'number')) {
    const [low, high] = tree as [number, number];
    return low <= high ? [] : [`${place}: ${JSON.stringify(tree)}`];
  }
  if (typeof tree !== 'object' || tree === null) return [];
  return Object.entries(tree).flatMap(([key, value]) => upsideDown(value, `${place}.${key}`));
}

const OTHER: Record<string, string> = { left: 'right', right: 'left' };

function swappedSides({ left, right, why }: SideOverrides): SideOverrides {
  return { ...(right ? { left: right } : {}), ...(left ? { right: left } : {}), why };
}

/** The same plan for a person who is her own mirror image. */
export function mirrored(all: Case): Case {
  const plan = mapped(all.plan, (map) => {
    const next = { ...map };
    for (const key of ['affected', 'only']) {
      const side = next[key] as Only | undefined;
      if (side !== undefined) next[key] = OTHER[side] ?? side;
    }
    if (next.sides) next.sides = swappedSides(next.sides as SideOverrides);
    return next;
  });
  return { ...all, plan: plan as Case['plan'] };
}

function mirroredNumbers(numbers: unknown): unknown {
  return mapped(numbers, (map) =>
    'left' in map && 'right' in map ? { ...map, left: map.right, right: map.left } : map,
  );
}

const oneMore = (count: Count): Count =>
  typeof count === 'number' ? count + 1 : count.replace(/\d+/g, (n) => `${Number(n) + 1}`);

/** The same case with one more repetition wherever repetitions are written. */
export function withMoreReps(all: Case): Case {
  return mapped(all, (map) => {
    const { reps } = map as WrittenDose;
    // An easy week's `reps` is a share, not a number of repetitions.
    if (reps === undefined || 'weeks' in map) return map;
    if (Array.isArray(reps)) return { ...map, reps: reps.map(oneMore) };
    // A dial of a climb has a map here.
    return typeof reps === 'object' ? map : { ...map, reps: oneMore(reps) };
  }) as Case;
}

function noLonger(less: Simulated, more: Simulated): string[] {
  return less.weeks.flatMap((week, at) =>
    week.sessions.flatMap((session, place) => {
      const longer = more.weeks[at]?.sessions[place]?.seconds ?? [0, 0];
      const [low, high] = session.seconds;
      const fine = low <= longer[0] + 1e-9 && high <= longer[1] + 1e-9;
      return fine ? [] : [`week ${week.week}, ${session.session}: ${session.seconds} > ${longer}`];
    }),
  );
}

function noMoreWork(eased: Simulated, plain: Simulated): string[] {
  return eased.weeks.flatMap((week, at) => {
    if (!week.easy) return [];
    return (['left', 'right', 'middle'] as const).flatMap((side) => {
      const now = week[side];
      const then = plain.weeks[at]?.[side] ?? now;
      return (['sets', 'reps', 'hold_seconds', 'work_seconds', 'volume_kg'] as const).flatMap(
        (key) =>
          [0, 1].every((end) => (now[key][end] ?? 0) <= (then[key][end] ?? 0) + 1e-9)
            ? []
            : [`week ${week.week}, ${side}.${key}: ${now[key]} > ${then[key]}`],
      );
    });
  });
}

function withoutEasyWeeks(all: Case): Case {
  const { easy_weeks: _, ...plan } = all.plan;
  return { ...all, plan };
}

/** Declares the laws as tests of one way to compute the numbers, each with so many plans. */
export function holdLaws(numbersOf: NumbersOf, numRuns: number, timeout: number): void {
  const law = (name: string, plans: fc.Arbitrary<Case>, broken: (all: Case) => string[]) =>
    it(
      name,
      () => {
        const holds = fc.property(plans, (all) => {
          expect(broken(all)).toEqual([]);
        });
        fc.assert(holds, runs(numRuns));
      },
      timeout,
    );

  law('low ends are never above high ends', cases(EVERYTHING), (all) => upsideDown(numbersOf(all)));
  law('swapping left and right swaps the numbers and nothing else', cases(EVERYTHING), (all) =>
    differences(mirroredNumbers(numbersOf(all)), numbersOf(mirrored(all))),
  );
  law(
    'more repetitions never take less time',
    cases(focusOn('circuits', 'sides', 'entries', 'windows', 'easy')),
    (all) => noLonger(numbersOf(all), numbersOf(withMoreReps(all))),
  );
  law(
    'an easy week never has more work than the same week without easy weeks',
    cases(focusOn('circuits', 'sides', 'entries', 'windows', 'easy', 'wholeSeconds')).filter(
      ({ plan }) => plan.easy_weeks !== undefined,
    ),
    (all) => noMoreWork(numbersOf(all), numbersOf(withoutEasyWeeks(all))),
  );
}
