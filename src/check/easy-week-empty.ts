// Does an easy week ease nothing of what is done in it? Each dose is held against what it would have
// been without easing: half of one set is still one set.

import { withCounts } from '../compute/completed-dose.ts';
import { itemWeeks, type ResolvedWeek } from '../compute/item-weeks.ts';
import type { PartWeek, WeekNumbers } from '../compute/numbers.ts';
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { EasyWeeks, Part } from '../model/plan.ts';
import type { PlanUnderCheck } from './plan-check.ts';
import { type PlannedItem, plannedItems } from './planned-item.ts';
import { counted, listed } from './wording.ts';

/** One finding a plan: the first easy week that eases nothing, and how many others do not. */
export function easyWeekEmpty(subject: PlanUnderCheck): readonly Finding[] {
  const { plan, numbers } = subject;
  const { easyWeeks } = plan;
  if (!easyWeeks) return [];
  const empty = numbers.weeks.filter((week) => week.isEasy && !easesAnything(subject, week));
  const [first, ...others] = empty;
  if (!first) return [];
  const rest =
    others.length === 0 ? '' : `, nor is anything in ${counted(others.length, 'other easy week')}`;
  return [
    finding({
      check: 'easy-week-empty',
      severity: severityOf('easy-week-empty'),
      message: `Week ${first.week} is an easy week, and nothing that is done in it is eased${rest}.`,
      place: easyWeeks.place,
      scope: [plan],
      hints: [whatIsEased(easyWeeks)],
    }),
  ];
}

const EASED = ['sets', 'reps', 'hold', 'time'] as const;

function whatIsEased(easyWeeks: EasyWeeks): string {
  const keys = EASED.filter((key) => easyWeeks[key] !== null);
  return keys.length === 0
    ? 'Name "sets", "reps", "hold" or "time" under "easy_weeks", with the share that is left.'
    : `It eases ${listed(
        keys.map((key) => `"${key}"`),
        'and',
      )}, which changes no dose here.`;
}

function easesAnything(subject: PlanUnderCheck, week: WeekNumbers): boolean {
  const parts = week.sessions.flatMap((session) => session.parts);
  return (
    parts.some((part) => part.rounds !== roundsWritten(part, week.week)) ||
    plannedItems(week).some((planned) => isEased(subject, planned))
  );
}

function roundsWritten({ part }: PartWeek, week: number): number | null {
  const inForce = (entries: Part['fromWeek']) =>
    entries.filter((entry) => entry.week <= week && entry.rounds !== undefined);
  const latest = [...inForce(part.fromWeek)].sort((a, b) => a.week - b.week).at(-1);
  return latest?.rounds ?? part.rounds ?? null;
}

function isEased({ plan, practice }: PlanUnderCheck, { week, item }: PlannedItem): boolean {
  const unEased: ResolvedWeek | undefined = itemWeeks(item.item, plan, practice, []).weeks[
    week.week - 1
  ];
  if (!unEased) return false;
  return [...unEased.doses].some(([lane, dose]) => {
    const eased = lane === 'both' ? item.left : item[lane];
    const before = withCounts(dose).values;
    return EASED.some(
      (key) => JSON.stringify(before[key]) !== JSON.stringify(eased?.dose.values[key]),
    );
  });
}
