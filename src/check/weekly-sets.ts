// What one item adds to a muscle's weekly sets on one side; the sums over all items are the compute
// floor's, and these are its terms.
import { creditsOf } from '../compute/muscle-sets.ts';
import type { ItemWeek } from '../compute/numbers.ts';
import { type Interval, midpoint, scaled, times, ZERO } from '../units/interval.ts';
import type { Side } from '../units/side.ts';

/** Sets of a muscle on a side in one session: 1 a set for a prime muscle, 0.5 for an assisting one. */
export function sessionSets(item: ItemWeek, muscle: string, side: Side): Interval {
  const credit = creditsOf(item.level.muscles).get(muscle) ?? 0;
  return scaled(item[side]?.volume.sets ?? ZERO, credit);
}

/** The midpoint of so many sets a session, so many sessions a week. */
export function weeklyMidpoint(sets: Interval, perWeek: Interval): number {
  return midpoint(times(sets, perWeek));
}
