// The flesh on the skeleton: every part of the body as outlines on the paper, with how near it is.
// Widths are chosen by eye so that the figure looks like a person; lengths are the skeleton's.
import { BALL_AHEAD, BREADTHS, HEEL_BEHIND, LENGTHS } from './body.ts';
import type { Camera } from './camera.ts';
import { ellipsoid, hull, roundedPath, type Station, smoothPath, tube } from './outline.ts';
import type { Hand, Limbs, Skeleton } from './skeleton.ts';
import { after, along, between, type Frame, type Point, point, turnZxy } from './space.ts';

export type PartName = 'trunk' | 'neck' | 'head' | `${Hand} arm` | `${Hand} leg`;

/** One piece in one tone; pieces of a part are drawn in their order. */
export interface Piece {
  readonly tone: 'limb' | 'trunk' | 'skin' | 'hair' | 'mark';
  readonly path: string;
}

export interface Part {
  readonly name: PartName;
  /** Greater is nearer to the eye. */
  readonly near: number;
  readonly pieces: readonly Piece[];
}

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

function trunkStations({ spine, trunk }: Skeleton): readonly Station[] {
  return TRUNK.map(([height, front, back, side]) => {
    const piece = Math.max(0, Math.min(2, Math.floor(height)));
    const frame = trunk[piece] as Frame;
    const from = spine[piece] as Point;
    const to = spine[piece + 1] as Point;
    return { at: between(from, to, height - piece), frame, front, back, side };
  });
}

function trunkPiece(body: Skeleton, camera: Camera): Piece {
  const shoulders = (['right', 'left'] as const).map((hand) => {
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

/** A shoe with a flat sole; the toes are bent up where the ground is in their way. */
function footPath({ ankle, foot, shank, ball }: Limbs, camera: Camera): string {
  const sole = -LENGTHS.footHeight;
  const at = (x: number, y: number, z: number) => camera(along(ankle, foot, point(x, y, z)));
  const half = BREADTHS.foot / 2;
  const both = (x: number, y: number, z: number) => [at(x, y, z), at(x, y, -z)];
  const rear = [
    ...both(-HEEL_BEHIND, sole, 0.014),
    ...both(-HEEL_BEHIND - 0.003, sole + 0.014, 0.012),
    ...both(-HEEL_BEHIND + 0.006, sole + 0.034, 0.014),
    ...both(-0.02, 0.016, 0.018),
    ...both(0.022, 0.012, 0.018),
    ...both(0.05, -0.006, 0.02),
    ...both(BALL_AHEAD, -0.016, 0.02),
    ...both(BALL_AHEAD, sole, half),
  ];
  const toes = after(foot, turnZxy(toeBend(foot, ball), 0, 0));
  const front = (x: number, y: number, z: number) => camera(along(ball, toes, point(x, y, z)));
  const tip = LENGTHS.foot - HEEL_BEHIND - BALL_AHEAD;
  const fore = [
    at(BALL_AHEAD - 0.012, -0.012, 0.018),
    at(BALL_AHEAD - 0.012, -0.012, -0.018),
    ...[half, -half].map((z) => front(-0.004, 0, z)),
    ...[0.022, -0.018].map((z) => front(tip - 0.008, 0, z)),
    ...[0.012, -0.012].map((z) => front(tip, 0.006, z)),
    ...[0.014, -0.014].map((z) => front(tip - 0.005, 0.016, z)),
  ];
  const heel = [...ellipsoid(ankle, shank, point(0.019, 0.02, 0.019), camera)];
  return roundedPath(hull([...rear, ...heel]), 0.012) + roundedPath(hull(fore), 0.01);
}

const MOST_TOE_BEND = 60;

/** By how many degrees the ground bends the toes up: only where the ball of the foot is on it. */
function toeBend(foot: Frame, ball: Point): number {
  const isOnGround = ball.y < 0.02 && foot.x.x > 0.3;
  if (!isOnGround || foot.x.y >= 0) return 0;
  return Math.min(MOST_TOE_BEND, (Math.asin(Math.min(1, -foot.x.y)) * 180) / Math.PI);
}

function joint(at: Point, frame: Frame, flesh: number, camera: Camera) {
  return ellipsoid(at, frame, point(flesh, flesh, flesh), camera);
}

function legPieces(limbs: Limbs, camera: Camera): readonly Piece[] {
  const thigh = tube(segment(limbs.hip, limbs.knee, limbs.thigh, THIGH), camera, 0.5);
  const shank = tube(segment(limbs.knee, limbs.ankle, limbs.shank, SHANK), camera, 0.5);
  return [
    { tone: 'limb', path: footPath(limbs, camera) },
    {
      tone: 'limb',
      path: [thigh, joint(limbs.knee, limbs.shank, 0.0295, camera), shank].map(smoothPath).join(''),
    },
  ];
}

function armPieces(limbs: Limbs, camera: Camera): readonly Piece[] {
  const upper = tube(segment(limbs.shoulder, limbs.elbow, limbs.upperArm, UPPER_ARM), camera, 0.5);
  const lower = tube(segment(limbs.elbow, limbs.wrist, limbs.forearm, FOREARM), camera, 0.5);
  const hand = tube(segment(limbs.wrist, limbs.fingertip, limbs.palm, HAND), camera);
  return [
    {
      tone: 'limb',
      path: [upper, joint(limbs.elbow, limbs.forearm, 0.021, camera), lower, hand]
        .map(smoothPath)
        .join(''),
    },
  ];
}

function neckPiece(body: Skeleton, camera: Camera): Piece {
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

/** A head with hair, a face, a nose and a chin; what is nearer to the eye covers what is farther. */
function headPieces({ head, neckTop }: Skeleton, camera: Camera): readonly Piece[] {
  const at = (x: number, y: number, z = 0) => along(neckTop, head, point(x, y, z));
  const blob = (middle: Point, half: Point) => ellipsoid(middle, head, half, camera);
  const near = (spot: Point) => camera(spot).near;
  const face = blob(at(0.018, 0.068), point(0.038, 0.05, 0.041));
  const jaw = [
    ...blob(at(0.022, 0.045), point(0.033, 0.034, 0.036)),
    ...blob(at(0.04, 0.014), point(0.014, 0.014, 0.018)),
  ];
  const bridge = blob(at(0.049, 0.082), point(0.006, 0.008, 0.006));
  const nose = blob(at(0.061, 0.057), point(0.009, 0.008, 0.009));
  const skin: Piece = {
    tone: 'skin',
    path: [face, hull(jaw), hull([...bridge, ...nose])].map(smoothPath).join(''),
  };
  const hair: Piece = {
    tone: 'hair',
    path: smoothPath(blob(at(-0.002, 0.077), point(0.054, 0.053, 0.049))),
  };
  const isSeen = (spot: Point) => near(spot) > near(at(0.014, 0.068)) + 0.008;
  const marks = [at(0.052, 0.074, 0.018), at(0.052, 0.074, -0.018)]
    .filter(isSeen)
    .map((eye) => smoothPath(blob(eye, point(0.004, 0.006, 0.0045))));
  const mouth = at(0.05, 0.027);
  // Where the nose stands out of the face nothing else has to show it.
  if (near(mouth) > near(at(0.014, 0.068)) + 0.02) {
    marks.push(smoothPath(blob(mouth, point(0.003, 0.003, 0.013))));
    marks.push(smoothPath(blob(at(0.066, 0.052), point(0.003, 0.0028, 0.006))));
  }
  if (near(at(-0.05, 0.08)) > near(at(0.06, 0.06)) + 0.02) return [skin, hair];
  const ears = [0.042, -0.042]
    .filter((z) => near(at(0, 0.06, z)) > near(at(0.014, 0.068)) - 0.005)
    .map(
      (z): Piece => ({
        tone: 'skin',
        path: smoothPath(blob(at(-0.006, 0.062, z), point(0.009, 0.014, 0.006))),
      }),
    );
  return [hair, skin, ...ears, { tone: 'mark', path: marks.join('') }];
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
    ...limb('right'),
    ...limb('left'),
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
