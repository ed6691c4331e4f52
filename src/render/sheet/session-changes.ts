// How the days change after the week shown: sessions that begin, end or move to other days, and the
// rounds of a circuit. Exercises have lines of their own.
import type { SessionWeek, WeekNumbers } from '../../compute/numbers.ts';
import type { Plan } from '../../model/plan.ts';
import { isSame } from '../../units/interval.ts';
import { numbersText, sentencesText } from '../words/amounts.ts';
import { ifLastStep } from '../words/condition-words.ts';
import { dayText } from '../words/date-words.ts';
import { togetherSentence } from '../words/dose-sentence.ts';
import { isOwnChoice, scheduleText } from '../words/schedule-words.ts';
import type { Words } from '../words/words.ts';
import { sessionName, sessionView } from './days-view.ts';
import type { ChangesView } from './sheet-view.ts';
import { firstDayOf, lastDayOf } from './shown-week.ts';

export interface ChangesInput {
  readonly words: Words;
  readonly plan: Plan;
  readonly shown: WeekNumbers;
  readonly later: readonly WeekNumbers[];
  /** The number of an item of a session in a week. */
  readonly numberIn: (slotId: string, week: number) => number | undefined;
  readonly year: string;
}

/** One block a session that changes, then one a circuit whose rounds change. */
export function sessionChanges(input: ChangesInput): readonly ChangesView[] {
  const blocks = input.plan.sessions.map(({ id }) => oneSession(input, id));
  const circuits = input.plan.sessions.flatMap(({ id, parts }) =>
    parts.map((_, at) => oneCircuit(input, id, at)),
  );
  return [...blocks, ...circuits].filter(({ lines }) => lines.length > 0);
}

function oneSession(input: ChangesInput, id: string): ChangesView {
  const { words, plan, shown, later } = input;
  const lines: string[] = [];
  let last = sessionIn(shown, id);
  let isThere = last !== undefined;
  let heading = last && sessionName(words, plan, last);
  for (const week of later) {
    const now = sessionIn(week, id);
    const from = () => firstDayOf(plan, week.week);
    if (!now) {
      if (isThere) lines.push(dated(input, week.week, null, words.say('growth.session-ends')));
    } else {
      heading ??= sessionName(words, plan, now);
      if (!isThere) {
        const numbers = numbersOf(input, now, week.week);
        const { text } = sessionView(words, {
          plan,
          session: now,
          numbers,
          from: from(),
          year: input.year,
        });
        lines.push(dated(input, week.week, ifLastStep(words), text));
      } else if (last) lines.push(...changed(input, last, now, week.week));
      last = now;
    }
    isThere = now !== undefined;
  }
  return { heading: heading ?? '', lines };
}

function changed(
  input: ChangesInput,
  last: SessionWeek,
  now: SessionWeek,
  week: number,
): readonly string[] {
  const { words, plan, year } = input;
  const lines: string[] = [];
  const names = [last, now].map((session) => sessionName(words, plan, session)) as [string, string];
  if (names[0] !== names[1]) {
    lines.push(dated(input, week, null, words.say('growth.renamed', { name: names[1] })));
  }
  const isMoved = JSON.stringify(last.schedule) !== JSON.stringify(now.schedule);
  if (!isMoved && isSame(last.timesADay, now.timesADay)) return lines;
  const { schedule, timesADay } = now;
  const from = firstDayOf(plan, week);
  const said = scheduleText(words, { schedule, timesADay, starts: plan.starts, from, year });
  // "Every day" alone would not tell that it was twice a day before.
  const isOnceNow = timesADay[1] === 1 && last.timesADay[1] > 1 && schedule.kind !== 'as-needed';
  const days = isOnceNow ? words.say('schedule.once-a-day-now', { schedule: said }) : said;
  const isMore = now.perWeek[0] > last.perWeek[0] || now.perWeek[1] > last.perWeek[1];
  const text = dated(
    input,
    week,
    isMore ? ifLastStep(words) : null,
    words.say('growth.schedule', { schedule: days }),
  );
  const choose = isOwnChoice(schedule) ? words.say('schedule.you-choose') : '';
  return [...lines, sentencesText(words, [text, choose])];
}

/** The rounds of a circuit and the rest between them; which exercises it has is told by those. */
function oneCircuit(input: ChangesInput, id: string, at: number): ChangesView {
  const { words, shown, later } = input;
  const lines: string[] = [];
  let last = circuitIn(input, shown, id, at);
  let first = last;
  let easyUntil = 0;
  for (const week of later) {
    const now = circuitIn(input, week, id, at);
    if (!now) continue;
    first ??= now;
    if (last && week.isEasy && week.week > easyUntil && now.rounds !== last.rounds) {
      easyUntil = lastAlike(
        input,
        week,
        (one) => circuitIn(input, one, id, at)?.rounds === now.rounds,
      );
      const next = later.find((one) => one.week === easyUntil + 1);
      const after = next && circuitIn(input, next, id, at);
      // More rounds than before are a step that she may leave; fewer are not.
      const isUpToHer = after && (after.pace === last.pace || after.rounds > last.rounds);
      const asBefore = isUpToHer ? words.say('growth.easy-then-as-before') : '';
      lines.push(sentencesText(words, [easyLine(input, week.week, easyUntil, now.says), asBefore]));
    } else if (last && !week.isEasy && now.pace !== last.pace) {
      const isMore = now.rounds > last.rounds;
      lines.push(dated(input, week.week, isMore ? ifLastStep(words) : null, now.says));
    }
    if (!week.isEasy || !last) last = now;
  }
  const heading = first
    ? words.say('growth.together', { numbers: numbersText(words, first.numbers) })
    : '';
  return { heading, lines };
}

interface Circuit {
  readonly rounds: number;
  /** Rounds and rest. */
  readonly pace: string;
  readonly numbers: readonly number[];
  readonly says: string;
}

function circuitIn(
  { words, plan, numberIn }: ChangesInput,
  week: WeekNumbers,
  id: string,
  at: number,
): Circuit | undefined {
  const session = sessionIn(week, id);
  const written = plan.sessions.find((one) => one.id === id)?.parts[at];
  const part = session?.parts.find((one) => one.part === written);
  if (!part || part.rounds === null) return undefined;
  const { rounds, restBetweenRoundsMs } = part;
  const numbers = part.items.flatMap(({ item }) => numberIn(`${id}/${item.id}`, week.week) ?? []);
  return {
    rounds,
    pace: JSON.stringify([rounds, restBetweenRoundsMs]),
    numbers,
    says: togetherSentence(words, numbers, rounds, restBetweenRoundsMs),
  };
}

function lastAlike(
  input: ChangesInput,
  from: WeekNumbers,
  isAlike: (week: WeekNumbers) => boolean,
): number {
  let until = from.week;
  for (const week of input.later) {
    if (week.week <= until) continue;
    if (!week.isEasy || !isAlike(week)) break;
    until = week.week;
  }
  return until;
}

function easyLine(input: ChangesInput, week: number, until: number, text: string): string {
  const { words, plan, year } = input;
  const from = dayText(words, firstDayOf(plan, week), year);
  const to = dayText(words, lastDayOf(plan, until), year);
  return words.say('growth.easy', { from, to, text });
}

function dated(
  { words, plan, year }: ChangesInput,
  week: number,
  condition: string | null,
  text: string,
): string {
  const from = words.say('growth.from', { date: dayText(words, firstDayOf(plan, week), year) });
  return condition === null
    ? words.say('growth.dated', { from, text })
    : words.say('growth.dated-if', { from, condition, text });
}

function sessionIn(week: WeekNumbers, id: string): SessionWeek | undefined {
  return week.sessions.find(({ session }) => session.id === id);
}

function numbersOf(input: ChangesInput, session: SessionWeek, week: number): readonly number[] {
  const ids = session.parts.flatMap((part) =>
    part.items.map(({ item }) => `${session.session.id}/${item.id}`),
  );
  return ids.flatMap((id) => input.numberIn(id, week) ?? []);
}
