// Lengths of time as they are written, in milliseconds or breaths.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { durationMs, parseDuration } from '../../src/units/duration.ts';
import { withSoundForm } from '../../src/units/reading.ts';
import { amounts, durationMeant, LOOK_ALIKES, nearlyQuantities } from './grammar.ts';
import { checkOf, RUNS, taken } from './readings.ts';

const texts = fc.oneof(
  nearlyQuantities,
  fc
    .tuple(
      amounts,
      fc.constantFrom('', ' '),
      fc.constantFrom('s', 'min', 'breaths', 'breath', 'sec', 'MIN', 'h', ''),
    )
    .map((parts) => parts.join('')),
  fc
    .tuple(
      amounts,
      fc.constantFrom(' min ', 'min ', ' min'),
      amounts,
      fc.constantFrom(' s', 's', ''),
    )
    .map((parts) => parts.join('')),
);

describe('a length of time', () => {
  it.each([
    ['5 s', 'ms', 5_000, 5_000],
    ['5s', 'ms', 5_000, 5_000],
    ['0 s', 'ms', 0, 0],
    ['2.5 s', 'ms', 2_500, 2_500],
    ['0.001 s', 'ms', 1, 1],
    ['2 min', 'ms', 120_000, 120_000],
    ['1.5 min', 'ms', 90_000, 90_000],
    ['1 min 30 s', 'ms', 90_000, 90_000],
    ['1min 30s', 'ms', 90_000, 90_000],
    ['0 min 2.5 s', 'ms', 2_500, 2_500],
    ['20-30 s', 'ms', 20_000, 30_000],
    ['20–30 s', 'ms', 20_000, 30_000],
    ['20 - 30 s', 'ms', 20_000, 30_000],
    ['1-2 min', 'ms', 60_000, 120_000],
    ['6 breaths', 'breaths', 6, 6],
    ['1 breath', 'breaths', 1, 1],
    ['5-6 breaths', 'breaths', 5, 6],
    ['86400 s', 'ms', 86_400_000, 86_400_000],
    ['1440 min', 'ms', 86_400_000, 86_400_000],
    ['30\u00a0s', 'ms', 30_000, 30_000],
  ] as const)('%s is %s %d to %d', (text, unit, low, high) => {
    expect(taken(parseDuration(text))).toEqual({ unit, range: [low, high] });
  });

  it.each([
    ['30', 'unit-missing'],
    ['20-30', 'unit-missing'],
    ['30 sec', 'unit-unknown'],
    ['30 S', 'unit-unknown'],
    ['5 MIN', 'unit-unknown'],
    ['5 m', 'unit-unknown'],
    ["5'", 'unit-unknown'],
    ['1 h', 'unit-unknown'],
    ['1.5 hours', 'unit-unknown'],
    ['3 reps', 'unit-unknown'],
    ['4 kg', 'unit-unknown'],
    ['2,5 s', 'decimal-comma'],
    ['1,000 s', 'decimal-comma'],
    ['30-20 s', 'range-reversed'],
    ['2-1 min', 'range-reversed'],
    ['20 s-30 s', 'not-understood'],
    ['1 min-90 s', 'not-understood'],
    ['-5 s', 'out-of-range'],
    ['-5', 'out-of-range'],
    ['86401 s', 'out-of-range'],
    ['1441 min', 'out-of-range'],
    ['0 breaths', 'out-of-range'],
    ['2.5 breaths', 'not-a-count'],
    ['1001 breaths', 'out-of-range'],
    ['08 s', 'number-unclear'],
    ['0x10 s', 'number-unclear'],
    ['1e3 s', 'number-unclear'],
    ['1_0 s', 'number-unclear'],
    ['.5 s', 'number-unclear'],
    ['5. s', 'number-unclear'],
    ['01 min 30 s', 'number-unclear'],
    ['1 min 08 s', 'number-unclear'],
    ['1 min 30', 'not-understood'],
    ['1.5 min 30 s', 'not-understood'],
    ['1:30', 'not-understood'],
    ['a while', 'not-understood'],
    ['', 'not-understood'],
    ['1.2345 s', 'not-understood'],
  ] as const)('%s is refused: %s', (text, check) => {
    expect(checkOf(parseDuration(text))).toBe(check);
  });

  it('is exactly one of the grammar, with the grammar’s value', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const meant = durationMeant(text);
        expect(taken(parseDuration(text))).toEqual(
          meant && { unit: meant.unit, range: [Number(meant.low), Number(meant.high)] },
        );
      }),
      RUNS,
    );
  });

  it.each(LOOK_ALIKES)('is none with %s for a number', (text) => {
    for (const written of [
      `${text} s`,
      `${text} min`,
      `${text} breaths`,
      `1 min ${text} s`,
      `${text} min 5 s`,
      `1-${text} s`,
      text,
    ]) {
      expect([written, parseDuration(written).ok]).toEqual([written, false]);
    }
  });

  // 500 h is not 500 s: a form shown to write comes to the same length, in units that are known.
  it.each([
    ['1 h', '60 min'],
    ['1.1 h', '66 min'],
    ['1-2 hours', '60-120 min'],
    ['5 MIN', '5 min'],
    ['30 Sec', '30 s'],
    ['1 min-90 s', '60-90 s'],
    ['1.1 min-70 s', '66-70 s'],
  ] as const)('for %s shows %s', (text, write) => {
    const reading = parseDuration(text);
    expect(reading.ok ? null : reading.misread.write).toBe(write);
  });

  it('never shows a form that would be refused in its turn', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const reading = withSoundForm(parseDuration(text), parseDuration);
        if (!reading.ok && reading.misread.write !== undefined)
          expect(parseDuration(reading.misread.write).ok).toBe(true);
      }),
      RUNS,
    );
  });

  it('in breaths is so many of the practice’s own', () => {
    expect(durationMs({ unit: 'breaths', range: [5, 6] }, 4_500)).toEqual([22_500, 27_000]);
    expect(durationMs({ unit: 'ms', range: [5, 6] }, 4_500)).toEqual([5, 6]);
  });
});
