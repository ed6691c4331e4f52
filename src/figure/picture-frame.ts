// What of the body a picture shows, and the frame around it.
import type { Shown } from '../model/figure.ts';
import type { Dot } from './path.ts';
import { HANDS, type Skeleton } from './skeleton.ts';
import type { Point } from './space.ts';

/** A rectangle on the paper, in statures. */
export interface Box {
  readonly low: Dot;
  readonly high: Dot;
}

export function boxAround(dots: readonly Dot[], margin: number): Box {
  const xs = dots.map(({ x }) => x);
  const ys = dots.map(({ y }) => y);
  return {
    low: { x: Math.min(...xs) - margin, y: Math.min(...ys) - margin },
    high: { x: Math.max(...xs) + margin, y: Math.max(...ys) + margin },
  };
}

export function isInside({ x, y }: Dot, { low, high }: Box): boolean {
  return x >= low.x && x <= high.x && y >= low.y && y <= high.y;
}

const ARM = ['shoulder', 'elbow', 'wrist', 'fingertip'] as const;
const LEG = ['hip', 'knee', 'ankle', 'toe', 'heel'] as const;

const PARTS: Readonly<Record<Exclude<Shown, 'whole'>, (body: Skeleton) => readonly Point[]>> = {
  'upper-body': (body) => [
    body.vertex,
    body.spine[1],
    body.spine[3],
    ...HANDS.flatMap((hand) => ARM.map((joint) => body[hand][joint])),
  ],
  head: (body) => [body.vertex, body.spine[2], body.right.shoulder, body.left.shoulder],
  arm: (body) => ARM.map((joint) => body.right[joint]),
  legs: (body) => [
    body.spine[1],
    ...HANDS.flatMap((hand) => LEG.map((joint) => body[hand][joint])),
  ],
  'lower-leg': (body) => [body.right.knee, body.right.ankle, body.right.toe, body.right.heel],
};

/** The points that have to be in a picture. */
export function shownPoints(body: Skeleton, shown: Shown): readonly Point[] {
  if (shown !== 'whole') return PARTS[shown](body);
  return [...PARTS['upper-body'](body), ...PARTS.legs(body)];
}
