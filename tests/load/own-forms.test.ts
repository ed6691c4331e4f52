// What people type where another form belongs, and the form that says the same: a dose as it is spoken,
// days by their names, a date as it is written elsewhere. What cannot be told for sure gives nothing.
import { describe, expect, it } from 'vitest';
import { nearest } from '../../src/load/did-you-mean.ts';
import { idMeant } from '../../src/load/meant-id.ts';
import { daysForm } from '../../src/load/own-days.ts';
import { doseForms, moreThanACount } from '../../src/load/own-dose.ts';
import { parseDay } from '../../src/units/day.ts';
import { parseTempo } from '../../src/units/measure.ts';
import { parseCounts } from '../../src/units/number.ts';
import type { Reading } from '../../src/units/reading.ts';

function shown(reading: Reading<unknown>): readonly string[] {
  if (reading.ok) throw new Error('it was read');
  const { write, orWrite } = reading.misread;
  return [write, orWrite].filter((form) => form !== undefined);
}

describe('a dose in one value', () => {
  it.each([
    ['3 x 10', ['{sets: 3, reps: 10}']],
    ['3x8-12', ['{sets: 3, reps: 8-12}']],
    ['3 sets of 10 reps', ['{sets: 3, reps: 10}']],
    ['10 reps', ['{reps: 10}']],
    ['2 x 30 s', ['{sets: 2, hold: 30 s}', '{sets: 2, time: 30 s}']],
    ['5 min', ['{hold: 5 min}', '{time: 5 min}']],
    ['until it burns', []],
    ['3 x a bit', []],
    ['', []],
  ] as const)('%j is %j', (text, forms) => expect(doseForms(text)).toEqual(forms));
});

describe('one count', () => {
  it.each([
    ['3x10', '"sets: 3, reps: 10"'],
    ['3 sets of 8-12', '"sets: 3, reps: 8-12"'],
    ['AMRAP', 'for example "reps: 8-12, until: tired"'],
    ['max', 'for example "reps: 8-12, until: tired"'],
  ] as const)('%j says more than that', (text, write) =>
    expect(moreThanACount(text, () => true)?.write).toBe(write),
  );

  it.each(['10', '8-12', '10 each side', '2 x', 'ten', ''])('%j does not', (text) =>
    expect(moreThanACount(text, () => true)).toBeUndefined(),
  );

  it.each([
    ['8.5', ['8', '9']],
    ['8,5', ['8', '9']],
    ['0.5', ['1']],
    ['8.5-12', ['8-12', '9-12']],
    ['10 each side', ['10']],
    ['8-10 per leg', ['8-10']],
    ['2-', []],
    ['lots', []],
  ] as const)('%j shows %j', (text, forms) => expect(shown(parseCounts(text))).toEqual(forms));
});

describe('days', () => {
  it.each([
    ['mon-fri', '"days: [mon, tue, wed, thu, fri]"'],
    ['Sat to Mon', '"days: [sat, sun, mon]"'],
    ['Monday, Weds and fri', '"days: [mon, wed, fri]"'],
    ['tue/thu', '"days: [tue, thu]"'],
    ['weekdays', '"days: [mon, tue, wed, thu, fri]"'],
    ['every day', '"days: daily"'],
    ['every other day', '"every: 2 days"'],
    ['3', '"days_a_week: 3"'],
    ['3-5 days a week', '"days_a_week: 3-5"'],
    ['8', undefined],
    ['t', undefined],
    ['mon-sometimes', undefined],
    ['now and then', undefined],
  ] as const)('%j is %j', (text, form) => expect(daysForm(text)).toBe(form));
});

describe('a date', () => {
  it.each([
    ['30 Nov 2026', ['2026-11-30']],
    ['Nov 30, 2026', ['2026-11-30']],
    ['Monday, 30th of November 2026', ['2026-11-30']],
    ['30.11.2026', ['2026-11-30']],
    ['4.12.2026', ['2026-12-04']],
    ['11.26.2026', ['2026-11-26']],
    ['26-11-2026', ['2026-11-26']],
    ['30/11/26', ['2026-11-30']],
    ['04/12/2026', ['2026-12-04', '2026-04-12']],
    ['04-12-2026', ['2026-12-04', '2026-04-12']],
    ['05/05/2026', ['2026-05-05']],
    ['20261130', ['2026-11-30']],
    ['2026-11-31', ['2026-11-30', '2026-12-01']],
    ['2026-26-11', ['2026-11-26']],
    ['31/31/2026', []],
    ['30 Movember 2026', []],
    ['next week', []],
  ] as const)('%j shows %j', (text, days) => expect(shown(parseDay(text))).toEqual(days));
});

describe('a tempo', () => {
  it.each([
    ['3,1,2,0', ['3-1-2-0']],
    ['3/1/2/0', ['3-1-2-0']],
    ['3120', ['3-1-2-0']],
    ['3 s - 1 s - 2 s - 0 s', ['3-1-2-0']],
    ['3-1-2', ['3-1-2-0']],
    ['3-1-X-0', []],
    ['slow', []],
    ['3-1-2-0 / 4-1-2-0', []],
  ] as const)('%j shows %j', (text, forms) => expect(shown(parseTempo(text))).toEqual(forms));
});

describe('a word for a side', () => {
  const ONLY = ['left', 'right', 'affected', 'other'];
  it.each(['unaffected', 'affectd', 'lft', 'rigth', 'othr', 'l'])('%s is not guessed', (word) =>
    expect(nearest(word, ONLY)).toBeUndefined(),
  );
  it('is known in capitals', () => expect(nearest('Left', ONLY)).toBe('left'));
  it('is guessed where it is a key', () =>
    expect(nearest('afected', ['weeks', 'affected', 'goals'])).toBe('affected'));
});

describe('an id', () => {
  const named = (name: string) => (name === 'Turn out with a band' ? 'band-turn-out' : undefined);
  it.each([
    ['Heel raise', 'heel-raise'],
    ['heel_raise', 'heel-raise'],
    ['Turn out with a band', 'band-turn-out'],
    ['heel-rise', undefined],
  ] as const)('%j is meant for %j', (word, id) =>
    expect(idMeant(word, ['heel-raise', 'band-turn-out'], named)).toBe(id),
  );
});
