// The formulas against published worked examples, from counts alone: no counter is involved.
import { describe, expect, test } from 'vitest';
import { fleschKincaid, smog } from '../../src/readability/grades.ts';

describe('Flesch-Kincaid', () => {
  test.each([
    // The test file of the package words/flesch-kincaid.
    { sentences: 1, words: 13, syllables: 26, grade: 13.08, digits: 2 },
    // Wikipedia, "Flesch–Kincaid readability tests": the sentence on the platypus, "11.3".
    { sentences: 1, words: 13, syllables: 24, grade: 11.3, digits: 1 },
    // The spec of a public readability library: "close to 13.52".
    { sentences: 12, words: 194, syllables: 375, grade: 13.52, digits: 2 },
    // Wikipedia, the same page: the lowest grade in theory, of sentences of one short word.
    { sentences: 1, words: 1, syllables: 1, grade: -3.4, digits: 2 },
    // Worked by hand from the counts of two examples of the test file of words/flesch.
    { sentences: 1, words: 6, syllables: 6, grade: -1.45, digits: 2 },
    { sentences: 1, words: 16, syllables: 22, grade: 6.875, digits: 3 },
  ])('$words words, $syllables syllables: $grade', ({ grade, digits, ...counts }) => {
    expect(fleschKincaid(counts)).toBeCloseTo(grade, digits);
  });

  test('there is none of nothing', () => {
    expect(fleschKincaid({ sentences: 0, words: 0, syllables: 0 })).toBeNull();
  });
});

describe('SMOG', () => {
  // The test file of the package words/smog-formula.
  test.each([
    [0, 1, 3.1291],
    [4, 1, 14.554593],
  ])('%i long words in %i sentence: %d', (long, sentences, grade) => {
    expect(smog(long, sentences)).toBeCloseTo(grade, 6);
  });

  // Worked by hand: 3.1291 + 1.0430 times the root.
  test.each([
    [0, 30, 3.1291],
    [9, 30, 6.2581],
    [25, 30, 8.3441],
    [36, 30, 9.3871],
    [5, 10, 7.1686],
  ])('%i long words in %i sentences: %d', (long, sentences, grade) => {
    expect(smog(long, sentences)).toBeCloseTo(grade, 4);
  });

  // McLaughlin 1969: by hand it is 3 and the root, published as this table of squares.
  test.each([
    [4, 5],
    [9, 6],
    [16, 7],
    [25, 8],
    [36, 9],
    [49, 10],
    [64, 11],
    [81, 12],
  ])('is near the form for the hand: %i long words, %i', (long, byHand) => {
    expect(Math.abs((smog(long, 30) as number) - byHand)).toBeLessThan(0.6);
  });

  test('a shorter text is scaled to 30 sentences', () => {
    expect(smog(5, 10)).toBe(smog(15, 30));
    expect(smog(0, 0)).toBeNull();
  });
});
