// How often a session comes in one week of the plan.
import type { Schedule, Window } from '../model/plan.ts';
import { exactly, type Interval, times, ZERO } from '../units/interval.ts';

const DAYS_A_WEEK = 7;

/**
 * Sessions a week: days times a day. `every` counts the multiples of its days that fall in the
 * week, always from day 0 of the plan: every 2 days is 4 in week 1 and 3 in week 2.
 */
export function perWeek(schedule: Schedule, timesADay: Interval, week: number): Interval {
  return times(daysIn(schedule, week), timesADay);
}

function daysIn(schedule: Schedule, week: number): Interval {
  switch (schedule.kind) {
    case 'days':
      return exactly(schedule.days.length);
    case 'days-a-week':
      return schedule.count;
    case 'every':
      return exactly(
        multiplesBefore(schedule.days, week * DAYS_A_WEEK) -
          multiplesBefore(schedule.days, (week - 1) * DAYS_A_WEEK),
      );
    case 'as-needed':
      return ZERO;
  }
}

/** How many of 0, n, 2n … lie before a day. */
function multiplesBefore(n: number, day: number): number {
  return Math.ceil(day / n);
}

/** Whether a week lies in one of the windows; no windows is every week. */
export function isWithin(windows: readonly Window[] | null, week: number): boolean {
  return windows === null || windows.some(([first, last]) => first <= week && week <= last);
}
