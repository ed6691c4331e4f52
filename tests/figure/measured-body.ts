// A solved body measured with a protractor: angles from the points of its joints alone. None of the
// engine's own turning of frames is used.
import type { Settled } from '../../src/figure/figure.ts';

type Body = Settled['body'];
type Spot = Body['vertex'];
type Hand = 'left' | 'right';

function minus(a: Spot, b: Spot): Spot {
  return { x: a.x - b.x, y: a.y - b.y, z: a.z - b.z };
}

function dot(a: Spot, b: Spot): number {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

function cross(a: Spot, b: Spot): Spot {
  return { x: a.y * b.z - a.z * b.y, y: a.z * b.x - a.x * b.z, z: a.x * b.y - a.y * b.x };
}

export function distance(a: Spot, b: Spot): number {
  return Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);
}

function unit(a: Spot): Spot {
  const length = Math.hypot(a.x, a.y, a.z);
  return { x: a.x / length, y: a.y / length, z: a.z / length };
}

const DEGREES = 180 / Math.PI;

/** The angle between two directions, 0 to 180 degrees. */
function between(a: Spot, b: Spot): number {
  return Math.atan2(Math.hypot(...Object.values(cross(a, b))), dot(a, b)) * DEGREES;
}

/** Forwards, up and to the right of a part of the trunk, from a line up it and one across it. */
function axes(up: Spot, across: Spot) {
  const y = unit(up);
  const x = unit(cross(y, across));
  return { x, y, z: cross(x, y) };
}

type Axes = ReturnType<typeof axes>;

const pelvisOf = (body: Body) =>
  axes(minus(body.spine[1], body.spine[0]), minus(body.right.hip, body.left.hip));

/** Only where no shoulder blade is drawn up or forwards, else the line across is not the chest's. */
const chestOf = (body: Body) =>
  axes(minus(body.spine[3], body.spine[2]), minus(body.right.shoulder, body.left.shoulder));

/** Flexion and abduction of a segment that hangs from a part of the trunk, as a goniometer reads them. */
function hanging(segment: Spot, { x, y, z }: Axes, hand: Hand) {
  const way = unit(segment);
  const out = hand === 'right' ? dot(way, z) : -dot(way, z);
  return {
    flexion: Math.atan2(dot(way, x), -dot(way, y)) * DEGREES,
    abduction: Math.asin(Math.max(-1, Math.min(1, out))) * DEGREES,
  };
}

/**
 * Turning out of a segment about its length, by the plane in which the next joint bends. The bending
 * axis of a segment that is not turned lies in the plane of abduction.
 */
function turnedOut(segment: Spot, next: Spot, bendsForwards: boolean, at: Axes, hand: Hand) {
  const length = unit(segment);
  const hinge = unit(bendsForwards ? cross(segment, next) : cross(next, segment));
  const { flexion } = hanging(segment, at, hand);
  const ahead = {
    x: at.x.x * Math.cos(flexion / DEGREES) + at.y.x * Math.sin(flexion / DEGREES),
    y: at.x.y * Math.cos(flexion / DEGREES) + at.y.y * Math.sin(flexion / DEGREES),
    z: at.x.z * Math.cos(flexion / DEGREES) + at.y.z * Math.sin(flexion / DEGREES),
  };
  const unturned = unit(cross(ahead, { x: -length.x, y: -length.y, z: -length.z }));
  const turn = Math.atan2(dot(cross(unturned, hinge), length), dot(unturned, hinge)) * DEGREES;
  return hand === 'right' ? turn : -turn;
}

/** All angles of one arm and leg that can be read off a body. */
export function limbAngles(body: Body, hand: Hand) {
  const { hip, knee, ankle, heel, toe, shoulder, elbow, wrist, fingertip } = body[hand];
  const [thigh, shank] = [minus(knee, hip), minus(ankle, knee)];
  const [upperArm, forearm] = [minus(elbow, shoulder), minus(wrist, elbow)];
  const [pelvis, chest] = [pelvisOf(body), chestOf(body)];
  const [leg, arm] = [hanging(thigh, pelvis, hand), hanging(upperArm, chest, hand)];
  return {
    hip_flexion: leg.flexion,
    hip_abduction: leg.abduction,
    hip_rotation: turnedOut(thigh, shank, false, pelvis, hand),
    knee_flexion: between(thigh, shank),
    ankle_dorsiflexion: 90 - between(minus(toe, heel), { x: -shank.x, y: -shank.y, z: -shank.z }),
    shoulder_flexion: arm.flexion,
    shoulder_abduction: arm.abduction,
    shoulder_rotation: turnedOut(upperArm, forearm, true, chest, hand),
    elbow_flexion: between(upperArm, forearm),
    wrist_flexion: between(forearm, minus(fingertip, wrist)),
  };
}

/** How one part of the body is bent forwards, to the right and turned to the right against the one below. */
function bentAgainst(upper: Axes, lower: Axes) {
  const up = [dot(upper.y, lower.x), dot(upper.y, lower.y), dot(upper.y, lower.z)] as const;
  const flexion = Math.atan2(up[0], up[1]);
  const side = Math.asin(Math.max(-1, Math.min(1, up[2])));
  // The forward axis that bending alone would leave.
  const plain = {
    x: lower.x.x * Math.cos(flexion) - lower.y.x * Math.sin(flexion),
    y: lower.x.y * Math.cos(flexion) - lower.y.y * Math.sin(flexion),
    z: lower.x.z * Math.cos(flexion) - lower.y.z * Math.sin(flexion),
  };
  const turn = Math.atan2(dot(cross(upper.x, plain), upper.y), dot(plain, upper.x));
  return { flexion: flexion * DEGREES, side: side * DEGREES, turn: turn * DEGREES };
}

export function middleAngles(body: Body) {
  const chest = chestOf(body);
  const trunk = bentAgainst(chest, pelvisOf(body));
  // The middle of the head lies before the line from neck to crown.
  const up = minus(body.vertex, body.neckTop);
  const rise = dot(minus(body.headMiddle, body.neckTop), unit(up));
  const ahead = minus(minus(body.headMiddle, body.neckTop), {
    x: unit(up).x * rise,
    y: unit(up).y * rise,
    z: unit(up).z * rise,
  });
  const neck = bentAgainst(axes(up, cross(ahead, up)), chest);
  return {
    trunk_flexion: trunk.flexion,
    trunk_side_bend: trunk.side,
    trunk_rotation: trunk.turn,
    neck_flexion: neck.flexion,
    neck_side_bend: neck.side,
    neck_rotation: neck.turn,
  };
}

/** How far the hips' line up is from the upright, forwards positive; for a body that faces along x. */
export function leanOf(body: Body): number {
  const up = minus(body.spine[1], body.spine[0]);
  return Math.atan2(up.x, up.y) * DEGREES;
}
