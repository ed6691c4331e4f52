// How the days change after the week shown: sessions that begin, end or move to other days. Exercises
// have lines of their own, and so have the rounds of a circuit.
import type { SessionWeek } from '../../compute/numbers.ts';
import { isSame } from '../../units/interval.ts';
import { sentencesText } from '../words/amounts.ts';
import { isOwnChoice, scheduleText } from '../words/schedule-words.ts';
import { type ChangesInput, dated, sessionIn } from './change-lines.ts';
import { circuitChanges } from './circuit-changes.ts';
import { sessionName, sessionView } from './days-view.ts';
import type { EasyLine } from './easy-week-view.ts';
import type { ChangesView, LineView } from './sheet-view.ts';
import { firstDayOf } from './shown-week.ts';

export interface SessionChanges {
  /** One block a session that changes, then one a circuit whose rounds change. */
  readonly changes: readonly ChangesView[];
  /** Rounds of easy weeks. */
  readonly easy: readonly EasyLine[];
}

export function sessionChanges(input: ChangesInput): SessionChanges {
  const sessions = input.plan.sessions.map(({ id }) => oneSession(input, id));
  const circuits = circuitChanges(input);
  const blocks = [...sessions, ...circuits.changes];
  return { changes: blocks.filter(({ lines }) => lines.length > 0), easy: circuits.easy };
}

function oneSession(input: ChangesInput, id: string): ChangesView {
  const { words, plan, shown, later } = input;
  const lines: LineView[] = [];
  let last = sessionIn(shown, id);
  let isThere = last !== undefined;
  let heading = last && sessionName(words, plan, last);
  for (const week of later) {
    const now = sessionIn(week, id);
    if (!now) {
      if (isThere) lines.push(dated(input, week.week, words.say('growth.session-ends')));
    } else {
      heading ??= sessionName(words, plan, now);
      if (!isThere) lines.push(dated(input, week.week, begun(input, now, week.week)));
      else if (last) lines.push(...changed(input, last, now, week.week));
      last = now;
    }
    isThere = now !== undefined;
  }
  return { heading: heading ?? '', lines };
}

/** "Exercise 11, on 2 or 3 days a week. You choose the days. About 2 to 3 minutes." */
function begun(
  { words, plan, numberIn }: ChangesInput,
  session: SessionWeek,
  week: number,
): string {
  const ids = session.parts.flatMap((part) =>
    part.items.map(({ item }) => `${session.session.id}/${item.id}`),
  );
  const numbers = ids.flatMap((id) => numberIn(id, week) ?? []);
  const from = firstDayOf(plan, week);
  return sessionView(words, { plan, session, numbers, from }).text;
}

function changed(
  input: ChangesInput,
  last: SessionWeek,
  now: SessionWeek,
  week: number,
): readonly LineView[] {
  const { words, plan } = input;
  const names = [last, now].map((session) => sessionName(words, plan, session)) as [string, string];
  const renamed = names[0] === names[1] ? '' : words.say('growth.renamed', { name: names[1] });
  const { schedule, timesADay } = now;
  const isMoved = JSON.stringify(last.schedule) !== JSON.stringify(schedule);
  if (!isMoved && isSame(last.timesADay, timesADay)) {
    return renamed === '' ? [] : [dated(input, week, renamed)];
  }
  const from = firstDayOf(plan, week);
  const said = scheduleText(words, { schedule, timesADay, starts: plan.starts, from });
  // "Every day" alone would not tell that it was twice a day before.
  const isOnceNow = timesADay[1] === 1 && last.timesADay[1] > 1 && schedule.kind !== 'as-needed';
  const days = isOnceNow ? words.say('schedule.once-a-day-now', { schedule: said }) : said;
  const isMore = now.perWeek[0] > last.perWeek[0] || now.perWeek[1] > last.perWeek[1];
  const text = sentencesText(words, [
    words.say('growth.schedule', { schedule: days }),
    isOwnChoice(schedule) ? words.say('schedule.you-choose') : '',
    renamed,
  ]);
  return [dated(input, week, text, isMore ? null : 'growth.in-any-case')];
}
