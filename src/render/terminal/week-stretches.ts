// Weeks in a row in which nothing that is shown changes, for the tables of the terminal: "1-2", "3", "4 easy".
import type { WeekNumbers } from '../../compute/numbers.ts';
import { runsOf } from '../record/table-view.ts';

export interface WeekStretch<T> {
  /** `1-2`, `4 easy`: easy where all its weeks are. */
  readonly label: string;
  readonly first: number;
  readonly last: number;
  readonly value: T;
}

/** Stretches of weeks with the same value; a week whose value is null is in none. */
export function weekStretches<T>(
  weeks: readonly WeekNumbers[],
  inWeek: (week: WeekNumbers) => T | null,
): WeekStretch<T>[] {
  const runs = runsOf(weeks.map((week) => ({ week: week.week, value: inWeek(week) })));
  return runs.map(({ first, last, value }) => {
    const inside = weeks.filter(({ week }) => week >= first && week <= last);
    const mark = inside.every(({ isEasy }) => isEasy) ? ' easy' : '';
    const span = first === last ? String(first) : `${first}-${last}`;
    return { label: `${span}${mark}`, first, last, value };
  });
}
