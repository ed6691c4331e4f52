// The things around the body: where each stands follows from the poses, how it looks from boxes,
// discs and lines. What stands behind the body is drawn before it, what is held after it.
import type { Figure, Prop, PropPlace } from '../model/figure.ts';
import { HEIGHTS } from './body.ts';
import type { Camera } from './camera.ts';
import {
  box,
  type Dot,
  ellipsoid,
  linePath,
  polygonPath,
  roundedPath,
  smoothPath,
} from './outline.ts';
import type { Settled, SettledFigure } from './settle.ts';
import { HANDS, type Hand, type Skeleton } from './skeleton.ts';
import { along, between, minus, type Point, plus, point, times, UPRIGHT } from './space.ts';
import { palmOf } from './touches.ts';

export interface PropPiece {
  readonly look: 'solid' | 'pale' | 'heavy' | 'line' | 'thick-line' | 'fine-line';
  readonly path: string;
}

export interface PropShapes {
  readonly behind: readonly PropPiece[];
  readonly before: readonly PropPiece[];
  /** Dots that have to be in the picture. */
  readonly dots: readonly Dot[];
}

/** What the figure names, and what its poses cannot do without. */
function propsOf(figure: Figure, { start, end }: SettledFigure): readonly Prop[] {
  const poses = [start, ...(end ? [end] : [])];
  const touches = new Set(poses.flatMap(({ intent }) => intent.touches.map((one) => one.surface)));
  const named = new Set(figure.props.map(({ name }) => name));
  const add: Prop[] = [];
  const need = (name: Prop['name'], isNeeded: boolean) => {
    if (isNeeded && !named.has(name)) add.push({ name, at: [] });
  };
  need('chair', touches.has('seat') && !named.has('bed'));
  need('wall', touches.has('wall-ahead') || touches.has('wall-behind'));
  need('worktop', touches.has('worktop') && !named.has('chair') && !named.has('table'));
  need('step', touches.has('step'));
  return [...add, ...figure.props];
}

export function propShapes(figure: Figure, settled: SettledFigure, camera: Camera): PropShapes {
  const behind: PropPiece[] = [];
  const before: PropPiece[] = [];
  const dots: Dot[] = [];
  const now = settled.end ?? settled.start;
  const solid = (low: Point, high: Point, look: PropPiece['look'] = 'solid') => {
    const outline = box(low, high, camera);
    dots.push(...outline);
    behind.push({ look, path: polygonPath(outline) });
  };
  for (const prop of propsOf(figure, settled)) {
    switch (prop.name) {
      case 'chair':
        chair(settled, solid);
        break;
      case 'worktop':
      case 'table':
        worktop(settled, prop.name, solid);
        break;
      case 'wall':
        wall(settled, solid);
        break;
      case 'step':
        step(settled, solid);
        break;
      case 'bed':
        bed(settled, solid);
        break;
      case 'mat':
        mat(settled, solid);
        break;
      default:
        held(prop, now, settled, camera, { behind, before, dots });
    }
  }
  return { behind, before, dots };
}

type Solid = (low: Point, high: Point, look?: PropPiece['look']) => void;

function chair({ start, end, scene }: SettledFigure, solid: Solid): void {
  const seated = [start, end].find((one) =>
    one?.intent.touches.some(({ surface }) => surface === 'seat'),
  );
  const held = [start, end].find(
    (one) => one && HANDS.some((hand) => one.intent.hands[hand] === 'worktop'),
  );
  const w = 0.12;
  if (!seated && held) {
    // Stood behind, hands on its back: it faces away.
    const x =
      Math.min(
        ...HANDS.filter((hand) => held.intent.hands[hand] === 'worktop').map(
          (hand) => held.body[hand].wrist.x,
        ),
      ) + 0.03;
    chairBoxes(x, 1, w, HEIGHTS.chairBack - 0.01, solid);
    return;
  }
  const x = (seated ?? start).body.spine[0].x - 0.105;
  chairBoxes(x, 1, w, HEIGHTS.chairBack, solid);
  void scene;
}

/** A chair whose back stands at x and whose seat goes forwards. */
function chairBoxes(x: number, ahead: number, w: number, high: number, solid: Solid): void {
  const seat = HEIGHTS.seat;
  const front = x + ahead * 0.26;
  const leg = 0.018;
  for (const z of [-w, w - leg]) {
    solid(point(x, 0, z), point(x + leg, high, z + leg));
    solid(point(front - leg, 0, z), point(front, seat - 0.02, z + leg));
  }
  solid(point(x, seat + 0.12, -w), point(x + leg, high, w), 'pale');
  solid(point(x, seat - 0.025, -w), point(front, seat, w), 'pale');
}

function worktop({ start, end }: SettledFigure, name: 'worktop' | 'table', solid: Solid): void {
  const held =
    [start, end].find((one) => one && HANDS.some((hand) => one.intent.hands[hand] === 'worktop')) ??
    start;
  const wrists = HANDS.filter((hand) => held.intent.hands[hand] === 'worktop').map(
    (hand) => held.body[hand].wrist.x,
  );
  const x = (wrists.length > 0 ? Math.min(...wrists) : held.body.spine[0].x + 0.2) + 0.015;
  const high = name === 'worktop' || wrists.length > 0 ? HEIGHTS.worktop : HEIGHTS.table;
  if (name === 'worktop')
    solid(point(x + 0.02, 0, -0.2), point(x + 0.22, high - 0.03, 0.2), 'pale');
  else
    for (const z of [-0.2, 0.18])
      for (const at of [x + 0.02, x + 0.24])
        solid(point(at, 0, z), point(at + 0.02, high - 0.02, z + 0.02));
  solid(point(x, high - 0.028, -0.21), point(x + 0.26, high, 0.21), 'solid');
}

function wall({ scene, start }: SettledFigure, solid: Solid): void {
  const high = Math.max(
    0.85,
    start.body.vertex.y + 0.06,
    ...HANDS.map((hand) => start.body[hand].fingertip.y + 0.05),
  );
  const ahead = scene['wall-ahead'];
  const behind = scene['wall-behind'];
  if (ahead !== null) solid(point(ahead, 0, -0.25), point(ahead + 0.03, high, 0.25), 'pale');
  if (behind !== null) solid(point(behind - 0.03, 0, -0.25), point(behind, high, 0.25), 'pale');
}

function step({ start, end }: SettledFigure, solid: Solid): void {
  for (const one of [start, end]) {
    const hand = one && HANDS.find((side) => one.intent.feet[side] === 'step');
    if (!one || !hand) continue;
    const x = one.body[hand].heel.x - 0.03;
    solid(point(x, 0, -0.16), point(x + 0.24, HEIGHTS.step, 0.16), 'pale');
    return;
  }
}

function reachOf({ start, end }: SettledFigure): readonly [number, number] {
  const xs = [start, end].flatMap((one) => {
    if (!one) return [];
    const { body } = one;
    return [
      body.vertex.x,
      body.right.heel.x,
      body.left.heel.x,
      body.right.toe.x,
      body.right.elbow.x,
    ];
  });
  return [Math.min(...xs), Math.max(...xs)];
}

function bed(settled: SettledFigure, solid: Solid): void {
  const [low, high] = reachOf(settled);
  for (const at of [low, high - 0.03]) solid(point(at, -0.16, 0.1), point(at + 0.03, -0.05, 0.13));
  solid(point(low - 0.06, -0.07, -0.2), point(high + 0.06, 0, 0.2), 'pale');
}

function mat(settled: SettledFigure, solid: Solid): void {
  const [low, high] = reachOf(settled);
  solid(point(low - 0.05, -0.014, -0.2), point(high + 0.05, 0, 0.2), 'pale');
}

/** A point of the body, or the fixed point in front, by its word. */
function placePoints(place: PropPlace, body: Skeleton): readonly Point[] {
  const fist = (hand: Hand) => palmOf(body, hand);
  const sole = (hand: Hand) => between(body[hand].heel, body[hand].ball, 0.75);
  switch (place) {
    case 'hand':
      return [fist('right')];
    case 'other-hand':
      return [fist('left')];
    case 'hands':
      return [fist('right'), fist('left')];
    case 'foot':
      return [sole('right')];
    case 'other-foot':
      return [sole('left')];
    case 'feet':
      return [sole('right'), sole('left')];
    case 'ankle':
      return [between(body.right.ankle, body.right.knee, 0.12)];
    case 'knee':
      return [body.right.knee];
    case 'knees':
      return [
        between(body.right.knee, body.right.hip, 0.12),
        between(body.left.knee, body.left.hip, 0.12),
      ];
    case 'elbow':
      return [body.right.elbow];
    case 'head':
      return [body.headMiddle];
    case 'seat':
      return [body.spine[0]];
    case 'chest':
      return [along(body.spine[2], body.trunk[2], point(0.09, 0.03))];
    case 'back':
      return [body.spine[2]];
    case 'door':
      return [point(body.spine[0].x + 0.62, body.right.elbow.y + 0.02, body.right.elbow.z)];
    case 'floor':
      return [point(body.spine[0].x, 0, 0)];
  }
}

interface Pieces {
  readonly behind: PropPiece[];
  readonly before: PropPiece[];
  readonly dots: Dot[];
}

function held(
  prop: Prop,
  now: Settled,
  settled: SettledFigure,
  camera: Camera,
  pieces: Pieces,
): void {
  const { body } = now;
  const put = (
    layer: 'behind' | 'before',
    look: PropPiece['look'],
    path: string,
    dots: readonly Dot[],
  ) => {
    pieces[layer].push({ look, path });
    pieces.dots.push(...dots);
  };
  const ball = (at: Point, half: Point, look: PropPiece['look'], layer: 'behind' | 'before') => {
    const dots = ellipsoid(at, UPRIGHT, half, camera);
    put(layer, look, smoothPath(dots), dots);
  };
  const places = prop.at.length > 0 ? prop.at : (DEFAULT_PLACE[prop.name] ?? ['hand']);
  const points = places.flatMap((place) => placePoints(place, body));
  switch (prop.name) {
    case 'weight':
      for (const at of points) {
        const r = places.includes('ankle') ? 0.03 : 0.036;
        ball(at, point(r, r, r), 'heavy', 'before');
      }
      break;
    case 'ball':
      for (const at of points) ball(at, point(0.04, 0.04, 0.04), 'pale', 'before');
      break;
    case 'bag':
      for (const at of points) {
        const low = plus(at, point(-0.06, -0.17, -0.02));
        const dots = box(low, plus(at, point(0.06, -0.03, 0.02)), camera);
        put('before', 'pale', roundedPath(dots, 0.02), dots);
        put(
          'before',
          'line',
          linePath([
            camera(plus(at, point(-0.03, -0.04))),
            camera(at),
            camera(plus(at, point(0.03, -0.04))),
          ]),
          [],
        );
      }
      break;
    case 'stick': {
      const [a, b] =
        points.length > 1
          ? [points[0] as Point, points[1] as Point]
          : [points[0] as Point, plus(points[0] as Point, point(0, 0.3))];
      const way = minus(b, a);
      const dots = [camera(plus(a, times(way, -0.35))), camera(plus(b, times(way, 0.35)))];
      put('before', 'thick-line', linePath(dots), dots);
      break;
    }
    case 'band':
      if (places.includes('door')) {
        const anchor = placePoints('door', settled.start.body)[0] as Point;
        const dots = box(
          plus(anchor, point(-0.008, -0.05, -0.01)),
          plus(anchor, point(0.02, 0.05, 0.01)),
          camera,
        );
        put('behind', 'heavy', polygonPath(dots), dots);
        for (const place of places)
          if (place !== 'door')
            for (const at of placePoints(place, body))
              put('before', 'thick-line', linePath([camera(anchor), camera(at)]), []);
      } else if (points.length > 1) {
        const dots = points.map((at) => camera(at));
        put('before', 'thick-line', linePath(dots), dots);
      }
      break;
    case 'towel':
      if (points.length > 1)
        put('before', 'thick-line', linePath(points.map((at) => camera(at))), []);
      else for (const at of points) ball(at, point(0.03, 0.03, 0.06), 'pale', 'before');
      break;
    case 'roll':
      for (const place of places)
        for (const at of placePoints(place, body)) {
          const r = Math.max(0.022, Math.min(0.05, (at.y - 0.03) / 2));
          ball(point(at.x, r, at.z), point(r, r, 0.09), 'pale', 'behind');
        }
      break;
    case 'pillow':
      for (const place of places) pillow(place, body, ball);
      break;
    default:
  }
}

const DEFAULT_PLACE: Readonly<Partial<Record<Prop['name'], readonly PropPlace[]>>> = {
  weight: ['hand'],
  pillow: ['head'],
  stick: ['hands'],
  roll: ['knee'],
};

type Ball = (at: Point, half: Point, look: PropPiece['look'], layer: 'behind' | 'before') => void;

function pillow(place: PropPlace, body: Skeleton, ball: Ball): void {
  if (place === 'knees' || place === 'knee') {
    const at = between(body.right.knee, body.left.knee, 0.5);
    ball(at, point(0.06, 0.03, 0.06), 'pale', 'behind');
    return;
  }
  const [at] = placePoints(place, body);
  if (!at) return;
  const under = place === 'head' ? 0.05 : 0.055;
  const high = Math.max(0.018, (at.y - under) / 2 + 0.006);
  ball(point(at.x, high, at.z), point(0.1, high, 0.12), 'pale', 'behind');
}
