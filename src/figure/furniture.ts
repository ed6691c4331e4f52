// What stands on the floor: chair, worktop, table, wall, step, bed and mat, each where the poses touch
// it, as boxes. Measures in statures; those of body.ts are common ones, the rest is chosen by eye.
import type { Prop, PropName } from '../model/figure.ts';
import { besideOf } from './beside.ts';
import { buildBeside, doorFrames, isBefore, rails } from './beside-furniture.ts';
import { DEPTHS, HEIGHTS } from './body.ts';
import type { Camera } from './camera.ts';
import { chairBoxes, type Solid } from './furniture-boxes.ts';
import { box } from './outline.ts';
import { polygonPath } from './path.ts';
import { drawn, type PropDraft } from './prop-piece.ts';
import type { SettledFigure } from './settle.ts';
import { HANDS } from './skeleton.ts';
import { point } from './space.ts';

const FURNITURE: Readonly<
  Partial<Record<PropName, (settled: SettledFigure, solid: Solid) => void>>
> = {
  chair,
  worktop: (settled, solid) => worktop(settled, 'worktop', solid),
  table: (settled, solid) => worktop(settled, 'table', solid),
  wall,
  step: (settled, solid) => stairs(settled, 1, solid),
  stairs: (settled, solid) => stairs(settled, 3, solid),
  'door-frame': doorFrames,
  bed,
  mat,
};

/** A piece of furniture, box by box; null for a thing that is none. */
export function furniture(
  { name, at }: Prop,
  settled: SettledFigure,
  camera: Camera,
): readonly PropDraft[] | null {
  if (name === 'rail') return rails(settled, camera);
  const build = FURNITURE[name];
  if (!build) return null;
  const side = besideOf({ props: [{ name, at }] }).get(name);
  const drafts: PropDraft[] = [];
  const solid: Solid = (low, high, look = 'solid') => {
    const outline = box(low, high, camera);
    const isNear = side !== undefined && isBefore(low, camera);
    const path = polygonPath(outline);
    drafts.push(
      isNear ? drawn('before', 'line', path, outline) : drawn('behind', look, path, outline),
    );
  };
  if (side) buildBeside(name, side, settled, solid);
  else build(settled, solid);
  return drafts;
}

function chair({ start, end }: SettledFigure, solid: Solid): void {
  const seated = [start, end].find((one) =>
    one?.intent.touches.some(({ surface }) => surface === 'seat'),
  );
  const held = [start, end].find(
    (one) => one && HANDS.some((hand) => one.intent.hands[hand] === 'worktop'),
  );
  const half = 0.12;
  if (!seated && held) {
    // Stood behind, hands on its back: it faces away.
    const x =
      Math.min(
        ...HANDS.filter((hand) => held.intent.hands[hand] === 'worktop').map(
          (hand) => held.body[hand].wrist.x,
        ),
      ) + 0.03;
    chairBoxes({ x, z: 0, half, high: HEIGHTS.chairBack - 0.01 }, solid);
    return;
  }
  const x = (seated ?? start).body.spine[0].x - 0.105;
  chairBoxes({ x, z: 0, half, high: HEIGHTS.chairBack }, solid);
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

/** Steps, each a stair higher than the one before; the first is the one that a foot is on. */
function stairs({ start, end }: SettledFigure, count: number, solid: Solid): void {
  for (const one of [start, end]) {
    const hand = one && HANDS.find((side) => one.intent.feet[side] === 'step');
    if (!one || !hand) continue;
    const x = one.body[hand].heel.x - 0.03;
    const deep = Math.max(0.24, count * DEPTHS.tread);
    // The farthest first, so that a nearer one stands before it.
    for (let i = count - 1; i >= 0; i -= 1)
      solid(
        point(x + i * DEPTHS.tread, i * HEIGHTS.step, -0.16),
        point(x + deep, (i + 1) * HEIGHTS.step, 0.16),
        'pale',
      );
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
