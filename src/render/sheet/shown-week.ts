// Which week a sheet shows, and the days that it is for: the week of the last visit, or week 1 where
// that visit comes before the start. Today plays no part.
import type { PlanNumbers, WeekNumbers } from '../../compute/numbers.ts';
import type { Plan } from '../../model/plan.ts';
import { addDays, type Day, daysBetween, weekOf } from '../../units/day.ts';

export interface Shown {
  /** The later of the last visit and the start. */
  readonly from: Day;
  /** The last day of the plan's last week. */
  readonly to: Day;
  readonly visit: Day;
  readonly week: WeekNumbers;
  /** The weeks after it, in order. */
  readonly later: readonly WeekNumbers[];
}

export function shownOf({ plan, weeks }: PlanNumbers): Shown {
  const visit = plan.visits.at(-1)?.date ?? plan.starts;
  const from = daysBetween(plan.starts, visit) > 0 ? visit : plan.starts;
  const at = Math.min(weekOf(plan.starts, from), plan.weeks);
  const week = weeks.find((one) => one.week === at);
  if (!week) throw new Error(`plan ${plan.id} has no numbers for week ${at}`);
  return {
    from,
    to: addDays(plan.starts, 7 * plan.weeks - 1),
    visit,
    week,
    later: weeks.filter((one) => one.week > at),
  };
}

/** The day on which a week of the plan begins. */
export function firstDayOf(plan: Plan, week: number): Day {
  return addDays(plan.starts, 7 * (week - 1));
}

export function lastDayOf(plan: Plan, week: number): Day {
  return addDays(plan.starts, 7 * week - 1);
}
