// Points and turns in three dimensions. Axes are those of biomechanics (ISB): x forward, y up, z to
// the right of an upright body. A turn is a matrix by columns: where x, y and z go.

export interface Point {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** The three axes of a body part in the room. */
export interface Frame {
  readonly x: Point;
  readonly y: Point;
  readonly z: Point;
}

export function point(x: number, y: number, z = 0): Point {
  return { x, y, z };
}

export const UPRIGHT: Frame = { x: point(1, 0, 0), y: point(0, 1, 0), z: point(0, 0, 1) };

export function plus(a: Point, b: Point): Point {
  return { x: a.x + b.x, y: a.y + b.y, z: a.z + b.z };
}

export function minus(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y, z: a.z - b.z };
}

export function times(a: Point, factor: number): Point {
  return { x: a.x * factor, y: a.y * factor, z: a.z * factor };
}

export function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

export function lengthOf(a: Point): number {
  return Math.sqrt(dot(a, a));
}

export function between(a: Point, b: Point, share: number): Point {
  return plus(a, times(minus(b, a), share));
}

/** A point given along a frame's axes, from an origin, as a point of the room. */
export function along(origin: Point, { x, y, z }: Frame, at: Point): Point {
  return {
    x: origin.x + x.x * at.x + y.x * at.y + z.x * at.z,
    y: origin.y + x.y * at.x + y.y * at.y + z.y * at.z,
    z: origin.z + x.z * at.x + y.z * at.y + z.z * at.z,
  };
}

function turned({ x, y, z }: Frame, at: Point): Point {
  return {
    x: x.x * at.x + y.x * at.y + z.x * at.z,
    y: x.y * at.x + y.y * at.y + z.y * at.z,
    z: x.z * at.x + y.z * at.y + z.z * at.z,
  };
}

/** First the inner turn, then the outer. */
export function after(outer: Frame, inner: Frame): Frame {
  return { x: turned(outer, inner.x), y: turned(outer, inner.y), z: turned(outer, inner.z) };
}

/** A turn about an axis through its direction, its length the angle in radians. */
export function turnAbout(axis: Point): Frame {
  const angle = lengthOf(axis);
  if (angle < 1e-12) return UPRIGHT;
  const { x, y, z } = times(axis, 1 / angle);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const k = 1 - c;
  return {
    x: point(c + x * x * k, y * x * k + z * s, z * x * k - y * s),
    y: point(x * y * k - z * s, c + y * y * k, z * y * k + x * s),
    z: point(x * z * k + y * s, y * z * k - x * s, c + z * z * k),
  };
}

const RADIANS = Math.PI / 180;

/** Turns about the frame's own axes by degrees, the z axis first, then x, then y; written out, since every fit does it thousands of times. */
export function turnZxy(aboutZ: number, aboutX: number, aboutY: number): Frame {
  const [cz, sz] = [Math.cos(aboutZ * RADIANS), Math.sin(aboutZ * RADIANS)];
  const [cx, sx] = [Math.cos(aboutX * RADIANS), Math.sin(aboutX * RADIANS)];
  const [cy, sy] = [Math.cos(aboutY * RADIANS), Math.sin(aboutY * RADIANS)];
  return {
    x: point(cz * cy - sz * sx * sy, sz * cy + cz * sx * sy, -cx * sy),
    y: point(-sz * cx, cz * cx, sx),
    z: point(cz * sy + sz * sx * cy, sz * sy - cz * sx * cy, cx * cy),
  };
}

/** A frame turned by degrees about its own z axis alone, as a hinge is. */
export function bent({ x, y, z }: Frame, degrees: number): Frame {
  const [c, s] = [Math.cos(degrees * RADIANS), Math.sin(degrees * RADIANS)];
  return {
    x: { x: x.x * c + y.x * s, y: x.y * c + y.y * s, z: x.z * c + y.z * s },
    y: { x: y.x * c - x.x * s, y: y.y * c - x.y * s, z: y.z * c - x.z * s },
    z,
  };
}

/** The turn that, done twice, is this one. */
export function halfTurn(turn: Frame): Frame {
  const axis = point(turn.y.z - turn.z.y, turn.z.x - turn.x.z, turn.x.y - turn.y.x);
  const sine = lengthOf(axis) / 2;
  if (sine < 1e-15) return UPRIGHT;
  const angle = Math.atan2(sine, (turn.x.x + turn.y.y + turn.z.z - 1) / 2);
  return turnAbout(times(axis, angle / 4 / sine));
}
