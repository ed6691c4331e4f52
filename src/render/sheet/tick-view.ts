// The page to tick: one line a day, from the first day that the sheet is for to the day before the
// next visit, or the end of the plan, and six weeks at the most.
import type { Plan } from '../../model/plan.ts';
import { addDays, daysBetween } from '../../units/day.ts';
import { dayText } from '../words/date-words.ts';
import type { Words } from '../words/words.ts';
import type { TickView } from './sheet-view.ts';
import type { Shown } from './shown-week.ts';

const MOST_DAYS = 42;

export function tickView(words: Words, plan: Plan, { from, to }: Shown, year: string): TickView {
  const toEnd = daysBetween(from, to) + 1;
  // On the day of the next visit there is a new sheet.
  const toVisit = plan.nextVisit === null ? toEnd : daysBetween(from, plan.nextVisit);
  const days = Math.max(1, Math.min(MOST_DAYS, toEnd, toVisit));
  return {
    heading: words.say('sheet.tick'),
    columns: ['date', 'done', 'pain', 'effort'].map((column) => words.say(`sheet.tick-${column}`)),
    rows: Array.from({ length: days }, (_, at) => dayText(words, addDays(from, at), year)),
  };
}
