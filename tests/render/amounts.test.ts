// Counts, lengths of time, lists, dates and schedules in English words.
import { describe, expect, it } from 'vitest';
import type { Schedule } from '../../src/model/plan.ts';
import {
  closed,
  durationText,
  listText,
  minutesText,
  numbersText,
  numberText,
  orderText,
  rangeText,
  timesText,
} from '../../src/render/words/amounts.ts';
import { dayText, fullDayText, plainDayText } from '../../src/render/words/date-words.ts';
import { scheduleText } from '../../src/render/words/schedule-words.ts';
import { parseDuration } from '../../src/units/duration.ts';
import type { Interval } from '../../src/units/interval.ts';
import { days } from './plans.ts';
import { english } from './records.ts';

const words = english();

describe('amounts', () => {
  it.each([
    ['45 s', '45 seconds'],
    ['1 s', '1 second'],
    ['2.5 s', '2.5 seconds'],
    ['60 s', '1 minute'],
    ['90 s', '1 minute 30 seconds'],
    ['61 s', '1 minute 1 second'],
    ['2 min', '2 minutes'],
    ['90 min', '90 minutes'],
    ['20-30 s', '20 to 30 seconds'],
    ['5-6 s', '5 to 6 seconds'],
    ['1-2 min', '1 to 2 minutes'],
    ['45-60 s', '45 seconds to 1 minute'],
    ['60-90 s', '1 minute to 1 minute 30 seconds'],
    ['0-30 s', 'up to 30 seconds'],
    ['1 breath', '1 slow breath'],
    ['2 breaths', '2 slow breaths'],
    ['5-6 breaths', '5 or 6 slow breaths'],
  ])('%s is %s', (text, says) => {
    const duration = parseDuration(text);
    if (!duration.ok) throw new Error(text);
    expect(durationText(words, duration.value)).toBe(says);
  });

  it.each<[Interval, string]>([
    [[1, 1], 'once'],
    [[2, 2], '2 times'],
    [[1, 2], '1 or 2 times'],
    [[5, 6], '5 or 6 times'],
    [[8, 12], '8 to 12 times'],
    [[1000, 1000], '1000 times'],
  ])('%j times is %s', (range, says) => expect(timesText(words, range)).toBe(says));

  it('have a decimal mark and a minus of their own', () => {
    expect([numberText(words, 2.5), numberText(words, -10), rangeText(words, [5.5, 6.5])]).toEqual([
      '2.5',
      'minus 10',
      '5.5 to 6.5',
    ]);
  });

  // Low end down, high end up, whole; one number if equal; under one "less than 1 minute".
  it.each<[Interval, string]>([
    [[930_000, 990_000], '15 to 17 minutes'],
    [[900_000, 900_000], '15 minutes'],
    [[900_001, 900_001], '15 to 16 minutes'],
    [[30_000, 59_999], 'less than 1 minute'],
    [[59_000, 61_000], 'up to 2 minutes'],
    [[60_000, 60_000], '1 minute'],
    [[0, 60_000], 'up to 1 minute'],
  ])('%j ms is %s', (ms, says) => expect(minutesText(words, ms)).toBe(says));

  it.each([
    [[1], '1'],
    [[1, 2], '1 and 2'],
    [[1, 2, 3, 4], '1 to 4'],
    [[1, 2, 4], '1, 2 and 4'],
    [[1, 2, 3, 5, 6, 7, 8], '1 to 3 and 5 to 8'],
    [[3, 1, 5], '3, 1 and 5'],
    [[2, 1], '2 and 1'],
    [[1, 2, 1], '1, 2 and 1'],
  ])('numbers %j are %s', (numbers, says) => expect(numbersText(words, numbers)).toBe(says));

  it.each([
    [[[1], [2], [3], [5]], '1 to 3, then 5'],
    [[[1], [2]], '1, then 2'],
    [[[7], [8, 13], [9], [12], [11]], '7, then 8 or 13, then 9, then 12, then 11'],
    [[[1, 4, 6]], '1 or 4 or 6'],
    [[], ''],
  ])('places %j in order are %s', (places, says) => expect(orderText(words, places)).toBe(says));

  it('make lists', () => {
    expect([
      listText(words, ['a'], 'and'),
      listText(words, ['a', 'b'], 'or'),
      listText(words, ['a', 'b', 'c'], 'and'),
    ]).toEqual(['a', 'a or b', 'a, b and c']);
  });

  it('end prose as a sentence, once', () => {
    expect(
      ['Sit', 'Sit.', 'Why?', 'Stop!', '(Sit.)', 'Sit … '].map((text) => closed(words, text)),
    ).toEqual(['Sit.', 'Sit.', 'Why?', 'Stop!', '(Sit.)', 'Sit …']);
  });
});

describe('days', () => {
  it('have names and an order from the pack', () => {
    expect(fullDayText(words, '2026-11-25')).toBe('Wednesday 25 November 2026');
    expect(plainDayText(words, '2026-03-01')).toBe('1 March 2026');
    expect(dayText(words, '2027-01-05')).toBe('Tuesday 5 January');
    expect(dayText(words, '2026-12-02')).toBe('Wednesday 2 December');
  });

  const twice: Interval = [2, 2];
  it.each<[string, Schedule, Interval, string, string]>([
    ['days', days('fri', 'mon', 'wed'), [1, 1], '2026-10-06', 'on Monday, Wednesday and Friday'],
    [
      'all days',
      days('mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'),
      [3, 3],
      '2026-10-06',
      'every day, 3 times a day',
    ],
    ['two or three times', days('mon'), [2, 3], '2026-10-06', 'on Monday, 2 or 3 times a day'],
    [
      'a week',
      { kind: 'days-a-week', count: [3, 5] },
      [1, 1],
      '2026-10-06',
      'on 3 to 5 days a week',
    ],
    [
      'once a week',
      { kind: 'days-a-week', count: [1, 1] },
      [1, 1],
      '2026-10-06',
      'on 1 day a week',
    ],
    ['seven a week', { kind: 'days-a-week', count: [7, 7] }, [1, 1], '2026-10-06', 'every day'],
    [
      'every 2',
      { kind: 'every', days: 2 },
      [1, 1],
      '2026-10-06',
      'every other day, from Tuesday 6 October',
    ],
    [
      'every 2, later',
      { kind: 'every', days: 2 },
      [1, 1],
      '2026-10-13',
      'every other day, from Wednesday 14 October',
    ],
    [
      'every 3',
      { kind: 'every', days: 3 },
      twice,
      '2026-10-07',
      'every 3 days, from Friday 9 October, 2 times a day',
    ],
    ['every 1', { kind: 'every', days: 1 }, [1, 1], '2026-10-06', 'every day'],
    ['as needed', { kind: 'as-needed' }, [1, 1], '2026-10-06', 'when you need it'],
    [
      'as needed, twice',
      { kind: 'as-needed' },
      twice,
      '2026-10-06',
      'when you need it, up to 2 times a day',
    ],
  ])('%s', (_, schedule, timesADay, from, says) => {
    expect(scheduleText(words, { schedule, timesADay, starts: '2026-10-06', from })).toBe(says);
  });
});
