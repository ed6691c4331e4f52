// What must hold of every dose sentence, whatever the dose: the right sides, all the numbers, no
// placeholder left, and left and right never swapped.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { doseSentence } from '../../src/render/words/dose-sentence.ts';
import { dose, order, purpose } from './made-doses.ts';
import { english, type ItemWeekSettings, itemWeekOf, type Written } from './records.ts';

const words = english();

const twoSided = fc.record({ left: dose, right: dose, order, purpose, circuit: fc.boolean() });

function says(settings: ItemWeekSettings, isCircuit = false): string {
  return doseSentence({ item: itemWeekOf(settings), isCircuit, words, oneRepMax: null });
}

function swapped(text: string): string {
  return text.replace(/\b(left|right)\b/gi, (side) => {
    const other = /^l/i.test(side) ? 'right' : 'left';
    return /^[LR]/.test(side) ? other[0]?.toUpperCase() + other.slice(1) : other;
  });
}

/** The numbers that a dose has written, as its sentence must have them; 1 may be "once". */
function numbersIn(written: Written, isCircuit: boolean): string[] {
  const { sets: _, rest: __, pause: ___, tempo: pace, ...said } = written;
  const phases =
    pace === undefined
      ? []
      : String(pace)
          .split('-')
          .filter((n) => n !== '0');
  // A circuit has no list of reps: that is refused before.
  const values = isCircuit && Array.isArray(said.reps) ? [] : Object.values(said).flat();
  return [...values.flatMap((value) => String(value).match(/\d+(\.\d+)?/g) ?? []), ...phases];
}

function expectSound(text: string): void {
  expect(text).not.toMatch(/[{}]|undefined|null|NaN| {2}| [.,;:]|\.\.|,,/);
  expect(text).toMatch(/^[A-Z0-9].*\.$/);
}

function expectNumbers(text: string, numbers: readonly string[]): void {
  for (const number of numbers) {
    const isOne = number === '1' && /\bonce\b|hold for|keep going/i.test(text);
    if (!isOne)
      expect(text).toMatch(new RegExp(`(?<![\\d.])${number.replace('.', '\\.')}(?![\\d]|\\.\\d)`));
  }
}

describe('every dose sentence', () => {
  it('names both sides of an each, and has all their numbers', () => {
    fc.assert(
      fc.property(twoSided, ({ left, right, circuit, ...row }) => {
        const text = says({ ...row, dose: {}, left, right }, circuit);
        expectSound(text);
        expect(text).toMatch(/left leg/i);
        expect(text).toMatch(/right leg/i);
        if (!text.includes('In each round'))
          expectNumbers(text, [...numbersIn(left, circuit), ...numbersIn(right, circuit)]);
      }),
      { numRuns: 1000 },
    );
  });

  it('names one side, always as the only one, and never the other', () => {
    fc.assert(
      fc.property(dose, order, purpose, fc.boolean(), (only, how, what, circuit) => {
        const settings = { dose: only, order: how, purpose: what };
        const left = says({ ...settings, only: 'left' }, circuit);
        const right = says({ ...settings, only: 'right' }, circuit);
        expectSound(left);
        expect(left).toContain('with the left leg only');
        expect(left).not.toMatch(/right/i);
        expect(right).toBe(swapped(left));
        expectNumbers(left, numbersIn(only, circuit));
      }),
      { numRuns: 500 },
    );
  });

  it('names no single side where there is none', () => {
    fc.assert(
      fc.property(dose, purpose, fc.boolean(), (one, what, circuit) => {
        const both = says({ dose: one, purpose: what, sides: 'both' }, circuit);
        const middle = says({ dose: one, purpose: what, sides: 'middle' }, circuit);
        expectSound(both);
        expectSound(middle);
        expect(both).toContain('with both legs at once');
        expect(`${both} ${middle}`).not.toMatch(/left|right/i);
        expect(middle).not.toMatch(/leg/);
        expectNumbers(middle, numbersIn(one, circuit));
      }),
      { numRuns: 500 },
    );
  });

  it('gives equal sides one turn, and no side an extra round', () => {
    fc.assert(
      fc.property(dose, order, purpose, (one, how, what) => {
        const text = says({ dose: one, order: how, purpose: what });
        if (how !== 'each-rep') expect(text).toMatch(/the same (with the right leg|to|on)/);
        expect(text).not.toMatch(/extra round/);
      }),
      { numRuns: 500 },
    );
  });
});

const fixed = fc.integer({ min: 2, max: 30 });
const pairs = fc.record({
  reps: fc.tuple(fixed, fixed),
  sets: fc.tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 5 })),
  order,
});

/** Who does how many: "8 times with the left leg" and, rounds and all, of a side alone. */
function claims(text: string): string[] {
  const sideFirst = [
    ...text.matchAll(/(Left leg first|Then the right leg): (?:(\d+) rounds? of )?(\d+) times/g),
  ].map(
    ([, side, rounds = '1', reps]) =>
      `${reps} x ${rounds} ${/left/i.test(side ?? '') ? 'left' : 'right'}`,
  );
  const turns = [...text.matchAll(/(\d+) times with the (left|right) leg/g)].map(
    ([, reps, side]) => `${reps} ${side}`,
  );
  const extra = [...text.matchAll(/(one|\d+) extra rounds? with the (left|right) leg only/g)].map(
    ([, n, side]) => `+${n} ${side}`,
  );
  return [...sideFirst, ...turns, ...extra];
}

describe('left and right', () => {
  it('keep what is theirs when the data swap', () => {
    fc.assert(
      fc.property(pairs, ({ reps: [a, b], sets: [m, n], order: how }) => {
        fc.pre(a !== b && m !== n);
        const first = { reps: a, sets: m };
        const second = { reps: b, sets: n };
        const text = claims(says({ dose: {}, left: first, right: second, order: how }));
        const other = claims(says({ dose: {}, left: second, right: first, order: how }));
        expect(text.length).toBeGreaterThanOrEqual(2);
        expect(other.map(swapped).sort()).toEqual([...text].sort());
        const expected =
          how === 'all-sets'
            ? [`${a} x ${m} left`, `${b} x ${n} right`]
            : [
                `${a} left`,
                `${b} right`,
                `+${Math.abs(m - n) === 1 ? 'one' : Math.abs(m - n)} ${m > n ? 'left' : 'right'}`,
              ];
        expect([...text].sort()).toEqual(expected.sort());
      }),
      { numRuns: 500 },
    );
  });
});
