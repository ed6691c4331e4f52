// Does a session begin its strength work cold? An item warms up or loosens by its main purpose, or
// by the part in which it stands: a light set of a strength exercise in a warm-up is one.
import type { SessionWeek } from '../compute/numbers.ts';
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { Plan, Session } from '../model/plan.ts';
import { COMMON_PRACTICE, type PlanUnderCheck, type Settings } from './plan-check.ts';
import { called, type PlannedItem, plannedItems } from './planned-item.ts';

export const WARM_UP_FIRST_SETTINGS = {
  items: { kind: 'count', byDefault: 3, source: COMMON_PRACTICE },
} as const satisfies Settings;

const WARMING: ReadonlySet<string> = new Set(['warm-up', 'mobility']);

/** One finding a session, in the first week; a session of fewer items than `items` is let be. */
export function warmUpFirst({ plan, numbers, setting }: PlanUnderCheck): readonly Finding[] {
  const found = new Map<Session, Finding>();
  for (const week of numbers.weeks) {
    for (const session of week.sessions) {
      const items = plannedItems(week).filter((planned) => planned.session === session);
      if (items.length < setting('warm-up-first', 'items') || found.has(session.session)) continue;
      const cold = coldStrength(items);
      if (cold) found.set(session.session, coldFinding(plan, session, cold));
    }
  }
  return [...found.values()];
}

function coldStrength(items: readonly PlannedItem[]): PlannedItem | undefined {
  const first = items.find((planned) => warms(planned) || trains(planned));
  return first && !warms(first) ? first : undefined;
}

function warms({ item, part }: PlannedItem): boolean {
  return WARMING.has(item.level.purposes[0] ?? '') || WARMING.has(part.part.kind);
}

function trains({ item }: PlannedItem): boolean {
  return item.level.purposes[0] === 'strength';
}

function coldFinding(
  plan: Plan,
  { session }: SessionWeek,
  { week, part, item }: PlannedItem,
): Finding {
  return finding({
    check: 'warm-up-first',
    severity: severityOf('warm-up-first'),
    message: `"${session.id}" comes to ${called(item.item, item.level)} in week ${week.week} before anything that warms up or loosens.`,
    place: session.place,
    // It stands at the session, and may be accepted at the item too.
    scope: [plan, session, part.part, item.item],
    related: [{ message: 'The strength exercise stands here.', place: item.item.place }],
  });
}
