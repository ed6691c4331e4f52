// What stands on the floor: chair, worktop, table, wall, step, bed and mat, each where the poses touch
// it, as boxes. Measures in statures; those of body.ts are common ones, the rest is chosen by eye.
import type { PropName } from '../model/figure.ts';
import { HEIGHTS } from './body.ts';
import type { Camera } from './camera.ts';
import { box } from './outline.ts';
import { polygonPath } from './path.ts';
import { drawn, type PropDraft, type PropPiece } from './prop-piece.ts';
import type { SettledFigure } from './settle.ts';
import { HANDS } from './skeleton.ts';
import { type Point, point } from './space.ts';

type Solid = (low: Point, high: Point, look?: PropPiece['look']) => void;

const FURNITURE: Readonly<
  Partial<Record<PropName, (settled: SettledFigure, solid: Solid) => void>>
> = {
  chair,
  worktop: (settled, solid) => worktop(settled, 'worktop', solid),
  table: (settled, solid) => worktop(settled, 'table', solid),
  wall,
  step,
  bed,
  mat,
};

/** A piece of furniture, box by box; null for a thing that is none. */
export function furniture(
  name: PropName,
  settled: SettledFigure,
  camera: Camera,
): readonly PropDraft[] | null {
  const build = FURNITURE[name];
  if (!build) return null;
  const drafts: PropDraft[] = [];
  build(settled, (low, high, look = 'solid') => {
    const outline = box(low, high, camera);
    drafts.push(drawn('behind', look, polygonPath(outline), outline));
  });
  return drafts;
}

function chair({ start, end }: SettledFigure, solid: Solid): void {
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
    chairBoxes(x, w, HEIGHTS.chairBack - 0.01, solid);
    return;
  }
  const x = (seated ?? start).body.spine[0].x - 0.105;
  chairBoxes(x, w, HEIGHTS.chairBack, solid);
}

/** A chair whose back stands at x and whose seat goes forwards. */
function chairBoxes(x: number, w: number, high: number, solid: Solid): void {
  const seat = HEIGHTS.seat;
  const front = x + 0.26;
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
