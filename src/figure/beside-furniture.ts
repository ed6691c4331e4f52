// What stands beside the body: worktop, chair, wall, handrail and door frame, each where a hand of its
// side is. What is between the eye and the body is drawn in lines, so that it hides nothing.
import type { PropName } from '../model/figure.ts';
import { HEIGHTS } from './body.ts';
import type { Camera } from './camera.ts';
import { type Chair, chairBoxes, type Solid } from './furniture-boxes.ts';
import { linePath } from './path.ts';
import { drawn, type PropDraft } from './prop-piece.ts';
import { RAIL_SLOPE } from './scene.ts';
import type { Settled, SettledFigure } from './settle.ts';
import { HANDS, type Hand } from './skeleton.ts';
import { type Point, point } from './space.ts';
import type { HandHold } from './touches.ts';

/** How far from the middle a thing stands that no hand is on. */
const UNHELD = 0.17;

interface Standing {
  readonly settled: SettledFigure;
  readonly side: Hand;
  /** Towards the side, along z. */
  readonly out: 1 | -1;
  /** From the middle to the nearer edge. */
  readonly edge: number;
  /** The first hand that is on it. */
  readonly held: { readonly wrist: Point; readonly hold: HandHold } | null;
  /** From the hindmost to the foremost place of the hips. */
  readonly from: number;
  readonly to: number;
}

const BUILD: Readonly<Partial<Record<PropName, (standing: Standing, solid: Solid) => void>>> = {
  worktop,
  chair,
  wall,
};

/** Adds the boxes of a thing at a side; nothing for a thing that stands only in front or behind. */
export function buildBeside(name: PropName, side: Hand, settled: SettledFigure, solid: Solid) {
  BUILD[name]?.(standingOf(side, settled), solid);
}

function posesOf({ start, end }: SettledFigure): readonly Settled[] {
  return end ? [start, end] : [start];
}

function standingOf(side: Hand, settled: SettledFigure): Standing {
  const poses = posesOf(settled);
  const holding = poses.filter(({ intent }) => intent.hands[side].endsWith('-beside'));
  const first = holding[0];
  const reach = holding.map(({ body }) => Math.abs(body[side].wrist.z));
  const hips = poses.map(({ body }) => body.spine[0].x);
  return {
    settled,
    side,
    out: side === 'right' ? 1 : -1,
    edge: Math.max(0.125, Math.min(UNHELD, ...reach.map((one) => one - 0.04))),
    held: first ? { wrist: first.body[side].wrist, hold: first.intent.hands[side] } : null,
    from: Math.min(...hips),
    to: Math.max(...hips),
  };
}

function worktop({ out, edge, from, to }: Standing, solid: Solid): void {
  const high = HEIGHTS.worktop;
  const at = (x: number, y: number, z: number) => point(x, y, out * z);
  solid(at(from - 0.22, 0, edge + 0.02), at(to + 0.28, high - 0.03, edge + 0.22), 'pale');
  solid(at(from - 0.24, high - 0.028, edge), at(to + 0.3, high, edge + 0.24));
}

function chair({ out, edge, held, from }: Standing, solid: Solid): void {
  const half = 0.12;
  const isBySeat = held?.hold === 'chair-beside';
  const x = held ? held.wrist.x + (isBySeat ? -0.13 : 0.03) : from - 0.05;
  const one: Chair = { x, z: out * (edge + half), half, high: HEIGHTS.chairBack - 0.01 };
  chairBoxes(one, solid);
}

function wall({ settled, side, out, from, to }: Standing, solid: Solid): void {
  const bodies = posesOf(settled).map(({ body }) => body);
  const z = settled.scene[`wall-${side}`] ?? out * (UNHELD + 0.1);
  const high = Math.max(...bodies.map(({ vertex }) => vertex.y)) + 0.05;
  const ahead = Math.max(to + 0.2, ...bodies.map((body) => body[side].fingertip.x + 0.06));
  solid(point(from - 0.22, 0, z), point(ahead, high, z + out * 0.03), 'pale');
}

/** A handrail at each side that a hand holds one, on posts, as steep as stairs. */
export function rails(settled: SettledFigure, camera: Camera): readonly PropDraft[] {
  return HANDS.flatMap((hand) => {
    const wrists = posesOf(settled)
      .filter(({ intent }) => intent.hands[hand] === 'rail')
      .map(({ body }) => body[hand].wrist);
    const level = settled.scene.rail;
    const [first] = wrists;
    if (!first || level === null) return [];
    const xs = wrists.map(({ x }) => x);
    const at = (x: number, y: number) => camera(point(x, y, first.z));
    const top = (x: number) => at(x, level + RAIL_SLOPE * x);
    const [from, to] = [Math.min(...xs) - 0.2, Math.max(...xs) + 0.16];
    const layer = isBefore(first, camera) ? 'before' : 'behind';
    const bar = [top(from), top(to)];
    const posts = [from + 0.02, to - 0.02].map((x) => [at(x, 0), top(x)]);
    return [
      drawn(layer, 'rail', linePath(bar), bar),
      ...posts.map((post) => drawn(layer, 'line', linePath(post), post)),
    ];
  });
}

/** The post of a door frame at each hand that is on one. */
export function doorFrames(settled: SettledFigure, solid: Solid): void {
  const x = settled.scene['door-frame'];
  const { start } = settled;
  for (const hand of HANDS) {
    const held = posesOf(settled).find(({ intent }) => intent.hands[hand] === 'door-frame');
    if (!held || x === null) continue;
    const out = hand === 'right' ? 1 : -1;
    const inner = held.body[hand].wrist.z - out * 0.025;
    const high = Math.max(start.body.vertex.y, held.body[hand].fingertip.y) + 0.08;
    solid(point(x, 0, inner), point(x + 0.05, high, inner + out * 0.09), 'pale');
  }
}

/** Whether a point beside the body stands between it and the eye. */
export function isBefore(at: Point, camera: Camera): boolean {
  return camera(at).near - camera(point(at.x, at.y, 0)).near > 0.05;
}
