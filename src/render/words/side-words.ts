// Which side does the work, in words: an item's left and right as lanes, each with what it is called.
// A side that works is always named; where there is no left or right nothing is said.
import type { ItemWeek } from '../../compute/numbers.ts';
import type { Dose } from '../../model/dose.ts';
import type { Words } from './words.ts';

/** One stream of work of an item: a side, both sides at once, or the middle. */
export interface Lane {
  readonly dose: Dose;
  /** `with the left leg`, `with both legs together`; null where no side is to be named. */
  readonly side: string | null;
  /** `left leg`: standing alone. Empty where `side` names no single side. */
  readonly name: string;
  /** `the left leg`. */
  readonly the: string;
}

/** The lanes of an item in the order done, left before right. */
export function lanesOf(item: ItemWeek, words: Words): readonly Lane[] {
  if (item.sides === 'middle') return item.middle ? [unnamed(item.middle.dose, null)] : [];
  if (item.sides === 'both') {
    const work = item.left ?? item.right;
    const { limb } = item.level;
    return work ? [unnamed(work.dose, limb ? words.say(`sides.${limb}.both`) : null)] : [];
  }
  const lanes: Lane[] = [];
  for (const side of ['left', 'right'] as const) {
    const work = item[side];
    if (work) lanes.push(named(work.dose, `sides.${item.level.limb ?? 'side'}.${side}`, words));
  }
  const [only] = lanes;
  if (lanes.length !== 1 || !only) return lanes;
  return [{ ...only, side: words.say('dose.only', { side: only.side as string }) }];
}

/** How a lane is called where it does more, or something else, than the other. */
export function onlySide(lane: Lane, words: Words): string {
  return words.say('dose.only', { side: lane.side ?? '' });
}

function unnamed(dose: Dose, side: string | null): Lane {
  return { dose, side, name: '', the: '' };
}

function named(dose: Dose, key: string, words: Words): Lane {
  return {
    dose,
    side: words.say(`${key}.with`),
    name: words.say(`${key}.name`),
    the: words.say(`${key}.the`),
  };
}
