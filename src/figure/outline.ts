// Outlines on the paper: a limb as a tube along its stations, an ellipsoid, a box, a hull; and how
// they are written as an SVG path. One unit is a thousandth of stature.
import type { Camera, Spot } from './camera.ts';
import { along, type Frame, type Point, point } from './space.ts';

export interface Dot {
  readonly x: number;
  readonly y: number;
}

/** A cross-section of a body part: its middle, its axes, and the flesh in front, behind and to the sides. */
export interface Station {
  readonly at: Point;
  readonly frame: Frame;
  readonly front: number;
  readonly back: number;
  readonly side: number;
}

export const UNIT = 1000;

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

function cross(a: Dot, b: Dot, c: Dot): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

function area(dots: readonly Dot[]): number {
  return dots.reduce((sum, { x, y }, i) => {
    const next = dots[(i + 1) % dots.length] as Dot;
    return sum + x * next.y - next.x * y;
  }, 0);
}

interface Pen {
  /** A command to the last of its dots, the others being its handles. */
  readonly to: (command: string, dots: readonly Dot[]) => void;
  readonly open: () => string;
  readonly closed: () => string;
}

/** Writes a path in whole thousandths and in steps from dot to dot: short, and everywhere the same. */
function penAt(dot: Dot): Pen {
  let at = { x: round(dot.x), y: round(dot.y) };
  let path = `M${at.x} ${at.y}`;
  return {
    to: (command, dots) => {
      const steps = dots.map(({ x, y }) => `${round(x) - at.x} ${round(y) - at.y}`);
      path += command + steps.join(' ');
      const { x, y } = dots.at(-1) as Dot;
      at = { x: round(x), y: round(y) };
    },
    open: () => path.replaceAll(' -', '-'),
    closed: () => `${path}z`.replaceAll(' -', '-'),
  };
}

function round(value: number): number {
  return Math.round(value * UNIT) + 0;
}

/** Always the same way round, so that overlapping pieces of one path make one shape. */
function wayRound(dots: readonly Dot[]): readonly Dot[] {
  return area(dots) < 0 ? [...dots].reverse() : dots;
}

/** A closed smooth curve through points (Catmull and Rom 1974). */
export function smoothPath(dots: readonly Dot[]): string {
  const row = wayRound(dots);
  const n = row.length;
  return curve((i) => row[(i + n) % n] as Dot, n, true);
}

/** An open smooth curve through points. */
export function smoothLine(dots: readonly Dot[]): string {
  const last = dots.length - 1;
  return curve((i) => dots[Math.max(0, Math.min(last, i))] as Dot, last, false);
}

function curve(at: (i: number) => Dot, pieces: number, isClosed: boolean): string {
  const pen = penAt(at(0));
  for (let i = 0; i < pieces; i += 1) {
    const [a, b, c, d] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    const one = { x: b.x + (c.x - a.x) / 6, y: b.y + (c.y - a.y) / 6 };
    const two = { x: c.x - (d.x - b.x) / 6, y: c.y - (d.y - b.y) / 6 };
    // Where one piece follows another, SVG mirrors the first handle itself.
    if (i === 0) pen.to('c', [one, two, c]);
    else pen.to('s', [two, c]);
  }
  return isClosed ? pen.closed() : pen.open();
}

export function polygonPath(dots: readonly Dot[]): string {
  return lines(wayRound(dots)).closed();
}

export function linePath(dots: readonly Dot[]): string {
  return lines(dots).open();
}

function lines([first, ...rest]: readonly Dot[]): Pen {
  const pen = penAt(first as Dot);
  for (const dot of rest) pen.to('l', [dot]);
  return pen;
}

/** A polygon with its corners rounded off by up to a length. */
export function roundedPath(dots: readonly Dot[], by: number): string {
  const row = wayRound(dots);
  const n = row.length;
  const toward = (from: Dot, to: Dot) => {
    const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
    const share = Math.min(by, length / 2) / length;
    return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
  };
  const corner = (i: number) => {
    const [before, dot, next] = [row[(i + n - 1) % n], row[i % n], row[(i + 1) % n]] as [
      Dot,
      Dot,
      Dot,
    ];
    return [toward(dot, before), dot, toward(dot, next)] as const;
  };
  const pen = penAt(corner(0)[0]);
  for (let i = 0; i < n; i += 1) {
    const [from, dot, to] = corner(i);
    if (i > 0) pen.to('l', [from]);
    pen.to('q', [dot, to]);
  }
  return pen.closed();
}

/** A box given by two opposite corners in the room, as seen. */
export function box(low: Point, high: Point, camera: Camera): readonly Dot[] {
  const corners = [low.x, high.x].flatMap((x) =>
    [low.y, high.y].flatMap((y) => [low.z, high.z].map((z) => camera({ x, y, z }))),
  );
  return hull(corners);
}
