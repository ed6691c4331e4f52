// The trade's short form, shape by shape.
import { describe, expect, test } from 'vitest';
import type { DoseValues } from '../../src/model/dose.ts';
import { doseInShort, rounded, roundedRange } from '../../src/render/terminal/dose-in-short.ts';
import type { Duration } from '../../src/units/duration.ts';
import type { Interval } from '../../src/units/interval.ts';

const s = (low: number, high = low): Duration => ({ unit: 'ms', range: [low * 1000, high * 1000] });
const reps = (low: number, high = low) =>
  ({ kind: 'same', count: [low, high] as Interval }) as const;
const kg = (pieces: number, low: number, high = low) =>
  ({ kind: 'mass', unit: 'kg', pieces, amount: [low * 1000, high * 1000] }) as const;

const CASES: readonly [string, DoseValues][] = [
  [
    '2 x 8-12, hold 2 s, rest 60 s, 4 kg',
    { sets: [2, 2], reps: reps(8, 12), hold: s(2), rest: s(60), load: kg(1, 4) },
  ],
  [
    '12, 10, 8 reps, rest 60 s',
    {
      sets: [3, 3],
      reps: {
        kind: 'list',
        counts: [
          [12, 12],
          [10, 10],
          [8, 8],
        ],
      },
      rest: s(60),
    },
  ],
  [
    '3 x 8, tempo 3-1-2-0, rest 90 s',
    { sets: [3, 3], reps: reps(8), tempo: [3000, 1000, 2000, 0], rest: s(90) },
  ],
  ['1 x 8, tempo 1.5-0-1-0', { reps: reps(8), tempo: [1500, 0, 1000, 0] }],
  ['5-8 min', { time: s(300, 480), rest: s(30) }],
  ['2 x 5 min, rest 60 s', { sets: [2, 2], time: s(300), rest: s(60) }],
  ['4 bouts of 90 s', { reps: reps(4), time: s(90) }],
  [
    '2 x 4 bouts of 90 s, pause 2 min, rest 3 min',
    { sets: [2, 2], reps: reps(4), time: s(90), pause: s(120), rest: s(180) },
  ],
  ['3 x hold 20-30 s, rest 30 s', { sets: [3, 3], reps: reps(1), hold: s(20, 30), rest: s(30) }],
  ['1 x 5, hold 6 breaths', { reps: reps(5), hold: { unit: 'breaths', range: [6, 6] } }],
  [
    '2-3 x 10, rest 30 s, load 2 x 4 kg',
    { sets: [2, 3], reps: reps(10), rest: s(30), load: kg(2, 4) },
  ],
  [
    '1 x 10, 70 % 1rm, effort 7-8',
    { reps: reps(10), load: { kind: 'percent-1rm', percent: [70_000, 70_000] }, effort: [7, 8] },
  ],
  [
    '1 x 10, move 4 s, until tired, joint -10 to 60 degrees',
    { reps: reps(10), move: s(4), until: 'tired', range: [-10, 60] },
  ],
];

describe('doseInShort', () => {
  test.each(CASES)('%s', (short, values) => {
    expect(doseInShort({ values, origins: {} }, false)).toBe(short);
  });

  test('in a circuit sets and rest are the part’s', () => {
    const values = { sets: [2, 2] as const, reps: reps(8, 12), hold: s(2), rest: s(60) };
    expect(doseInShort({ values, origins: {} }, true)).toBe('8-12 reps, hold 2 s');
    expect(doseInShort({ values: { time: s(40) }, origins: {} }, true)).toBe('40 s');
  });

  test('what is the practice’s timing goes without saying, but for a rest between sets', () => {
    const timing = { layer: 'timing' } as const;
    const values = { sets: [2, 2] as const, reps: reps(8), move: s(3), pause: s(2), rest: s(30) };
    const origins = { move: timing, pause: timing, rest: timing };
    expect(doseInShort({ values, origins }, false)).toBe('2 x 8, rest 30 s');
  });
});

test('numbers are rounded for show', () => {
  expect(rounded(22.25, 1)).toBe('22.3');
  expect(rounded(-0.04, 1)).toBe('0');
  expect(roundedRange([21.96, 22.04], 1)).toBe('22');
});
