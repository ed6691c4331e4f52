// Easy weeks as blocks of their own: when, why, and what each exercise is then. Weeks that follow one
// another alike are one block.
import type { WeekNumbers } from '../../compute/numbers.ts';
import type { Plan } from '../../model/plan.ts';
import { dayText } from '../words/date-words.ts';
import type { Words } from '../words/words.ts';
import type { EasyWeekView, LineView } from './sheet-view.ts';
import { firstDayOf, lastDayOf } from './shown-week.ts';

export interface EasyLine extends LineView {
  readonly week: number;
}

export function easyWeekViews(
  words: Words,
  plan: Plan,
  later: readonly WeekNumbers[],
  all: readonly EasyLine[],
): readonly EasyWeekView[] {
  const linesIn = (week: number): readonly LineView[] =>
    all.filter((line) => line.week === week).map(({ lead, text }) => ({ lead, text }));
  const stretches: { readonly from: number; to: number; readonly lines: readonly LineView[] }[] =
    [];
  for (const { week, isEasy } of later) {
    const lines = linesIn(week);
    if (!isEasy || lines.length === 0) continue;
    const last = stretches.at(-1);
    if (last?.to === week - 1 && JSON.stringify(last.lines) === JSON.stringify(lines)) {
      last.to = week;
    } else stretches.push({ from: week, to: week, lines });
  }
  return stretches.map(({ from, to, lines }) => ({
    heading: words.say('growth.easy', {
      from: dayText(words, firstDayOf(plan, from)),
      to: dayText(words, lastDayOf(plan, to)),
    }),
    sentences: [words.say('growth.easy-why'), words.say('growth.easy-after')],
    lines,
  }));
}
