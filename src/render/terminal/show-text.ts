// The numbers of a plan for the terminal: `carryover show <plan>`. What the plan is, its weeks, how often
// and how long by session, the items, the weekly sets by muscle. Rounded here and nowhere before.
import { gradeText, type PlanReading } from '../../check/reading-grade.ts';
import type { PlanNumbers, SessionWeek, WeekNumbers } from '../../compute/numbers.ts';
import type { Plan, Session } from '../../model/plan.ts';
import type { Practice } from '../../model/practice.ts';
import { addDays, weekOf } from '../../units/day.ts';
import { milliseconds } from '../../units/duration.ts';
import { durationInShort, rounded, roundedRange } from './dose-in-short.ts';
import { sessionItemsText } from './show-items-text.ts';
import { musclesText } from './show-muscles-text.ts';
import { minutesText, weeksText } from './show-weeks-text.ts';
import { prose, type Screen, unbroken } from './terminal-text.ts';
import { BLOCK_SIGNS, PLAIN_SIGNS } from './text-bar.ts';
import { type TextColumn, tableText } from './text-table.ts';
import { weekStretches } from './week-stretches.ts';

export interface ShowInput extends Screen {
  readonly practice: Practice;
  readonly plan: Plan;
  readonly numbers: PlanNumbers;
  readonly reading: PlanReading;
  /** Whether it goes elsewhere than to a terminal: then bars are of plain signs. */
  readonly isPlain: boolean;
}

const NOTHING = '-';
const left = (heading: string): TextColumn => ({ heading, align: 'left' });

/** A plan's numbers as a clinician reads them on a screen; no line end after the last line. */
export function showText(input: ShowInput): string {
  const { plan, numbers, width, paint } = input;
  const screen = { width, paint, isPlain: input.isPlain };
  const section = (heading: string, lead: string, body: string) =>
    [
      paint.bold(prose(heading, width)),
      ...(lead === '' ? [] : [leadText(lead, screen)]),
      body,
    ].join('\n');
  const sections = [
    titleText(plan, input.reading, screen),
    section('Weeks', weeksLead(input.isPlain), weeksText(plan, numbers, screen)),
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

function weeksLead(isPlain: boolean): string {
  const { low, high } = isPlain ? PLAIN_SIGNS : BLOCK_SIGNS;
  return `Minutes: of all sessions; bars: ${low} to the low end, ${high} on to the high end. Work: minutes of repetitions, holds and bouts of a side. Change: of work, with no regard to load, against the latest earlier week that was not easy.`;
}

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

function titleText(plan: Plan, reading: PlanReading, { width, paint }: Screen): string {
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
    prose(readingText(reading), width),
    ...(closed
      ? prose(`Closed ${closed.date}: ${closed.why}`, width).split('\n').map(paint.warn)
      : []),
  ].join('\n');
}

function readingText({ sheet, exercises }: PlanReading): string {
  if (sheet === null) return 'Reading grade of the sheet: worked out for English only.';
  const hardest = exercises.toSorted((a, b) => b.grade.fleschKincaid - a.grade.fleschKincaid)[0];
  const exercise = hardest ? ` Hardest exercise: ${hardest.id}, ${gradeText(hardest.grade)}.` : '';
  return `Reading grade of the sheet: ${gradeText(sheet)}.${exercise}`;
}

function weekWords({ starts, weeks }: Plan, day: string): string {
  const week = weekOf(starts, day);
  if (week < 1) return 'before week 1';
  return week > weeks ? 'after the last week' : `in week ${week}`;
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
    text: `${often(there)} ${minutesText(there.ms)}`,
    isLong: limit !== null && there.ms[1] > limit,
  };
}

function often({ schedule, perWeek }: SessionWeek): string {
  return schedule.kind === 'as-needed' ? 'as needed,' : `${roundedRange(perWeek, 0)} x`;
}
