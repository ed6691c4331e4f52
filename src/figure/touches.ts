// Where a body can touch what it rests on: a point inside the flesh, the flesh around it, and the
// surface that it lies against.
import type { FootPlace, HandPlace } from '../model/figure.ts';
import { BREADTHS, FLESH } from './body.ts';
import type { Surface } from './scene.ts';
import { HANDS, type Hand, type Skeleton } from './skeleton.ts';
import { along, type Point, point } from './space.ts';

/** A point of the body, wherever the body is. */
export type Spot = (body: Skeleton) => Point;

export type BodyPart =
  | 'hand'
  | 'forearm'
  | 'foot'
  | 'knee'
  | 'hips'
  | 'trunk'
  | 'upper back'
  | 'shoulder'
  | 'head';

/** What carries the trunk stays where it is; feet slide where angles ask for it; a hand slides along a rail. */
type Keeps = 'firmly' | 'loosely' | 'not';

export interface Touch {
  /** The same in both poses for the same part of the body. */
  readonly key: string;
  /** What touches, as it is called, and whose it is; null where it has no side. */
  readonly part: BodyPart;
  readonly hand: Hand | null;
  readonly surface: Surface;
  readonly at: Spot;
  readonly flesh: number;
  readonly keeps: Keeps;
}

const sideOf = (hand: Hand) => (hand === 'right' ? 1 : -1);

interface Named {
  readonly part: BodyPart;
  /** What of it, where one part touches with several points. */
  readonly point?: string;
  readonly hand?: Hand;
  readonly keeps?: Keeps;
}

function touch(
  { part, point: spot = part, hand, keeps = 'firmly' }: Named,
  at: Touch['at'],
  flesh: number,
  surface: Surface = 'floor',
): Touch {
  const key = hand === undefined ? spot : `${hand} ${spot}`;
  return { key, part, hand: hand ?? null, surface, at, flesh, keeps };
}

const hips = (surface: Surface) =>
  touch({ part: 'hips' }, (body) => body.spine[0], FLESH.hip, surface);
const blades = (surface: Surface) =>
  HANDS.map((hand) =>
    touch(
      { part: 'upper back', hand },
      (body) => along(body.spine[3], body.trunk[2], point(0.002, -0.035, sideOf(hand) * 0.065)),
      FLESH.chest,
      surface,
    ),
  );
const knee = (hand: Hand) => touch({ part: 'knee', hand }, (body) => body[hand].knee, FLESH.knee);
const lyingOn = (hand: Hand) => [
  touch({ part: 'hips' }, (body) => body[hand].hip, FLESH.hipJoint),
  touch({ part: 'shoulder', hand }, (body) => body[hand].shoulder, FLESH.shoulder),
];
const wrist = (hand: Hand, surface: Surface = 'floor', keeps: Keeps = 'firmly') =>
  touch(
    { part: 'hand', point: 'wrist', hand, keeps },
    (body) => body[hand].wrist,
    FLESH.wrist,
    surface,
  );
const ankle = (hand: Hand) =>
  touch(
    { part: 'foot', point: 'ankle', hand, keeps: 'loosely' },
    (body) => body[hand].ankle,
    FLESH.ankle,
  );

/** An arm that lies on the ground beside the body. */
export function lyingArm(hand: Hand): readonly Touch[] {
  return [wrist(hand, 'floor', 'loosely')];
}

/** The leg that a body on its side lies on. */
export function lowerLeg(hand: Hand): readonly Touch[] {
  return [knee(hand), ankle(hand)];
}

/** A hand laid flat: the wrist a little higher than the fingers. */
function flatHand(hand: Hand, surface: Surface, keeps?: Keeps): readonly Touch[] {
  return [wrist(hand, surface, keeps), fingers(hand, surface, keeps)];
}

function fingers(hand: Hand, surface: Surface, keeps?: Keeps): Touch {
  return touch(
    { part: 'hand', point: 'fingers', hand, ...(keeps ? { keeps } : {}) },
    (body) => body[hand].fingertip,
    FLESH.fingers,
    surface,
  );
}

function forearm(hand: Hand): readonly Touch[] {
  return [touch({ part: 'forearm', hand }, (body) => body[hand].elbow, FLESH.elbow), wrist(hand)];
}

/** What the words of `rests_on` touch, but feet and hands, which have places of their own. */
export function restTouches(rest: string, isOnChair: boolean): readonly Touch[] {
  switch (rest) {
    case 'seat':
      return [hips(isOnChair ? 'seat' : 'floor')];
    case 'back':
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

/** How a hand is held: `-beside` where the thing stands at its side. */
export type HandHold = HandPlace | 'worktop-beside' | 'chair-beside' | 'wall-beside';

export function handTouches(hand: Hand, hold: HandHold): readonly Touch[] {
  switch (hold) {
    case 'floor':
    case 'worktop':
    case 'door-frame':
      return flatHand(hand, hold);
    case 'wall':
      return flatHand(hand, 'wall-ahead');
    // A hand goes along a worktop as the body goes, and holds a chair where it stands.
    case 'worktop-beside':
      return flatHand(hand, 'worktop', 'not');
    case 'chair-beside':
      return flatHand(hand, 'seat');
    case 'wall-beside':
      return [fingers(hand, `wall-${hand}`, 'not')];
    case 'rail':
      return [wrist(hand, 'rail', 'not')];
    default:
      return [];
  }
}

/** How a foot touches: `lowest` where only its lowest point has to. */
export type FootHold = FootPlace | 'instep' | 'edge' | 'lowest' | 'lying';

export function footTouches(hand: Hand, hold: FootHold): readonly Touch[] {
  const foot = (point: 'heel' | 'ball' | 'toe', surface: Surface = 'floor') =>
    touch({ part: 'foot', point, hand, keeps: 'loosely' }, (body) => body[hand][point], 0, surface);
  const sole = (surface: Surface) => [foot('heel', surface), foot('ball', surface)];
  switch (hold) {
    case 'floor':
      return sole('floor');
    case 'step':
      return sole('step');
    case 'wall':
      return sole('wall-ahead');
    case 'toes':
      return [foot('ball')];
    case 'heel':
    case 'lying':
      return [foot('heel')];
    case 'instep':
      return [foot('toe')];
    case 'edge':
      return [
        ankle(hand),
        touch(
          { part: 'foot', point: 'ball', hand, keeps: 'loosely' },
          (body) => body[hand].ball,
          BREADTHS.foot / 2,
        ),
      ];
    default:
      return [];
  }
}

/** A point that nothing may go through, with the flesh around it. */
interface BodyPoint {
  readonly at: Spot;
  readonly flesh: number;
  readonly part: BodyPart;
  readonly hand: Hand | null;
}

const limbPoints = (hand: Hand): readonly BodyPoint[] => [
  { at: (body) => body[hand].knee, flesh: FLESH.knee, part: 'knee', hand },
  { at: (body) => body[hand].ankle, flesh: FLESH.ankle, part: 'foot', hand },
  { at: (body) => body[hand].heel, flesh: 0, part: 'foot', hand },
  { at: (body) => body[hand].ball, flesh: 0, part: 'foot', hand },
  { at: (body) => body[hand].shoulder, flesh: FLESH.shoulder, part: 'shoulder', hand },
  { at: (body) => body[hand].elbow, flesh: FLESH.elbow, part: 'forearm', hand },
  { at: (body) => body[hand].wrist, flesh: FLESH.wrist, part: 'hand', hand },
  { at: (body) => body[hand].fingertip, flesh: FLESH.fingers, part: 'hand', hand },
];

export const BODY_POINTS: readonly BodyPoint[] = [
  { at: (body) => body.spine[0], flesh: FLESH.hip, part: 'hips', hand: null },
  { at: (body) => body.spine[2], flesh: FLESH.waist, part: 'trunk', hand: null },
  { at: (body) => body.headMiddle, flesh: FLESH.head, part: 'head', hand: null },
  ...HANDS.flatMap(limbPoints),
];
