// Outlines on the paper: a limb as a tube along its stations, an ellipsoid, a box, a hull.
import type { Camera, Spot } from './camera.ts';
import { type Dot, ovalPath } from './path.ts';
import { along, type Frame, type Point, point } from './space.ts';

/** A cross-section of a body part: its middle, its axes, and the flesh in front, behind and to the sides. */
export interface Station {
  readonly at: Point;
  readonly frame: Frame;
  readonly front: number;
  readonly back: number;
  readonly side: number;
}

/** The outline of a tube through its stations, as seen; closed, and the same way round as all others. */
export function tube(stations: readonly Station[], camera: Camera, endRound = 1): readonly Dot[] {
  const spots = stations.map(({ at }) => camera(at));
  const seen = lengthOnPaper(spots);
  const widest = Math.max(...stations.map(({ side, front }) => Math.max(side, front)));
  if (seen < widest * 0.7) return hull(stations.flatMap((one) => ring(one, camera)));
  const left: Dot[] = [];
  const right: Dot[] = [];
  stations.forEach((one, i) => {
    const spot = spots[i] as Spot;
    const way = directionAt(spots, i);
    const normal = { x: -way.y, y: way.x };
    const [a, b] = [reach(one, normal, camera), reach(one, { x: -normal.x, y: -normal.y }, camera)];
    left.push({ x: spot.x + normal.x * a, y: spot.y + normal.y * a });
    right.unshift({ x: spot.x - normal.x * b, y: spot.y - normal.y * b });
  });
  const cap = (i: number, sign: number): Dot => {
    const spot = spots[i] as Spot;
    const one = stations[i] as Station;
    const way = directionAt(spots, i);
    const r = ((one.front + one.back) / 2) * endRound * sign;
    return { x: spot.x + way.x * r, y: spot.y + way.y * r };
  };
  return [cap(0, -1), ...left, cap(stations.length - 1, 1), ...right];
}

function lengthOnPaper(spots: readonly Spot[]): number {
  const [first, last] = [spots[0] as Spot, spots.at(-1) as Spot];
  return Math.hypot(last.x - first.x, last.y - first.y);
}

function directionAt(spots: readonly Spot[], i: number): Dot {
  const [a, b] = [
    spots[Math.max(0, i - 1)] as Spot,
    spots[Math.min(spots.length - 1, i + 1)] as Spot,
  ];
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  return { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
}

/** How far the flesh of a cross-section reaches on the paper in a direction. */
function reach({ frame, front, back, side }: Station, way: Dot, camera: Camera): number {
  const [x, z] = [camera(frame.x), camera(frame.z)];
  const ahead = x.x * way.x + x.y * way.y;
  const beside = z.x * way.x + z.y * way.y;
  return Math.hypot((ahead > 0 ? front : back) * ahead, side * beside);
}

const RING = 10;

/** A cross-section's edge as seen. */
function ring({ at, frame, front, back, side }: Station, camera: Camera): readonly Dot[] {
  return Array.from({ length: RING }, (_, i) => {
    const angle = (2 * Math.PI * i) / RING;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    return camera(along(at, frame, point((c > 0 ? front : back) * c, 0, side * s)));
  });
}

/** An ellipsoid as seen: an ellipse, by eight points that a smooth curve runs through. */
export function ellipsoid(
  middle: Point,
  frame: Frame,
  half: Point,
  camera: Camera,
): readonly Dot[] {
  const spot = camera(middle);
  const axes = [
    { seen: camera(frame.x), half: half.x },
    { seen: camera(frame.y), half: half.y },
    { seen: camera(frame.z), half: half.z },
  ];
  return Array.from({ length: 8 }, (_, i) => {
    const angle = (2 * Math.PI * i) / 8;
    const way = { x: Math.cos(angle), y: Math.sin(angle) };
    // The point of an ellipse that lies farthest in a direction.
    let [x, y, square] = [0, 0, 0];
    for (const { seen, half: h } of axes) {
      const part = (seen.x * way.x + seen.y * way.y) * h * h;
      x += part * seen.x;
      y += part * seen.y;
      square += ((seen.x * way.x + seen.y * way.y) * h) ** 2;
    }
    const scale = 1 / (Math.sqrt(square) || 1);
    return { x: spot.x + x * scale, y: spot.y + y * scale };
  });
}

/** An ellipsoid as seen, as a path: an ellipse through the ends of two conjugate radii. */
export function ellipse(middle: Point, frame: Frame, half: Point, camera: Camera): string {
  // The shadow of an ellipsoid has the sum of its axes' squares for its matrix; its root gives the radii.
  let [xx, xy, yy] = [0, 0, 0];
  for (const [axis, h] of [
    [frame.x, half.x],
    [frame.y, half.y],
    [frame.z, half.z],
  ] as const) {
    const seen = camera(axis);
    xx += (h * seen.x) ** 2;
    xy += h * h * seen.x * seen.y;
    yy += (h * seen.y) ** 2;
  }
  const one = { x: Math.sqrt(xx), y: xy / (Math.sqrt(xx) || 1) };
  const two = { x: 0, y: Math.sqrt(Math.max(0, yy - one.y * one.y)) };
  return ovalPath(camera(middle), one, two);
}

/** The convex hull, by Andrew's monotone chain (1979). */
export function hull(dots: readonly Dot[]): readonly Dot[] {
  const sorted = [...dots].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (row: readonly Dot[]) => {
    const chain: Dot[] = [];
    for (const dot of row) {
      while (chain.length > 1 && cross(chain.at(-2) as Dot, chain.at(-1) as Dot, dot) <= 1e-9)
        chain.pop();
      chain.push(dot);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

/** How far a corner may stand out and still be left out: a fifth of a millimetre on a picture of 10 cm. */
const FLAT = 0.002;

/** A hull without the corners that hardly stand out. */
export function fewer(dots: readonly Dot[]): readonly Dot[] {
  const kept = [...dots];
  for (;;) {
    const heights = kept.map((dot, i) => {
      const [a, b] = [kept.at(i - 1) as Dot, kept[(i + 1) % kept.length] as Dot];
      return Math.abs(cross(a, dot, b)) / (Math.hypot(b.x - a.x, b.y - a.y) || 1);
    });
    const least = Math.min(...heights);
    if (kept.length <= 4 || least > FLAT) return kept;
    kept.splice(heights.indexOf(least), 1);
  }
}

function cross(a: Dot, b: Dot, c: Dot): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/** A box given by two opposite corners in the room, as seen. */
export function box(low: Point, high: Point, camera: Camera): readonly Dot[] {
  const corners = [low.x, high.x].flatMap((x) =>
    [low.y, high.y].flatMap((y) => [low.z, high.z].map((z) => camera({ x, y, z }))),
  );
  return hull(corners);
}
