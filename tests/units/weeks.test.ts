// Weeks of a plan, how often a session comes in one, and the sums of easy weeks and climbs, against
// counts and fractions that are worked out the long way.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stepped } from '../../src/compute/climb-step.ts';
import { easedCount } from '../../src/compute/easy-week.ts';
import { perWeek } from '../../src/compute/per-week.ts';
import { fileOnly } from '../../src/finding/place.ts';
import type { Dose, MassDial } from '../../src/model/dose.ts';
import { overlap, parseWeeks, parseWindow, type WeekRange } from '../../src/units/weeks.ts';
import { LOOK_ALIKES } from './grammar.ts';
import { checkOf, RUNS, taken } from './readings.ts';

describe('a window', () => {
  it.each([
    ['3-6', [3, 6]],
    ['1–1', [1, 1]],
    ['6-6', [6, 6]],
    ['1 - 6', [1, 6]],
  ] as const)('%s is %j', (text, value) => expect(taken(parseWindow(text, 6))).toEqual(value));

  it.each([
    ['6', 'weeks-unclear'],
    ['1', 'weeks-unclear'],
    ['08', 'number-unclear'],
    ['3-7', 'weeks-outside'],
    ['7-8', 'weeks-outside'],
    ['6-3', 'range-reversed'],
    ['0-3', 'out-of-range'],
    ['1.5-3', 'not-a-count'],
    ['1-06', 'number-unclear'],
    ['all', 'not-understood'],
    ['', 'not-understood'],
    ['-3', 'out-of-range'],
  ] as const)('%s is refused: %s', (text, check) =>
    expect(checkOf(parseWindow(text, 6))).toBe(check),
  );
});

describe('a week, or some', () => {
  it.each([
    ['4', [4, 4]],
    ['4-5', [4, 5]],
    ['6', [6, 6]],
  ] as const)('%s is %j', (text, value) => expect(taken(parseWeeks(text, 6))).toEqual(value));

  it.each([
    ['7', 'weeks-outside'],
    ['0', 'out-of-range'],
    ['4.0', 'number-unclear'],
    ['5-4', 'range-reversed'],
    ['four', 'not-understood'],
  ] as const)('%s is refused: %s', (text, check) =>
    expect(checkOf(parseWeeks(text, 6))).toBe(check),
  );

  it.each(LOOK_ALIKES)('is never %s', (text) => {
    for (const written of [text, `1-${text}`, `${text}-52`])
      expect([written, parseWeeks(written, 52).ok, parseWindow(written, 52).ok]).toEqual([
        written,
        false,
        false,
      ]);
  });
});

describe('windows that overlap', () => {
  const ranges = fc.array(
    fc
      .tuple(fc.integer({ min: 1, max: 20 }), fc.nat({ max: 5 }))
      .map(([first, length]): WeekRange => [first, first + length]),
    { maxLength: 5 },
  );

  it('are found exactly where a week lies in two of them, at the first such start', () => {
    fc.assert(
      fc.property(ranges, (some) => {
        const weeks = Array.from({ length: 30 }, (_, i) => i + 1);
        const shared = weeks.filter(
          (week) => some.filter(([first, last]) => first <= week && week <= last).length > 1,
        );
        const found = overlap(some);
        if (shared.length === 0) expect(found).toBeUndefined();
        else expect(shared).toContain(found);
      }),
      RUNS,
    );
  });
});

describe('sessions a week', () => {
  it('every so many days are those of a count day by day from day 0', () => {
    for (let every = 1; every <= 60; every += 1) {
      for (let week = 1; week <= 52; week += 1) {
        let counted = 0;
        for (let day = 7 * (week - 1); day < 7 * week; day += 1)
          if (day % every === 0) counted += 1;
        expect([every, week, perWeek({ kind: 'every', days: every }, [1, 1], week)]).toEqual([
          every,
          week,
          [counted, counted],
        ]);
      }
    }
  });

  it('are days times a day, and none as needed', () => {
    expect(perWeek({ kind: 'days', days: ['mon', 'wed', 'fri'] }, [1, 2], 3)).toEqual([3, 6]);
    expect(perWeek({ kind: 'days-a-week', count: [3, 5] }, [2, 3], 1)).toEqual([6, 15]);
    expect(perWeek({ kind: 'every', days: 2 }, [2, 2], 2)).toEqual([6, 6]);
    expect(perWeek({ kind: 'as-needed' }, [3, 3], 1)).toEqual([0, 0]);
  });
});

/** The whole number nearest to n/d, halves up, for d above 0. */
function rounded(n: bigint, d: bigint): bigint {
  return floored(2n * n + d, 2n * d);
}

function floored(n: bigint, d: bigint): bigint {
  return n / d - (n % d < 0n ? 1n : 0n);
}

describe('an easy week', () => {
  it('takes the exact share of a count, halves up and at least 1', () => {
    const property = fc.property(
      fc.integer({ min: 1, max: 10_000 }),
      fc.integer({ min: 1_000, max: 99_000 }),
      (count, percent) => {
        const exact = rounded(BigInt(count) * BigInt(percent), 100_000n);
        expect(BigInt(easedCount(count, percent))).toBe(exact < 1n ? 1n : exact);
      },
    );
    fc.assert(property, RUNS);
  });

  it.each([
    [3, 50, 2],
    [1, 1, 1],
    [5, 50, 3],
    [10, 70, 7],
    [7, 50, 4],
    [3, 49, 1],
    [1000, 0.1, 1],
  ] as const)('of %d at %d %% has %d', (count, percent, eased) => {
    expect(easedCount(count, percent * 1000)).toBe(eased);
  });
});

describe('a climb by a percentage', () => {
  const dial = (byPercent: number, round: number, to: number): MassDial => ({
    kind: 'mass',
    key: 'load',
    unit: 'kg',
    step: { byPercent, round },
    to,
    restart: [],
    place: fileOnly('plan.yaml'),
  });
  const dose = (low: number, high: number): Dose => ({
    values: { load: { kind: 'mass', unit: 'kg', pieces: 1, amount: [low, high] } },
    origins: {},
  });

  function next(low: number, high: number, one: MassDial): readonly number[] {
    const { load } = stepped(one, dose(low, high), { breathMs: 5_000, bands: [] }).values;
    return load?.kind === 'mass' ? load.amount : [];
  }

  /** Where the leading end goes: the multiple of `round` nearest to it and the percentage, else the next one that is a step. */
  function exact(leading: bigint, byPercent: bigint, round: bigint, to: bigint): bigint {
    const isUp = byPercent > 0n;
    let goal = rounded(leading * (100_000n + byPercent), 100_000n * round) * round;
    if (isUp && goal <= leading) goal = (floored(leading, round) + 1n) * round;
    if (!isUp && goal >= leading) goal = -(floored(-leading, round) + 1n) * round;
    return isUp ? (goal < to ? goal : to) : goal > to ? goal : to;
  }

  it.each([
    [4_000, 5_000, 500, 6_000, 4_500],
    [4_200, 5_000, 500, 6_000, 4_500],
    [10_000, 5_000, 500, 20_000, 10_500],
    [4_000, 10_000, 100, 4_300, 4_300],
    [4_000, -5_000, 500, 1_000, 3_500],
    [5_000, 5_000, 100, 9_000, 5_300],
    [4_000, 6_250, 500, 9_000, 4_500],
  ])('from %d by %d, round %d, to %d goes to %d', (from, by, round, to, reached) => {
    expect(next(from, from, dial(by, round, to))).toEqual([reached, reached]);
  });

  it('moves the leading end exactly as a fraction would, and the other equally', () => {
    const property = fc.property(
      fc.record({
        low: fc.integer({ min: 1, max: 100_000 }),
        width: fc.nat({ max: 20_000 }),
        by: fc.integer({ min: 1, max: 100_000 }),
        round: fc.integer({ min: 1, max: 5_000 }),
        way: fc.constantFrom(1, -1),
        far: fc.integer({ min: 1, max: 100_000 }),
      }),
      ({ low, width, by, round, way, far }) => {
        const high = low + width;
        const leading = way > 0 ? high : low;
        const to = leading + way * far;
        const moved = next(low, high, dial(way * by, round, to));
        const goal = Number(exact(BigInt(leading), BigInt(way * by), BigInt(round), BigInt(to)));
        expect(moved).toEqual([low + goal - leading, high + goal - leading]);
        expect(way * (goal - leading)).toBeGreaterThan(0);
      },
    );
    fc.assert(property, RUNS);
  });
});
