// From joint angles to points in the room: forward kinematics, joint by joint from the hips.
// The body is always that of a worked right side; the other side is the finished picture mirrored.
import { LIMB_ANGLES, type LimbAngle, MIDDLE_ANGLES, type MiddleAngle } from '../model/figure.ts';
import { BALL_AHEAD, COLLAR_BONE, HALF_HIPS, HEEL_BEHIND, LENGTHS, TRUNK_PIECE } from './body.ts';
import {
  after,
  along,
  bent,
  type Frame,
  halfTurn,
  type Point,
  point,
  turnAbout,
  turnZxy,
} from './space.ts';

export type Hand = 'right' | 'left';
export const HANDS = ['right', 'left'] as const;

/** Everything that moves, in one row of numbers: metres of the root (in statures), radians, degrees. */
export type Stance = Float64Array;

/** Where the joint angles begin. */
export const LIMB_AT = 6;
const ROOT = LIMB_AT;
const LIMB = LIMB_ANGLES.length;
export const STANCE_LENGTH = ROOT + 2 * LIMB + MIDDLE_ANGLES.length;
export const ROOT_AT = { x: 0, y: 1, z: 2, turnX: 3, turnY: 4, turnZ: 5 } as const;

const LIMB_INDEX = Object.fromEntries(LIMB_ANGLES.map((angle, i) => [angle, i])) as Readonly<
  Record<LimbAngle, number>
>;

export function limbAt(hand: Hand, angle: LimbAngle): number {
  return ROOT + (hand === 'right' ? 0 : LIMB) + LIMB_INDEX[angle];
}

export function middleAt(angle: MiddleAngle): number {
  return ROOT + 2 * LIMB + MIDDLE_ANGLES.indexOf(angle);
}

/** One leg, as points and the axes of its segments. */
interface Leg {
  readonly hip: Point;
  readonly knee: Point;
  readonly ankle: Point;
  readonly heel: Point;
  readonly ball: Point;
  readonly toe: Point;
  readonly thigh: Frame;
  readonly shank: Frame;
  readonly foot: Frame;
}

interface Arm {
  readonly shoulder: Point;
  readonly elbow: Point;
  readonly wrist: Point;
  readonly fingertip: Point;
  readonly upperArm: Frame;
  readonly forearm: Frame;
  readonly palm: Frame;
}

export interface Limbs extends Leg, Arm {}

/** Written out, since a fit does it thousands of times. */
function limbsOf(leg: Leg, arm: Arm): Limbs {
  return {
    hip: leg.hip,
    knee: leg.knee,
    ankle: leg.ankle,
    heel: leg.heel,
    ball: leg.ball,
    toe: leg.toe,
    thigh: leg.thigh,
    shank: leg.shank,
    foot: leg.foot,
    shoulder: arm.shoulder,
    elbow: arm.elbow,
    wrist: arm.wrist,
    fingertip: arm.fingertip,
    upperArm: arm.upperArm,
    forearm: arm.forearm,
    palm: arm.palm,
  };
}

export interface Skeleton {
  readonly right: Limbs;
  readonly left: Limbs;
  /** Hips, two bends of the trunk, and the height of the shoulders. */
  readonly spine: readonly [Point, Point, Point, Point];
  /** The axes of the three pieces of the trunk, from below. */
  readonly trunk: readonly [Frame, Frame, Frame];
  readonly neckTop: Point;
  readonly neck: Frame;
  readonly head: Frame;
  readonly headMiddle: Point;
  readonly vertex: Point;
}

/** How a limb is read out of a stance. */
type LimbReader = (angle: LimbAngle) => number;

function legOf(root: Point, pelvis: Frame, of: LimbReader, side: number): Leg {
  const hip = along(root, pelvis, point(0, 0, side * HALF_HIPS));
  const thigh = after(
    pelvis,
    turnZxy(of('hip_flexion'), -side * of('hip_abduction'), -side * of('hip_rotation')),
  );
  const knee = along(hip, thigh, point(0, -LENGTHS.thigh));
  const shank = bent(thigh, -of('knee_flexion'));
  const ankle = along(knee, shank, point(0, -LENGTHS.shank));
  const foot = after(shank, turnZxy(of('ankle_dorsiflexion'), 0, -side * of('foot_eversion')));
  const sole = (ahead: number) => along(ankle, foot, point(ahead, -LENGTHS.footHeight));
  const heel = sole(-HEEL_BEHIND);
  const ball = sole(BALL_AHEAD);
  const toe = sole(LENGTHS.foot - HEEL_BEHIND);
  return { hip, thigh, knee, shank, ankle, foot, heel, ball, toe };
}

function armOf(collar: Point, chest: Frame, of: LimbReader, side: number): Arm {
  const bone = turnZxy(0, -side * of('shrug'), side * of('shoulder_forward'));
  const shoulder = along(collar, after(chest, bone), point(0, 0, side * COLLAR_BONE));
  const upperArm = after(
    chest,
    turnZxy(
      of('shoulder_flexion'),
      -side * of('shoulder_abduction'),
      -side * of('shoulder_rotation'),
    ),
  );
  const elbow = along(shoulder, upperArm, point(0, -LENGTHS.upperArm));
  const forearm = bent(upperArm, of('elbow_flexion'));
  const wrist = along(elbow, forearm, point(0, -LENGTHS.forearm));
  const palm = bent(forearm, -of('wrist_flexion'));
  const fingertip = along(wrist, palm, point(0, -LENGTHS.hand));
  return { shoulder, upperArm, elbow, forearm, wrist, palm, fingertip };
}

const sideOf = (hand: Hand) => (hand === 'right' ? 1 : -1);

function readerOf(stance: Stance, hand: Hand): LimbReader {
  return (angle) => stance[limbAt(hand, angle)] as number;
}

/** The skeleton of a stance; `base` is how the position's body lies in the room before any leaning. */
export function skeletonOf(stance: Stance, base: Frame): Skeleton {
  const at = (index: number) => stance[index] as number;
  const middle = (angle: MiddleAngle) => at(middleAt(angle));
  const root = point(at(ROOT_AT.x), at(ROOT_AT.y), at(ROOT_AT.z));
  const turn = point(at(ROOT_AT.turnX), at(ROOT_AT.turnY), at(ROOT_AT.turnZ));
  const pelvis = after(turnAbout(turn), base);
  const bend = halfTurn(
    turnZxy(-middle('trunk_flexion'), middle('trunk_side_bend'), -middle('trunk_rotation')),
  );
  const waist = after(pelvis, bend);
  const chest = after(waist, bend);
  const up = point(0, TRUNK_PIECE);
  const low = along(root, pelvis, up);
  const high = along(low, waist, up);
  const collar = along(high, chest, up);
  const nod = halfTurn(
    turnZxy(-middle('neck_flexion'), middle('neck_side_bend'), -middle('neck_rotation')),
  );
  const nape = after(chest, nod);
  const neck = bent(nape, middle('chin_back'));
  const head = after(nape, nod);
  const neckTop = along(collar, neck, point(0, LENGTHS.neck));
  const limbs = (hand: Hand): Limbs => {
    const [of, side] = [readerOf(stance, hand), sideOf(hand)];
    return limbsOf(legOf(root, pelvis, of, side), armOf(collar, chest, of, side));
  };
  return {
    right: limbs('right'),
    left: limbs('left'),
    spine: [root, low, high, collar],
    trunk: [pelvis, waist, chest],
    neckTop,
    neck,
    head,
    headMiddle: along(neckTop, head, point(0.012, LENGTHS.head / 2)),
    vertex: along(neckTop, head, point(0, LENGTHS.head)),
  };
}

const FIRST_OF_ARM = LIMB_ANGLES.indexOf('shoulder_flexion');

/** The skeleton of a stance that differs from that of `body` at one index: a limb's angle moves that limb alone. */
export function skeletonChangedAt(
  index: number,
  body: Skeleton,
  stance: Stance,
  base: Frame,
): Skeleton {
  const ofLimb = index - LIMB_AT;
  if (ofLimb < 0 || ofLimb >= 2 * LIMB) return skeletonOf(stance, base);
  const hand: Hand = ofLimb < LIMB ? 'right' : 'left';
  const [of, side] = [readerOf(stance, hand), sideOf(hand)];
  const before = body[hand];
  const limbs =
    ofLimb % LIMB < FIRST_OF_ARM
      ? limbsOf(legOf(body.spine[0], body.trunk[0], of, side), before)
      : limbsOf(before, armOf(body.spine[3], body.trunk[2], of, side));
  return {
    right: hand === 'right' ? limbs : body.right,
    left: hand === 'left' ? limbs : body.left,
    spine: body.spine,
    trunk: body.trunk,
    neckTop: body.neckTop,
    neck: body.neck,
    head: body.head,
    headMiddle: body.headMiddle,
    vertex: body.vertex,
  };
}
