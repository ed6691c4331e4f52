// The arrow of a movement: along the true way of the point that travels farthest, or that the figure names, set
// off a little from the body, with a head that can be seen at 4 cm.
import type { ArrowPart } from '../model/figure.ts';
import { MOVERS, type Mover, middleOfHead } from './arrow-movers.ts';
import type { Camera } from './camera.ts';
import { type Dot, polygonPath, smoothLine } from './path.ts';
import type { Skeleton } from './skeleton.ts';
import { between, type Point } from './space.ts';

export interface Arrow {
  readonly line: string;
  readonly head: string;
  readonly spots: readonly Dot[];
}

/** How far hips have to go for the whole body to be what moves. */
const BODY_MOVES = 0.12;
const LEAST_SEEN = 0.012;
const LEAST_LENGTH = 0.1;
const OFF = 0.045;
/** How far to the side an arrow may stand, the nearest first, and how much room it wants. */
const ROOMS = [0.09, -0.09, 0.13, -0.13, 0.18, -0.18, 0.24, -0.24];
const ENOUGH_ROOM = 0.075;
/** How far apart two joints have to be seen for one to go round the other. */
const SEEN_APART = 0.06;
const OVER_HEAD = 0.105;
const HEAD = { long: 0.05, half: 0.024 } as const;

export interface ArrowSetting {
  readonly camera: Camera;
  readonly isSeen: (dot: Dot) => boolean;
  /** Of the head of the arrow; 1 for a whole body. */
  readonly size: number;
  /** What it follows; null for what travels farthest. */
  readonly part: ArrowPart | null;
}

/** The arrow of a way; null where nothing is seen to move. */
export function arrowOf(way: readonly Skeleton[], setting: ArrowSetting): Arrow | null {
  const { camera, isSeen, size, part } = setting;
  const movers = part === null ? MOVERS : MOVERS.filter((one) => one.part === part);
  const trails = movers
    .map((mover) => {
      const trail = way.map((body) => camera(mover.at(body)));
      const long = lengthOf(trail);
      const favour = mover.favour > 1.5 && long < BODY_MOVES ? 1 : mover.favour;
      return { mover, trail, score: long * (part === null ? favour : 1) };
    })
    .filter(({ trail }) => isSeen(trail[0] as Dot) && isSeen(trail.at(-1) as Dot));
  const best = trails.reduce<(typeof trails)[number] | null>(
    (top, one) => (top === null || one.score > top.score + 1e-4 ? one : top),
    null,
  );
  // A part that is named and stays where it is has no way to follow.
  if (!best || lengthOf(best.trail) < LEAST_SEEN)
    return part === null ? null : arrowOf(way, { ...setting, part: null });
  return drawn(longEnough(setOff(best.mover, best.trail, way, camera), size), size);
}

/** The trail moved out of the body: away from the joint it turns about, or to where there is room. */
function setOff(
  { about, isInLine = false }: Mover,
  trail: readonly Dot[],
  way: readonly Skeleton[],
  camera: Camera,
): readonly Dot[] {
  if (about === middleOfHead) {
    const over = overHead(trail, way, camera);
    if (over) return over;
  }
  const begin = about && camera(about(way[0] as Skeleton));
  // A shoulder goes round the neck where that is seen, as from above.
  const isRound = begin && (!isInLine || away(begin, trail[0] as Dot) > SEEN_APART);
  if (about && isRound)
    return trail.map((dot, i) => outward(dot, camera(about(way[i] as Skeleton)), OFF));
  const [first, last] = [trail[0] as Dot, trail.at(-1) as Dot];
  const long = Math.hypot(last.x - first.x, last.y - first.y) || 1;
  const across = { x: -(last.y - first.y) / long, y: (last.x - first.x) / long };
  const bodies = [way[0] as Skeleton, way.at(-1) as Skeleton].flatMap((body) =>
    flesh(body).map((at) => camera(at)),
  );
  const shifted = (way: Dot, by: number) =>
    trail.map(({ x, y }) => ({ x: x + way.x * by, y: y + way.y * by }));
  const onward = { x: across.y, y: -across.x };
  // Beside its way, or where there is no room, beyond its end; a back is pushed from before its way.
  const beyond = [long + 0.09, long + 0.13].map((by) => shifted(onward, by));
  const before = [-long - 0.09, -long - 0.13, -long - 0.17].map((by) => shifted(onward, by));
  const beside = ROOMS.map((by) => shifted(across, by));
  const moved = isInLine ? [...before, ...beyond, ...beside] : [...beside, ...beyond];
  const room = (dots: readonly Dot[]) =>
    Math.min(...dots.flatMap((dot) => bodies.map((at) => Math.hypot(at.x - dot.x, at.y - dot.y))));
  return moved.reduce((best, one) =>
    room(best) < ENOUGH_ROOM && room(one) > room(best) + 0.01 ? one : best,
  );
}

/** Spots all over the body, dense enough to tell whether an arrow would lie on it. */
function flesh(body: Skeleton): readonly Point[] {
  const along = (points: readonly Point[]) =>
    points.slice(1).flatMap((to, i) => {
      const from = points[i] as Point;
      return [from, between(from, to, 0.25), between(from, to, 0.5), between(from, to, 0.75), to];
    });
  const limbs = (['right', 'left'] as const).flatMap((hand) => {
    const { hip, knee, ankle, toe, shoulder, elbow, wrist, fingertip } = body[hand];
    return [...along([hip, knee, ankle, toe]), ...along([shoulder, elbow, wrist, fingertip])];
  });
  return [...along([...body.spine, body.neckTop, body.vertex]), ...limbs];
}

/** A turn of the head seen from where the nose goes sideways is an arc over the head; else null. */
function overHead(
  trail: readonly Dot[],
  way: readonly Skeleton[],
  camera: Camera,
): readonly Dot[] | null {
  const begin = way[0] as Skeleton;
  const [chin, top] = [camera(begin.neckTop), camera(begin.vertex)];
  const high = Math.hypot(top.x - chin.x, top.y - chin.y);
  if (high < 0.06) return null;
  const up = { x: (top.x - chin.x) / high, y: (top.y - chin.y) / high };
  const beside = { x: -up.y, y: up.x };
  const [first, last] = [trail[0] as Dot, trail.at(-1) as Dot];
  const step = { x: last.x - first.x, y: last.y - first.y };
  const [sideways, upwards] = [step, step].map(({ x, y }, i) => {
    const axis = i === 0 ? beside : up;
    return Math.abs(x * axis.x + y * axis.y);
  }) as [number, number];
  if (upwards > sideways * 0.6) return null;
  return trail.map((dot, i) => {
    const middle = camera((way[i] as Skeleton).headMiddle);
    const off = (dot.x - middle.x) * beside.x + (dot.y - middle.y) * beside.y;
    const angle = Math.max(-1.2, Math.min(1.2, off / 0.075));
    const [s, c] = [Math.sin(angle) * OVER_HEAD, Math.cos(angle) * OVER_HEAD];
    return { x: middle.x + beside.x * s + up.x * c, y: middle.y + beside.y * s + up.y * c };
  });
}

function away(a: Dot, b: Dot): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

function outward(dot: Dot, about: Dot, by: number): Dot {
  const far = Math.hypot(dot.x - about.x, dot.y - about.y) || 1;
  return { x: dot.x + ((dot.x - about.x) / far) * by, y: dot.y + ((dot.y - about.y) / far) * by };
}

function lengthOf(trail: readonly Dot[]): number {
  return trail.slice(1).reduce((sum, dot, i) => {
    const before = trail[i] as Dot;
    return sum + Math.hypot(dot.x - before.x, dot.y - before.y);
  }, 0);
}

/** A short way is drawn longer about its middle, so that its direction can be seen. */
function longEnough(trail: readonly Dot[], size: number): readonly Dot[] {
  const long = lengthOf(trail);
  const least = LEAST_LENGTH * size;
  if (long >= least) return trail;
  const factor = least / long;
  const middle = trail[Math.floor(trail.length / 2)] as Dot;
  return trail.map(({ x, y }) => ({
    x: middle.x + (x - middle.x) * factor,
    y: middle.y + (y - middle.y) * factor,
  }));
}

function drawn(trail: readonly Dot[], size: number): Arrow {
  const [headLong, headHalf] = [HEAD.long * size, HEAD.half * size];
  const tip = trail.at(-1) as Dot;
  // The head points along the last stretch that is as long as itself.
  let i = trail.length - 2;
  while (i > 0 && Math.hypot(tip.x - (trail[i] as Dot).x, tip.y - (trail[i] as Dot).y) < headLong)
    i -= 1;
  const from = trail[Math.max(0, i)] as Dot;
  const far = Math.hypot(tip.x - from.x, tip.y - from.y) || 1;
  const way = { x: (tip.x - from.x) / far, y: (tip.y - from.y) / far };
  const foot = { x: tip.x - way.x * headLong, y: tip.y - way.y * headLong };
  const across = { x: -way.y * headHalf, y: way.x * headHalf };
  const shaft = trail.filter(
    (dot) => (dot.x - foot.x) * way.x + (dot.y - foot.y) * way.y < 0.003 || dot === trail[0],
  );
  const line = smoothLine([...shaft, foot]);
  const head = polygonPath([
    tip,
    { x: foot.x + across.x, y: foot.y + across.y },
    { x: foot.x - across.x, y: foot.y - across.y },
  ]);
  return { line, head, spots: trail };
}
