// Numbers as they are written: what they come to, and what is refused. A look-alike is never read.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  parseCount,
  parseCounts,
  parseThousandths,
  parseThousandthsRange,
  rangeEnds,
} from '../../src/units/number.ts';
import { withSoundForm } from '../../src/units/reading.ts';
import { amounts, countsMeant, LOOK_ALIKES, nearlyQuantities, thousandths } from './grammar.ts';
import { checkOf, RUNS, taken } from './readings.ts';

const texts = fc.oneof(nearlyQuantities, amounts);

describe('a count', () => {
  it.each([
    ['1', 1],
    ['3', 3],
    ['100', 100],
    ['10000', 10_000],
  ] as const)('%s is %d', (text, value) => {
    expect(taken(parseCount(text))).toBe(value);
  });

  it.each([
    ['0', 'out-of-range'],
    ['10001', 'out-of-range'],
    ['99999999999999999999', 'out-of-range'],
    ['-3', 'out-of-range'],
    ['2.5', 'not-a-count'],
    ['0.4', 'not-a-count'],
    ['3.0', 'number-unclear'],
    ['08', 'number-unclear'],
    ['0x10', 'number-unclear'],
    ['1e3', 'number-unclear'],
    ['1_0', 'number-unclear'],
    ['.nan', 'number-unclear'],
    ['8-12', 'not-understood'],
    ['8-8', 'not-understood'],
    ['twice', 'not-understood'],
    ['twelve', 'not-understood'],
    ['3 sets', 'unit-unknown'],
    ['', 'not-understood'],
  ] as const)('%s is refused: %s', (text, check) => {
    expect(checkOf(parseCount(text))).toBe(check);
  });

  it('names the largest that belongs there, and no other number', () => {
    const reading = parseCounts('99999999999999999999', 100);
    expect(reading.ok ? '' : reading.misread.says).toBe(
      'says 99999999999999999999, but is 100 at the most',
    );
  });
});

describe('counts', () => {
  it.each([
    ['8-12', [8, 12]],
    ['8–12', [8, 12]],
    ['8 - 12', [8, 12]],
    ['5', [5, 5]],
    ['5-5', [5, 5]],
  ] as const)('%s is %j', (text, value) => {
    expect(taken(parseCounts(text))).toEqual(value);
  });

  it.each([
    ['12-8', 'range-reversed'],
    ['0-5', 'out-of-range'],
    ['8-12.5', 'not-a-count'],
    ['1-2-3', 'not-understood'],
    ['8-', 'not-understood'],
    ['-8-12', 'out-of-range'],
    ['8—12', 'not-understood'],
    ['08-12', 'number-unclear'],
    ['8-012', 'number-unclear'],
    ['8,5', 'decimal-comma'],
    ['8-12 reps', 'unit-unknown'],
  ] as const)('%s is refused: %s', (text, check) => {
    expect(checkOf(parseCounts(text))).toBe(check);
  });

  it('are exactly those of the grammar, with the grammar’s value', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const meant = countsMeant(text, 10_000n);
        expect(taken(parseCounts(text))).toEqual(meant && [Number(meant.low), Number(meant.high)]);
      }),
      RUNS,
    );
  });
});

describe('thousandths', () => {
  it.each([
    ['0', 0],
    ['2.5', 2500],
    ['0.001', 1],
    ['1.10', 1100],
    ['999', 999_000],
  ] as const)('%s is %d', (text, value) => {
    expect(taken(parseThousandths(text, 1000))).toBe(value);
  });

  it.each([
    ['1.2345', 'not-understood'],
    ['1001', 'out-of-range'],
    ['-1', 'out-of-range'],
    ['2,5', 'decimal-comma'],
    ['1 000', 'not-understood'],
    ['', 'not-understood'],
    ['abc', 'not-understood'],
  ] as const)('%s is refused: %s', (text, check) => {
    expect(checkOf(parseThousandths(text, 1000))).toBe(check);
  });

  it('come in ranges, low end first, exact to the last digit', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const reading = parseThousandthsRange(text, 10_000, '');
        if (!reading.ok) return;
        const ends = rangeEnds(text) ?? ['', ''];
        expect(reading.value.map(BigInt)).toEqual(ends.map(thousandths));
        expect(reading.value[0]).toBeLessThanOrEqual(reading.value[1]);
      }),
      RUNS,
    );
  });
});

describe('a look-alike', () => {
  it.each(LOOK_ALIKES)('%s is no number, alone or as an end of a range', (text) => {
    for (const written of [text, `1-${text}`, `${text}-99999`, `${text}–99999`]) {
      expect([
        written,
        parseCounts(written).ok,
        parseThousandthsRange(written, 1e6, '').ok,
      ]).toEqual([written, false, false]);
    }
    expect(parseCount(text).ok).toBe(false);
    expect(parseThousandths(text, 1e6).ok).toBe(false);
  });
});

describe('the form that is shown to write', () => {
  it('is never one that would be refused in its turn', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const reading = withSoundForm(parseCounts(text), parseCounts);
        if (!reading.ok && reading.misread.write !== undefined)
          expect(parseCounts(reading.misread.write).ok).toBe(true);
      }),
      RUNS,
    );
  });
});
