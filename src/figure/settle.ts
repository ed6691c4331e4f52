// A pose made to rest: the angles that were given are kept to the degree, and the body's place,
// its lean and the joints that were left open are fitted so that it touches what it rests on,
// goes through nothing, and stands in balance.
import type { Figure } from '../model/figure.ts';
import type { Sides } from '../units/side.ts';
import { offBalance } from './balance.ts';
import { besideOf } from './beside.ts';
import { contactsOf, type Gap, gapsBeyond, measured, withPutUp } from './contacts.ts';
import { type Intent, intentOf, positionOf } from './intent.ts';
import { fitted } from './least-squares.ts';
import { mergedPose } from './limb-poses.ts';
import { BARE_SCENE, gap, type Scene } from './scene.ts';
import { LIMB_AT, ROOT_AT, type Skeleton, type Stance, skeletonOf } from './skeleton.ts';
import { BODY_POINTS } from './touches.ts';
import { aimOf, type Wish } from './wishes.ts';

export interface Settled {
  readonly intent: Intent;
  readonly stance: Stance;
  readonly body: Skeleton;
  /** Contacts that are not made, and what goes through the floor or a wall. */
  readonly shortfalls: readonly Gap[];
}

export interface SettledFigure {
  readonly scene: Scene;
  readonly start: Settled;
  readonly end: Settled | null;
  /** The body on its way, from the start to the end. */
  readonly way: readonly Skeleton[];
}

// Fitted softly first, so that it finds its way, then ever more firmly.
const FIRM = [4, 30, 300] as const;
const ON_THE_WAY = [30] as const;
const AT_THE_END = [30, 300] as const;

/** How far the middle of the body's mass may be from above its feet: more than half a foot. */
const FALLS = 0.1;

/** How far a contact may be off and still be seen to touch: 1 cm of 1.70 m. */
const REACHED = 0.006;

/** The figure's poses at rest; null where its position is none that a figure knows. */
export function settledFigure(
  figure: Figure,
  level: { readonly position: string; readonly sides: Sides },
): SettledFigure | null {
  const position = positionOf(figure, level.position);
  if (!position) return null;
  const setting = {
    position,
    name: figure.position ?? level.position,
    sides: level.sides,
    beside: besideOf(figure),
  };
  const intent = intentOf(figure.start, figure.start, { ...setting, from: null });
  const wish = { intent, scene: BARE_SCENE, from: null, left: null };
  const stance = rested(putDown(intent), wish, FIRM);
  const scene = withPutUp(BARE_SCENE, [{ intent, body: skeletonOf(stance, intent.base) }]);
  const start = settled(intent, scene, stance);
  if (!figure.end) return { scene, start, end: null, way: [start.body] };
  const endPose = mergedPose(figure.start, figure.end);
  const endIntent = intentOf(endPose, figure.end, { ...setting, from: start });
  const kept = settledWay(start, endIntent, scene);
  // Legs that change places take their feet with them: who would fall with feet that stay, steps.
  const isFallen = fallen(skeletonOf(kept.at(-1) as Stance, endIntent.base), endIntent).length > 0;
  const way = isFallen ? settledWay(start, steppingOf(endIntent), scene) : kept;
  const end = settled(endIntent, scene, way.at(-1) as Stance);
  const bodies = way.slice(0, -1).map((stance) => skeletonOf(stance, endIntent.base));
  return {
    scene: withPutUp(scene, [end]),
    start,
    end,
    way: [start.body, ...bodies, end.body],
  };
}

const STEPS = 3;

/**
 * The body at rest again and again on its way from the start to the end: angles that are given go
 * evenly from one to the other, and what is not touched yet draws near evenly. So the fit is never
 * far from its goal, and the way is the true one.
 */
function settledWay(start: Settled, intent: Intent, scene: Scene): readonly Stance[] {
  const isFree = new Set(intent.free);
  const open = measured(contactsOf(intent, scene), start.body);
  const way: Stance[] = [];
  for (let step = 1; step <= STEPS; step += 1) {
    const share = step / STEPS;
    const wanted = start.stance.map((one, i) => one + ((intent.wanted[i] as number) - one) * share);
    const before = way.at(-1) ?? start.stance;
    const begin = wanted.map((one, i) => (isFree.has(i) ? (before[i] as number) : one));
    const left = open.map((one) => one * (1 - share));
    const wish = { intent: { ...intent, wanted }, scene, from: start, left };
    way.push(rested(begin, wish, step === STEPS ? AT_THE_END : ON_THE_WAY));
  }
  return way;
}

function rested(begin: Stance, wish: Omit<Wish, 'firm'>, firmness: readonly number[]): Stance {
  const { free } = wish.intent;
  const fit = firmness.reduce(
    (stance, firm) => fitted(stance, free, aimOf({ ...wish, firm })),
    begin,
  );
  return onGrid(fit, free);
}

/** The last digits of a fit are no one's wish, and an engine's sine may differ in them: they are cut off. */
function onGrid(stance: Stance, free: readonly number[]): Stance {
  const cut = stance.slice();
  for (const index of free) {
    const grid = index < LIMB_AT ? 1e5 : 1e2;
    cut[index] = Math.round((cut[index] as number) * grid) / grid;
  }
  return cut;
}

function settled(intent: Intent, scene: Scene, stance: Stance): Settled {
  const body = skeletonOf(stance, intent.base);
  const shortfalls = [...gapsBeyond(REACHED, body, intent, scene), ...fallen(body, intent)];
  return { intent, stance, body, shortfalls };
}

/** How far a body that stands on its own feet is from above them, where it can only fall. */
function fallen(body: Skeleton, intent: Intent): readonly Gap[] {
  const by = intent.isBalanced ? offBalance(body, intent) : 0;
  return Math.abs(by) > FALLS
    ? [{ part: 'trunk', hand: null, on: 'balance', by: Math.abs(by) }]
    : [];
}

/** The same with feet that need not stay where they are. */
function steppingOf(intent: Intent): Intent {
  const touches = intent.touches.map((one) =>
    one.keeps === 'loosely' ? { ...one, keeps: 'not' as const } : one,
  );
  return { ...intent, touches };
}

/** The wanted stance with the body just above what it rests on, for the fit to begin near its end. */
function putDown({ wanted, base, touches }: Intent): Stance {
  const body = skeletonOf(wanted, base);
  const lowest = BODY_POINTS.map(({ at, flesh }) => gap(at(body), flesh, 'floor', 0));
  const level = touches.flatMap(({ surface, at, flesh }) =>
    surface === 'seat' ? [gap(at(body), flesh, 'seat', BARE_SCENE.seat)] : [],
  );
  const stance = wanted.slice();
  stance[ROOT_AT.y] = -Math.min(...(level.length > 0 ? level : lowest));
  return stance;
}
