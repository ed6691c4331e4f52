// Calendar days as a practice writes them: `2026-10-05`. Held as text, since text sorts by date and
// no clock, time zone or locale of a machine can shift it.
import { misread, type Reading, read } from './reading.ts';

/** A day of the calendar, `YYYY-MM-DD`. */
export type Day = string;

export const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
export type Weekday = (typeof WEEKDAYS)[number];

const MS_PER_DAY = 86_400_000;

/** Reads a day; one that the calendar lacks (31 June) is refused. */
export function parseDay(text: string): Reading<Day> {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return notADay(text);
  const [, year = '', month = '', day = ''] = match;
  if (Number(year) < 1900 || Number(year) > 2200) {
    return misread('not-a-date', `says ${text}, a year that is surely a slip`);
  }
  const last = lastOfMonth(Number(year), Number(month));
  if (last === undefined)
    return misread(
      'not-a-date',
      `says ${text}, but there is no month ${month}`,
      dayAndMonthSwapped(year, month, day),
    );
  if (Number(day) < 1 || Number(day) > last) {
    return misread(
      'not-a-date',
      `says ${text}, a day that the calendar does not have`,
      `${year}-${month}-${last}`,
      Number(day) === last + 1 ? addDays(`${year}-${month}-${last}`, 1) : undefined,
    );
  }
  return read(text);
}

/** Text that is no day, with the days that it could mean; a form is only shown that the calendar has. */
function notADay(text: string): Reading<never> {
  const [one, other] = datesMeant(text).filter((day) => day !== undefined);
  const isOne = other === undefined || one === other;
  const why = isOne
    ? 'but a date is written year-month-day'
    : 'in which day and month could change places';
  return misread('not-a-date', `says "${text}", ${why}`, one, other);
}

function lastOfMonth(year: number, month: number): number | undefined {
  if (month < 1 || month > 12) return undefined;
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}

/** What a date was meant as whose month is none: day and month the other way round. */
function dayAndMonthSwapped(year: string, month: string, day: string): string | undefined {
  return asDay(year, day, month);
}

function asDay(year: string, month: string | number, day: string | number): string | undefined {
  const last = lastOfMonth(Number(year), Number(month));
  const isThere = last !== undefined && Number(day) >= 1 && Number(day) <= last;
  return isThere ? [year, two(month), two(day)].join('-') : undefined;
}

const two = (part: string | number) => String(part).padStart(2, '0');

const MONTHS = 'jan feb mar apr may jun jul aug sep oct nov dec'.split(' ');

/** The days that a date written otherwise can mean: two where day and month could change places. */
function datesMeant(text: string): readonly (string | undefined)[] {
  const withTime = /^(\d{4}-\d{2}-\d{2})[T ]/.exec(text);
  if (withTime) return [withTime[1]];
  const yearFirst =
    /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(text) ?? /^(\d{4})(\d{2})(\d{2})$/.exec(text);
  if (yearFirst) return [asDay(...(yearFirst.slice(1) as [string, string, string]))];
  const yearLast = /^(\d{1,2})([-/.])\s?(\d{1,2})\2\s?(\d{4}|\d{2})$/.exec(text);
  if (yearLast) {
    const [, first = '', sign, second = '', year = ''] = yearLast;
    const dayFirst = asDay(inFull(year), second, first);
    const monthFirst = asDay(inFull(year), first, second);
    // With points the day comes first, wherever dates are written so.
    return sign === '.' && dayFirst !== undefined ? [dayFirst] : [dayFirst, monthFirst];
  }
  const worded =
    /^(?:[a-z]+,? )?(\d{1,2})(?:st|nd|rd|th)?[ .-]*(?:of )?([a-z]{3,9})[ ,.-]*(\d{4}|\d{2})$/i.exec(
      text,
    ) ??
    swapped(/^(?:[a-z]+,? )?([a-z]{3,9})[ .-]*(\d{1,2})(?:st|nd|rd|th)?[ ,]+(\d{4})$/i.exec(text));
  if (!worded) return [];
  const [, day = '', name = '', year = ''] = worded;
  const month = MONTHS.indexOf(name.slice(0, 3).toLowerCase()) + 1;
  return [asDay(inFull(year), month, day)];
}

function inFull(year: string): string {
  return year.length === 2 ? `20${year}` : year;
}

function swapped(match: RegExpExecArray | null): readonly string[] | null {
  return match && [match[0], match[2] ?? '', match[1] ?? '', match[3] ?? ''];
}

/** The day that many days later (or earlier, below 0). */
export function addDays(day: Day, days: number): Day {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * MS_PER_DAY).toISOString().slice(0, 10);
}

/** Days from one day to a later one; below 0 where it is earlier. */
export function daysBetween(from: Day, to: Day): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / MS_PER_DAY);
}

export function weekdayOf(day: Day): Weekday {
  const fromSunday = new Date(`${day}T00:00:00Z`).getUTCDay();
  return WEEKDAYS[(fromSunday + 6) % 7] as Weekday;
}

/** The week of a plan that a day falls in: days 0 to 6 from the start are week 1. */
export function weekOf(starts: Day, day: Day): number {
  return Math.floor(daysBetween(starts, day) / 7) + 1;
}
