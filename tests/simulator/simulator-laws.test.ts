// The laws of any plan's numbers, held of the simulator itself, and that the laws can be broken.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { differences } from './compare.ts';
import { holdLaws, mirrored, runs, withMoreReps } from './laws.ts';
import { cases, EVERYTHING } from './plans.ts';
import { simulate } from './simulate.ts';
import type { Case } from './written.ts';

const numbersOf = ({ practice, exercises, plan }: Case) => simulate(practice, exercises, plan);

describe('the simulator', () => {
  holdLaws(numbersOf, 200, 120_000);
});

describe('the laws', () => {
  const drawn = fc.sample(cases(EVERYTHING), { numRuns: 60, seed: 1 });

  it('are tried on plans in which they could fail', () => {
    const uneven = drawn.filter(
      (all) => differences(numbersOf(all), numbersOf(mirrored(all))).length,
    );
    const longer = drawn.filter(
      (all) => differences(numbersOf(all), numbersOf(withMoreReps(all))).length,
    );
    expect(uneven.length).toBeGreaterThan(20);
    expect(longer.length).toBeGreaterThan(40);
  });

  it('mirror a plan back into itself', () => {
    fc.assert(
      fc.property(cases(EVERYTHING), (all) => {
        expect(differences(all, mirrored(mirrored(all)))).toEqual([]);
      }),
      runs(50),
    );
  });

  it('see a difference of one second', () => {
    expect(differences({ a: [1, { b: 2 }] }, { a: [1, { b: 3 }] })).toEqual([
      'a[1].b: simulator 2, carryover 3',
    ]);
    expect(differences({ a: 1, b: null }, { a: 1 })).toHaveLength(1);
  });
});
