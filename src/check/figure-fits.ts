// Does everything written in a figure have its place in it: a position that can be drawn, a wall that
// something touches, a band with two ends? What has none would be left out without a word.

import { isDrawnPosition } from '../figure/positions.ts';
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import type { Figure, Prop } from '../model/figure.ts';
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
  if (position !== 'sitting') {
    for (const { limb, other, keyPlaces, place } of posesOf(figure))
      for (const [one, key] of [
        [limb, 'hand'],
        [other, 'other.hand'],
      ] as const)
        if (one.hand === 'chair')
          found.push(
            tell(
              '"hand: chair" is a hand beside the seat of a person who sits; behind a chair, write "hand: worktop" and "props: [chair]".',
              keyPlaces.get(key) ?? place,
            ),
          );
  }
  return found;
}

/** Why a thing has no place in the figure; null where it has one. */
function whyNowhere({ name, at }: Prop, figure: Figure): string | null {
  if (name === 'step' && !hasFootOn(figure, 'step'))
    return 'No foot is on this step, so it is not drawn; write "foot: step".';
  if (name === 'wall' && !isWallTouched(figure))
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
