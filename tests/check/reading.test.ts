// How the words of exercises, plans and sheets read: grades and words of the trade, each with its place.
import { describe, expect, it } from 'vitest';
import { readingGradeOfExercises, readingGradeOfSheet } from '../../src/check/reading-grade.ts';
import { tradeWord, tradeWordsIn } from '../../src/check/trade-word.ts';
import { CHECKS } from '../../src/finding/checks.ts';
import type { Finding } from '../../src/finding/finding.ts';
import type { Place } from '../../src/finding/place.ts';
import type { Exercise } from '../../src/model/exercise.ts';
import type { PrintedText } from '../../src/model/printed-text.ts';
import { TRADE_WORDS } from '../../src/model/trade-words.ts';
import {
  accept,
  checked,
  exercise,
  item,
  part,
  plan,
  practice,
  session,
  subject,
} from './records.ts';

const HARD = 'Progressively elevate both heels, maintaining symmetrical distribution';
const EASY = 'Rise onto your toes';

/** Texts as a file has them, one on a line. */
function printed(texts: readonly string[], key = 'steps'): readonly PrintedText[] {
  const source = { file: 'exercises/any.yaml', text: texts.join('\n') };
  return texts.map((text) => {
    const start = source.text.indexOf(text);
    return { key, text, place: { source, start, end: start + text.length } };
  });
}

function inFile(one: Exercise): Exercise {
  return { ...one, printed: printed(one.levels.flatMap(({ steps }) => steps)) };
}

const words = ({ source, start, end }: Place) => source.text.slice(start, end);

describe('reading-grade of an exercise', () => {
  const found = (texts: readonly string[], above = 6, by = practice()) =>
    readingGradeOfExercises([inFile(exercise('any', { steps: texts }))], by, above);

  it('is silent where it reads well, and where there is nothing to read', () => {
    expect(found([EASY, 'Lower slowly'])).toEqual([]);
    expect(found([])).toEqual([]);
  });

  it('points at the sentences that make it hard, and not at the others', () => {
    const [one] = found([EASY, HARD, 'Lower slowly']);
    expect(one?.message).toMatch(/^This exercise reads at grade \d+\.\d by Flesch-Kincaid and /);
    expect(one?.related.map(({ place }) => words(place))).toEqual([HARD]);
    expect(one?.related[0]?.message).toMatch(/Grade \d+\.\d: 7 words, long: "Progressively"/);
  });

  it('names three at the most', () => {
    const texts = ['one', 'two', 'three', 'four'].map((n) => `${HARD} ${n}`);
    expect(found([EASY, ...texts])[0]?.related).toHaveLength(3);
  });

  it('judges each level as printed, and tells of the hardest', () => {
    const two = inFile(exercise('any', { steps: [EASY] }, { id: 'hard', steps: [HARD] }));
    expect(readingGradeOfExercises([two], practice(), 6).map(({ message }) => message)).toEqual([
      expect.stringContaining('Level "hard" of this exercise'),
    ]);
  });

  // 0.39 x 4 + 11.8 x 6/4 - 15.59 = 3.67: 3.7 as shown.
  it('is told of from the first tenth above', () => {
    const text = 'Hold slowly then relax'; // 1 + 2 + 1 + 2
    expect(found([text], 3.7)).toEqual([]);
    expect(found([text], 3.6)).toHaveLength(1);
  });

  it('counts the words that a practice lists as short', () => {
    const plainWords = ['progressively', 'elevate', 'maintaining', 'symmetrical', 'distribution'];
    expect(found([EASY, HARD], 6, practice({ plainWords }))).toEqual([]);
  });

  it('is for English alone, in any of its countries', () => {
    expect(found([HARD], 6, practice({ language: 'es' }))).toEqual([]);
    expect(found([HARD], 6, practice({ language: 'en-GB' }))).toHaveLength(1);
    expect(CHECKS['reading-grade'].meaning).toContain('English only');
  });

  it('is not judged by SMOG, which was made for 30 sentences', () => {
    const some = Array.from({ length: 14 }, () => 'Do it comfortably in bed at night now');
    expect(found(some)).toEqual([]);
    expect(found([...some, ...some])).toEqual([]);
    const [one] = found([...some, ...some, ...some]);
    expect(one?.message).toMatch(/and 8\.8 by SMOG, above 6/);
    expect(one?.related.map(({ place }) => words(place))).toEqual([some[0]]);
  });
});

describe('reading-grade of a sheet', () => {
  const one = plan([], { printed: printed(['Ankle', HARD], 'goals') });
  const found = (texts: readonly string[]) =>
    readingGradeOfSheet({ plan: one, texts }, practice(), 6);

  it('stands at the plan, with the sentences that stand in the files', () => {
    const [told] = found([
      `${HARD}.`,
      'This establishment unfortunately necessitates cooperation.',
    ]);
    expect(told?.place).toBe(one.place);
    expect(told?.scope).toEqual([one]);
    expect(told?.related.map(({ place }) => words(place))).toEqual([HARD]);
  });

  it('is silent where the sheet reads well', () => {
    expect(found([EASY])).toEqual([]);
  });
});

describe('trade-word', () => {
  const found = (text: string, by = practice()) => tradeWordsIn(printed([text]), by);
  const told = (text: string, by = practice()) => found(text, by).map(({ place }) => words(place));

  it.each([
    ['Lie prone on the bed', ['prone']],
    ['Lie Prone', ['Prone']],
    ['Feel your quadriceps and your hamstrings', ['quadriceps', 'hamstrings']],
    ['Plantar flexion, then plantar-flexion', ['Plantar flexion', 'plantar-flexion']],
    ['The tibialis posterior', ['tibialis posterior']],
    ['External rotation of the arm', ['External rotation']],
    ['Feel it (a bit) in the soleus', ['soleus']],
  ])('%s', (text, expected) => {
    expect(told(text)).toEqual(expected);
  });

  it.each([
    'Feel your quadriceps (the front of your thigh)',
    'Feel the quadriceps muscle (front of the thigh)',
    'The front of your thigh (quadriceps)',
    'The patella, that is the bone in front of your knee',
    'Your kneecap, or patella',
    'Knees are prone to swell',
    'Bend, straighten and turn your foot',
    'An unprone word',
  ])('is silent of: %s', (text) => {
    expect(told(text)).toEqual([]);
  });

  it('says an everyday word for it', () => {
    expect(found('Lie supine')[0]?.message).toContain('"on your back"');
  });

  it('tells of a word once a file', () => {
    expect(tradeWordsIn(printed(['Lie prone', 'Stay prone']), practice())).toHaveLength(1);
  });

  it('is silent of the words that a practice lists', () => {
    expect(
      told('Lie prone, scapulas flat', practice({ plainWords: ['prone', 'scapula'] })),
    ).toEqual([]);
  });

  it('is for English alone', () => {
    expect(told('Rotación lateral', practice({ language: 'es' }))).toEqual([]);
    const spanish = { printed: printed(['Lado lateral']), handoutLanguage: 'es' };
    expect(tradeWord(subject(plan([], spanish)))).toEqual([]);
    expect(CHECKS['trade-word'].meaning).toContain('English only');
  });

  it('can be accepted at the item whose note it is', () => {
    const texts = printed(['Lie prone'], 'note');
    const extent = texts[0]?.place as Place;
    const of = (accepts: ReturnType<typeof accept>[]) =>
      plan([session([part('strength', [item(exercise('any'), { extent, accepts })])])], {
        printed: texts,
      });
    const trade = (all: readonly Finding[]) =>
      all.filter(({ check }) => check === 'trade-word').map(({ accepted }) => accepted !== null);
    expect(trade(checked(of([])))).toEqual([false]);
    expect(trade(checked(of([accept('trade-word')])))).toEqual([true]);
  });

  it('has everyday words that are no trade words themselves', () => {
    for (const everyday of TRADE_WORDS.values()) expect(told(everyday)).toEqual([]);
  });
});
