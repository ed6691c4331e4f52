// Places of the body itself that a palm or an ankle can be put on. Offsets in statures along the axes of
// the part, so that they lie on the flesh: chosen by eye.
import type { Hand } from './skeleton.ts';
import { along, between, type Point, point } from './space.ts';
import type { FootHold, HandHold, Spot } from './touches.ts';

const other = (hand: Hand): Hand => (hand === 'right' ? 'left' : 'right');
const sideOf = (hand: Hand) => (hand === 'right' ? 1 : -1);

export function palmOf(hand: Hand): Spot {
  return (body) => between(body[hand].wrist, body[hand].fingertip, 0.45);
}

/** The point of the body that a palm is put on; null for a place that is no part of the body. */
export function palmTarget(hand: Hand, place: HandHold): Spot | null {
  const side = sideOf(hand);
  const far = other(hand);
  const onPiece = (piece: 0 | 1 | 2, of: 0 | 1 | 2, at: Point): Spot => {
    return (body) => along(body.spine[piece], body.trunk[of], at);
  };
  const onHead = (at: Point): Spot => {
    return (body) => along(body.headMiddle, body.head, at);
  };
  const onLimb = (
    whose: Hand,
    from: 'hip' | 'knee' | 'ankle' | 'elbow',
    axes: 'thigh' | 'shank' | 'upperArm',
    at: Point,
  ): Spot => {
    return (body) => along(body[whose][from], body[whose][axes], at);
  };
  switch (place) {
    case 'hip':
      return onPiece(0, 0, point(0.02, 0.06, side * 0.1));
    case 'thigh':
      return onLimb(hand, 'hip', 'thigh', point(0.058, -0.17, 0));
    case 'knee':
      return onLimb(hand, 'knee', 'thigh', point(0.045, 0.005, 0));
    case 'foot':
      return onLimb(hand, 'ankle', 'shank', point(0.03, 0.05, 0));
    case 'belly':
      return onPiece(1, 0, point(0.072, 0.02, side * 0.03));
    case 'chest':
      return onPiece(2, 2, point(0.08, 0.03, -side * 0.03));
    case 'other-shoulder': {
      const at = point(0.045, -0.03, side * 0.02);
      return (body) => along(body[far].shoulder, body.trunk[2], at);
    }
    case 'other-elbow':
      return onLimb(far, 'elbow', 'upperArm', point(0.03, 0, 0));
    case 'head':
      return onHead(point(0, 0.025, side * 0.062));
    case 'other-ear':
      return onHead(point(0, 0.03, -side * 0.06));
    case 'neck': {
      const at = point(-0.065, 0.045, side * 0.02);
      return (body) => along(body.neckTop, body.head, at);
    }
    case 'back':
      return onPiece(1, 1, point(-0.075, 0.03, 0));
    case 'chair':
      return onPiece(0, 0, point(0.01, -0.045, side * 0.125));
    default:
      return null;
  }
}

/** The point of the other leg that an ankle is put on; null for a place that is no part of the body. */
export function ankleTarget(hand: Hand, hold: FootHold): Spot | null {
  const far = other(hand);
  const beside = point(0, 0, sideOf(hand) * 0.045);
  const above = point(0.05, 0.035, 0);
  if (hold === 'other-foot') return (body) => along(body[far].ankle, body[far].shank, beside);
  if (hold === 'other-knee') return (body) => along(body[far].knee, body[far].thigh, above);
  return null;
}
