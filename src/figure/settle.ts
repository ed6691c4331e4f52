// A pose made to rest: the angles that were given are kept to the degree, and the body's place,
// its lean and the joints that were left open are fitted so that it touches what it rests on,
// goes through nothing, and stands in balance.
import type { Figure, LimbAngle, Pose } from '../model/figure.ts';
import type { Sides } from '../units/side.ts';
import { HEIGHTS, MASS } from './body.ts';
import { type Intent, intentOf, mergedPose, positionOf } from './intent.ts';
import { fitted } from './least-squares.ts';
import {
  HANDS,
  LIMB_AT,
  limbAt,
  ROOT_AT,
  type Skeleton,
  type Stance,
  skeletonOf,
} from './skeleton.ts';
import { between, minus, type Point, plus, times } from './space.ts';
import { ankleTarget, bodyPoints, palmOf, palmTarget, type Surface } from './touches.ts';

/** Where the surfaces are; walls are null until the start pose has put them up. */
export interface Scene {
  readonly floor: number;
  readonly seat: number;
  readonly worktop: number;
  readonly step: number;
  readonly 'wall-ahead': number | null;
  readonly 'wall-behind': number | null;
}

export interface Settled {
  readonly intent: Intent;
  readonly stance: Stance;
  readonly body: Skeleton;
  /** What could not be reached or rested on, by how much, in statures. */
  readonly shortfalls: readonly { readonly key: string; readonly by: number }[];
}

export interface SettledFigure {
  readonly scene: Scene;
  readonly start: Settled;
  readonly end: Settled | null;
  /** The body on its way, from the start to the end. */
  readonly way: readonly Skeleton[];
}

const FIRM = [4, 30, 300] as const;
const ON_THE_WAY = [30] as const;
const ANCHOR = { foot: 3, other: 40 } as const;
const BALANCE = 1.5;
const FLAT = 2;
const LIMIT = 10;
/** How far an open joint gives way, in degrees; narrower than the normal range where a body would rather move elsewhere. */
const OPEN_LIMITS: Readonly<Partial<Record<LimbAngle, readonly [number, number]>>> = {
  hip_flexion: [-20, 125],
  knee_flexion: [0, 150],
  ankle_dorsiflexion: [-50, 30],
  shoulder_flexion: [-60, 180],
  shoulder_abduction: [-20, 120],
  shoulder_rotation: [-90, 90],
  elbow_flexion: [0, 150],
  wrist_flexion: [-90, 80],
};
/** How strongly open joints keep to where they were wanted, in radians. */
const NEAR = 0.04;
const STIFF = Object.fromEntries(
  HANDS.flatMap((hand) => [
    [limbAt(hand, 'hip_flexion'), 0.1],
    [limbAt(hand, 'knee_flexion'), 0.07],
  ]),
) as Readonly<Record<number, number>>;
const NEAR_PLACE = 0.01;
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
    hasBed: figure.props.some(({ name }) => name === 'bed'),
  };
  const bare: Scene = { ...HEIGHTS, floor: 0, 'wall-ahead': null, 'wall-behind': null };
  const intent = intentOf(figure.start, figure.start, { ...setting, from: null });
  const first = settled(
    intent,
    bare,
    rested(putDown(intent, bare), { intent, scene: bare, from: null, left: null }, FIRM),
  );
  if (!figure.end) {
    return { scene: built(bare, [first]), start: first, end: null, way: [first.body] };
  }
  const endPose: Pose = mergedPose(figure.start, figure.end);
  const endIntent = intentOf(endPose, figure.end, { ...setting, from: first });
  const scene = built(bare, [first]);
  const way = settledWay(first, endIntent, scene);
  const end = way.at(-1) as Settled;
  return {
    scene: built(scene, [end]),
    start: first,
    end,
    way: [first, ...way].map(({ body }) => body),
  };
}

const STEPS = 5;

/**
 * The body at rest again and again on its way from the start to the end: angles that are given go
 * evenly from one to the other, and what is not touched yet draws near evenly. So the fit is never
 * far from its goal, and the way is the true one.
 */
function settledWay(first: Settled, intent: Intent, scene: Scene): readonly Settled[] {
  const isFree = new Set(intent.free);
  const away = missing(first.body, intent, scene);
  const way: Settled[] = [];
  for (let step = 1; step <= STEPS; step += 1) {
    const share = step / STEPS;
    const toward = first.stance.map((one, i) => one + ((intent.wanted[i] as number) - one) * share);
    const before = way.at(-1)?.stance ?? first.stance;
    const begin = toward.map((one, i) => (isFree.has(i) ? (before[i] as number) : one));
    const now: Intent = { ...intent, wanted: toward };
    const left = away.map((one) => one * (1 - share));
    const firm = step === STEPS ? FIRM : ON_THE_WAY;
    const stance = rested(begin, { intent: now, scene, from: first, left }, firm);
    way.push(settled(intent, scene, stance));
  }
  return way;
}

/** Walls stand where the first pose touches them. */
function built(scene: Scene, poses: readonly Settled[]): Scene {
  const wall = (surface: 'wall-ahead' | 'wall-behind') => {
    if (scene[surface] !== null) return scene[surface];
    for (const { intent, body } of poses) {
      const touch = intent.touches.find((one) => one.surface === surface);
      if (touch) return touch.at(body).x + (surface === 'wall-ahead' ? touch.flesh : -touch.flesh);
    }
    return null;
  };
  return { ...scene, 'wall-ahead': wall('wall-ahead'), 'wall-behind': wall('wall-behind') };
}

/** How far a point with its flesh is from a surface; below 0 it has gone through. */
function gap(at: Point, flesh: number, surface: Surface, level: number): number {
  if (surface === 'wall-ahead') return level - at.x - flesh;
  if (surface === 'wall-behind') return at.x - level - flesh;
  return at.y - level - flesh;
}

/** Fitted softly first, so that it finds its way, then ever more firmly. */
function rested(
  begin: Stance,
  wish: Omit<Wish, 'firm' | 'limits'>,
  firmness: readonly number[],
): Stance {
  const limits = limitsOf(wish.intent);
  return firmness.reduce(
    (stance, firm) =>
      fitted(stance, wish.intent.free, (values) => wishes(values, { ...wish, firm, limits })),
    begin,
  );
}

function settled(intent: Intent, scene: Scene, stance: Stance): Settled {
  const body = skeletonOf(stance, intent.base);
  const shortfalls = [...touchGaps(body, intent, scene), ...palmGaps(body, intent)]
    .filter(({ by }) => Math.abs(by) > REACHED)
    .map(({ key, by }) => ({ key, by: Math.abs(by) }));
  return { intent, stance, body, shortfalls };
}

/** The wanted stance with the body just above what it rests on, for the fit to begin near its end. */
function putDown({ wanted, base, touches }: Intent, scene: Scene): Float64Array {
  const body = skeletonOf(wanted, base);
  const lowest = bodyPoints(body).map(([at, flesh]) => gap(at, flesh, 'floor', 0));
  const level = touches.flatMap(({ surface, at, flesh }) =>
    surface === 'seat' ? [gap(at(body), flesh, 'seat', scene.seat)] : [],
  );
  const stance = wanted.slice();
  stance[ROOT_AT.y] = -Math.min(...(level.length > 0 ? level : lowest));
  return stance;
}

interface Gap {
  readonly key: string;
  readonly by: number;
}

function touchGaps(body: Skeleton, { touches }: Intent, scene: Scene): readonly Gap[] {
  // A wall that is not up yet goes where the first touch is; all others have to be in line with it.
  const put = new Map<Surface, number>();
  return touches.map((one) => {
    const at = one.at(body);
    const known = scene[one.surface] ?? put.get(one.surface);
    if (known === undefined) {
      put.set(one.surface, at.x + (one.surface === 'wall-ahead' ? one.flesh : -one.flesh));
      return { key: one.key, by: 0 };
    }
    return { key: one.key, by: gap(at, one.flesh, one.surface, known) };
  });
}

/** A palm or an ankle that is put on the body itself. */
function palmGaps(body: Skeleton, { hands, feet }: Intent): readonly Gap[] {
  const gaps = (key: string, at: Point, target: Point | null) => {
    if (!target) return [];
    const off = minus(at, target);
    return [off.x, off.y, off.z].map((by) => ({ key, by }));
  };
  return HANDS.flatMap((hand) => [
    ...gaps(`${hand} hand`, palmOf(body, hand), palmTarget(hand, hands[hand], body)),
    ...gaps(`${hand} foot`, body[hand].ankle, ankleTarget(hand, feet[hand], body)),
  ]);
}

/** What must touch and does not, in a fixed order. */
function missing(body: Skeleton, intent: Intent, scene: Scene): readonly number[] {
  const gaps = [...touchGaps(body, intent, scene), ...palmGaps(body, intent)].map(({ by }) => by);
  const lowest = HANDS.filter((hand) => intent.feet[hand] === 'lowest').map((hand) =>
    Math.min(body[hand].heel.y, body[hand].ball.y),
  );
  return [...gaps, ...lowest];
}

interface Wish {
  readonly intent: Intent;
  readonly scene: Scene;
  readonly from: Settled | null;
  /** How much may still be missing on the way; null for nothing. */
  readonly left: readonly number[] | null;
  /** How much firmer touching is wished for than anything else. */
  readonly firm: number;
  readonly limits: readonly Limit[];
}

function wishes(
  stance: Float64Array,
  { intent, scene, from, left, firm, limits }: Wish,
): readonly number[] {
  const body = skeletonOf(stance, intent.base);
  const lacks = missing(body, intent, scene).map((one, i) => firm * (one - (left?.[i] ?? 0)));
  for (const [at, flesh] of bodyPoints(body)) {
    lacks.push(firm * Math.min(0, gap(at, flesh, 'floor', 0)));
    for (const wall of ['wall-ahead', 'wall-behind'] as const) {
      const level = scene[wall];
      if (level !== null) lacks.push(firm * Math.min(0, gap(at, flesh, wall, level)));
    }
  }
  for (const hand of HANDS) {
    // Lying, a foot is flat as far as its ankle goes.
    if (intent.feet[hand] === 'lying') lacks.push(FLAT * body[hand].ball.y);
    if (intent.feet[hand] === 'instep' || intent.feet[hand] === 'free')
      lacks.push(firm * Math.min(0, body[hand].toe.y));
  }
  for (const { index, low, high } of limits) {
    const at = stance[index] as number;
    lacks.push((LIMIT * (Math.max(0, at - high) + Math.min(0, at - low)) * Math.PI) / 180);
  }
  if (from) lacks.push(...anchorLacks(body, intent, from));
  if (intent.isBalanced) lacks.push(BALANCE * offBalance(body, intent));
  nearLacks(stance, intent, lacks);
  return lacks;
}

interface Limit {
  readonly index: number;
  readonly low: number;
  readonly high: number;
}

/** Joints that were left open go no further than joints go. */
function limitsOf({ free }: Intent): readonly Limit[] {
  return HANDS.flatMap((hand) =>
    Object.entries(OPEN_LIMITS).flatMap(([angle, [low, high]]) => {
      const index = limbAt(hand, angle as LimbAngle);
      return free.includes(index) ? [{ index, low, high }] : [];
    }),
  );
}

/** What touched at the start and touches still stays in its place. */
function anchorLacks(body: Skeleton, intent: Intent, from: Settled): readonly number[] {
  const balls = HANDS.map((hand) =>
    intent.feet[hand] === 'lowest' && from.intent.feet[hand] !== 'free'
      ? ANCHOR.foot * (body[hand].ball.x - from.body[hand].ball.x)
      : 0,
  );
  return [...balls, ...touchAnchors(body, intent, from)];
}

function touchAnchors(body: Skeleton, intent: Intent, from: Settled): readonly number[] {
  return intent.touches.flatMap((one) => {
    const before = from.intent.touches.find(
      ({ key, surface }) => key === one.key && surface === one.surface,
    );
    if (!before) return [];
    const off = minus(one.at(body), before.at(from.body));
    const weight = one.isFoot ? ANCHOR.foot : ANCHOR.other;
    const upright = one.surface.startsWith('wall') ? 0 : weight * off.x;
    return [upright, weight * off.z * 0.2];
  });
}

function nearLacks(stance: Float64Array, intent: Intent, lacks: number[]): void {
  const { wanted, free } = intent;
  for (const index of free) {
    const off = (stance[index] as number) - (wanted[index] as number);
    if (index === ROOT_AT.y) continue;
    if (index < 3) lacks.push(NEAR_PLACE * off);
    else if (index < LIMB_AT) lacks.push((intent.stiffness[index - 3] as number) * off);
    else lacks.push(((STIFF[index] ?? NEAR) * off * Math.PI) / 180);
  }
}

/** How far the centre of mass is from above the feet that carry. */
function offBalance(body: Skeleton, { feet }: Intent): number {
  const carrying = HANDS.filter((hand) => feet[hand] !== 'free');
  const under = carrying.map((hand) => {
    const { heel, ball, ankle } = body[hand];
    const isRaised = heel.y - ball.y > 0.01;
    return isRaised || feet[hand] === 'toes' ? ball.x : ankle.x + 0.025;
  });
  if (under.length === 0) return 0;
  const middle = under.reduce((sum, one) => sum + one, 0) / under.length;
  return centreOfMass(body).x - middle;
}

function centreOfMass(body: Skeleton): Point {
  let sum = times(between(body.spine[1], body.spine[2], 0.6), MASS.trunk);
  const add = (at: Point, mass: number) => {
    sum = plus(sum, times(at, mass));
  };
  add(body.headMiddle, MASS.head);
  for (const hand of HANDS) {
    const one = body[hand];
    add(between(one.hip, one.knee, 0.433), MASS.thigh);
    add(between(one.knee, one.ankle, 0.433), MASS.shank);
    add(between(one.heel, one.toe, 0.5), MASS.foot);
    add(between(one.shoulder, one.elbow, 0.436), MASS.upperArm);
    add(between(one.elbow, one.wrist, 0.68), MASS.forearmAndHand);
  }
  return times(
    sum,
    1 /
      (MASS.trunk +
        MASS.head +
        2 * (MASS.upperArm + MASS.forearmAndHand + MASS.thigh + MASS.shank + MASS.foot)),
  );
}
