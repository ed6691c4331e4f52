// Does a from_week entry change nothing? Then a level, a dose or a day was meant that it does not name.
// An item is worked out without the entry: one that only starts the climb anew does change it.
import { itemWeeks, type ResolvedWeek } from '../compute/item-weeks.ts';
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import type { Item, Part, Session } from '../model/plan.ts';
import { exactly } from '../units/interval.ts';
import type { PlanUnderCheck } from './plan-check.ts';

/** One finding an entry, of items, parts and sessions. */
export function entryChangesNothing(subject: PlanUnderCheck): readonly Finding[] {
  const { plan } = subject;
  return plan.sessions.flatMap((session) => [
    ...idleInSession(session).map((one) => idleFinding(one, [plan, session])),
    ...session.parts.flatMap((part) => [
      ...idleInPart(part).map((one) => idleFinding(one, [plan, session, part])),
      ...part.items.flatMap((item) =>
        idleInItem(item, subject).map((one) => idleFinding(one, [plan, session, part, item])),
      ),
    ]),
  ]);
}

interface Entry {
  readonly week: number;
  readonly place: Place;
}

function idleFinding({ week, place }: Entry, scope: readonly object[]): Finding {
  return finding({
    check: 'entry-changes-nothing',
    severity: severityOf('entry-changes-nothing'),
    message: `This entry for week ${week} changes nothing: all that it says holds already.`,
    place,
    scope,
  });
}

function idleInSession(session: Session): readonly Entry[] {
  const start = { ...session, timesADay: session.timesADay ?? exactly(1) };
  return idleEntries(start, session.fromWeek, ['name', 'schedule', 'timesADay', 'betweenItemsMs']);
}

function idleInPart(part: Part): readonly Entry[] {
  return idleEntries(part, part.fromWeek, [
    'name',
    'rounds',
    'restBetweenRoundsMs',
    'betweenItemsMs',
  ]);
}

/** Entries of which every key that they name has that value already. */
function idleEntries<T extends Entry, K extends keyof T>(
  start: Pick<T, K>,
  entries: readonly T[],
  keys: readonly K[],
): readonly Entry[] {
  const now = { ...start };
  return entries.filter((entry) => {
    const changed = keys.filter((key) => entry[key] !== undefined && !isSame(entry[key], now[key]));
    for (const key of changed) now[key] = entry[key];
    return changed.length === 0;
  });
}

function idleInItem(item: Item, { plan, practice }: PlanUnderCheck): readonly Entry[] {
  if (item.fromWeek.length === 0) return [];
  const said = (of: Item) => itemWeeks(of, plan, practice, []).weeks.map(saidIn);
  const all = said(item);
  return item.fromWeek.filter((entry) =>
    isSame(all, said({ ...item, fromWeek: item.fromWeek.filter((one) => one !== entry) })),
  );
}

/** All that an entry can change of a week. */
function saidIn({ written, level, doses }: ResolvedWeek): readonly unknown[] {
  const { overrides, order, moveOnWhen, note, priority, advance } = written;
  const { place: _, ...gate } = moveOnWhen ?? level.moveOnWhen ?? { place: null };
  return [
    level.id,
    [...doses].map(([lane, { values }]) => [lane, values]),
    overrides && [overrides.left?.values, overrides.right?.values, overrides.why],
    order ?? level.order ?? 'each-set',
    [gate, note, priority, advance],
  ];
}

function isSame(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
