// Days of the calendar in words. Names and order come from the words pack, never from the machine,
// whose own date formats change from version to version.
import { type Day, type Weekday, weekdayOf } from '../../units/day.ts';
import type { Words } from './words.ts';

/** `Wednesday 2 December`: a plan is shorter than a year, and its first and last day say which. */
export function dayText(words: Words, day: Day): string {
  return words.say('dates.day', parts(words, day));
}

/** `Wednesday 25 November 2026`. */
export function fullDayText(words: Words, day: Day): string {
  return words.say('dates.day-year', parts(words, day));
}

/** `23 November 2026`. */
export function plainDayText(words: Words, day: Day): string {
  return words.say('dates.plain', parts(words, day));
}

export function weekdayText(words: Words, weekday: Weekday): string {
  return words.say(`dates.weekdays.${weekday}`);
}

function parts(words: Words, day: Day): Record<string, string> {
  return {
    weekday: weekdayText(words, weekdayOf(day)),
    day: String(Number(day.slice(8))),
    month: words.say(`dates.months.${Number(day.slice(5, 7))}`),
    year: day.slice(0, 4),
  };
}
