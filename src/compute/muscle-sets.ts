// Weekly sets by muscle and side: a set counts 1 for each prime muscle and 0.5 for each that assists
// (fractional sets: Pelland JC et al., SportRxiv 2024).
import { type Interval, plus, scaled, times, ZERO } from '../units/interval.ts';
import type { SessionWeek, SidesOf } from './numbers.ts';
import { itemsOf } from './week-volume.ts';

const ASSISTING = 0.5;
const NONE: SidesOf<Interval> = { left: ZERO, right: ZERO, middle: ZERO };

/** Every prime and assisting muscle of what is there that week, in order of id. */
export function muscleSets(
  sessions: readonly SessionWeek[],
): ReadonlyMap<string, SidesOf<Interval>> {
  const sets = new Map<string, SidesOf<Interval>>();
  for (const session of sessions) {
    for (const item of itemsOf(session)) {
      for (const [muscle, credit] of creditsOf(item.level.muscles)) {
        const before = sets.get(muscle) ?? NONE;
        const added = (side: 'left' | 'right' | 'middle') =>
          plus(
            before[side],
            scaled(times(item[side]?.volume.sets ?? ZERO, session.perWeek), credit),
          );
        sets.set(muscle, { left: added('left'), right: added('right'), middle: added('middle') });
      }
    }
  }
  return new Map([...sets].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)));
}

/** What one set counts for each muscle; one that is named as both is prime. */
export function creditsOf(muscles: {
  readonly prime: readonly string[];
  readonly assist: readonly string[];
}): ReadonlyMap<string, number> {
  const credits = new Map<string, number>();
  for (const muscle of muscles.assist) credits.set(muscle, ASSISTING);
  for (const muscle of muscles.prime) credits.set(muscle, 1);
  return credits;
}
