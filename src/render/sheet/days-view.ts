// The days: which exercises by number on which days, and how long it takes.
import type { SessionWeek } from '../../compute/numbers.ts';
import type { Plan } from '../../model/plan.ts';
import type { Day } from '../../units/day.ts';
import { type Interval, isExact, isSame } from '../../units/interval.ts';
import { minutesText, numbersText, numberText, sentencesText } from '../words/amounts.ts';
import { isOwnChoice, scheduleText } from '../words/schedule-words.ts';
import { raised, type Words } from '../words/words.ts';
import type { SessionView } from './sheet-view.ts';

const MINUTE_MS = 60_000;

/** A session's own name, or one from the pack. */
export function sessionName(words: Words, plan: Plan, { session, name }: SessionWeek): string {
  if (name !== null) return name;
  if (plan.sessions.length === 1) return words.say('sheet.session');
  return words.say('sheet.session-number', {
    count: numberText(words, plan.sessions.findIndex(({ id }) => id === session.id) + 1),
  });
}

export interface SessionSettings {
  readonly plan: Plan;
  readonly session: SessionWeek;
  /** The numbers of its exercises in the order done. */
  readonly numbers: readonly number[];
  readonly from: Day;
}

export function sessionView(words: Words, settings: SessionSettings): SessionView {
  const name = sessionName(words, settings.plan, settings.session);
  const text = sessionText(words, settings);
  return { name, text, sentence: words.say('text.lead', { name, text }) };
}

/** "exercises 1 to 4, on Monday, Wednesday and Friday. About 15 to 17 minutes." */
function sessionText(words: Words, { plan, session, numbers, from }: SessionSettings): string {
  const { schedule, timesADay } = session;
  const exercises =
    numbers.length === 1
      ? words.say('sheet.exercise', { number: numbersText(words, numbers) })
      : words.say('sheet.exercises', { numbers: numbersText(words, numbers) });
  const days = scheduleText(words, { schedule, timesADay, starts: plan.starts, from });
  const first = words.say('sheet.session-text', { exercises, schedule: days });
  const rest = sentencesText(words, [
    isOwnChoice(schedule) ? words.say('schedule.you-choose') : '',
    lengthSentence(words, session),
  ]);
  return words.say('text.sentences', { a: first, b: rest });
}

/** "About 15 to 17 minutes."; without "about" where the session is one stretch of time and no more. */
function lengthSentence(words: Words, session: SessionWeek): string {
  // "About less than 1 minute" says the same thing twice.
  const how = isTimedAlone(session) || session.ms[0] < MINUTE_MS ? 'exact' : 'about';
  const each = timesADayIsOne(session.timesADay) ? '' : '-each';
  const minutes = minutesText(words, session.ms);
  return raised(words.say(`sheet.minutes-${how}${each}`, { minutes }));
}

function timesADayIsOne(timesADay: Interval): boolean {
  return isExact(timesADay) && timesADay[0] === 1;
}

function isTimedAlone({ parts, ms }: SessionWeek): boolean {
  const items = parts.flatMap((part) => part.items);
  const [only] = items;
  if (items.length !== 1 || !only) return false;
  const work = only.middle ?? only.left ?? only.right;
  const time = work?.dose.values.time;
  return time?.unit === 'ms' && isSame(time.range, ms);
}
