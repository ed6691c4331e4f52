// Does everything written in a figure have its place in it: a position that can be drawn, a wall that
// something touches, a band with two ends? What has none would be left out without a word.

import { besideOf } from '../figure/beside.ts';
import { limbPoses } from '../figure/limb-poses.ts';
import { isDrawnPosition } from '../figure/positions.ts';
import { HANDS } from '../figure/skeleton.ts';
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import type { Figure, Prop } from '../model/figure.ts';
import type { Sides } from '../units/side.ts';
import type { FigureLevel } from './figure-levels.ts';
import { hasFootOn, hasHandOn, posesOf } from './written-pose.ts';

export function figureFits(
  { figure, level }: FigureLevel,
  scope: readonly object[],
): readonly Finding[] {
  const check = 'figure-does-not-fit';
  const tell = (message: string, place: Place) =>
    finding({ check, severity: severityOf(check), message, place, scope });
  const position = figure.position ?? level.position;
  const found: Finding[] = [];
  if (!isDrawnPosition(position))
    found.push(
      tell(
        `The position "${position}" is one of your own, which no figure knows, so nothing is drawn; name the position that it is most like, such as "position: supine".`,
        figure.place,
      ),
    );
  for (const prop of figure.props) {
    const message = whyNowhere(prop, figure);
    if (message !== null) found.push(tell(message, prop.place));
  }
  if (figure.arrow !== null && figure.end === null)
    found.push(
      tell(
        `A figure without an end has no arrow for the ${figure.arrow} to follow; write "end:", or leave "arrow" out.`,
        figure.place,
      ),
    );
  found.push(
    ...acrossTheBody(figure, level.sides).map(({ message, place }) => tell(message, place)),
  );
  if (position !== 'sitting') {
    for (const { limb, other, keyPlaces, place } of posesOf(figure))
      for (const [one, key] of [
        [limb, 'hand'],
        [other, 'other.hand'],
      ] as const)
        if (one.hand === 'chair' && !besideOf(figure).has('chair'))
          found.push(
            tell(
              '"hand: chair" is a hand beside the seat of a person who sits, or on the seat of a chair at the side, "props: [{chair: side}]"; behind a chair, write "hand: worktop" and "props: [chair]".',
              keyPlaces.get(key) ?? place,
            ),
          );
  }
  return found;
}

const STANDS_BESIDE: ReadonlySet<string> = new Set(['worktop', 'chair', 'wall']);

/** Hands that are put on something that stands at the other side. */
function acrossTheBody(
  figure: Figure,
  sides: Sides,
): readonly { readonly message: string; readonly place: Place }[] {
  const beside = besideOf(figure);
  const isInFront = (name: string) =>
    figure.props.some((prop) => prop.name === name && !besideOf({ props: [prop] }).has(name));
  return posesOf(figure).flatMap((pose) => {
    const poses = limbPoses(pose, sides);
    return HANDS.flatMap((hand) => {
      const thing = poses[hand].hand;
      const side = thing === null || isInFront(thing) ? undefined : beside.get(thing);
      if (side === undefined || side === hand) return [];
      const own = side === 'right' ? `"hand: ${thing}"` : `"other: {hand: ${thing}}" alone`;
      const message = `The ${thing} stands at the ${side === 'right' ? 'worked' : 'other'} side, and this hand is not on that side; write ${own}.`;
      const key = poses[hand] === pose.limb || pose.other.hand === null ? 'hand' : 'other.hand';
      return [{ message, place: pose.keyPlaces.get(key) ?? pose.place }];
    });
  });
}

/** Why a thing has no place in the figure; null where it has one. */
function whyNowhere({ name, at }: Prop, figure: Figure): string | null {
  const isBeside = besideOf({ props: [{ name, at }] }).has(name);
  if (isBeside && !STANDS_BESIDE.has(name) && name !== 'band')
    return `A ${name} has no place beside the body; only a worktop, a chair or a wall stands there.`;
  if ((name === 'step' || name === 'stairs') && !hasFootOn(figure, 'step'))
    return `No foot is on ${name === 'step' ? 'this step, so it is' : 'these stairs, so they are'} not drawn; write "foot: step".`;
  if (name === 'rail' && !hasHandOn(figure, 'rail'))
    return 'No hand is on this rail, so it is not drawn; write "hand: rail".';
  if (name === 'door-frame' && !hasHandOn(figure, 'door-frame'))
    return 'No hand is on this door frame, so it is not drawn; write "hand: door-frame".';
  if (name === 'wall' && !isBeside && !isWallTouched(figure))
    return 'Nothing touches this wall, so it is not drawn; write "hand: wall", "foot: wall" or "rests_on: [wall, feet]".';
  if (name === 'band' && endsOf(at) < 2)
    return 'A band goes from one place to another; write both, such as "{band: [door, hand]}" or "{band: knees}".';
  return null;
}

function isWallTouched(figure: Figure): boolean {
  return (
    hasHandOn(figure, 'wall') ||
    hasFootOn(figure, 'wall') ||
    posesOf(figure).some(({ restsOn }) => restsOn?.includes('wall'))
  );
}

/** How many ends the places of a band are; a word for both limbs is two. */
function endsOf(at: Prop['at']): number {
  return at.reduce((sum, place) => sum + (/^(hands|feet|knees)$/.test(place) ? 2 : 1), 0);
}
