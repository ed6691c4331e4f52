// What the levels of a plan share: windows of weeks, from_week entries, accepts, schedules.
import { isCheckName, SETTLED_CHECKS, severityOf } from '../finding/checks.ts';
import type { Accept, Schedule, Window } from '../model/plan.ts';
import type { Practice } from '../model/practice.ts';
import { parseDay, WEEKDAYS, type Weekday } from '../units/day.ts';
import { parseEvery } from '../units/measure.ts';
import { parseCount, parseCounts } from '../units/number.ts';
import type { Affected } from '../units/side.ts';
import { overlap, parseWindow } from '../units/weeks.ts';
import {
  type At,
  entries,
  isList,
  pairs,
  placeOf,
  quantity,
  tellAt,
  textOf,
  textUnder,
  under,
} from './at.ts';
import { wordHints } from './did-you-mean.ts';
import type { LoadedExercise } from './library.ts';
import type { AcceptFile, SessionEntryFile, SessionFile } from './written.ts';

/** What the parts of a plan are read against. */
export interface PlanReading {
  readonly practice: Practice;
  readonly weeks: number;
  /** Null where the plan does not say it rightly. */
  readonly affected: Affected | null;
  readonly exercise: (id: string) => LoadedExercise | undefined;
  readonly exerciseIds: readonly string[];
  /** The id of the exercise that is printed under a name. */
  readonly exerciseOfName: (name: string) => string | undefined;
}

/** Windows of weeks; null is every week. */
export function readWindows(at: At<unknown> | undefined, weeks: number): readonly Window[] | null {
  if (!at) return null;
  const listed = isList(at) ? entries(at as At<readonly unknown[]>) : [at];
  const windows = listed.flatMap((one) => {
    const window = quantity(one, (text) => parseWindow(text, weeks));
    return window ? [window] : [];
  });
  const shared = overlap(windows);
  if (shared !== undefined)
    tellAt(
      at,
      'weeks-overlap',
      `Two of these windows have week ${shared} in them; write them as one.`,
    );
  return windows.length > 0 ? windows : null;
}

/** The from_week entries of an item, a part or a session, in order of week. */
export function readEntries<T extends { week: unknown }>(
  at: At<readonly T[]> | undefined,
  weeks: number,
): readonly { readonly week: number; readonly at: At<T> }[] {
  const found: { week: number; at: At<T> }[] = [];
  for (const entry of entries(at)) {
    const weekAt = under(entry, 'week') as At<unknown> | undefined;
    const week = quantity(weekAt, (text) => parseCount(text));
    if (!weekAt || week === undefined) continue;
    if (week > weeks) {
      tellAt(weekAt, 'weeks-outside', `"week" says ${week}, but the plan has ${weeks} weeks.`);
      continue;
    }
    const before = found.find((one) => one.week === week);
    if (before) {
      tellAt(weekAt, 'duplicate-entry', `Two entries are for week ${week}; write them as one.`, {
        related: [{ message: 'The other one.', place: placeOf(before.at) }],
      });
      continue;
    }
    found.push({ week, at: entry });
  }
  return found.sort((a, b) => a.week - b.week);
}

/** Accepts of an item, a part, a session or a plan. */
export function readAccepts(at: At<readonly AcceptFile[]> | undefined): readonly Accept[] {
  return entries(at).flatMap((one) => {
    const checkAt = under(one, 'check');
    const until = quantity(under(one, 'until'), parseDay) ?? null;
    const why = textUnder(one, 'why');
    if (!checkAt) return [];
    const check = textOf(checkAt);
    if (!isCheckName(check)) {
      tellAt(checkAt, 'unknown-check', `There is no check called "${check}".`, {
        hints: wordHints(check, SETTLED_CHECKS),
      });
      return [];
    }
    if (severityOf(check) === 'error') {
      tellAt(
        checkAt,
        'unknown-check',
        `"${check}" is an error, and errors cannot be accepted; mend what it tells of.`,
      );
      return [];
    }
    return why === null ? [] : [{ check, why, until, place: placeOf(checkAt) }];
  });
}

/** The schedule that a session or an entry gives; undefined where it gives none. */
export function readSchedule(at: At<SessionFile> | At<SessionEntryFile>): Schedule | undefined {
  const one = at as At<SessionEntryFile>;
  const given = pairs(one).filter(({ key }) =>
    ['days', 'days_a_week', 'every', 'as_needed'].includes(key),
  );
  const second = given[1];
  if (second) {
    // The schema tells of it for a session; an entry may have one or none.
    if (under(one, 'week')) {
      tellAt(
        second,
        'schedule-unclear',
        `"${given[0]?.key}" and "${second.key}" both say on which days; keep one of them.`,
        second.keyPlace ? { place: second.keyPlace } : {},
      );
    }
    return undefined;
  }
  const days = under(one, 'days');
  if (days) {
    const words = isList(days) ? entries(days as At<readonly unknown[]>).map(textOf) : WEEKDAYS;
    return {
      kind: 'days',
      days: WEEKDAYS.filter((day) =>
        (words as readonly string[]).includes(day),
      ) as readonly Weekday[],
    };
  }
  const count = quantity(under(one, 'days_a_week'), (text) => parseCounts(text, 7));
  if (count) return { kind: 'days-a-week', count };
  const every = quantity(under(one, 'every'), parseEvery);
  if (every !== undefined) return { kind: 'every', days: every };
  return under(one, 'as_needed') ? { kind: 'as-needed' } : undefined;
}
