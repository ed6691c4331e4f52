// From the room to the paper: a parallel projection from the side, the front, the back or above,
// with the far side set off a little so that a pair of limbs never hides one.
import type { View } from '../model/figure.ts';
import { dot, type Point, point } from './space.ts';

/** A point on the paper in statures, y downwards as SVG has it; `near` grows towards the eye. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly near: number;
}

export type Camera = (at: Point) => Spot;

interface Axes {
  readonly across: Point;
  readonly up: Point;
  readonly near: Point;
}

// Far limbs stand off by about a sixth of their depth: tried on many figures, common practice.
const AXES: Readonly<Record<View, Axes>> = {
  side: { across: point(1, 0, -0.13), up: point(0, 1, -0.08), near: point(0, 0, 1) },
  front: { across: point(0, 0, -1), up: point(0, 1, 0), near: point(1, 0, 0) },
  back: { across: point(0, 0, 1), up: point(0, 1, 0), near: point(-1, 0, 0) },
  above: { across: point(1, 0, 0), up: point(0, 0, -1), near: point(0, 1, 0) },
};

/** `tilt` is by how many degrees the eye looks down. */
export function cameraOf(view: View, tilt: number): Camera {
  const { across, up, near } = AXES[view];
  const [c, s] = [Math.cos((tilt * Math.PI) / 180), Math.sin((tilt * Math.PI) / 180)];
  return (at) => {
    const [high, deep] = [dot(up, at), dot(near, at)];
    return { x: dot(across, at), y: -(high * c - deep * s), near: deep * c + high * s };
  };
}
