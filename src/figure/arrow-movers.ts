// The parts of the body that an arrow can follow, and what each moves about.
import type { ArrowPart } from '../model/figure.ts';
import type { Hand, Skeleton } from './skeleton.ts';
import { along, between, type Point, point } from './space.ts';

export interface Mover {
  readonly part: ArrowPart;
  /** What is seen to move, and what it moves about; null where it takes the body with it. */
  readonly at: (body: Skeleton) => Point;
  readonly about: ((body: Skeleton) => Point) | null;
  /** Ends of limbs win over joints between them. */
  readonly favour: number;
  /** Whether its arrow stands before or beyond its way, not beside it. */
  readonly isInLine?: boolean;
}

const side = (hand: Hand): readonly Mover[] => {
  const whose = hand === 'right' ? '' : 'other-';
  return [
    {
      part: `${whose}foot`,
      at: (body) => body[hand].toe,
      about: (body) => body[hand].hip,
      favour: 1,
    },
    {
      part: `${whose}heel`,
      at: (body) => body[hand].heel,
      about: (body) => body[hand].ball,
      favour: 1.3,
    },
    {
      part: `${whose}hand`,
      at: (body) => body[hand].fingertip,
      about: (body) => body[hand].shoulder,
      favour: 1,
    },
    {
      part: `${whose}knee`,
      at: (body) => body[hand].knee,
      about: (body) => body[hand].hip,
      favour: 0.8,
    },
    {
      part: `${whose}elbow`,
      at: (body) => body[hand].elbow,
      about: (body) => body[hand].shoulder,
      favour: 0.6,
    },
    {
      part: `${whose}shoulder`,
      at: (body) => body[hand].shoulder,
      about: (body) => body.spine[3],
      favour: 0,
      isInLine: true,
    },
  ];
};

const nose = (body: Skeleton) => along(body.neckTop, body.head, point(0.075, 0.058));

export const middleOfHead = (body: Skeleton) => body.headMiddle;

export const MOVERS: readonly Mover[] = [
  ...side('right'),
  ...side('left'),
  { part: 'head', at: (body) => body.vertex, about: null, favour: 1.02 },
  { part: 'head', at: nose, about: middleOfHead, favour: 1.02 },
  // The hips carry the whole body with them.
  { part: 'seat', at: (body) => body.spine[0], about: null, favour: 2 },
  {
    part: 'back',
    at: (body) => between(body.spine[1], body.spine[2], 0.5),
    about: null,
    favour: 0,
    isInLine: true,
  },
];
