// Furniture is made of boxes; a chair is the same wherever it stands.
import { HEIGHTS } from './body.ts';
import type { PropPiece } from './prop-piece.ts';
import { type Point, point } from './space.ts';

/** Adds a box between two opposite corners. */
export type Solid = (low: Point, high: Point, look?: PropPiece['look']) => void;

export interface Chair {
  /** Where its back stands; the seat goes forwards from it. */
  readonly x: number;
  /** Its middle, and half its breadth. */
  readonly z: number;
  readonly half: number;
  readonly high: number;
}

export function chairBoxes({ x, z, half, high }: Chair, solid: Solid): void {
  const seat = HEIGHTS.seat;
  const front = x + 0.26;
  const leg = 0.018;
  for (const at of [z - half, z + half - leg]) {
    solid(point(x, 0, at), point(x + leg, high, at + leg));
    solid(point(front - leg, 0, at), point(front, seat - 0.02, at + leg));
  }
  solid(point(x, seat + 0.12, z - half), point(x + leg, high, z + half), 'pale');
  solid(point(x, seat - 0.025, z - half), point(front, seat, z + half), 'pale');
}
