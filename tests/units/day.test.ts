// Days of the calendar against dates that are known, and against each other.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  daysBetween,
  parseDay,
  WEEKDAYS,
  weekdayOf,
  weekOf,
} from '../../src/units/day.ts';
import { checkOf, RUNS, taken } from './readings.ts';

// Computed, not taken from a calendar in print: reference.yaml, iso_weeks. Week and weekday of ISO 8601.
const ISO_WEEKS = {
  '2025-12-29': '2026-W01-1',
  '2026-01-01': '2026-W01-4',
  '2027-01-01': '2026-W53-5',
  '2021-01-01': '2020-W53-5',
  '2024-12-30': '2025-W01-1',
  '2005-01-01': '2004-W53-6',
  '2008-12-29': '2009-W01-1',
  '2026-11-25': '2026-W48-3',
} as const;

// RFC 5545, section 3.8.5.3: Tuesdays and Thursdays from 2 September 1997 (reference.yaml, calendar_rrule_examples).
const TUESDAYS_AND_THURSDAYS = [
  '1997-09-02',
  '1997-09-04',
  '1997-09-09',
  '1997-09-11',
  '1997-09-16',
  '1997-09-18',
  '1997-09-23',
  '1997-09-25',
  '1997-09-30',
  '1997-10-02',
] as const;

/** The length of a month by the Gregorian rule, worked without a calendar of the machine. */
function lengthOf(year: number, month: number): number {
  const isLeap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  return [31, isLeap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] as number;
}

const two = (n: number) => String(n).padStart(2, '0');

const days = fc
  .record({
    year: fc.integer({ min: 1900, max: 2199 }),
    month: fc.integer({ min: 1, max: 12 }),
    day: fc.integer({ min: 1, max: 31 }),
  })
  .map(
    ({ year, month, day }) => `${year}-${two(month)}-${two(Math.min(day, lengthOf(year, month)))}`,
  );

describe('a day', () => {
  it.each(['2026-10-05', '2024-02-29', '2000-02-29', '1900-01-01', '2200-12-31'])(
    '%s is one',
    (text) => expect(taken(parseDay(text))).toBe(text),
  );

  it.each([
    '2026-02-29',
    '1900-02-29',
    '2100-02-29',
    '2026-06-31',
    '2026-13-01',
    '2026-00-10',
    '2026-10-00',
    '2026-10-32',
    '1899-12-31',
    '2201-01-01',
    '0026-10-05',
    '26-10-05',
    '2026-10-5',
    '2026-1-05',
    '2026/10/05',
    '05.10.2026',
    '20261005',
    '2026-10-05T00:00',
    ' 2026-10-05',
    '2026-10-05 ',
    'today',
    '',
    '２０２６-10-05',
    '-2026-10-05',
  ])('%s is none', (text) => expect(checkOf(parseDay(text))).toBe('not-a-date'));

  it('is one exactly where the calendar has it', () => {
    const written = fc.record({
      year: fc.integer({ min: 1900, max: 2200 }),
      month: fc.nat({ max: 14 }),
      day: fc.nat({ max: 33 }),
    });
    fc.assert(
      fc.property(written, ({ year, month, day }) => {
        const isThere = month >= 1 && month <= 12 && day >= 1 && day <= lengthOf(year, month);
        expect(parseDay(`${year}-${two(month)}-${two(day)}`).ok).toBe(isThere);
      }),
      RUNS,
    );
  });
});

describe('known dates', () => {
  it.each(Object.entries(ISO_WEEKS))('%s is %s', (day, iso) => {
    const weekday = Number(iso.slice(-1));
    expect(weekdayOf(day)).toBe(WEEKDAYS[weekday - 1]);
    // By ISO 8601 week 1 is the week of 4 January.
    const [, year, week] = /^(\d{4})-W(\d\d)-/.exec(iso) ?? [];
    const fourth = `${year}-01-04`;
    const monday = addDays(fourth, -WEEKDAYS.indexOf(weekdayOf(fourth)));
    expect(weekOf(monday, day)).toBe(Number(week));
  });

  it('of RFC 5545 fall on Tuesday and Thursday, week by week', () => {
    expect(TUESDAYS_AND_THURSDAYS.map(weekdayOf)).toEqual(
      TUESDAYS_AND_THURSDAYS.map((_, i) => (i % 2 === 0 ? 'tue' : 'thu')),
    );
    expect(TUESDAYS_AND_THURSDAYS.map((day) => weekOf('1997-09-02', day))).toEqual([
      1, 1, 2, 2, 3, 3, 4, 4, 5, 5,
    ]);
    expect(daysBetween('1997-09-02', '1997-10-02')).toBe(30);
  });

  it('pass over the ends of months, years and leap days', () => {
    expect(addDays('2024-02-28', 1)).toBe('2024-02-29');
    expect(addDays('2024-02-28', 2)).toBe('2024-03-01');
    expect(addDays('2026-02-28', 1)).toBe('2026-03-01');
    expect(addDays('2026-12-31', 1)).toBe('2027-01-01');
    expect(addDays('2026-03-01', -1)).toBe('2026-02-28');
    // Where clocks are put forward or back the day is 23 or 25 hours long; here it is one day.
    expect(daysBetween('2026-03-28', '2026-03-30')).toBe(2);
    expect(daysBetween('2026-10-24', '2026-10-26')).toBe(2);
  });
});

describe('days between', () => {
  it('are what is added, there and back', () => {
    fc.assert(
      fc.property(days, fc.integer({ min: -5_000, max: 5_000 }), (day, n) => {
        const later = addDays(day, n);
        expect(daysBetween(day, later)).toBe(n);
        expect(addDays(later, -n)).toBe(day);
        expect(later < day).toBe(n < 0);
      }),
      RUNS,
    );
  });

  it('go one day at a time through month and year as the Gregorian rule says', () => {
    fc.assert(
      fc.property(days, (day) => {
        const [year, month, date] = day.split('-').map(Number) as [number, number, number];
        const isLast = date === lengthOf(year, month);
        const next = !isLast
          ? [year, month, date + 1]
          : month === 12
            ? [year + 1, 1, 1]
            : [year, month + 1, 1];
        expect(addDays(day, 1)).toBe(next.map((part) => two(part)).join('-'));
      }),
      RUNS,
    );
  });

  it('move the weekday by as many, in sevens', () => {
    fc.assert(
      fc.property(days, fc.nat({ max: 700 }), (day, n) => {
        const at = WEEKDAYS.indexOf(weekdayOf(day));
        expect(weekdayOf(addDays(day, n))).toBe(WEEKDAYS[(at + n) % 7]);
      }),
      RUNS,
    );
  });

  it('make weeks of a plan: n is the days 7(n-1) to 7n-1 from the start', () => {
    fc.assert(
      fc.property(
        days,
        fc.integer({ min: -20, max: 60 }),
        fc.nat({ max: 6 }),
        (starts, week, day) => {
          expect(weekOf(starts, addDays(starts, 7 * (week - 1) + day))).toBe(week);
        },
      ),
      RUNS,
    );
  });
});
