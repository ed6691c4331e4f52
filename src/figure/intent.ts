// What a pose asks of the body, worked out from its keys and its position: angles that are fixed,
// angles that may give way so that the body rests, and what has to touch what.
import {
  type Figure,
  type FootPlace,
  type HandPlace,
  LIMB_ANGLES,
  type LimbAngle,
  type LimbPose,
  MIDDLE_ANGLES,
  type MiddleAngle,
  type Pose,
  type Rest,
} from '../model/figure.ts';
import type { Sides } from '../units/side.ts';
import { NEUTRAL, type Position, SIDE_DOWN } from './positions.ts';
import { HANDS, type Hand, limbAt, middleAt, ROOT_AT, STANCE_LENGTH } from './skeleton.ts';
import type { Frame } from './space.ts';
import {
  type FootHold,
  footTouches,
  handTouches,
  lowerLeg,
  lyingArm,
  restTouches,
  type Touch,
} from './touches.ts';

export interface Intent {
  readonly base: Frame;
  /** Where fitting begins, and what it stays near to. */
  readonly wanted: Float64Array;
  /** What may give way. */
  readonly free: readonly number[];
  readonly touches: readonly Touch[];
  readonly hands: Readonly<Record<Hand, HandPlace>>;
  readonly feet: Readonly<Record<Hand, FootHold>>;
  /** Whether nothing but the feet carries the body, so that it has to be in balance. */
  readonly isBalanced: boolean;
  readonly isOnChair: boolean;
  /** How much the body keeps from turning about x, y and z. */
  readonly stiffness: readonly [number, number, number];
}

/** The same pose with what the end leaves out taken from the start. */
export function mergedPose(start: Pose, end: Pose): Pose {
  const merged = (one: LimbPose, two: LimbPose): LimbPose => ({
    angles: { ...one.angles, ...two.angles },
    hand: two.hand ?? one.hand,
    foot: two.foot ?? one.foot,
  });
  return {
    ...end,
    limb: merged(start.limb, end.limb),
    other: merged(start.other, end.other),
    middle: { ...start.middle, ...end.middle },
    restsOn: end.restsOn ?? start.restsOn,
  };
}

/** How each side's limb is posed: the worked limb is the right one; where both work, both are. */
function limbPoses(pose: Pose, sides: Sides): Readonly<Record<Hand, LimbPose>> {
  if (sides === 'each') return { right: pose.limb, left: pose.other };
  const { limb, other } = pose;
  return {
    right: limb,
    left: {
      angles: { ...limb.angles, ...other.angles },
      hand: other.hand ?? limb.hand,
      foot: other.foot ?? limb.foot,
    },
  };
}

const LEG_FREE = ['hip_flexion', 'knee_flexion', 'ankle_dorsiflexion'] as const;
const ARM_FREE = [
  'shoulder_flexion',
  'shoulder_abduction',
  'shoulder_rotation',
  'elbow_flexion',
] as const;

/** A forearm that carries keeps its elbow bent as it is wanted. */
const FOREARM_FREE = ['shoulder_flexion', 'shoulder_abduction'] as const;

/** Where an arm is to begin its reach, so that the elbow points where a person's would. */
const REACHES: Readonly<Partial<Record<HandPlace, Partial<Record<LimbAngle, number>>>>> = {
  floor: { shoulder_flexion: 85, elbow_flexion: 4, wrist_flexion: -80 },
  wall: { shoulder_flexion: 85, elbow_flexion: 8, wrist_flexion: -75 },
  worktop: { shoulder_flexion: 35, elbow_flexion: 40, shoulder_abduction: 6, wrist_flexion: -10 },
  chair: { shoulder_flexion: -12, shoulder_abduction: 14, elbow_flexion: 35 },
  hip: { shoulder_flexion: -15, shoulder_abduction: 40, shoulder_rotation: -50, elbow_flexion: 95 },
  thigh: { shoulder_flexion: 30, elbow_flexion: 40 },
  knee: { shoulder_flexion: 45, elbow_flexion: 25 },
  foot: { shoulder_flexion: 70, elbow_flexion: 10 },
  belly: { shoulder_flexion: 5, shoulder_abduction: 20, shoulder_rotation: -50, elbow_flexion: 95 },
  chest: {
    shoulder_flexion: 25,
    shoulder_abduction: 15,
    shoulder_rotation: -60,
    elbow_flexion: 125,
  },
  'other-shoulder': { shoulder_flexion: 55, shoulder_rotation: -60, elbow_flexion: 125 },
  'other-elbow': { shoulder_flexion: 60, shoulder_rotation: -60, elbow_flexion: 95 },
  head: { shoulder_flexion: 80, shoulder_abduction: 60, shoulder_rotation: 0, elbow_flexion: 125 },
  'other-ear': {
    shoulder_flexion: 90,
    shoulder_abduction: 75,
    shoulder_rotation: 40,
    elbow_flexion: 120,
  },
  neck: { shoulder_flexion: 60, shoulder_abduction: 90, shoulder_rotation: 60, elbow_flexion: 140 },
  back: {
    shoulder_flexion: -35,
    shoulder_abduction: 20,
    shoulder_rotation: -70,
    elbow_flexion: 90,
  },
};

/** A posture that the vocabulary lacks stands for none, so that the reader can tell of it. */
export function positionOf(figure: Figure, position: string): Position | null {
  return NEUTRAL[figure.position ?? position] ?? null;
}

interface Setting {
  readonly position: Position;
  readonly name: string;
  readonly sides: Sides;
  readonly hasBed: boolean;
  /** The solved start, for an end that goes on from it. */
  readonly from: { readonly stance: Float64Array; readonly intent: Intent } | null;
}

/** `own` is the pose as written: what it gives is kept to the degree, what the start gave may give way. */
export function intentOf(pose: Pose, own: Pose, setting: Setting): Intent {
  const { position, sides, from } = setting;
  const poses = limbPoses(pose, sides);
  const rests = restsOf(pose, position, poses);
  const isOnChair = setting.name === 'sitting';
  const wanted = from ? from.stance.slice() : neutralStance(position);
  const free = new Set<number>([ROOT_AT.x, ROOT_AT.y, ROOT_AT.turnZ]);
  if (position.canRoll) for (const at of [2, 3, 4]) free.add(at);
  const touches: Touch[] = [...rests].flatMap((rest) => restTouches(rest, isOnChair));
  const hands = {} as Record<Hand, HandPlace>;
  const feet = {} as Record<Hand, FootHold>;
  for (const hand of HANDS) {
    hands[hand] = handPlace(hand, poses[hand].hand, rests, from);
    feet[hand] = footHold(hand, poses, rests, position, pose.restsOn !== null, setting.name);
    const reach = REACHES[hands[hand]];
    if (reach && hands[hand] !== from?.intent.hands[hand])
      for (const [angle, value] of Object.entries(reach))
        wanted[limbAt(hand, angle as LimbAngle)] = value;
    if (hands[hand] === 'free' && from && from.intent.hands[hand] !== 'free')
      for (const angle of [...ARM_FREE, 'wrist_flexion'] as const)
        wanted[limbAt(hand, angle)] = neutralStance(position)[limbAt(hand, angle)] as number;
    if (reach) for (const angle of ARM_FREE) free.add(limbAt(hand, angle));
    if (HAS_SURFACE.has(hands[hand])) free.add(limbAt(hand, 'wrist_flexion'));
    if (rests.has('forearms') || rests.has(hand === 'right' ? 'forearm' : 'other-forearm')) {
      for (const angle of FOREARM_FREE) free.add(limbAt(hand, angle));
      if (!from) {
        const isOnSide = setting.name === 'side-lying';
        wanted[limbAt(hand, 'shoulder_flexion')] = isOnSide ? 0 : 80;
        wanted[limbAt(hand, 'shoulder_abduction')] = isOnSide ? 80 : 4;
        wanted[limbAt(hand, 'elbow_flexion')] = 90;
      }
    }
    if (feet[hand] !== 'free') for (const angle of LEG_FREE) free.add(limbAt(hand, angle));
    if (feet[hand].startsWith('other-'))
      for (const angle of ['hip_abduction', 'hip_rotation'] as const) free.add(limbAt(hand, angle));
    const isOnBack = rests.has('back') || rests.has('upper-back');
    const isArmGiven = Object.keys(poses[hand].angles).some((one) => /^(shoulder|elbow)/.test(one));
    if (isOnBack && hands[hand] === 'free' && !isArmGiven) {
      touches.push(...lyingArm(hand));
      free.add(limbAt(hand, 'shoulder_flexion'));
    }
    touches.push(...handTouches(hand, hands[hand]), ...footTouches(hand, feet[hand]));
    const fixed = limbPoses(own, sides)[hand].angles;
    for (const angle of LIMB_ANGLES) {
      const value = fixed[angle];
      if (value === undefined) continue;
      wanted[limbAt(hand, angle)] = value;
      free.delete(limbAt(hand, angle));
    }
  }
  for (const knee of kneelingOn(rests))
    for (const angle of setting.name === 'side-lying'
      ? (['hip_abduction'] as const)
      : (['hip_flexion', 'knee_flexion'] as const))
      if (poses[knee].angles[angle] === undefined) free.add(limbAt(knee, angle));
  const under = setting.name === 'side-lying' ? lowerSide(rests) : null;
  if (under && poses[under].angles.hip_abduction === undefined && feet[under] === 'free') {
    touches.push(...lowerLeg(under));
    free.add(limbAt(under, 'hip_rotation'));
    if (poses[under].angles.hip_abduction === undefined) free.add(limbAt(under, 'hip_abduction'));
  }
  // A head on the ground follows the chest.
  if (position.canRoll && pose.middle.neck_flexion === undefined)
    free.add(middleAt('neck_flexion'));
  for (const angle of MIDDLE_ANGLES) {
    const value = pose.middle[angle];
    if (value !== undefined) wanted[middleAt(angle as MiddleAngle)] = value;
  }
  if (pose.lean !== null) {
    wanted[ROOT_AT.turnZ] = (-pose.lean * Math.PI) / 180;
    free.delete(ROOT_AT.turnZ);
  }
  const isHeld = [...rests].some((rest) => !/^(feet|foot|other-foot|toes|heels)$/.test(rest));
  const isHandHeld = HANDS.some((hand) => HAS_SURFACE.has(hands[hand]));
  return {
    base: under === 'right' ? SIDE_DOWN : position.base,
    wanted,
    free: [...free].sort((a, b) => a - b),
    touches,
    hands,
    feet,
    isBalanced: !isHeld && !isHandHeld,
    isOnChair,
    stiffness: stiffnessOf(position, isHeld, hands),
  };
}

/** A body that leans on a wall gives way, one that only holds on to something stays upright. */
function stiffnessOf(
  { stiffness }: Position,
  isHeld: boolean,
  hands: Readonly<Record<Hand, HandPlace>>,
): Intent['stiffness'] {
  if (isHeld) return stiffness;
  if (HANDS.some((hand) => hands[hand] === 'wall')) return [1, 1, 0.06];
  return HANDS.some((hand) => hands[hand] === 'worktop') ? [1, 1, 0.6] : [1, 1, 0.12];
}

/** Which side a body on its side lies on. */
function lowerSide(rests: ReadonlySet<Rest>): Hand {
  return (['side', 'forearm', 'hand'] as const).some((rest) => rests.has(rest)) ? 'right' : 'left';
}

/** What the body rests on: as said; else as the position has it, but for a limb that is lifted. */
function restsOf(
  pose: Pose,
  position: Position,
  poses: Readonly<Record<Hand, LimbPose>>,
): ReadonlySet<Rest> {
  if (pose.restsOn !== null) return new Set(pose.restsOn);
  const kept = position.restsOn.flatMap((rest): readonly Rest[] => {
    if (rest === 'knees') return ['knee', 'other-knee'];
    return rest === 'hands' ? ['hand', 'other-hand'] : [rest];
  });
  const isLifted = (hand: Hand, rest: string) => {
    const { hip_flexion, knee_flexion, shoulder_flexion } = poses[hand].angles;
    if (rest.endsWith('knee')) return hip_flexion !== undefined && knee_flexion !== undefined;
    return rest.endsWith('hand') && shoulder_flexion !== undefined;
  };
  return new Set(
    kept.filter((rest) => !isLifted(rest.startsWith('other-') ? 'left' : 'right', rest)),
  );
}

const HAS_SURFACE: ReadonlySet<string> = new Set(['floor', 'wall', 'worktop']);

function kneelingOn(rests: ReadonlySet<Rest>): readonly Hand[] {
  if (rests.has('knees')) return HANDS;
  return [
    ...(rests.has('knee') ? (['right'] as const) : []),
    ...(rests.has('other-knee') ? (['left'] as const) : []),
  ];
}

function handPlace(
  hand: Hand,
  said: HandPlace | null,
  rests: ReadonlySet<Rest>,
  from: Setting['from'],
): HandPlace {
  if (said !== null) return said;
  if (rests.has('hands') || rests.has(hand === 'right' ? 'hand' : 'other-hand')) return 'floor';
  const before = from?.intent.hands[hand] ?? 'free';
  return before === 'floor' ? 'free' : before;
}

/** Where a foot is: as said; else where the body rests; else on the ground, unless its angles lift it. */
function footHold(
  hand: Hand,
  poses: Readonly<Record<Hand, LimbPose>>,
  rests: ReadonlySet<Rest>,
  position: Position,
  isRestSaid: boolean,
  name: string,
): FootHold {
  const { foot, angles } = poses[hand];
  if (foot !== null) return foot satisfies FootPlace;
  const isFlat = rests.has('feet') || rests.has(hand === 'right' ? 'foot' : 'other-foot');
  const isTyped = (one: LimbPose['angles']) =>
    one.hip_flexion !== undefined ||
    one.knee_flexion !== undefined ||
    one.hip_abduction !== undefined;
  if (name === 'side-lying') return isFlat ? 'edge' : 'free';
  const onFloor: FootHold = angles.ankle_dorsiflexion === undefined ? 'floor' : 'lowest';
  if (rests.has('toes')) return 'toes';
  if (rests.has('heels')) return 'heel';
  if (isFlat && (isRestSaid || position.feet !== 'floor')) return onFloor;
  if (position.feet === 'instep') {
    const isLifted = angles.hip_flexion !== undefined && angles.knee_flexion !== undefined;
    return isLifted ? 'free' : 'instep';
  }
  if (position.feet === 'heel') return angles.hip_flexion === undefined ? 'heel' : 'free';
  if (position.feet === 'free') return isFlat ? onFloor : 'free';
  const own = isTyped(angles);
  if (!rests.has('feet')) {
    // Sitting and crook-lying: a bent knee alone slides the foot, unless the thigh lies on a seat.
    const isLifted = rests.has('seat')
      ? own
      : angles.hip_flexion !== undefined && angles.knee_flexion !== undefined;
    if (isLifted) return 'free';
    return rests.has('seat') ? onFloor : 'lying';
  }
  const far = poses[hand === 'right' ? 'left' : 'right'].angles;
  if (!own) return onFloor;
  if (!isTyped(far)) return 'free';
  const isEqual = LEG_FREE.every((angle) => angles[angle] === far[angle]);
  return isEqual ? onFloor : 'lowest';
}

function neutralStance(position: Position): Float64Array {
  const stance = new Float64Array(STANCE_LENGTH);
  for (const hand of HANDS) {
    // The worked limb's own neutral is the nearer limb's where no side is worked.
    const own = hand === 'right' ? position.worked : position.other;
    const all = { ...position.limbs, ...own };
    for (const [angle, value] of Object.entries(all))
      stance[limbAt(hand, angle as LimbAngle)] = value;
  }
  for (const [angle, value] of Object.entries(position.middle))
    stance[middleAt(angle as MiddleAngle)] = value;
  return stance;
}
