// Every shipped words pack says what the English one says: of all doses, sides, orders and shapes the same
// numbers and the same sides, in the same order, and nothing left to fill in.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { durationText, minutesText, numbersText } from '../../src/render/words/amounts.ts';
import { dayText, fullDayText, plainDayText } from '../../src/render/words/date-words.ts';
import { doseSentence, togetherSentence } from '../../src/render/words/dose-sentence.ts';
import { scheduleText } from '../../src/render/words/schedule-words.ts';
import { wordsFrom } from '../../src/render/words/words.ts';
import { addDays, WEEKDAYS } from '../../src/units/day.ts';
import { exactly } from '../../src/units/interval.ts';
import { awkward, limb, order, purpose } from './made-doses.ts';
import { LANGUAGES, packOf, SPOILT, told, wordsOf } from './packs.ts';
import { englishPack, type ItemWeekSettings, itemWeekOf } from './records.ts';

const OTHERS = LANGUAGES.filter((language) => language !== 'en');

it('ships English, Spanish and Arabic', () => {
  expect(LANGUAGES).toEqual(expect.arrayContaining(['ar', 'en', 'es']));
});

/** Every text of a pack by its key. */
function textsOf(pack: unknown, prefix = ''): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(pack as object).flatMap(([name, value]): [string, string][] =>
      typeof value === 'string'
        ? [[`${prefix}${name}`, value]]
        : [...textsOf(value, `${prefix}${name}.`)],
    ),
  );
}

describe.each(LANGUAGES)('the pack %s', (language) => {
  const texts = textsOf(packOf(language));

  it('is complete, and every pattern of it can be filled in', () => {
    const reading = wordsFrom(packOf(language), { language, shipped: englishPack });
    expect(reading.ok ? [] : reading.problems).toEqual([]);
  });

  it('says in its direction, and says whether somebody has reviewed it', () => {
    const words = wordsOf(language);
    const { textInfo } = new Intl.Locale(language) as unknown as {
      textInfo: { direction: string };
    };
    expect(words.direction).toBe(textInfo.direction);
    expect(texts.has('reviewed_by')).toBe(true);
    expect(words.unreviewed === null).toBe(words.reviewedBy !== null);
  });

  it('is in the composed form of Unicode, with no control signs in the file', () => {
    for (const [key, text] of texts) {
      expect(text.normalize('NFC'), key).toBe(text);
      expect(text, key).toMatch(/^\S(?:.*\S)?$|^$/u);
    }
  });

  it('isolates what it opens', () => {
    for (const [key, text] of texts) {
      const opened = text.match(/[\u2066-\u2068]/g)?.length ?? 0;
      expect(text.match(/\u2069/g)?.length ?? 0, key).toBe(opened);
      expect(text, key).not.toMatch(/[\u202a-\u202e]/);
    }
  });

  it('has a form for every plural category that a count of a plan can be of', () => {
    // The categories of the language, from Unicode CLDR by way of Intl; counts of a plan stay under a million.
    const rules = new Intl.PluralRules(language);
    const numbers = [...Array.from({ length: 1200 }, (_, n) => n), 0.5, 1.5, 2.5, 10.5];
    const categories = new Set(numbers.map((n) => rules.select(n)));
    for (const category of rules.resolvedOptions().pluralCategories)
      if (!categories.has(category)) expect(rules.select(1_000_000)).toBe(category);
    // What has a word for none counts no things.
    const plurals = [...texts].filter(([, text]) => /, plural,/.test(text) && !/=0 \{/.test(text));
    expect(plurals.length).toBeGreaterThan(10);
    for (const [key, text] of plurals) {
      const lacking = [...categories].filter((category) => {
        const isByNumber = category === 'one' && /=1 \{/.test(text);
        return !isByNumber && !new RegExp(`\\b${category} \\{`).test(text);
      });
      expect(lacking, `${key}: ${text}`).toEqual([]);
    }
  });

  it('says a count with its number, whatever form of the plural it takes', () => {
    const words = wordsOf(language);
    const counted = [...texts].filter(
      ([key, text]) => key.startsWith('amounts.') && text.includes('plural'),
    );
    for (const [key] of counted) {
      for (const n of [1, 2, 3, 5, 10, 11, 12, 21, 99, 100, 101, 102, 103, 111, 2.5]) {
        const isAWord = n === 1 && /times|extra-rounds/.test(key);
        const text = words.say(key, { n, count: String(n) });
        expect(told(language, text).numbers, `${key} of ${n}`).toEqual(isAWord ? [] : [String(n)]);
        const range = words.say(key, { n, count: `0.25 – ${n}` });
        expect(told(language, range).numbers, `${key} to ${n}`).toEqual(
          // A range that ends in one time, or one round, there is not: counts are whole.
          isAWord || (n === 1 && key === 'amounts.rounds')
            ? expect.anything()
            : ['0.25', String(n)],
        );
      }
    }
  });
});

describe.each(OTHERS)('in %s', (language) => {
  const words = wordsOf(language);
  const english = wordsOf('en');

  function expectSame(text: string, inEnglish: string): void {
    expect(text).not.toMatch(SPOILT);
    expect(text.normalize('NFC')).toBe(text);
    const [here, there] = [told(language, text), told('en', inEnglish)];
    expect(here.tokens, `${text}\n${inEnglish}`).toEqual(there.tokens);
  }

  function expectSameDose(settings: ItemWeekSettings, isCircuit: boolean): void {
    const item = itemWeekOf(settings);
    const says = (own: typeof words) =>
      doseSentence({ item, isCircuit, words: own, oneRepMax: null });
    expectSame(says(words), says(english));
  }

  const shared = {
    order,
    purpose,
    limb,
    circuit: fc.boolean(),
    tempoWords: fc.constantFrom('down-up' as const, 'up-down' as const),
  };

  it('both sides of an each have their numbers, the left before the right', () => {
    fc.assert(
      fc.property(fc.record({ ...shared, left: awkward, right: awkward }), ({ circuit, ...row }) =>
        expectSameDose({ ...row, dose: {} }, circuit),
      ),
      { numRuns: 2000 },
    );
  });

  it('equal sides are equal, and one side is the only one', () => {
    fc.assert(
      fc.property(
        fc.record({ ...shared, dose: awkward }),
        fc.constantFrom(undefined, 'left' as const, 'right' as const),
        ({ circuit, ...row }, only) =>
          expectSameDose({ ...row, ...(only ? { only } : {}) }, circuit),
      ),
      { numRuns: 2000 },
    );
  });

  it('what has no sides names none', () => {
    fc.assert(
      fc.property(
        fc.record({ ...shared, dose: awkward }),
        fc.constantFrom('both' as const, 'middle' as const),
        ({ circuit, ...row }, sides) => {
          expectSameDose({ ...row, sides }, circuit);
          const item = itemWeekOf({ ...row, sides });
          const text = doseSentence({ item, isCircuit: circuit, words, oneRepMax: null });
          expect(told(language, text).sides).toEqual([]);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('circuits, days and lengths keep their numbers', () => {
    for (const rounds of [1, 2, 3, 4])
      for (const rest of [0, 30_000, 60_000, 90_000])
        for (const numbers of [[1], [1, 2], [3, 4, 5], [7, 8], [1, 2, 3, 10, 11]])
          expectSame(
            togetherSentence(words, numbers, rounds, exactly(rest)),
            togetherSentence(english, numbers, rounds, exactly(rest)),
          );
    for (let low = 0; low < 40; low += 1)
      for (const high of [low, low + 1, low + 2, low + 11, 2 * low + 100]) {
        const ms = [low * 60_000, high * 60_000] as const;
        expectSame(minutesText(words, ms), minutesText(english, ms));
        const length = { unit: 'ms', range: [low * 1000 + 500, high * 1000 + 500] } as const;
        expectSame(durationText(words, length), durationText(english, length));
      }
    expectSame(numbersText(words, [1, 2, 3, 5, 7, 8]), numbersText(english, [1, 2, 3, 5, 7, 8]));
  });

  it('schedules keep their numbers and days', () => {
    const from = '2026-11-25';
    const schedules = [
      ...WEEKDAYS.map((_, at) => ({ kind: 'days', days: WEEKDAYS.slice(0, at + 1) }) as const),
      ...[1, 2, 3, 7, 10, 11, 14].map((days) => ({ kind: 'every', days }) as const),
      ...(
        [
          [1, 1],
          [2, 2],
          [1, 2],
          [2, 3],
          [3, 5],
          [5, 6],
          [7, 7],
        ] as const
      ).map((count) => ({ kind: 'days-a-week', count }) as const),
      { kind: 'as-needed' } as const,
    ];
    for (const schedule of schedules)
      for (const timesADay of [
        [1, 1],
        [2, 2],
        [3, 3],
        [1, 2],
        [2, 3],
      ] as const) {
        const settings = { schedule, timesADay, starts: from, from };
        expectSame(scheduleText(words, settings), scheduleText(english, settings));
      }
  });

  it('every day of two years has its own date', () => {
    const days = Array.from({ length: 731 }, (_, at) => addDays('2026-01-01', at));
    for (const day of days)
      for (const text of [dayText, fullDayText, plainDayText])
        expectSame(text(words, day), text(english, day));
    expect(new Set(days.map((day) => fullDayText(words, day))).size).toBe(731);
  });
});

describe('the law of the numbers and sides', () => {
  const settings = { dose: {}, left: { reps: 10 }, right: { reps: '7-8' } };
  const item = itemWeekOf(settings);
  const pack = packOf('es') as { dose: object; sides: { leg: object }; numbers: object };
  const inEnglish = doseSentence({ item, isCircuit: false, words: wordsOf('en'), oneRepMax: null });

  it.each([
    ['no mistake', {}, true],
    [
      'the sides swapped',
      {
        sides: {
          ...pack.sides,
          leg: {
            left: { with: 'con la pierna derecha', name: 'derecha', the: 'derecha' },
            right: { with: 'con la pierna izquierda', name: 'izquierda', the: 'izquierda' },
            both: 'con las dos',
          },
        },
      },
      false,
    ],
    [
      'the turns swapped',
      { dose: { ...pack.dose, 'then-differ': '{right}; después, {left}' } },
      false,
    ],
    [
      'a side that is not said',
      { dose: { ...pack.dose, count: '{times} {side, select, x {} other {}}' } },
      false,
    ],
    [
      'a range cut short',
      { numbers: { ...pack.numbers, neighbours: '{low}{high, select, x {} other {}}' } },
      false,
    ],
  ])('sees %s', (_, change, isSame) => {
    const reading = wordsFrom({ ...pack, ...change }, { language: 'es', shipped: englishPack });
    if (!reading.ok) throw new Error(reading.problems[0]?.message);
    const text = doseSentence({ item, isCircuit: false, words: reading.words, oneRepMax: null });
    const tokens = told('es', text).tokens;
    expect(JSON.stringify(tokens) === JSON.stringify(told('en', inEnglish).tokens)).toBe(isSame);
  });
});
