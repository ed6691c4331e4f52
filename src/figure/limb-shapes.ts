// The flesh on arms and legs, as seen. Widths are chosen by eye so that the figure looks like a person:
// common practice, no source; lengths are the skeleton's.
import type { Camera } from './camera.ts';
import { ellipse, type Station, tube } from './outline.ts';
import { smoothPath } from './path.ts';
import type { Piece } from './piece.ts';
import { shoePath } from './shoe.ts';
import type { Limbs } from './skeleton.ts';
import { between, type Frame, type Point, point } from './space.ts';

/** Flesh in statures at a share of the way along a segment. */
type Widths = readonly [share: number, front: number, back: number, side: number];

const THIGH: readonly Widths[] = [
  [0.0, 0.047, 0.05, 0.05],
  [0.3, 0.047, 0.043, 0.046],
  [0.65, 0.039, 0.034, 0.037],
  [0.9, 0.033, 0.028, 0.031],
  [1.0, 0.027, 0.024, 0.026],
];
const SHANK: readonly Widths[] = [
  [0.0, 0.026, 0.023, 0.025],
  [0.13, 0.028, 0.031, 0.03],
  [0.3, 0.024, 0.038, 0.032],
  [0.55, 0.021, 0.028, 0.025],
  [0.85, 0.017, 0.018, 0.017],
  [1.0, 0.018, 0.019, 0.018],
];
const UPPER_ARM: readonly Widths[] = [
  [-0.04, 0.024, 0.024, 0.02],
  [0.12, 0.03, 0.03, 0.027],
  [0.3, 0.029, 0.028, 0.026],
  [0.62, 0.026, 0.024, 0.023],
  [1.0, 0.018, 0.018, 0.018],
];
const FOREARM: readonly Widths[] = [
  [0.0, 0.018, 0.018, 0.018],
  [0.25, 0.023, 0.024, 0.024],
  [0.65, 0.017, 0.017, 0.019],
  [1.0, 0.012, 0.012, 0.015],
];
const HAND: readonly Widths[] = [
  [0.0, 0.012, 0.012, 0.015],
  [0.3, 0.015, 0.016, 0.023],
  [0.6, 0.011, 0.014, 0.021],
  [0.95, 0.007, 0.009, 0.012],
];
function segment(
  from: Point,
  to: Point,
  frame: Frame,
  widths: readonly Widths[],
): readonly Station[] {
  return widths.map(([share, front, back, side]) => ({
    at: between(from, to, share),
    frame,
    front,
    back,
    side,
  }));
}

function joint(at: Point, frame: Frame, flesh: number, camera: Camera): string {
  return ellipse(at, frame, point(flesh, flesh, flesh), camera);
}

export function legPieces(limbs: Limbs, camera: Camera): readonly Piece[] {
  const thigh = tube(segment(limbs.hip, limbs.knee, limbs.thigh, THIGH), camera, 0.5);
  const shank = tube(segment(limbs.knee, limbs.ankle, limbs.shank, SHANK), camera, 0.5);
  const knee = joint(limbs.knee, limbs.shank, 0.0295, camera);
  return [
    { tone: 'limb', path: shoePath(limbs, camera) },
    { tone: 'limb', path: smoothPath(thigh) + knee + smoothPath(shank) },
  ];
}

export function armPieces(limbs: Limbs, camera: Camera): readonly Piece[] {
  const upper = tube(segment(limbs.shoulder, limbs.elbow, limbs.upperArm, UPPER_ARM), camera, 0.5);
  const lower = tube(segment(limbs.elbow, limbs.wrist, limbs.forearm, FOREARM), camera, 0.5);
  const hand = tube(segment(limbs.wrist, limbs.fingertip, limbs.palm, HAND), camera);
  const elbow = joint(limbs.elbow, limbs.forearm, 0.021, camera);
  const path = smoothPath(upper) + elbow + smoothPath(lower) + smoothPath(hand);
  return [{ tone: 'limb', path }];
}
