// Which sessions, parts and items are there in a week, with what their from_week entries made of
// them, and how often a session is done in it. What happens in them is walked in walk.ts.
//
// Readings of the contract where it leaves room:
// - `times_a_day` may be the range `2-3`; it multiplies the days end by end;
// - a part's `rounds` counts as a circuit from the week it is given in, with `rounds: 1` too;
// - in an easy week the rounds shown are the eased ones.

import { easedCount, isEasy } from './easing.ts';
import type { Range } from './quantities.ts';
import { readCount, readGap, readWeeks } from './quantities.ts';
import type { Frame, ItemNow } from './resolve.ts';
import { itemIn } from './resolve.ts';
import type { PartNow } from './walk.ts';
import type {
  Case,
  Schedule,
  WrittenExercise,
  WrittenItem,
  WrittenPart,
  WrittenSession,
} from './written.ts';

export interface ItemThere extends ItemNow {
  readonly as: string;
  readonly do: string;
}

export interface PartThere extends PartNow {
  readonly part: string;
  readonly items: readonly ItemThere[];
}

export interface SessionThere {
  readonly session: string;
  readonly perWeek: Range;
  readonly betweenParts: number;
  readonly parts: readonly PartThere[];
}

function isThere(weeks: string | string[] | undefined, week: number): boolean {
  if (weeks === undefined) return true;
  return [weeks].flat().some((written) => {
    const [first, last] = readWeeks(written);
    return first <= week && week <= last;
  });
}

/** What is written with every from_week entry up to the week laid over it, key by key. */
function upTo<T extends { from_week?: { week: number }[] }>(written: T, week: number): T {
  const entries = [...(written.from_week ?? [])]
    .filter((entry) => entry.week <= week)
    .sort((one, other) => one.week - other.week);
  return Object.assign({}, written, ...entries);
}

const KINDS = ['days', 'days_a_week', 'every', 'as_needed'] as const;

/** The schedule in force: another kind of schedule replaces the earlier one whole. */
function scheduleIn(session: WrittenSession, week: number): Schedule {
  let schedule: Schedule = session;
  const entries = [...(session.from_week ?? [])].sort((one, other) => one.week - other.week);
  for (const entry of entries) {
    if (entry.week <= week && KINDS.some((kind) => entry[kind] !== undefined)) schedule = entry;
  }
  return schedule;
}

function daysIn(schedule: Schedule, week: number): Range {
  const { days, days_a_week, every } = schedule;
  if (days === 'daily') return [7, 7];
  if (days) return [days.length, days.length];
  if (days_a_week !== undefined) return readCount(days_a_week);
  if (every === undefined) return [0, 0];
  const step = Number(/^(\d+) days?$/.exec(every)?.[1]);
  let count = 0;
  for (let day = 7 * (week - 1); day < 7 * week; day += 1) if (day % step === 0) count += 1;
  return [count, count];
}

function perWeek(session: WrittenSession, week: number): Range {
  const days = daysIn(scheduleIn(session, week), week);
  const timesADay = readCount(upTo(session, week).times_a_day ?? 1);
  return [days[0] * timesADay[0], days[1] * timesADay[1]];
}

export function exerciseOf(exercises: readonly WrittenExercise[], item: WrittenItem) {
  const found = exercises.find(({ exercise }) => exercise === item.do);
  if (!found) throw new Error(`no exercise ${item.do}`);
  return found;
}

function partIn(
  written: WrittenPart,
  week: number,
  nearest: string | undefined,
  frame: Frame,
  exercises: readonly WrittenExercise[],
): PartThere {
  const part = upTo(written, week);
  const gap = (text: string | undefined, fallback: number) =>
    text === undefined ? fallback : readGap(text, frame.breath);
  const easy = isEasy(frame.easy, week) ? frame.easy?.sets : undefined;
  return {
    part: part.part,
    rounds: part.rounds === undefined ? undefined : easedCount(part.rounds, easy),
    betweenRounds: gap(part.rest_between_rounds, frame.rest),
    betweenItems: gap(part.between_items ?? nearest, frame.betweenItems),
    items: part.items
      .filter((item) => isThere(item.weeks, week))
      .map((item) => ({
        as: item.as ?? item.do,
        do: item.do,
        ...itemIn(item, exerciseOf(exercises, item), week, frame),
      })),
  };
}

/** The sessions of a week, with only what is there in them. */
export function sessionsIn(all: Case, week: number, frame: Frame): SessionThere[] {
  return all.plan.sessions
    .filter((session) => isThere(session.weeks, week))
    .map((written) => {
      const session = upTo(written, week);
      const nearest = session.between_items ?? all.plan.between_items;
      return {
        session: session.session,
        perWeek: perWeek(written, week),
        betweenParts: nearest === undefined ? frame.betweenItems : readGap(nearest, frame.breath),
        parts: session.parts
          .filter((part) => isThere(part.weeks, week))
          .map((part) => partIn(part, week, nearest, frame, all.exercises))
          .filter((part) => part.items.length > 0),
      };
    })
    .filter((session) => session.parts.length > 0);
}
