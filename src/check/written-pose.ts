// The poses of a figure as written, and whether one of them names a place.
import type { Figure, Pose } from '../model/figure.ts';

export function posesOf({ start, end }: Figure): readonly Pose[] {
  return end === null ? [start] : [start, end];
}

/** Whether a hand is put on a place in any pose. */
export function hasHandOn(figure: Figure, place: Pose['limb']['hand']): boolean {
  return posesOf(figure).some(({ limb, other }) => limb.hand === place || other.hand === place);
}

export function hasFootOn(figure: Figure, place: Pose['limb']['foot']): boolean {
  return posesOf(figure).some(({ limb, other }) => limb.foot === place || other.foot === place);
}
