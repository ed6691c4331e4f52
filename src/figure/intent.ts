// What a pose asks of the body, worked out from its keys and its position: angles that are fixed,
// angles that may give way so that the body rests, and what has to touch what.
import {
  type Figure,
  LIMB_ANGLES,
  type LimbAngle,
  MIDDLE_ANGLES,
  type Pose,
  type Rest,
} from '../model/figure.ts';
import type { Sides } from '../units/side.ts';
import {
  ARM_OPEN,
  CARRIES,
  FOREARM_OPEN,
  HAS_SURFACE,
  handPlace,
  proppedArm,
  REACHES,
} from './arm-reach.ts';
import type { Beside } from './beside.ts';
import { footHolds, isOn, LEG_OPEN, lowerSide, restsOf } from './footing.ts';
import { type LimbPoses, limbPoses } from './limb-poses.ts';
import { isDrawnPosition, NEUTRAL, type Position, SIDE_DOWN } from './positions.ts';
import {
  HANDS,
  type Hand,
  limbAt,
  middleAt,
  ROOT_AT,
  STANCE_LENGTH,
  type Stance,
} from './skeleton.ts';
import type { Frame } from './space.ts';
import {
  type FootHold,
  footTouches,
  type HandHold,
  handTouches,
  lowerLeg,
  lyingArm,
  restTouches,
  type Touch,
} from './touches.ts';

export interface Intent {
  readonly base: Frame;
  /** Where fitting begins, and what it stays near to. */
  readonly wanted: Stance;
  /** What may give way. */
  readonly free: readonly number[];
  readonly touches: readonly Touch[];
  readonly hands: Readonly<Record<Hand, HandHold>>;
  readonly feet: Readonly<Record<Hand, FootHold>>;
  /** Whether nothing but the feet carries the body, so that it has to be in balance. */
  readonly isBalanced: boolean;
  /** How much the body keeps from turning about x, y and z. */
  readonly stiffness: readonly [number, number, number];
}

/** A posture that the vocabulary lacks stands for none, so that the reader can tell of it. */
export function positionOf(figure: Figure, position: string): Position | null {
  const name = figure.position ?? position;
  return isDrawnPosition(name) ? (NEUTRAL[name] as Position) : null;
}

interface Setting {
  readonly position: Position;
  readonly name: string;
  readonly sides: Sides;
  readonly beside: Beside;
  /** The solved start, for an end that goes on from it. */
  readonly from: { readonly stance: Stance; readonly intent: Intent } | null;
}

/** An intent in the making. */
interface Draft extends Setting {
  readonly pose: Pose;
  readonly poses: LimbPoses;
  readonly rests: ReadonlySet<Rest>;
  readonly hands: Readonly<Record<Hand, HandHold>>;
  readonly feet: Readonly<Record<Hand, FootHold>>;
  readonly wanted: Stance;
  readonly free: Set<number>;
  readonly touches: Touch[];
}

/** `own` is the pose as written: what it gives is kept to the degree, what the start gave may give way. */
export function intentOf(pose: Pose, own: Pose, setting: Setting): Intent {
  const draft = draftOf(pose, setting);
  const { position, name, rests, hands, feet, free, wanted, touches } = draft;
  const isOnSide = name === 'side-lying';
  for (const hand of HANDS) {
    poseArm(draft, hand);
    poseLeg(draft, hand);
    keepGiven(draft, hand, limbPoses(own, setting.sides)[hand].angles);
    openKneeling(draft, hand);
  }
  if (isOnSide) layLowerLeg(draft, lowerSide(rests));
  poseMiddle(draft);
  const isHeld = [...rests].some((rest) => !/^(feet|foot|other-foot|toes|heels)$/.test(rest));
  const isHandHeld = HANDS.some((hand) => CARRIES.has(hands[hand]));
  return {
    base: isOnSide && lowerSide(rests) === 'right' ? SIDE_DOWN : position.base,
    wanted,
    free: [...free].sort((a, b) => a - b),
    touches,
    hands,
    feet,
    isBalanced: !isHeld && !isHandHeld,
    stiffness: stiffnessOf(position, isHeld, hands),
  };
}

function draftOf(pose: Pose, setting: Setting): Draft {
  const { position, name, sides, from, beside } = setting;
  const poses = limbPoses(pose, sides);
  const rests = restsOf(pose, position, poses);
  const [right, left] = HANDS.map((hand) =>
    handPlace(hand, poses[hand].hand, rests, from?.intent.hands[hand] ?? null, beside),
  ) as [HandHold, HandHold];
  const turns = position.canRoll ? [ROOT_AT.z, ROOT_AT.turnX, ROOT_AT.turnY] : [];
  return {
    ...setting,
    pose,
    poses,
    rests,
    hands: { right, left },
    feet: footHolds({ poses, rests, position, name, isRestSaid: pose.restsOn !== null }),
    wanted: from ? from.stance.slice() : neutralStance(position),
    free: new Set([ROOT_AT.x, ROOT_AT.y, ROOT_AT.turnZ, ...turns]),
    touches: [...rests].flatMap((rest) => restTouches(rest, name === 'sitting')),
  };
}

function want({ wanted }: Draft, hand: Hand, angles: Readonly<Partial<Record<LimbAngle, number>>>) {
  for (const [angle, value] of Object.entries(angles))
    wanted[limbAt(hand, angle as LimbAngle)] = value;
}

function open({ free }: Draft, hand: Hand, angles: readonly LimbAngle[]): void {
  for (const angle of angles) free.add(limbAt(hand, angle));
}

function poseArm(draft: Draft, hand: Hand): void {
  const { from, rests, hands, poses, touches, wanted, position, name } = draft;
  const place = hands[hand];
  const before = from?.intent.hands[hand] ?? null;
  const reach = REACHES[place];
  if (reach && place !== before) want(draft, hand, reach);
  if (place === 'free' && before !== null && before !== 'free') {
    const neutral = neutralStance(position);
    for (const angle of [...ARM_OPEN, 'wrist_flexion'] as const)
      wanted[limbAt(hand, angle)] = neutral[limbAt(hand, angle)] as number;
  }
  if (reach) open(draft, hand, ARM_OPEN);
  if (HAS_SURFACE.has(place)) open(draft, hand, ['wrist_flexion']);
  if (isOn(rests, hand, 'forearm', 'forearms')) {
    open(draft, hand, FOREARM_OPEN);
    if (!from) want(draft, hand, proppedArm(name === 'side-lying'));
  }
  const isOnBack = rests.has('back') || rests.has('upper-back');
  const isGiven = Object.keys(poses[hand].angles).some((one) => /^(shoulder|elbow)/.test(one));
  if (isOnBack && place === 'free' && !isGiven) {
    touches.push(...lyingArm(hand));
    open(draft, hand, ['shoulder_flexion']);
  }
  touches.push(...handTouches(hand, place));
}

function poseLeg(draft: Draft, hand: Hand): void {
  const hold = draft.feet[hand];
  if (hold !== 'free') open(draft, hand, LEG_OPEN);
  if (hold.startsWith('other-')) open(draft, hand, ['hip_abduction', 'hip_rotation']);
  draft.touches.push(...footTouches(hand, hold));
}

/** What a pose itself gives is kept to the degree. */
function keepGiven(
  { wanted, free }: Draft,
  hand: Hand,
  given: Readonly<Partial<Record<LimbAngle, number>>>,
): void {
  for (const angle of LIMB_ANGLES) {
    const value = given[angle];
    if (value === undefined) continue;
    wanted[limbAt(hand, angle)] = value;
    free.delete(limbAt(hand, angle));
  }
}

function openUngiven(draft: Draft, hand: Hand, angles: readonly LimbAngle[]): void {
  const given = draft.poses[hand].angles;
  open(
    draft,
    hand,
    angles.filter((angle) => given[angle] === undefined),
  );
}

/** A leg that kneels gives way at the hip and the knee. */
function openKneeling(draft: Draft, hand: Hand): void {
  const { rests, name } = draft;
  if (!isOn(rests, hand, 'knee', 'knees')) return;
  const joints =
    name === 'side-lying'
      ? (['hip_abduction'] as const)
      : (['hip_flexion', 'knee_flexion'] as const);
  openUngiven(draft, hand, joints);
}

/** The leg that a body on its side lies on is on the ground, unless it is said where it is. */
function layLowerLeg(draft: Draft, hand: Hand): void {
  const { poses, feet, touches } = draft;
  if (poses[hand].angles.hip_abduction !== undefined || feet[hand] !== 'free') return;
  touches.push(...lowerLeg(hand));
  openUngiven(draft, hand, ['hip_rotation', 'hip_abduction']);
}

function poseMiddle({ pose, position, wanted, free }: Draft): void {
  // A head on the ground follows the chest.
  if (position.canRoll && pose.middle.neck_flexion === undefined)
    free.add(middleAt('neck_flexion'));
  for (const angle of MIDDLE_ANGLES) {
    const value = pose.middle[angle];
    if (value !== undefined) wanted[middleAt(angle)] = value;
  }
  if (pose.lean === null) return;
  wanted[ROOT_AT.turnZ] = (-pose.lean * Math.PI) / 180;
  free.delete(ROOT_AT.turnZ);
}

/** A body that leans on a wall gives way, one that only holds on to something stays upright. */
function stiffnessOf(
  { stiffness }: Position,
  isHeld: boolean,
  hands: Readonly<Record<Hand, HandHold>>,
): Intent['stiffness'] {
  if (isHeld) return stiffness;
  if (HANDS.some((hand) => hands[hand] === 'wall')) return [1, 1, 0.06];
  return HANDS.some((hand) => hands[hand] === 'worktop') ? [1, 1, 0.6] : [1, 1, 0.12];
}

function neutralStance(position: Position): Stance {
  const stance = new Float64Array(STANCE_LENGTH);
  for (const hand of HANDS) {
    // The worked limb's own neutral is the nearer limb's where no side is worked.
    const own = hand === 'right' ? position.worked : position.other;
    for (const [angle, value] of Object.entries({ ...position.limbs, ...own }))
      stance[limbAt(hand, angle as LimbAngle)] = value;
  }
  for (const angle of MIDDLE_ANGLES) stance[middleAt(angle)] = position.middle[angle] ?? 0;
  return stance;
}
