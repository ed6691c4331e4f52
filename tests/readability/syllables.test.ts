// The syllable counter against a dictionary of pronunciations, by itself.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { parse } from 'yaml';
import { syllablesOf } from '../../src/readability/syllables.ts';

const file = readFileSync(join(import.meta.dirname, 'dictionary.yaml'), 'utf8');
const rows = Object.entries(parse(file) as Record<string, string>).flatMap(([counts, words]) =>
  words
    .trim()
    .split(/\s+/)
    .map((word) => ({ word, counts: counts.split(' or ').map(Number) })),
);

describe('the counter', () => {
  it('agrees with the dictionary in 98 of 100 words, and is never off by two', () => {
    const wrong = rows.filter(({ word, counts }) => !counts.includes(syllablesOf(word)));
    expect(rows.length).toBeGreaterThan(800);
    expect(wrong.length / rows.length).toBeLessThan(0.02);
    const farOff = wrong.filter(({ word, counts }) =>
      counts.every((count) => Math.abs(count - syllablesOf(word)) > 1),
    );
    expect(farOff).toEqual([]);
  });

  it('takes hardly any word for long that is not, or the other way round', () => {
    const isLong = (count: number) => count >= 3;
    const mistaken = rows.filter(
      ({ word, counts }) => !counts.map(isLong).includes(isLong(syllablesOf(word))),
    );
    expect(mistaken.length).toBeLessThan(5);
  });

  test.each([
    ['stretched', 1],
    ['lifted', 2],
    ['reaches', 2],
    ['going', 2],
    ['area', 3],
    ['Squeeze', 1],
    ['evening', 2],
    ['kg', 1],
    // Not in the dictionary; from memory.
    ['physiotherapist', 6],
    ['isometric', 4],
  ])('%s: %i', (word, count) => {
    expect(syllablesOf(word)).toBe(count);
  });
});
