// Can the body of a figure be where it is said to be? Angles that are given are kept to the degree, so
// that a hand may end short of the wall, or a foot above the floor.

import { type Gap, restingFigure } from '../figure/figure.ts';
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import type { Pose } from '../model/figure.ts';
import type { FigureLevel } from './figure-levels.ts';
import { isImpossibleFigure } from './joint-range.ts';
import { listed } from './wording.ts';

/** A finding at the start, or where that is sound at the end. */
export function poseUnreached(
  { figure, level }: FigureLevel,
  scope: readonly object[],
): readonly Finding[] {
  if (isImpossibleFigure(figure)) return [];
  const settled = restingFigure(figure, level);
  if (!settled) return [];
  const { start, end } = settled;
  if (start.shortfalls.length > 0)
    return [told('At the start', start.shortfalls, figure.start, scope)];
  if (!end || !figure.end || end.shortfalls.length === 0) return [];
  return [told('At the end', end.shortfalls, figure.end, scope)];
}

function told(when: string, gaps: readonly Gap[], pose: Pose, scope: readonly object[]): Finding {
  const check = 'pose-unreached';
  const given = givenIn(pose);
  const hints =
    given.length === 0
      ? []
      : [`Kept as written here: ${given.join(', ')}. What is left out gives way.`];
  return finding({
    check,
    severity: severityOf(check),
    message: `${when}, on a body of 170 cm, ${listed(gapSentences(gaps), 'and')}.`,
    place: placeOf(gaps, pose),
    hints,
    scope,
  });
}

const STATURE_CM = 170;

const SURFACES: Readonly<Record<string, string>> = {
  floor: 'the floor',
  seat: 'the seat',
  worktop: 'the worktop',
  step: 'the step',
  'wall-ahead': 'the wall',
  'wall-behind': 'the wall',
  'wall-right': 'the wall',
  'wall-left': 'the wall',
  'door-frame': 'the door frame',
  rail: 'the rail',
  balance: 'its place over the feet',
};

/** A part of the body alone, and both of a pair; what is no pair has no side. */
const CALLED: Readonly<Record<Gap['part'], readonly [one: string, both: string | null]>> = {
  hand: ['hand', 'hands'],
  forearm: ['forearm', 'forearms'],
  foot: ['foot', 'feet'],
  knee: ['knee', 'knees'],
  shoulder: ['shoulder', 'shoulders'],
  hips: ['hips', null],
  trunk: ['trunk', null],
  'upper back': ['upper back', null],
  head: ['head', null],
};

interface Miss {
  readonly part: Gap['part'];
  readonly hand: Gap['hand'];
  readonly isThrough: boolean;
  /** "the wall by 7 cm" */
  readonly what: string;
}

/** "the other hand misses the wall by 7 cm", each part of the body once, with the most that it is off. */
export function gapSentences(gaps: readonly Gap[]): readonly string[] {
  const worst = new Map<string, Gap>();
  for (const gap of gaps) {
    const hand = CALLED[gap.part][1] === null ? null : gap.hand;
    const key = `${gap.part} ${hand} ${gap.on}`;
    const known = worst.get(key);
    if (!known || Math.abs(gap.by) > Math.abs(known.by)) worst.set(key, { ...gap, hand });
  }
  const misses = [...worst.values()].map(({ part, hand, on, by }): Miss => {
    const surface = SURFACES[on];
    const cm = Math.round(Math.abs(by) * STATURE_CM);
    const what = `${surface ?? `"${on}"`} by ${cm} cm`;
    return { part, hand, isThrough: surface !== undefined && by < 0, what };
  });
  return misses.flatMap((one) => missSentence(one, misses));
}

/** Two that do the same are told of once, where the first of them stands. */
function missSentence(one: Miss, all: readonly Miss[]): readonly string[] {
  const [alone, both] = CALLED[one.part];
  const like = all.filter(
    ({ part, isThrough, what }) =>
      part === one.part && isThrough === one.isThrough && what === one.what,
  );
  if (like.length > 1 && like[0] !== one) return [];
  const isMany = like.length > 1 || one.part === 'hips';
  const way = one.isThrough ? `${isMany ? 'go' : 'goes'} through` : isMany ? 'miss' : 'misses';
  const who =
    like.length > 1
      ? `both ${both ?? alone}`
      : `the ${one.hand === 'left' ? 'other ' : ''}${alone}`;
  return [`${who} ${way} ${one.what}`];
}

/** What is fixed by a pose itself, as written. */
function givenIn({ limb, other, middle, lean }: Pose): readonly string[] {
  const all = (angles: object, before: string) =>
    Object.entries(angles).map(([angle, degrees]) => `${before}"${angle}: ${degrees}"`);
  return [
    ...all(limb.angles, ''),
    ...all(other.angles, 'the other '),
    ...all(middle, ''),
    ...(lean === null ? [] : [`"lean: ${lean}"`]),
  ];
}

/** At the key that asks for the contact, where the pose itself has one. */
function placeOf(gaps: readonly Gap[], { keyPlaces, place }: Pose): Place {
  for (const { part, hand } of gaps) {
    const found = keyPlaces.get(`${hand === 'left' ? 'other.' : ''}${part}`);
    if (found) return found;
  }
  return keyPlaces.get('rests_on') ?? place;
}
