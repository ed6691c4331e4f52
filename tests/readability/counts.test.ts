// What counts as a sentence and as a word: by Flesch R. How to Write Plain English, 1979, chapter 2, as
// copies of it quote it, and the word-counting rules that health departments print with SMOG.
import { expect, test } from 'vitest';
import { countsOf, sentencesIn } from '../../src/readability/counts.ts';
import { maskingOf } from '../../src/readability/plain-words.ts';

const count = (...texts: string[]) => countsOf(sentencesIn(texts));

test('each entry of a list is a sentence, with a stop or without', () => {
  expect(count('Rise onto your toes', 'Lower slowly').sentences).toBe(2);
  expect(count('Rise onto your toes. Lower slowly.').sentences).toBe(2);
  expect(count('Too hard? Do it sitting.').sentences).toBe(2);
});

test('a stop within a word or a number ends no sentence', () => {
  expect(count('Hold 2.5 kg, e.g. a full bottle, in one hand').sentences).toBe(1);
  expect(count('Say "Stop." Then rest.').sentences).toBe(2);
});

test('a colon, a semicolon or a dash ends none', () => {
  expect(count('Pain 0 to 3: carry on; rest a bit – then go on.').sentences).toBe(1);
});

test('signs alone are no sentence and no word', () => {
  expect(count('–', '…', '')).toEqual({ sentences: 0, words: 0, syllables: 0, longWords: [] });
  expect(count('One - two').words).toBe(2);
});

test('hyphenated words, contractions and figures are one word', () => {
  expect(count("Don't lean on the half-open door").words).toBe(6);
  expect(count('Left/right').words).toBe(2);
});

test('a figure has one syllable, also with its unit', () => {
  const { words, syllables, longWords } = count('8 to 12 times, 24 s, 77777, 4kg');
  expect([words, syllables, longWords]).toEqual([8, 8, []]);
});

test('a word in two halves has the syllables of both', () => {
  expect(count('side-to-side').syllables).toBe(3);
  expect(count('side-to-side').longWords).toEqual(['side-to-side']);
});

test('a plain word counts as a figure, wherever it stands, and keeps its length', () => {
  const masked = maskingOf(['physiotherapist', 'rotator cuff']);
  const text = "Physiotherapists say: your physiotherapist's rotator cuff";
  expect(masked(text)).toHaveLength(text.length);
  expect(countsOf([masked(text)]).longWords).toEqual([]);
  expect(countsOf([text]).longWords).toHaveLength(3);
  expect(countsOf([masked('physiotherapistry')]).longWords).toHaveLength(1);
});

test('what is on every sheet counts as plain', () => {
  expect(countsOf([maskingOf([])('From Saturday 5 December: exercise 2')]).longWords).toEqual([]);
});
