// Does week 1 begin before the first visit? Then the sheet starts in a later week than was meant,
// unless somebody began elsewhere.
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import { daysBetween, weekOf } from '../units/day.ts';
import type { PlanUnderCheck } from './plan-check.ts';
import { counted } from './wording.ts';

export function startBeforeVisit({ plan }: PlanUnderCheck): readonly Finding[] {
  const first = plan.visits[0]?.date;
  if (first === undefined || plan.starts >= first) return [];
  const week = weekOf(plan.starts, first);
  const then =
    week > plan.weeks
      ? 'the plan is then over by that visit'
      : `that visit is then in week ${week}`;
  const earlier = counted(daysBetween(plan.starts, first), 'day');
  return [
    finding({
      check: 'start-before-visit',
      severity: severityOf('start-before-visit'),
      message: `"starts" says ${plan.starts}, ${earlier} before the first visit of ${first}; ${then}.`,
      place: plan.valuePlaces.get('starts') ?? plan.place,
      scope: [plan],
    }),
  ];
}
