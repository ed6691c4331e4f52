// The flesh on the trunk and the neck, as seen. Widths are chosen by eye: common practice, no source.
import type { Camera } from './camera.ts';
import { ellipsoid, hull, type Station, tube } from './outline.ts';
import { smoothPath } from './path.ts';
import type { Piece } from './piece.ts';
import { HANDS, type Skeleton } from './skeleton.ts';
import { along, between, type Frame, type Point, point } from './space.ts';

type Widths = readonly [share: number, front: number, back: number, side: number];

/** Along the pieces of the trunk, counted from the hips: 0 to 3. */
const TRUNK: readonly Widths[] = [
  [-0.35, 0.03, 0.042, 0.05],
  [0.0, 0.05, 0.06, 0.092],
  [0.45, 0.053, 0.056, 0.087],
  [1.0, 0.052, 0.043, 0.074],
  [1.6, 0.056, 0.046, 0.077],
  [2.2, 0.067, 0.055, 0.087],
  [2.65, 0.055, 0.055, 0.089],
  [2.95, 0.036, 0.043, 0.066],
];

function trunkStations({ spine, trunk }: Skeleton): readonly Station[] {
  return TRUNK.map(([height, front, back, side]) => {
    const piece = Math.max(0, Math.min(2, Math.floor(height)));
    const frame = trunk[piece] as Frame;
    const from = spine[piece] as Point;
    const to = spine[piece + 1] as Point;
    return { at: between(from, to, height - piece), frame, front, back, side };
  });
}

export function trunkPiece(body: Skeleton, camera: Camera): Piece {
  const shoulders = HANDS.map((hand) => {
    const [inner, outer] = [body.spine[3], body[hand].shoulder];
    const frame = body.trunk[2];
    return smoothPath(
      hull([
        ...ellipsoid(
          along(inner, frame, point(-0.004, 0.02)),
          frame,
          point(0.028, 0.024, 0.034),
          camera,
        ),
        ...ellipsoid(
          along(between(inner, outer, 0.86), frame, point(0, -0.006)),
          frame,
          point(0.03, 0.024, 0.022),
          camera,
        ),
      ]),
    );
  });
  return {
    tone: 'trunk',
    path: smoothPath(tube(trunkStations(body), camera, 0.3)) + shoulders.join(''),
  };
}

export function neckPiece(body: Skeleton, camera: Camera): Piece {
  const [low, high] = [body.spine[3], body.neckTop];
  const station = (share: number, front: number, back: number, side: number): Station => ({
    at: between(low, high, share),
    frame: share < 0 ? body.trunk[2] : body.neck,
    front,
    back,
    side,
  });
  const rest = { at: along(high, body.head, point(0.004, 0.045)), frame: body.head };
  return {
    tone: 'skin',
    path: smoothPath(
      tube(
        [
          station(-0.5, 0.03, 0.034, 0.036),
          station(0.4, 0.026, 0.028, 0.028),
          { ...rest, front: 0.028, back: 0.03, side: 0.03 },
        ],
        camera,
        0.4,
      ),
    ),
  };
}
