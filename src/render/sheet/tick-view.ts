// The page to tick: one line for each day on which something is due, from the first day that the sheet
// is for to the day before the next visit, or the end of the plan.
import type { PlanNumbers, SessionWeek } from '../../compute/numbers.ts';
import { addDays, type Day, daysBetween, WEEKDAYS, weekdayOf, weekOf } from '../../units/day.ts';
import { commaText } from '../words/amounts.ts';
import { dayText } from '../words/date-words.ts';
import { isOwnChoice } from '../words/schedule-words.ts';
import type { Words } from '../words/words.ts';
import { sessionName } from './days-view.ts';
import type { TickRowView, TickView } from './sheet-view.ts';
import type { Shown } from './shown-week.ts';

/** Six weeks of days: more pages than that are left in the drawer. */
const MOST_ROWS = 42;

export function tickView(words: Words, numbers: PlanNumbers, { from, to }: Shown): TickView {
  const { plan } = numbers;
  const toEnd = daysBetween(from, to) + 1;
  // On the day of the next visit there is a new sheet.
  const toVisit = plan.nextVisit === null ? toEnd : daysBetween(from, plan.nextVisit);
  const count = Math.max(1, Math.min(toEnd, toVisit));
  const days = Array.from({ length: count }, (_, at) => tickDay(numbers, addDays(from, at)));
  const due = days.filter(({ fixed, free }) => fixed.length + free.length > 0);
  const all = due.length > 0 ? due : days;
  const shown = all.slice(0, MOST_ROWS);
  const names = (sessions: readonly SessionWeek[]) => [
    ...new Set(sessions.map((session) => sessionName(words, plan, session))),
  ];
  const free = names(shown.flatMap((day) => day.free));
  const isOne = plan.sessions.length === 1;
  const rows = shown.map(({ day, fixed }): TickRowView => {
    const isSaid = fixed.length > 0 && !isOne;
    return { date: dayText(words, day), due: isSaid ? commaText(words, names(fixed)) : null };
  });
  const last = shown.at(-1);
  return {
    heading: words.say('sheet.tick'),
    sentences: [
      words.say('sheet.tick-how'),
      ...(free.length === 0 || isOne
        ? []
        : [words.say('sheet.tick-choice', { sessions: commaText(words, free) })]),
    ],
    columns: ['date', 'done', 'pain', 'effort'].map((column) => words.say(`sheet.tick-${column}`)),
    rows,
    goesOn:
      last && all.length > shown.length
        ? words.say('sheet.tick-goes-on', { date: dayText(words, last.day) })
        : null,
  };
}

interface TickDay {
  readonly day: Day;
  /** Sessions that are due on that day. */
  readonly fixed: readonly SessionWeek[];
  /** Sessions that may be done on any day of that week. */
  readonly free: readonly SessionWeek[];
}

function tickDay({ plan, weeks }: PlanNumbers, day: Day): TickDay {
  const at = weekOf(plan.starts, day);
  const sessions = weeks.find(({ week }) => week === at)?.sessions ?? [];
  const isFree = ({ schedule }: SessionWeek) =>
    schedule.kind === 'as-needed' || isOwnChoice(schedule);
  return {
    day,
    fixed: sessions.filter((one) => !isFree(one) && isDue(one, plan.starts, day)),
    free: sessions.filter(isFree),
  };
}

function isDue({ schedule }: SessionWeek, starts: Day, day: Day): boolean {
  switch (schedule.kind) {
    case 'days':
      return schedule.days.includes(weekdayOf(day));
    case 'every':
      return daysBetween(starts, day) % schedule.days === 0;
    case 'days-a-week':
      return schedule.count[0] >= WEEKDAYS.length;
    case 'as-needed':
      return false;
  }
}
