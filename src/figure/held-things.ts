// What is held, tied, or lain on: weight, ball, bag, stick, band, towel, roll and pillow, each at the
// place that its word names. Measures in statures, chosen by eye.
import type { Prop, PropPlace } from '../model/figure.ts';
import type { Camera } from './camera.ts';
import { box, ellipse, ellipsoid } from './outline.ts';
import { linePath, polygonPath, roundedPath } from './path.ts';
import { drawn, type PropDraft, type PropPiece } from './prop-piece.ts';
import { placePoints } from './prop-places.ts';
import type { Skeleton } from './skeleton.ts';
import { between, minus, type Point, plus, point, times, UPRIGHT } from './space.ts';

interface Setting {
  readonly places: readonly PropPlace[];
  /** The places as points of the body drawn solid. */
  readonly points: readonly Point[];
  readonly body: Skeleton;
  /** The body of the start, where things that stand fast take their place. */
  readonly start: Skeleton;
  readonly camera: Camera;
}

type Draw = (setting: Setting) => readonly PropDraft[];

/** A rolled towel between the arm and the side. */
const TUCKED = point(0.024, 0.05, 0.022);

const DEFAULT_PLACE: Readonly<Partial<Record<Prop['name'], readonly PropPlace[]>>> = {
  pillow: ['head'],
  stick: ['hands'],
  roll: ['knee'],
};

const HELD: Readonly<Partial<Record<Prop['name'], Draw>>> = {
  weight: ({ places, points, camera }) => {
    const r = places.includes('ankle') ? 0.03 : 0.036;
    return points.map((at) => ball(at, point(r, r, r), 'heavy', 'before', camera));
  },
  ball: ({ points, camera }) =>
    points.map((at) => ball(at, point(0.04, 0.04, 0.04), 'pale', 'before', camera)),
  bag: ({ points, camera }) => points.flatMap((at) => bag(at, camera)),
  stick,
  band,
  towel: ({ places, points, camera }) =>
    points.length > 1
      ? [drawn('before', 'thick-line', linePath(points.map((at) => camera(at))))]
      : points.map((at) =>
          places.includes('elbow')
            ? ball(plus(at, point(0.012, 0.03, -0.042)), TUCKED, 'pale', 'before', camera)
            : ball(at, point(0.03, 0.03, 0.06), 'pale', 'before', camera),
        ),
  roll: ({ points, camera }) =>
    points.map((at) => {
      const r = Math.max(0.022, Math.min(0.05, (at.y - 0.03) / 2));
      return ball(point(at.x, r, at.z), point(r, r, 0.09), 'pale', 'behind', camera);
    }),
  pillow: (setting) => setting.places.flatMap((place) => pillow(place, setting)),
};

/** A held thing as seen; nothing for a piece of furniture. */
export function heldThing(
  { name, at }: Prop,
  body: Skeleton,
  start: Skeleton,
  camera: Camera,
): readonly PropDraft[] {
  const places = at.length > 0 ? at : (DEFAULT_PLACE[name] ?? ['hand']);
  const points = places.flatMap((place) => placePoints(place, body));
  return HELD[name]?.({ places, points, body, start, camera }) ?? [];
}

function ball(
  at: Point,
  half: Point,
  look: PropPiece['look'],
  layer: PropDraft['layer'],
  camera: Camera,
): PropDraft {
  const path = ellipse(at, UPRIGHT, half, camera);
  return drawn(layer, look, path, ellipsoid(at, UPRIGHT, half, camera));
}

function bag(at: Point, camera: Camera): readonly PropDraft[] {
  const low = plus(at, point(-0.06, -0.17, -0.02));
  const dots = box(low, plus(at, point(0.06, -0.03, 0.02)), camera);
  const strap = [plus(at, point(-0.03, -0.04)), at, plus(at, point(0.03, -0.04))];
  return [
    drawn('before', 'pale', roundedPath(dots, 0.02), dots),
    drawn('before', 'line', linePath(strap.map((one) => camera(one)))),
  ];
}

/** From hand to hand and beyond; in one hand, upright. */
function stick({ points, camera }: Setting): readonly PropDraft[] {
  const [a, b] = points;
  if (!a) return [];
  const way = minus(b ?? plus(a, point(0, 0.3)), a);
  const dots = [camera(plus(a, times(way, -0.35))), camera(plus(a, times(way, 1.35)))];
  return [drawn('before', 'thick-line', linePath(dots), dots)];
}

/** Places that stay where they are when the body moves. */
const FIXED: ReadonlySet<PropPlace> = new Set(['door', 'side', 'other-side'] as const);

/** From place to place; one that is tied to a fixed point begins there. */
function band({ places, points, body, start, camera }: Setting): readonly PropDraft[] {
  const fixed = places.find((place) => FIXED.has(place));
  if (fixed === undefined) {
    const dots = points.map((at) => camera(at));
    return dots.length > 1 ? [drawn('before', 'thick-line', linePath(dots), dots)] : [];
  }
  const [anchor] = placePoints(fixed, start);
  if (!anchor) return [];
  const [low, high] = [point(-0.008, -0.05, -0.01), point(0.02, 0.05, 0.01)];
  const dots = box(plus(anchor, low), plus(anchor, high), camera);
  const ends = places
    .filter((place) => !FIXED.has(place))
    .flatMap((place) => placePoints(place, body));
  return [
    drawn('behind', 'heavy', polygonPath(dots), dots),
    ...ends.map((at) => drawn('before', 'thick-line', linePath([camera(anchor), camera(at)]))),
  ];
}

function pillow(place: PropPlace, { body, camera }: Setting): readonly PropDraft[] {
  if (place === 'knees' || place === 'knee') {
    const at = between(body.right.knee, body.left.knee, 0.5);
    return [ball(at, point(0.06, 0.03, 0.06), 'pale', 'behind', camera)];
  }
  return placePoints(place, body)
    .slice(0, 1)
    .map((at) => {
      const under = place === 'head' ? 0.05 : 0.055;
      const high = Math.max(0.018, (at.y - under) / 2 + 0.006);
      return ball(point(at.x, high, at.z), point(0.1, high, 0.12), 'pale', 'behind', camera);
    });
}
