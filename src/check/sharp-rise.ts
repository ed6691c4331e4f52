// Do a muscle's weekly sets on a side rise too fast, against the last week that was not easy?
// A start from nothing is no rise.
import type { SessionWeek, WeekNumbers } from '../compute/numbers.ts';
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import { midpoint, ZERO } from '../units/interval.ts';
import { SIDES, type Side } from '../units/side.ts';
import { COMMON_PRACTICE, type PlanUnderCheck, type Settings, WHOLE } from './plan-check.ts';
import { called, findingAtItem, type PlannedItem, plannedItems } from './planned-item.ts';
import { sessionSets, weeklyMidpoint } from './weekly-sets.ts';
import { counted, numberText } from './wording.ts';

export const SHARP_RISE_SETTINGS = {
  rise: { kind: 'share', byDefault: 50_000, source: COMMON_PRACTICE },
  sets: { kind: 'count', byDefault: 2, source: COMMON_PRACTICE },
} as const satisfies Settings;

interface Rise {
  readonly muscle: string;
  readonly side: Side;
  readonly before: number;
  readonly now: number;
}

/** One finding a week: the muscle and side that rise most, at what adds most to them. */
export function sharpRise(subject: PlanUnderCheck): readonly Finding[] {
  const { weeks } = subject.numbers;
  return weeks.flatMap((week, index) => {
    const before = weeks.slice(0, index).findLast((earlier) => !earlier.isEasy);
    // A rise into an easy week shows again in the week after it, and is told of there.
    if (!before || week.isEasy) return [];
    const rises = risesIn(subject, before, week);
    const [first, ...others] = rises;
    if (!first) return [];
    const most = others.reduce((a, b) => (b.now - b.before > a.now - a.before ? b : a), first);
    return [riseFinding(subject, before, week, most, rises.length - 1)];
  });
}

function risesIn(
  { setting }: PlanUnderCheck,
  before: WeekNumbers,
  week: WeekNumbers,
): readonly Rise[] {
  const rise = setting('sharp-rise', 'rise');
  const sets = setting('sharp-rise', 'sets');
  const isSharp = (then: number, now: number) =>
    then > 0 && (now - then) * WHOLE > rise * then && now - then > sets;
  return [...week.muscles].flatMap(([muscle, sides]) =>
    SIDES.map((side) => ({
      muscle,
      side,
      before: midpoint(before.muscles.get(muscle)?.[side] ?? ZERO),
      now: midpoint(sides[side]),
    })).filter((one) => isSharp(one.before, one.now)),
  );
}

/** What adds most: an item, or a session that comes more often (`item` is null). */
interface Addition {
  readonly sets: number;
  readonly session: SessionWeek;
  readonly item: PlannedItem | null;
}

function largestAddition(before: WeekNumbers, week: WeekNumbers, { muscle, side }: Rise): Addition {
  const then = new Map(plannedItems(before).map((planned) => [planned.item.item, planned]));
  const bySession = new Map<SessionWeek, number>();
  const additions: Addition[] = [];
  for (const planned of plannedItems(week)) {
    const { session, item } = planned;
    const earlier = then.get(item.item);
    const setsThen = earlier ? sessionSets(earlier.item, muscle, side) : ZERO;
    // What more days add belongs to the session, what more sets add to the item.
    const atOldSets = weeklyMidpoint(setsThen, session.perWeek);
    const atOldDays = earlier ? weeklyMidpoint(setsThen, earlier.session.perWeek) : 0;
    bySession.set(session, (bySession.get(session) ?? 0) + atOldSets - atOldDays);
    const now = weeklyMidpoint(sessionSets(item, muscle, side), session.perWeek);
    additions.push({ sets: now - atOldSets, session, item: planned });
  }
  for (const [session, sets] of bySession) additions.push({ sets, session, item: null });
  return additions.reduce((a, b) => (b.sets > a.sets ? b : a));
}

function riseFinding(
  { plan }: PlanUnderCheck,
  before: WeekNumbers,
  week: WeekNumbers,
  rise: Rise,
  others: number,
): Finding {
  const { session, item } = largestAddition(before, week, rise);
  const where = rise.side === 'middle' ? '' : ` on the ${rise.side}`;
  const what = item
    ? `most of it from ${called(item.item.item, item.item.level)}`
    : `most of it because "${session.session.id}" comes more often`;
  const rest =
    others === 0
      ? ''
      : `; ${others} more muscle${others === 1 ? ' or side rises' : 's or sides rise'} as sharply`;
  const message = `"${rise.muscle}"${where} goes from ${numberText(rise.before)} to ${counted(rise.now, 'set')} from week ${before.week} to week ${week.week}, ${what}${rest}.`;
  if (item) return findingAtItem('sharp-rise', plan, item, { message });
  return finding({
    check: 'sharp-rise',
    severity: severityOf('sharp-rise'),
    message,
    place: session.session.place,
    scope: [plan, session.session],
  });
}
