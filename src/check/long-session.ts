// Can a session take longer than the person has? Held at its high end: what it can take, not what it
// takes on a good day.
import type { PartWeek } from '../compute/numbers.ts';
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { Session } from '../model/plan.ts';
import type { PlanUnderCheck } from './plan-check.ts';
import { called } from './planned-item.ts';
import { durationText, minutesUp } from './wording.ts';

/** What takes longest of a session: the first thing to look at. */
function longestHint(parts: readonly PartWeek[]): readonly string[] {
  const items = parts.flatMap((part) => part.items);
  const [first] = items;
  if (!first || items.length === 1) return [];
  const longest = items.reduce((a, b) => (b.ms[1] > a.ms[1] ? b : a), first);
  return [
    `Of that ${called(longest.item, longest.level)} takes longest: ${minutesUp(longest.ms[1])}.`,
  ];
}

/** One finding a session, in the first week in which it is too long. */
export function longSession({ plan, numbers }: PlanUnderCheck): readonly Finding[] {
  const limitMs = plan.limits.timeMs;
  if (limitMs === null) return [];
  const found = new Map<Session, Finding>();
  for (const week of numbers.weeks) {
    for (const { session, parts, ms } of week.sessions) {
      if (ms[1] <= limitMs || found.has(session)) continue;
      found.set(
        session,
        finding({
          check: 'long-session',
          severity: severityOf('long-session'),
          message: `"${session.id}" can take ${minutesUp(ms[1])} in week ${week.week}, and the person has ${durationText(limitMs)}.`,
          place: session.place,
          scope: [plan, session],
          hints: longestHint(parts),
        }),
      );
    }
  }
  return [...found.values()];
}
