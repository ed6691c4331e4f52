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
};

const PLURALS: Readonly<Record<string, string>> = {
  hand: 'hands',
  forearm: 'forearms',
  foot: 'feet',
  knee: 'knees',
  shoulder: 'shoulders',
};

/** "the other hand misses the wall by 7 cm", each part of the body once, with the most that it is off. */
export function gapSentences(gaps: readonly Gap[]): readonly string[] {
  const worst = new Map<string, Gap>();
  for (const one of gaps) {
    const key = `${one.part} ${one.hand} ${one.on}`;
    const known = worst.get(key);
    if (!known || Math.abs(one.by) > Math.abs(known.by)) worst.set(key, one);
  }
  const told = [...worst.values()].map(({ part, hand, on, by }) => {
    const surface = SURFACES[on];
    const isThrough = surface !== undefined && by < 0;
    const to = `${surface ?? `"${on}"`} by ${Math.round(Math.abs(by) * STATURE_CM)} cm`;
    return { part, hand, isThrough, to };
  });
  return told.flatMap(({ part, hand, isThrough, to }) => {
    const far = told.find((one) => one.part === part && one.hand !== hand && one.to === to);
    if (far && far.isThrough === isThrough)
      return hand === 'left'
        ? []
        : [`both ${PLURALS[part] ?? part} ${isThrough ? 'go through' : 'miss'} ${to}`];
    const whose = hand === 'left' ? 'other ' : '';
    return [`the ${whose}${part} ${isThrough ? 'goes through' : 'misses'} ${to}`];
  });
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
