// Where a thing is: the words for places as points of the body, or of the room around it.
import type { PropPlace } from '../model/figure.ts';
import { palmOf } from './own-body.ts';
import type { Hand, Skeleton } from './skeleton.ts';
import { along, between, type Point, point } from './space.ts';

/** How far to the side a fixed point is: an arm's length. */
const ANCHOR_BESIDE = 0.42;

/** A point of the body, or the fixed point in front, by its word. */
export function placePoints(place: PropPlace, body: Skeleton): readonly Point[] {
  const fist = (hand: Hand) => palmOf(hand)(body);
  const sole = (hand: Hand) => between(body[hand].heel, body[hand].ball, 0.75);
  switch (place) {
    case 'hand':
      return [fist('right')];
    case 'other-hand':
      return [fist('left')];
    case 'hands':
      return [fist('right'), fist('left')];
    case 'foot':
      return [sole('right')];
    case 'other-foot':
      return [sole('left')];
    case 'feet':
      return [sole('right'), sole('left')];
    case 'ankle':
      return [between(body.right.ankle, body.right.knee, 0.12)];
    case 'knee':
      return [body.right.knee];
    case 'knees':
      return [
        between(body.right.knee, body.right.hip, 0.12),
        between(body.left.knee, body.left.hip, 0.12),
      ];
    case 'elbow':
      return [body.right.elbow];
    case 'head':
      return [body.headMiddle];
    case 'seat':
      return [body.spine[0]];
    case 'chest':
      return [along(body.spine[2], body.trunk[2], point(0.09, 0.03))];
    case 'back':
      return [body.spine[2]];
    case 'door':
      return [point(body.spine[0].x + 0.62, body.right.elbow.y + 0.02, body.right.elbow.z)];
    case 'side':
    case 'other-side': {
      const out = place === 'side' ? ANCHOR_BESIDE : -ANCHOR_BESIDE;
      return [point(body.spine[0].x + 0.06, body.right.elbow.y + 0.02, body.spine[0].z + out)];
    }
    case 'floor':
      return [point(body.spine[0].x, 0, 0)];
  }
}
