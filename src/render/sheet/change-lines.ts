// What the changes of days and of circuits are worded from, and how a line of them opens.
import type { SessionWeek, WeekNumbers } from '../../compute/numbers.ts';
import type { Plan } from '../../model/plan.ts';
import { sentencesText } from '../words/amounts.ts';
import { dayText } from '../words/date-words.ts';
import type { Words } from '../words/words.ts';
import type { LineView } from './sheet-view.ts';
import { firstDayOf } from './shown-week.ts';

export interface ChangesInput {
  readonly words: Words;
  readonly plan: Plan;
  readonly shown: WeekNumbers;
  readonly later: readonly WeekNumbers[];
  /** The number of an item of a session in a week. */
  readonly numberIn: (slotId: string, week: number) => number | undefined;
}

/** A line from a week's first day on; `less` is said of what asks for no more than before. */
export function dated(
  { words, plan }: ChangesInput,
  week: number,
  text: string,
  less: string | null = null,
): LineView {
  const lead = words.say('growth.from', { date: dayText(words, firstDayOf(plan, week)) });
  return {
    lead:
      less === null
        ? words.say('growth.line', { lead })
        : words.say('growth.line-if', { lead, condition: words.say(less) }),
    text: sentencesText(words, [text]),
  };
}

export function sessionIn(week: WeekNumbers, id: string): SessionWeek | undefined {
  return week.sessions.find(({ session }) => session.id === id);
}
