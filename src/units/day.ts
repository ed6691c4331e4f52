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
  if (!match) return misread('not-a-date', `says "${text}", which is no date`, dateMeant(text));
  const [, year = '', month = '', day = ''] = match;
  if (Number(year) < 1900 || Number(year) > 2200) {
    return misread('not-a-date', `says ${text}, a year that is surely a slip`, '2026-10-05');
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
    );
  }
  return read(text);
}

function lastOfMonth(year: number, month: number): number | undefined {
  if (month < 1 || month > 12) return undefined;
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}

/** What a date was meant as whose month is none: day and month the other way round, else December. */
function dayAndMonthSwapped(year: string, month: string, day: string): string {
  const last = lastOfMonth(Number(year), Number(day));
  return last !== undefined && Number(month) >= 1 && Number(month) <= last
    ? `${year}-${day}-${month}`
    : `${year}-12-${day}`;
}

function dateMeant(text: string): string {
  const withTime = /^(\d{4}-\d{2}-\d{2})[T ]/.exec(text);
  if (withTime) return withTime[1] as string;
  const dotted = /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})$/.exec(text);
  if (dotted) return `${dotted[3]}-${dotted[2]?.padStart(2, '0')}-${dotted[1]?.padStart(2, '0')}`;
  const loose = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(text);
  // A day above 12 tells it from a month; otherwise the two could be mixed up.
  const slashed = /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/.exec(text);
  if (slashed && Number(slashed[1]) > 12)
    return dateMeant(`${slashed[1]}.${slashed[2]}.${slashed[3]}`);
  if (!loose) return '2026-10-05';
  return `${loose[1]}-${loose[2]?.padStart(2, '0')}-${loose[3]?.padStart(2, '0')}`;
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
