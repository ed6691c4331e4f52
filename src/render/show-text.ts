// The numbers of a plan for the terminal: `carryover show <plan>`. What the plan is, its weeks, how often
// and how long by session, the items, the weekly sets by muscle. Rounded here and nowhere before.
import type { PlanNumbers, SessionWeek, WeekNumbers } from '../compute/numbers.ts';
import type { Plan, Session } from '../model/plan.ts';
import type { Practice } from '../model/practice.ts';
import { addDays, weekOf } from '../units/day.ts';
import { milliseconds } from '../units/duration.ts';
import type { Interval } from '../units/interval.ts';
import { SIDES } from '../units/side.ts';
import { durationInShort, rounded, roundedRange } from './dose-in-short.ts';
import { minutesOf } from './plain-number.ts';
import { sessionItemsText } from './show-items-text.ts';
import { prose, type Screen, unbroken } from './terminal-text.ts';
import { type TextCell, type TextColumn, tableText } from './text-table.ts';
import { weekStretches } from './week-stretches.ts';

export interface ShowInput extends Screen {
  readonly practice: Practice;
  readonly plan: Plan;
  readonly numbers: PlanNumbers;
}

const NOTHING = '-';
const left = (heading: string): TextColumn => ({ heading, align: 'left' });
const right = (heading: string): TextColumn => ({ heading, align: 'right' });

/** A plan's numbers as a clinician reads them on a screen; no line end after the last line. */
export function showText(input: ShowInput): string {
  const { plan, numbers, width, paint } = input;
  const screen = { width, paint };
  const section = (heading: string, lead: string, body: string) =>
    [
      paint.bold(prose(heading, width)),
      ...(lead === '' ? [] : [leadText(lead, screen)]),
      body,
    ].join('\n');
  const sections = [
    titleText(plan, screen),
    section('Weeks', WEEKS_LEAD, weeksText(plan, numbers, screen)),
    section('Sessions', 'Times a week x minutes each time.', sessionsText(plan, numbers, screen)),
    ...plan.sessions.map((session, i) =>
      section(
        session.name === undefined ? session.id : `${session.id}: ${session.name}`,
        i === 0 ? itemsLead(input.practice) : '',
        sessionItemsText(numbers, session, screen),
      ),
    ),
    section(
      'Sets a week by muscle',
      'A set counts 1 for a prime muscle and 0.5 for an assisting one.',
      musclesText(numbers, screen),
    ),
  ];
  return sections.join('\n\n');
}

const WEEKS_LEAD =
  'Minutes: of all sessions. Work: minutes of repetitions, holds and bouts of a side. Change: of work, against the latest earlier week that was not easy.';

function leadText(text: string, { width, paint }: Screen): string {
  return prose(text, width).split('\n').map(paint.dim).join('\n');
}

/** The short form leaves out what is the practice's timing, so it is said once. */
function itemsLead({ timing }: Practice): string {
  const [move, pause] = [timing.move, timing.pause].map((ms) =>
    unbroken(durationInShort(milliseconds(ms))),
  );
  return `For one time through the session. Where a dose names no move or pause, the practice's timing holds: move ${move}, pause ${pause}.`;
}

function titleText(plan: Plan, { width, paint }: Screen): string {
  const { starts, weeks, nextVisit, closed, limits } = plan;
  const last = addDays(starts, 7 * weeks - 1);
  const facts = [
    `${unbroken(`${weeks} ${weeks === 1 ? 'week' : 'weeks'}`)}, ${starts} to ${last}.`,
    `Affected: ${plan.affected}.`,
    nextVisit === null
      ? 'No next visit.'
      : `Next visit ${nextVisit}, ${weekWords(plan, nextVisit)}.`,
    limits.timeMs === null
      ? 'No limit to the time of a session.'
      : `Time for a session: ${unbroken(`${rounded(limits.timeMs / 60_000, 1)} min`)}.`,
  ];
  return [
    ...prose(`${plan.id}: ${plan.title}`, width).split('\n').map(paint.bold),
    prose(facts.join(' '), width),
    ...(closed
      ? prose(`Closed ${closed.date}: ${closed.why}`, width).split('\n').map(paint.warn)
      : []),
  ].join('\n');
}

function weekWords({ starts, weeks }: Plan, day: string): string {
  const week = weekOf(starts, day);
  if (week < 1) return 'before week 1';
  return week > weeks ? 'after the last week' : `in week ${week}`;
}

function weeksText(plan: Plan, { weeks }: PlanNumbers, screen: Screen): string {
  const sides = SIDES.filter((side) => side !== 'middle' || hasMiddle(weeks));
  const columns = [
    left('Week'),
    left('From'),
    right('Minutes'),
    ...sides.map((side) => right(`Work ${side}`)),
    right('Change all'),
    right('Change strength'),
  ];
  const rows = weeks.map((week): TextCell[] => [
    `${week.week}${week.isEasy ? ' easy' : ''}`,
    addDays(plan.starts, 7 * (week.week - 1)),
    minutes(week.ms),
    ...sides.map((side) => minutes(week[side].workMs)),
    change(week.change.all),
    change(week.change.strength),
  ]);
  return tableText({ columns, rows, heads: 2 }, screen);
}

function hasMiddle(weeks: readonly WeekNumbers[]): boolean {
  return weeks.some(({ middle }) => middle.workMs[1] > 0 || middle.sets[1] > 0);
}

function minutes(ms: Interval): string {
  return roundedRange(minutesOf(ms), 1);
}

function change(share: number | null): string {
  if (share === null) return NOTHING;
  const percent = rounded(share * 100, 0);
  return `${Number(percent) > 0 ? '+' : ''}${percent} %`;
}

/** Rows are stretches of weeks, columns sessions; a session over the plan's time is marked. */
function sessionsText(plan: Plan, { weeks }: PlanNumbers, screen: Screen): string {
  const limit = plan.limits.timeMs;
  const stretches = weekStretches(weeks, (week) =>
    plan.sessions.map((session) => sessionCell(week, session, limit)),
  );
  const rows = stretches.map(({ label, value }) => [
    label,
    ...value.map(({ text, isLong }) =>
      isLong ? { text: `${text} !`, paint: screen.paint.warn } : text,
    ),
  ]);
  const columns = [left('Weeks'), ...plan.sessions.map(({ id }) => left(id))];
  const table = tableText({ columns, rows, heads: 1 }, screen);
  const isAnyLong = stretches.some(({ value }) => value.some(({ isLong }) => isLong));
  if (!isAnyLong || limit === null) return table;
  const legend = `! can take more than the ${rounded(limit / 60_000, 1)} min that the plan allows.`;
  return `${table}\n${prose(legend, screen.width)}`;
}

function sessionCell(week: WeekNumbers, session: Session, limit: number | null) {
  const there = week.sessions.find((one) => one.session === session);
  if (!there) return { text: NOTHING, isLong: false };
  return {
    text: `${often(there)} ${minutes(there.ms)}`,
    isLong: limit !== null && there.ms[1] > limit,
  };
}

function often({ schedule, perWeek }: SessionWeek): string {
  return schedule.kind === 'as-needed' ? 'as needed,' : `${roundedRange(perWeek, 0)} x`;
}

/** Rows are muscles and sides, columns stretches of weeks; sides with the same sets share a row. */
function musclesText({ weeks }: PlanNumbers, screen: Screen): string {
  const muscles = [...new Set(weeks.flatMap((week) => [...week.muscles.keys()]))].sort();
  if (muscles.length === 0) return 'No muscles are named.';
  const stretches = weekStretches(weeks, (week) =>
    muscles.map((muscle) => {
      const sets = week.muscles.get(muscle);
      return SIDES.map((side) => (sets ? roundedRange(sets[side], 1) : NOTHING));
    }),
  );
  const rows = muscles.flatMap((muscle, m) => {
    const bySide = SIDES.map((_, s) => stretches.map(({ value }) => value[m]?.[s] ?? NOTHING));
    return muscleRows(bySide).map(([side, cells], i) => [i === 0 ? muscle : '', side, ...cells]);
  });
  const columns = [left('Muscle'), left('Side'), ...stretches.map(({ label }) => right(label))];
  return tableText({ columns, rows, heads: 2 }, screen);
}

type SideCells = readonly [side: string, cells: readonly string[]];

function muscleRows([
  leftCells = [],
  rightCells = [],
  middle = [],
]: readonly string[][]): SideCells[] {
  const isNone = (cells: readonly string[]) =>
    cells.every((cell) => cell === '0' || cell === NOTHING);
  const middleRow: SideCells[] = isNone(middle) ? [] : [['middle', middle]];
  if (isNone(leftCells) && isNone(rightCells) && middleRow.length > 0) return middleRow;
  if (leftCells.join() === rightCells.join()) return [['left, right', leftCells], ...middleRow];
  return [['left', leftCells], ['right', rightCells], ...middleRow];
}
