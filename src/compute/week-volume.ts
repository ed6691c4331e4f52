// What the sides do in a session, and how a week's work compares with the week before it.
import { type Interval, midpoint } from '../units/interval.ts';
import type { ItemWeek, SessionWeek, SidesOf, Volume, WeekNumbers } from './numbers.ts';
import { NO_VOLUME, volumeSum } from './volume.ts';

/** Every item of a session as it is that week, in order. */
export function itemsOf(session: SessionWeek): readonly ItemWeek[] {
  return session.parts.flatMap((part) => part.items);
}

/** What each side does in one session. */
export function sessionVolume(session: SessionWeek): SidesOf<Volume> {
  const items = itemsOf(session);
  const side = (which: 'left' | 'right' | 'middle') =>
    volumeSum(items.map((item) => item[which]?.volume ?? NO_VOLUME));
  return { left: side('left'), right: side('right'), middle: side('middle') };
}

/** Weekly work of items, left, right and middle together, so that `both` counts twice. */
function workMidpoint(
  sessions: readonly SessionWeek[],
  isCounted: (item: ItemWeek) => boolean,
): number {
  let total = 0;
  for (const session of sessions) {
    for (const item of itemsOf(session).filter(isCounted)) {
      for (const side of [item.left, item.right, item.middle]) {
        const work: Interval = side?.volume.workMs ?? [0, 0];
        total += midpoint([work[0] * session.perWeek[0], work[1] * session.perWeek[1]]);
      }
    }
  }
  return total;
}

function isStrength(item: ItemWeek): boolean {
  const purpose = item.level.purposes[0];
  return purpose === 'strength' || purpose === 'isometric';
}

/** Now against then, less one: against the latest earlier week that was not easy; null without one, or from nothing. */
export function changeFrom(
  before: readonly WeekNumbers[],
  now: Pick<WeekNumbers, 'sessions'>,
): WeekNumbers['change'] {
  const then = before.findLast((week) => !week.isEasy);
  if (!then) return { all: null, strength: null };
  const change = (isCounted: (item: ItemWeek) => boolean) => {
    const base = workMidpoint(then.sessions, isCounted);
    return base === 0 ? null : workMidpoint(now.sessions, isCounted) / base - 1;
  };
  return { all: change(() => true), strength: change(isStrength) };
}
