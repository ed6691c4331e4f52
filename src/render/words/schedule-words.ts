// On which days, in words: "on Monday, Wednesday and Friday", "every other day, from Tuesday 6
// October", "on 3 to 5 days a week", each with how often a day.
import type { Schedule } from '../../model/plan.ts';
import { addDays, type Day, daysBetween, WEEKDAYS } from '../../units/day.ts';
import { type Interval, isExact } from '../../units/interval.ts';
import { counted, listText, numberText, timesText } from './amounts.ts';
import { dayText, weekdayText } from './date-words.ts';
import type { Words } from './words.ts';

export interface ScheduleSettings {
  readonly schedule: Schedule;
  readonly timesADay: Interval;
  /** Day 0 of the plan, from which `every` counts. */
  readonly starts: Day;
  /** The first day that the words are for. */
  readonly from: Day;
}

/** The schedule as a part of a sentence. */
export function scheduleText(words: Words, settings: ScheduleSettings): string {
  const { schedule, timesADay } = settings;
  const days = daysText(words, settings);
  const isOnceADay = isExact(timesADay) && timesADay[0] === 1;
  if (isOnceADay) return days;
  const key = schedule.kind === 'as-needed' ? 'schedule.as-needed-times' : 'schedule.times-a-day';
  return words.say(key, { schedule: days, times: timesText(words, timesADay) });
}

/** Whether the person chooses the days, which is said in a sentence of its own. */
export function isOwnChoice(schedule: Schedule): boolean {
  return schedule.kind === 'days-a-week' && schedule.count[0] < WEEKDAYS.length;
}

function daysText(words: Words, { schedule, starts, from }: ScheduleSettings): string {
  switch (schedule.kind) {
    case 'days': {
      if (schedule.days.length === WEEKDAYS.length) return words.say('schedule.daily');
      const inOrder = WEEKDAYS.filter((day) => schedule.days.includes(day));
      return words.say('schedule.days', {
        days: listText(
          words,
          inOrder.map((day) => weekdayText(words, day)),
          'and',
        ),
      });
    }
    case 'days-a-week':
      return isOwnChoice(schedule)
        ? counted(words, 'schedule.days-a-week', schedule.count)
        : words.say('schedule.daily');
    case 'every': {
      if (schedule.days === 1) return words.say('schedule.daily');
      const date = dayText(words, nextOf(schedule.days, starts, from));
      return schedule.days === 2
        ? words.say('schedule.every-other', { date })
        : words.say('schedule.every', { count: numberText(words, schedule.days), date });
    }
    case 'as-needed':
      return words.say('schedule.as-needed');
  }
}

/** The first of the days counted from the start that is not before `from`. */
function nextOf(every: number, starts: Day, from: Day): Day {
  const passed = Math.max(0, daysBetween(starts, from));
  return addDays(starts, Math.ceil(passed / every) * every);
}
