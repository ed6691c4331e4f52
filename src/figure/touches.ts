// Where a body can touch what it rests on: a point inside the flesh, the flesh around it, and the
// surface that it lies against.
import type { FootPlace, HandPlace } from '../model/figure.ts';
import { FLESH } from './body.ts';
import type { Hand, Skeleton } from './skeleton.ts';
import { along, between, type Point, point } from './space.ts';

/** Level ground at some height, a wall in front of the body, or one behind it. */
export type Surface = 'floor' | 'seat' | 'worktop' | 'step' | 'wall-ahead' | 'wall-behind';

export interface Touch {
  /** The same in both poses for the same part of the body. */
  readonly key: string;
  readonly surface: Surface;
  readonly at: (body: Skeleton) => Point;
  readonly flesh: number;
  /** Feet may slide where angles ask for it; what carries the trunk stays where it is. */
  readonly isFoot: boolean;
}

const other = (hand: Hand): Hand => (hand === 'right' ? 'left' : 'right');
const sideOf = (hand: Hand) => (hand === 'right' ? 1 : -1);

function touch(
  key: string,
  at: Touch['at'],
  flesh: number,
  surface: Surface = 'floor',
  isFoot = false,
): Touch {
  return { key, surface, at, flesh, isFoot };
}

const hips = (surface: Surface) => touch('hips', (body) => body.spine[0], FLESH.hip, surface);
const shoulderBlade = (hand: Hand, surface: Surface, front = 1) =>
  touch(
    `${hand} blade`,
    (body) =>
      along(body.spine[3], body.trunk[2], point(front * 0.002, -0.035, sideOf(hand) * 0.065)),
    FLESH.chest,
    surface,
  );
const blades = (surface: Surface) => [
  shoulderBlade('right', surface),
  shoulderBlade('left', surface),
];
const knee = (hand: Hand) => touch(`${hand} knee`, (body) => body[hand].knee, FLESH.knee);
const lyingOn = (hand: Hand) => [
  touch('hips', (body) => body[hand].hip, FLESH.hipJoint),
  touch('shoulder', (body) => body[hand].shoulder, FLESH.shoulder),
];

/** An arm that lies on the ground beside the body. */
export function lyingArm(hand: Hand): readonly Touch[] {
  return [touch(`${hand} wrist`, (body) => body[hand].wrist, FLESH.wrist, 'floor', true)];
}

/** The leg that a body on its side lies on. */
export function lowerLeg(hand: Hand): readonly Touch[] {
  return [
    knee(hand),
    touch(`${hand} ankle`, (body) => body[hand].ankle, FLESH.ankle, 'floor', true),
  ];
}

/** A hand laid flat: the wrist a little higher than the fingers. */
function flatHand(hand: Hand, surface: Surface): readonly Touch[] {
  return [
    touch(`${hand} wrist`, (body) => body[hand].wrist, FLESH.wrist, surface),
    touch(`${hand} fingers`, (body) => body[hand].fingertip, FLESH.fingers, surface),
  ];
}

function forearm(hand: Hand): readonly Touch[] {
  return [
    touch(`${hand} elbow`, (body) => body[hand].elbow, FLESH.elbow),
    touch(`${hand} wrist`, (body) => body[hand].wrist, FLESH.wrist),
  ];
}

/** What the words of `rests_on` touch, but feet and hands, which have places of their own. */
export function restTouches(rest: string, isOnChair: boolean): readonly Touch[] {
  switch (rest) {
    case 'seat':
      return [hips(isOnChair ? 'seat' : 'floor')];
    case 'back':
      return [hips('floor'), ...blades('floor')];
    case 'front':
      return [hips('floor'), ...blades('floor')];
    case 'upper-back':
      return blades('floor');
    case 'wall':
      return [hips('wall-behind'), ...blades('wall-behind')];
    case 'side':
      return lyingOn('right');
    case 'other-side':
      return lyingOn('left');
    case 'knees':
      return [knee('right'), knee('left')];
    case 'knee':
      return [knee('right')];
    case 'other-knee':
      return [knee('left')];
    case 'forearms':
      return [...forearm('right'), ...forearm('left')];
    case 'forearm':
      return forearm('right');
    case 'other-forearm':
      return forearm('left');
    default:
      return [];
  }
}

const HAND_SURFACES: Readonly<Partial<Record<HandPlace, Surface>>> = {
  floor: 'floor',
  wall: 'wall-ahead',
  worktop: 'worktop',
};

export function handTouches(hand: Hand, place: HandPlace): readonly Touch[] {
  const surface = HAND_SURFACES[place];
  return surface ? flatHand(hand, surface) : [];
}

export function palmOf(body: Skeleton, hand: Hand): Point {
  return between(body[hand].wrist, body[hand].fingertip, 0.45);
}

/** The point of the body that a palm is put on; null for a place that is no part of the body. */
export function palmTarget(hand: Hand, place: HandPlace, body: Skeleton): Point | null {
  const side = sideOf(hand);
  const [own, far] = [body[hand], body[other(hand)]];
  switch (place) {
    case 'hip':
      return along(body.spine[0], body.trunk[0], point(0.02, 0.06, side * 0.1));
    case 'thigh':
      return along(own.hip, own.thigh, point(0.058, -0.17, 0));
    case 'knee':
      return along(own.knee, own.thigh, point(0.045, 0.005, 0));
    case 'foot':
      return along(own.ankle, own.shank, point(0.03, 0.05, 0));
    case 'belly':
      return along(body.spine[1], body.trunk[0], point(0.072, 0.02, side * 0.03));
    case 'chest':
      return along(body.spine[2], body.trunk[2], point(0.08, 0.03, -side * 0.03));
    case 'other-shoulder':
      return along(far.shoulder, body.trunk[2], point(0.045, -0.03, side * 0.02));
    case 'other-elbow':
      return along(far.elbow, far.upperArm, point(0.03, 0, 0));
    case 'head':
      return along(body.headMiddle, body.head, point(0.0, 0.025, side * 0.062));
    case 'other-ear':
      return along(body.headMiddle, body.head, point(0, 0.03, -side * 0.06));
    case 'neck':
      return along(body.neckTop, body.head, point(-0.065, 0.045, side * 0.02));
    case 'back':
      return along(body.spine[1], body.trunk[1], point(-0.075, 0.03, 0));
    case 'chair':
      return along(body.spine[0], body.trunk[0], point(0.01, -0.045, side * 0.125));
    default:
      return null;
  }
}

/** The point of the other leg that an ankle is put on; null for a place that is no part of the body. */
export function ankleTarget(hand: Hand, hold: FootHold, body: Skeleton): Point | null {
  const far = body[other(hand)];
  const side = sideOf(hand);
  if (hold === 'other-foot') return along(far.ankle, far.shank, point(0, 0, side * 0.045));
  if (hold === 'other-knee') return along(far.knee, far.thigh, point(0.05, 0.035, 0));
  return null;
}

/** How a foot touches: `lowest` where only its lowest point has to. */
export type FootHold = FootPlace | 'instep' | 'edge' | 'lowest' | 'lying';

export function footTouches(hand: Hand, hold: FootHold): readonly Touch[] {
  const foot = (name: 'heel' | 'ball' | 'toe', surface: Surface = 'floor') =>
    touch(`${hand} ${name}`, (body) => body[hand][name], 0, surface, true);
  switch (hold) {
    case 'floor':
      return [foot('heel'), foot('ball')];
    case 'step':
      return [foot('heel', 'step'), foot('ball', 'step')];
    case 'wall':
      return [foot('heel', 'wall-ahead'), foot('ball', 'wall-ahead')];
    case 'toes':
      return [foot('ball')];
    case 'heel':
    case 'lying':
      return [foot('heel')];
    case 'instep':
      return [foot('toe')];
    case 'edge':
      return [
        touch(`${hand} ankle`, (body) => body[hand].ankle, FLESH.ankle, 'floor', true),
        touch(`${hand} ball`, (body) => body[hand].ball, 0.025, 'floor', true),
      ];
    default:
      return [];
  }
}

/** Every point that nothing may go through, with its flesh. */
export function bodyPoints(body: Skeleton): readonly (readonly [Point, number])[] {
  const limbs = (['right', 'left'] as const).flatMap((hand) => {
    const one = body[hand];
    return [
      [one.knee, FLESH.knee],
      [one.ankle, FLESH.ankle],
      [one.heel, 0],
      [one.ball, 0],
      [one.shoulder, FLESH.shoulder],
      [one.elbow, FLESH.elbow],
      [one.wrist, FLESH.wrist],
      [one.fingertip, FLESH.fingers],
    ] as const;
  });
  return [
    [body.spine[0], FLESH.hip],
    [body.spine[2], FLESH.waist],
    [body.headMiddle, FLESH.head],
    ...limbs,
  ];
}
