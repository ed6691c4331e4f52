// What a pose wishes for while it is fitted, with how strongly: to touch what it rests on, to go
// through nothing, to stay in place and in balance, and else to stay as it was wanted.
import type { LimbAngle } from '../model/figure.ts';
import { offBalance } from './balance.ts';
import { contactsOf } from './contacts.ts';
import type { Intent } from './intent.ts';
import type { Aim } from './least-squares.ts';
import { gap, type Scene, WALLS } from './scene.ts';
import {
  HANDS,
  LIMB_AT,
  limbAt,
  ROOT_AT,
  type Skeleton,
  type Stance,
  skeletonChangedAt,
  skeletonOf,
} from './skeleton.ts';
import { BODY_POINTS } from './touches.ts';

// Weights: chosen on many figures, no source.
const ANCHOR = { loosely: 3, firmly: 40, not: 0 } as const;
const BALANCE = 1.5;
const FLAT = 2;
const LIMIT = 10;
/** How strongly open joints keep to where they were wanted, per radian. */
const NEAR = 0.04;
const STIFF = Object.fromEntries(
  HANDS.flatMap((hand) => [
    [limbAt(hand, 'hip_flexion'), 0.1],
    [limbAt(hand, 'knee_flexion'), 0.07],
  ]),
) as Readonly<Record<number, number>>;
const NEAR_PLACE = 0.01;
/** How strongly a body is kept from straying by more than its own length. */
const STRAY = 1;
const RADIANS = Math.PI / 180;

/** How far an open joint gives way, in degrees; narrower than the normal range where a body would rather move elsewhere. */
const OPEN_LIMITS: Readonly<Partial<Record<LimbAngle, readonly [number, number]>>> = {
  hip_flexion: [-20, 125],
  hip_abduction: [-45, 80],
  knee_flexion: [0, 150],
  ankle_dorsiflexion: [-50, 30],
  shoulder_flexion: [-60, 180],
  shoulder_abduction: [-20, 120],
  shoulder_rotation: [-90, 90],
  elbow_flexion: [0, 150],
  wrist_flexion: [-90, 80],
};

/** A body at rest, as what stays where it was is held against. */
interface Resting {
  readonly intent: Intent;
  readonly body: Skeleton;
}

export interface Wish {
  readonly intent: Intent;
  readonly scene: Scene;
  /** The start, for an end that goes on from it. */
  readonly from: Resting | null;
  /** How much of each gap may still be open, on the way; null for nothing. */
  readonly left: readonly number[] | null;
  /** How much firmer touching is wished for than anything else. */
  readonly firm: number;
}

/** A wish as something to fit. */
export function aimOf(wish: Wish): Aim<Skeleton> {
  const { intent, scene, from, firm } = wish;
  const contacts = contactsOf(intent, scene);
  const limits = limitsOf(intent);
  const anchors = from ? anchorsOf(intent, from) : [];
  const walls = WALLS.filter((wall) => scene[wall] !== null);
  return {
    bodyOf: (stance) => skeletonOf(stance, intent.base),
    changedAt: (index, body, stance) => skeletonChangedAt(index, body, stance, intent.base),
    lacks: (stance, body) => {
      const lacks: number[] = [];
      for (const { measure } of contacts) measure(body, lacks);
      for (let i = 0; i < lacks.length; i += 1)
        lacks[i] = firm * ((lacks[i] as number) - (wish.left?.[i] ?? 0));
      passLacks(body, wish, walls, lacks);
      for (const limit of limits) lacks.push(beyond(stance, limit));
      for (const anchor of anchors) anchor(body, lacks);
      if (intent.isBalanced) lacks.push(BALANCE * offBalance(body, intent));
      nearLacks(stance, intent, lacks);
      return lacks;
    },
  };
}

/** What has gone through the floor or a wall. */
function passLacks(
  body: Skeleton,
  { intent, scene, firm }: Wish,
  walls: readonly (typeof WALLS)[number][],
  lacks: number[],
): void {
  for (const { at, flesh } of BODY_POINTS) {
    const spot = at(body);
    lacks.push(firm * Math.min(0, gap(spot, flesh, 'floor', 0)));
    for (const wall of walls)
      lacks.push(firm * Math.min(0, gap(spot, flesh, wall, scene[wall] as number)));
  }
  for (const hand of HANDS) {
    const hold = intent.feet[hand];
    // Lying, a foot is flat as far as its ankle goes.
    if (hold === 'lying') lacks.push(FLAT * body[hand].ball.y);
    if (hold === 'instep' || hold === 'free') lacks.push(firm * Math.min(0, body[hand].toe.y));
  }
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

function beyond(stance: Stance, { index, low, high }: Limit): number {
  const at = stance[index] as number;
  return LIMIT * (Math.max(0, at - high) + Math.min(0, at - low)) * RADIANS;
}

type Anchor = (body: Skeleton, into: number[]) => void;

/** What touched at the start and touches still stays in its place. */
function anchorsOf(intent: Intent, from: Resting): readonly Anchor[] {
  const balls = HANDS.filter(
    (hand) => intent.feet[hand] === 'lowest' && from.intent.feet[hand] !== 'free',
  ).map((hand): Anchor => {
    const before = from.body[hand].ball.x;
    return (body, into) => into.push(ANCHOR.loosely * (body[hand].ball.x - before));
  });
  const touching = intent.touches.flatMap((one): readonly Anchor[] => {
    const isSame = ({ key, surface }: typeof one) => key === one.key && surface === one.surface;
    const before = from.intent.touches.find(isSame)?.at(from.body);
    if (!before || one.keeps === 'not') return [];
    const weight = ANCHOR[one.keeps];
    const isWall = one.surface.startsWith('wall');
    return [
      (body, into) => {
        const at = one.at(body);
        if (!isWall) into.push(weight * (at.x - before.x));
        into.push(weight * (at.z - before.z) * 0.2);
      },
    ];
  });
  return [...balls, ...touching];
}

function beyondReach(off: number): number {
  return Math.max(0, off - 1) + Math.min(0, off + 1);
}

function nearLacks(stance: Stance, intent: Intent, lacks: number[]): void {
  const { wanted, free, stiffness } = intent;
  for (const index of free) {
    const off = (stance[index] as number) - (wanted[index] as number);
    if (index === ROOT_AT.y) lacks.push(STRAY * beyondReach(off));
    else if (index < ROOT_AT.turnX) lacks.push(NEAR_PLACE * off + STRAY * beyondReach(off));
    else if (index < LIMB_AT) lacks.push((stiffness[index - ROOT_AT.turnX] as number) * off);
    else lacks.push((STIFF[index] ?? NEAR) * off * RADIANS);
  }
}
