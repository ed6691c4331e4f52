// Does the plan end long before the next visit? The sheet says nothing of the days between.
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import { addDays, daysBetween } from '../units/day.ts';
import { COMMON_PRACTICE, type PlanUnderCheck, type Settings } from './plan-check.ts';
import { counted } from './wording.ts';

export const SHEET_RUNS_OUT_SETTINGS = {
  days: { kind: 'count', byDefault: 7, source: COMMON_PRACTICE },
} as const satisfies Settings;

/** As many days as the setting are let be, for holidays and full diaries. */
export function sheetRunsOut({ plan, setting }: PlanUnderCheck): readonly Finding[] {
  const { starts, weeks, nextVisit } = plan;
  if (nextVisit === null) return [];
  const last = addDays(starts, 7 * weeks - 1);
  const days = daysBetween(last, nextVisit);
  if (days <= setting('sheet-runs-out', 'days')) return [];
  return [
    finding({
      check: 'sheet-runs-out',
      severity: severityOf('sheet-runs-out'),
      message: `The last day of the plan is ${last}, and the next visit comes ${counted(days, 'day')} later, on ${nextVisit}; the sheet does not say what to do in between.`,
      place: plan.valuePlaces.get('next_visit') ?? plan.place,
      scope: [plan],
    }),
  ];
}
