// Weekly sets by muscle as rows for a chart: the muscle with most sets first, and which sides need a
// place of their own.
import type { SidesOf, WeekNumbers } from '../../compute/numbers.ts';
import { type Interval, isSame, midpoint, ZERO } from '../../units/interval.ts';
import { SIDES, type Side } from '../../units/side.ts';

export interface MuscleRow {
  readonly muscle: string;
  /** By week; 0 where the muscle is not there. */
  readonly sets: SidesOf<readonly Interval[]>;
}

/** A row for each muscle that has a set in any week; equal ones in order of id. */
export function muscleRows(weeks: readonly WeekNumbers[]): MuscleRow[] {
  const muscles = [...new Set(weeks.flatMap((week) => [...week.muscles.keys()]))].sort();
  const total = ({ sets }: MuscleRow) =>
    SIDES.reduce((sum, side) => sets[side].reduce((all, one) => all + midpoint(one), sum), 0);
  return muscles
    .map((muscle): MuscleRow => {
      const of = (side: Side) => weeks.map((week) => week.muscles.get(muscle)?.[side] ?? ZERO);
      return { muscle, sets: { left: of('left'), right: of('right'), middle: of('middle') } };
    })
    .map((row) => ({ row, sets: total(row) }))
    .filter(({ sets }) => sets > 0)
    .sort((a, b) => b.sets - a.sets)
    .map(({ row }) => row);
}

/** The sides that any row has sets on; `each` where left and right are the same in every row. */
export function sidesShown(rows: readonly MuscleRow[]): (Side | 'each')[] {
  const isEven = rows.every(({ sets }) =>
    sets.left.every((one, i) => isSame(one, sets.right[i] ?? ZERO)),
  );
  return SIDES.filter((side) => rows.some(({ sets }) => sets[side].some(([, high]) => high > 0)))
    .filter((side) => !(isEven && side === 'right'))
    .map((side) => (isEven && side === 'left' ? 'each' : side));
}
