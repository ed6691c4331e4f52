// A words pack as a translator would get it wrong, and right in an order of her own.
import { describe, expect, it } from 'vitest';
import { lowered, raised, wordsFrom } from '../../src/render/words/words.ts';
import { english, englishPack } from './records.ts';

const shipped = {
  direction: 'ltr',
  dose: {
    same: '{turn}, then the same {side}.',
    times: '{n, plural, =1 {once} other {{count} times}}',
  },
  name: '{exercise}: {level_lower}',
  vocabulary: { kit: { chair: 'a chair' }, positions: { prone: 'lie on your front' } },
};

function reading(pack: unknown, language = 'xx') {
  return wordsFrom(pack, { language, shipped });
}

function problems(pack: unknown): readonly string[] {
  const read = reading(pack);
  return read.ok ? [] : read.problems.map(({ message }) => message);
}

const good = { ...shipped, dose: { ...shipped.dose } };

describe('a words pack', () => {
  it('ships in English without a problem', () => {
    // A copy, since the shipped pack itself is not looked at when it is used.
    const copy = structuredClone(englishPack);
    expect(wordsFrom(copy, { language: 'en', shipped: englishPack })).toMatchObject({ ok: true });
    expect(english().say('amounts.times', { n: 1, count: '1' })).toBe('once');
  });

  it.each([
    [
      'a missing key',
      { ...good, name: undefined },
      [
        '"name" is not a text in quotes.',
        '"name" is missing; in English it is "{exercise}: {level_lower}".',
      ],
    ],
    [
      'a number where words belong',
      { ...good, name: 7 },
      [
        '"name" is not a text in quotes.',
        '"name" is missing; in English it is "{exercise}: {level_lower}".',
      ],
    ],
    ['an unknown key', { ...good, nmae: 'x' }, ['"nmae" is no key of a words pack.']],
    [
      'an unknown placeholder',
      { ...good, name: '{exercise}: {level} {lvl}' },
      ['"name" has the placeholder {lvl}, which is not known there; known: {exercise}, {level}.'],
    ],
    [
      'a side left out',
      { ...good, dose: { ...good.dose, same: '{turn}, and so on.' } },
      ['"dose.same" leaves out {side}, so the sheet would not say it.'],
    ],
    [
      'a word of the vocabulary left out',
      { ...good, vocabulary: { ...good.vocabulary, kit: {} } },
      ['"vocabulary.kit.chair" is missing; in English it is "a chair".'],
    ],
    [
      'a number that formats itself',
      { ...good, name: '{exercise, number} {level}' },
      [
        '"name" is no usable pattern: it formats a number or a date itself, but gets both as finished text: write {name} alone.',
      ],
    ],
    [
      'a # for the number',
      { ...good, dose: { ...good.dose, times: '{n, plural, other {# times}}' } },
      ['"dose.times" is no usable pattern: it has a # for the number: write {count} instead.'],
    ],
    ['no map at all', 'words', ['The words pack is no map of words.']],
  ])('with %s is refused', (_, pack, expected) => {
    const told = problems(pack);
    for (const message of expected) expect(told).toContain(message);
  });

  it('with a brace left open is refused, naming the key', () => {
    expect(problems({ ...good, name: '{exercise: {level}' })[0]).toMatch(
      /^"name" is no usable pattern: it cannot be read as a pattern/,
    );
  });

  it('says things in the order of its own language', () => {
    const read = reading({
      ...good,
      dose: { ...good.dose, same: '{side}: {turn}' },
      name: '{level}, {exercise}',
    });
    if (!read.ok) throw new Error('the pack is sound');
    expect(read.words.say('dose.same', { turn: 'a', side: 'b' })).toBe('b: a');
    expect(read.words.say('name', { exercise: 'E', level: 'Both' })).toBe('Both, E');
  });

  it('follows the plural rules of its language', () => {
    const times =
      '{n, plural, one {{count} raz} few {{count} razy} many {{count} razów} other {{count} raza}}';
    const read = reading(
      { ...good, dose: { ...good.dose, times: times.replace('raz}', 'RAZ}') } },
      'pl',
    );
    if (!read.ok) throw new Error('the pack is sound');
    const say = (n: number) => read.words.say('dose.times', { n, count: String(n) });
    // From memory: 1 is one, 2 few, 5 many, 1.5 other.
    expect([1, 2, 5, 1.5].map(say)).toEqual(['1 RAZ', '2 razy', '5 razów', '1.5 raza']);
  });

  it('lets the words of the practice win, and says null for an id without words', () => {
    const own = {
      kit: new Map([['chair', 'the blue chair']]),
      positions: new Map(),
      muscles: new Map(),
      demands: new Map(),
      concerns: new Map(),
    };
    const read = wordsFrom(good, { language: 'en', shipped, own });
    if (!read.ok) throw new Error('the pack is sound');
    expect(read.words.look('kit', 'chair')).toBe('the blue chair');
    expect(read.words.look('positions', 'prone')).toBe('lie on your front');
    expect(read.words.look('kit', 'rope')).toBeNull();
  });

  it('treats a missing key asked for, or a missing value, as a fault', () => {
    expect(() => english().say('no.such')).toThrow('no.such');
    expect(() => english().say('dose.only')).toThrow();
  });

  it('leaves braces in the words of a person alone', () => {
    expect(english().say('sheet.easier', { text: 'Use {two} cushions' })).toBe(
      'Too hard? Use {two} cushions',
    );
  });
});

describe('first letters', () => {
  it.each([
    ['Both feet', 'both feet'],
    ['A chair', 'a chair'],
    ['TRX row', 'TRX row'],
    ['I am', 'I am'],
    ['Ärmel', 'ärmel'],
    ['8 steps', '8 steps'],
  ])('of %s', (text, low) => expect(lowered(text)).toBe(low));
  it('are raised', () =>
    expect([raised('once'), raised('8 times'), raised('é'), raised('')]).toEqual([
      'Once',
      '8 times',
      'É',
      '',
    ]));
});
