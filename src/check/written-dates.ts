// Dates as they turn up in text: 1961-03-12, 12/3/1961, 12.03.1961, 12 March 1961. Only to tell an
// old date from a number; the dates of a plan are read elsewhere, in one form.
import { addDays, type Day, parseDay } from '../units/day.ts';
import type { Stretch } from './ways-to-reach.ts';

/** A date: two days where day and month could change places, none where the calendar lacks it. */
export interface WrittenDate extends Stretch {
  readonly days: readonly Day[];
}

const MONTHS = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];
const MONTH = `(${MONTHS.map((month) => `${month.slice(0, 3)}(?:${month.slice(3)}|[.]|t[.]?)?`).join('|')})`;
const YEAR_FIRST = /(?<![\p{N}.])((?:19|20|21)\d\d)([-/.])(\d{1,2})\2(\d{1,2})(?!\p{N})/gu;
const COMPACT = /(?<![\p{L}\p{N}.+_-])((?:19|20|21)\d\d)(\d\d)(\d\d)(?![\p{L}\p{N}_])/gu;
const YEAR_LAST = /(?<![\p{N}.])(\d{1,2})([-/.])(\d{1,2})\2((?:19|20|21)\d\d)(?!\p{N})/gu;
const DAY_MONTH = new RegExp(
  `(?<!\\p{N})(\\d{1,2})(?:st|nd|rd|th)? (?:of )?${MONTH},? (\\d{4})(?!\\p{N})`,
  'giu',
);
const MONTH_DAY = new RegExp(
  `(?<!\\p{L})${MONTH} (\\d{1,2})(?:st|nd|rd|th)?,? (\\d{4})(?!\\p{N})`,
  'giu',
);

/** Everything in a text that is written as a date. */
export function datesIn(text: string): readonly WrittenDate[] {
  return [
    ...matches(text, YEAR_FIRST, ([, year, , month, day]) => [[year, month, day]]),
    // Eight digits on end are a date only if the calendar has it.
    ...matches(text, COMPACT, ([, year, month, day]) => [[year, month, day]]).filter(
      ({ days }) => days.length > 0,
    ),
    ...matches(text, YEAR_LAST, ([, one, , two, year]) => [
      [year, one, two],
      [year, two, one],
    ]),
    ...matches(text, DAY_MONTH, ([, day, month, year]) => [[year, monthNumber(month), day]]),
    ...matches(text, MONTH_DAY, ([, month, day, year]) => [[year, monthNumber(month), day]]),
  ];
}

/** The text with its dates blanked by commas, every other character where it was. */
export function withoutDates(text: string): string {
  let rest = '';
  let from = 0;
  for (const { start, end } of [...datesIn(text)].sort((a, b) => a.start - b.start)) {
    if (start < from) continue;
    rest += text.slice(from, start) + ','.repeat(end - start);
    from = end;
  }
  return rest + text.slice(from);
}

/** The same day so many years earlier; of 29 February, the last of February or the 29th. */
export function yearsEarlier(day: Day, years: number): Day {
  const year = Number(day.slice(0, 4)) - years;
  const same = `${String(year).padStart(4, '0')}${day.slice(4)}`;
  return parseDay(same).ok || !day.endsWith('-02-29') ? same : addDays(`${year}-03-01`, -1);
}

type Parts = readonly [string | undefined, string | undefined, string | undefined];

function matches(
  text: string,
  pattern: RegExp,
  readings: (match: RegExpMatchArray) => readonly Parts[],
): readonly WrittenDate[] {
  return [...text.matchAll(pattern)].map((match) => {
    const days = readings(match).flatMap(([year = '', month = '', day = '']) => {
      const reading = parseDay(`${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`);
      return reading.ok ? [reading.value] : [];
    });
    return { start: match.index, end: match.index + match[0].length, days };
  });
}

function monthNumber(word: string | undefined): string {
  const start = word?.slice(0, 3).toLowerCase() ?? '';
  return String(MONTHS.findIndex((month) => month.startsWith(start)) + 1);
}
