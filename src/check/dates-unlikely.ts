// Does week 1 begin after the next visit? Then that visit would look back on nothing.
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { PlanUnderCheck } from './plan-check.ts';

export function datesUnlikely({ plan }: PlanUnderCheck): readonly Finding[] {
  const { starts, nextVisit } = plan;
  if (nextVisit === null || starts <= nextVisit) return [];
  return [
    finding({
      check: 'dates-unlikely',
      severity: severityOf('dates-unlikely'),
      message: `"starts" says ${starts}, after the next visit of ${nextVisit}; one of the two is surely a slip.`,
      place: plan.valuePlaces.get('starts') ?? plan.place,
      scope: [plan],
    }),
  ];
}
