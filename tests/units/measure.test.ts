// The smaller measures: tempo, effort and pain, percentages, angles, every so many days.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  parseAngleRange,
  parseEvery,
  parsePainRange,
  parsePercent,
  parseScale,
  parseTempo,
} from '../../src/units/measure.ts';
import { type Reading, withSoundForm } from '../../src/units/reading.ts';
import {
  amounts,
  LOOK_ALIKES,
  nearlyQuantities,
  percentMeant,
  scaleMeant,
  thousandths,
} from './grammar.ts';
import { checkOf, RUNS, taken } from './readings.ts';

const texts = fc.oneof(
  nearlyQuantities,
  fc
    .tuple(amounts, fc.constantFrom('', ' %', '%', ' degrees', ' days', ' day', ' of 10'))
    .map((parts) => parts.join('')),
  fc.array(amounts, { minLength: 3, maxLength: 5 }).map((phases) => phases.join('-')),
);

describe('a tempo', () => {
  it.each([
    ['3-1-2-0', [3_000, 1_000, 2_000, 0]],
    ['3 - 1 - 2 - 0', [3_000, 1_000, 2_000, 0]],
    ['2.5-0-1-0', [2_500, 0, 1_000, 0]],
    ['60-0-0-0', [60_000, 0, 0, 0]],
  ] as const)('%s is %j', (text, phases) => expect(taken(parseTempo(text))).toEqual(phases));

  it.each([
    ['3-1-2', 'not-understood'],
    ['3-1-2-0-1', 'not-understood'],
    ['3121', 'not-understood'],
    ['3-1-x-0', 'not-understood'],
    ['3-1--0', 'not-understood'],
    ['61-0-0-0', 'out-of-range'],
    ['03-1-2-0', 'number-unclear'],
    ['3-1-2-0x1', 'number-unclear'],
    ['2,5-1-2-0', 'decimal-comma'],
    ['3-1-2-0 s', 'not-understood'],
    ['', 'not-understood'],
  ] as const)('%s is refused: %s', (text, check) => expect(checkOf(parseTempo(text))).toBe(check));

  it('is four plain numbers, each read exactly', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const tempo = taken(parseTempo(text));
        const phases = text.split('-').map((phase) => phase.trim());
        const isOne =
          phases.length === 4 &&
          phases.every((phase) => /^(0|[1-9]\d*)(\.\d{1,3})?$/.test(phase) && Number(phase) <= 60);
        expect(tempo?.map(BigInt) ?? null).toEqual(isOne ? phases.map(thousandths) : null);
      }),
      RUNS,
    );
  });
});

describe('effort', () => {
  it.each([
    ['0', [0, 0]],
    ['10', [10, 10]],
    ['3-4', [3, 4]],
    ['6.5', [6.5, 6.5]],
    ['2–3.5', [2, 3.5]],
  ] as const)('%s is %j', (text, value) => {
    expect(taken(parseScale(text))).toEqual(value);
  });

  it.each([
    ['11', 'out-of-range'],
    ['-1', 'out-of-range'],
    ['4-3', 'range-reversed'],
    ['6,5', 'decimal-comma'],
    ['06', 'number-unclear'],
    ['hard', 'not-understood'],
    ['7 of 10', 'not-understood'],
  ] as const)('%s is refused: %s', (text, check) => expect(checkOf(parseScale(text))).toBe(check));

  it('is exactly one of the grammar', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const meant = scaleMeant(text);
        expect(taken(parseScale(text))).toEqual(
          meant && [Number(meant.low) / 1000, Number(meant.high) / 1000],
        );
      }),
      RUNS,
    );
  });
});

describe('pain', () => {
  it.each([
    ['0-3', [0, 3]],
    ['4-5', [4, 5]],
    ['6-10', [6, 10]],
    ['5', [5, 5]],
  ] as const)('%s is %j', (text, value) => {
    expect(taken(parsePainRange(text))).toEqual(value);
  });

  it.each([
    ['0-3.5', 'not-a-count'],
    ['0-11', 'out-of-range'],
    ['3-0', 'range-reversed'],
    ['0–03', 'number-unclear'],
    ['mild', 'not-understood'],
  ] as const)('%s is refused: %s', (text, check) =>
    expect(checkOf(parsePainRange(text))).toBe(check),
  );
});

describe('a percentage', () => {
  it.each([
    ['50 %', 50_000],
    ['25%', 25_000],
    ['1 %', 1_000],
    ['99 %', 99_000],
    ['62.5 %', 62_500],
  ] as const)('%s is %d', (text, value) => {
    expect(taken(parsePercent(text, 1, 99))).toBe(value);
  });

  it.each([
    ['50', 'unit-missing'],
    ['0.5', 'unit-missing'],
    ['0 %', 'out-of-range'],
    ['100 %', 'out-of-range'],
    ['9999999999999999 %', 'out-of-range'],
    ['-5 %', 'out-of-range'],
    ['05 %', 'number-unclear'],
    ['2,5 %', 'decimal-comma'],
    ['50 % of it', 'unit-unknown'],
    ['5 kg', 'unit-unknown'],
    ['50-60 %', 'not-understood'],
    ['half', 'not-understood'],
    ['%', 'not-understood'],
    ['', 'not-understood'],
  ] as const)('%s is refused: %s', (text, check) =>
    expect(checkOf(parsePercent(text, 1, 99))).toBe(check),
  );

  it('names its own limits, and no other number', () => {
    const reading = parsePercent('9999999999999999 %', 1, 99);
    expect(reading.ok ? '' : reading.misread.says).toMatch(/goes from 1 % to 99 %$/);
  });

  it('is exactly one of the grammar', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const meant = percentMeant(text, 1n, 99n);
        expect(taken(parsePercent(text, 1, 99))).toEqual(meant === null ? null : Number(meant));
      }),
      RUNS,
    );
  });
});

describe('a range of a joint', () => {
  it.each([
    ['10-60 degrees', [10, 60]],
    ['-10-60 degrees', [-10, 60]],
    ['-20--10 degrees', [-20, -10]],
    ['0 to 90 degrees', [0, 90]],
    ['0–90 degrees', [0, 90]],
    ['5-5 degrees', [5, 5]],
  ] as const)('%s is %j', (text, value) => expect(taken(parseAngleRange(text))).toEqual(value));

  it.each([
    ['10-60', 'unit-missing'],
    ['10-60 deg', 'unit-missing'],
    ['60-10 degrees', 'range-reversed'],
    ['-190-10 degrees', 'out-of-range'],
    ['0-361 degrees', 'out-of-range'],
    ['08-60 degrees', 'number-unclear'],
    ['10-060 degrees', 'number-unclear'],
    ['-08-60 degrees', 'number-unclear'],
    ['60 degrees', 'not-understood'],
    ['10.5-60 degrees', 'not-understood'],
    ['1e1-60 degrees', 'not-understood'],
    ['', 'not-understood'],
  ] as const)('%s is refused: %s', (text, check) =>
    expect(checkOf(parseAngleRange(text))).toBe(check),
  );
});

describe('every so many days', () => {
  it.each([
    ['2 days', 2],
    ['1 day', 1],
    ['3days', 3],
    ['60 days', 60],
  ] as const)('%s is %d', (text, value) => expect(taken(parseEvery(text))).toBe(value));

  it.each([
    ['2', 'unit-missing'],
    ['0 days', 'out-of-range'],
    ['61 days', 'out-of-range'],
    ['1.5 days', 'not-a-count'],
    ['2-3 days', 'not-understood'],
    ['02 days', 'number-unclear'],
    ['1e1 days', 'not-understood'],
    ['2 weeks', 'not-understood'],
    ['other day', 'not-understood'],
    ['-2 days', 'out-of-range'],
    ['', 'not-understood'],
  ] as const)('%s is refused: %s', (text, check) => expect(checkOf(parseEvery(text))).toBe(check));
});

const PARSERS: Readonly<
  Record<
    string,
    {
      readonly parse: (text: string) => Reading<unknown>;
      readonly forms: (number: string) => readonly string[];
    }
  >
> = {
  'a tempo': { parse: parseTempo, forms: (n) => [`${n}-1-2-0`, `3-1-2-${n}`] },
  effort: { parse: parseScale, forms: (n) => [n, `0-${n}`] },
  pain: { parse: parsePainRange, forms: (n) => [n, `0-${n}`] },
  'a percentage': {
    parse: (text) => parsePercent(text, 0, 1e9),
    forms: (n) => [n, `${n} %`, `${n}%`],
  },
  'a range of a joint': {
    parse: parseAngleRange,
    forms: (n) => [`${n}-90 degrees`, `0-${n} degrees`, `0 to ${n} degrees`],
  },
  'every so many days': { parse: parseEvery, forms: (n) => [n, `${n} days`] },
};

describe.each(Object.entries(PARSERS))('%s', (name, { parse, forms }) => {
  // Of a joint the first number may be below 0, and both may stand with a hyphen between.
  const numbers = LOOK_ALIKES.filter(
    (text) => name !== 'a range of a joint' || !/^-+5$/.test(text),
  );

  it('never takes a look-alike for a number', () => {
    const misled = numbers.flatMap(forms).filter((text) => parse(text).ok);
    expect(misled).toEqual([]);
  });

  it('never shows a form that would be refused in its turn', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const reading = withSoundForm(parse(text), parse);
        if (!reading.ok && reading.misread.write !== undefined)
          expect(parse(reading.misread.write).ok).toBe(true);
      }),
      RUNS,
    );
  });
});
