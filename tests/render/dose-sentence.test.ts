// Every row of dose-sentences.yaml, word for word.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { Limb, Purpose } from '../../src/model/exercise.ts';
import { doseSentence, togetherSentence } from '../../src/render/words/dose-sentence.ts';
import { parseLoad } from '../../src/units/load.ts';
import type { Order, Sides } from '../../src/units/side.ts';
import { english, itemWeekOf, type Written } from './records.ts';

interface Row {
  readonly case: string;
  readonly dose: Written;
  readonly left?: Written;
  readonly right?: Written;
  readonly sides?: Sides;
  readonly limb?: Limb | null;
  readonly order?: Order;
  readonly only?: 'left' | 'right';
  readonly purpose?: Purpose;
  readonly tempo_words?: 'down-up' | 'up-down';
  readonly circuit?: boolean;
  readonly says: string;
}

const rows: readonly Row[] = parse(
  readFileSync(new URL('dose-sentences.yaml', import.meta.url), 'utf8'),
);
const words = english();

describe('the dose sentence', () => {
  it.each(rows)('$case', ({ circuit = false, says, tempo_words, ...row }) => {
    const item = itemWeekOf({ ...row, ...(tempo_words ? { tempoWords: tempo_words } : {}) });
    expect(doseSentence({ item, isCircuit: circuit, words, oneRepMax: null })).toBe(says);
  });

  it('gives the kilograms of a share of the most', () => {
    const most = parseLoad('40.5 kg', []);
    if (!most.ok) throw new Error('40.5 kg is a load');
    const item = itemWeekOf({ sides: 'middle', dose: { reps: 5, load: '70 % 1rm' } });
    const settings = { item, isCircuit: false, words };
    expect(doseSentence({ ...settings, oneRepMax: most.value })).toBe('5 times, holding 28.4 kg.');
    expect(doseSentence({ ...settings, oneRepMax: null })).toBe(
      '5 times, with 70 % of the most that you can lift once.',
    );
  });
});

describe('a circuit', () => {
  it.each([
    [
      [1, 2],
      2,
      60_000,
      'Exercises 1 and 2 go together: do 1, then 2. That is one round. Do 2 rounds, with 1 minute of rest in between.',
    ],
    [
      [3, 4, 5],
      3,
      0,
      'Exercises 3 to 5 go together: do 3, then 4, then 5. That is one round. Do 3 rounds, one straight after the other.',
    ],
    [
      [4],
      2,
      30_000,
      'Exercise 4: do it once through. That is one round. Do 2 rounds, with 30 seconds of rest in between.',
    ],
    [
      [1, 2],
      1,
      30_000,
      'Exercises 1 and 2 go together: do 1, then 2. That is one round. Do 1 round.',
    ],
  ] as const)('of %j, %i rounds', (numbers, rounds, rest, says) => {
    expect(togetherSentence(words, numbers, rounds, [rest, rest])).toBe(says);
  });
});
