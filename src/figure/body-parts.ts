// The parts of the drawn body, the farthest from the eye first.
import type { Camera } from './camera.ts';
import { headPieces } from './head-shape.ts';
import { armPieces, legPieces } from './limb-shapes.ts';
import type { Piece } from './piece.ts';
import { HANDS, type Hand, type Skeleton } from './skeleton.ts';
import { along, type Point, point } from './space.ts';
import { neckPiece, trunkPiece } from './trunk-shape.ts';

export type PartName = 'trunk' | 'neck' | 'head' | `${Hand} arm` | `${Hand} leg`;

export interface Part {
  readonly name: PartName;
  /** Greater is nearer to the eye. */
  readonly near: number;
  readonly pieces: readonly Piece[];
}

/** All parts of a body, the farthest first. */
export function bodyParts(body: Skeleton, camera: Camera): readonly Part[] {
  const nearOf = (points: readonly Point[]) =>
    points.reduce((sum, one) => sum + camera(one).near, 0) / points.length;
  const limb = (hand: Hand): readonly Part[] => {
    const one = body[hand];
    return [
      {
        name: `${hand} leg`,
        near: nearOf([one.hip, one.knee, one.ankle]),
        pieces: legPieces(one, camera),
      },
      {
        name: `${hand} arm`,
        near: nearOf([one.elbow, one.wrist, one.fingertip]),
        pieces: armPieces(one, camera),
      },
    ];
  };
  const trunk = nearOf([body.spine[0], body.spine[2]]);
  const parts: readonly Part[] = [
    { name: 'trunk', near: trunk, pieces: [trunkPiece(body, camera)] },
    { name: 'neck', near: trunk - 0.002, pieces: [neckPiece(body, camera)] },
    { name: 'head', near: nearOf([body.headMiddle]) + 0.01, pieces: headPieces(body, camera) },
    ...HANDS.flatMap(limb),
  ];
  return [...parts].sort((a, b) => a.near - b.near);
}

/** Spots that tell whether a part has moved. */
export function marksOf(body: Skeleton, name: PartName): readonly Point[] {
  if (name === 'trunk') return body.spine;
  if (name === 'head' || name === 'neck')
    return [body.vertex, along(body.neckTop, body.head, point(0.06, 0.06))];
  const hand: Hand = name.startsWith('right') ? 'right' : 'left';
  const one = body[hand];
  return name.endsWith('leg')
    ? [one.hip, one.knee, one.ankle, one.toe]
    : [one.shoulder, one.elbow, one.wrist, one.fingertip];
}
