// What carries the body where a pose does not say: which of the position's rests are lifted, and
// how each foot stands. A rule of thumb throughout: common practice, no source.
import type { LimbAngle, Pose, Rest } from '../model/figure.ts';
import type { LimbPoses } from './limb-poses.ts';
import type { Position } from './positions.ts';
import { HANDS, type Hand } from './skeleton.ts';
import type { FootHold } from './touches.ts';

type Rests = ReadonlySet<Rest>;

/** What the body rests on: as said; else as the position has it, but for a limb that is lifted. */
export function restsOf(pose: Pose, position: Position, poses: LimbPoses): Rests {
  if (pose.restsOn !== null) return new Set(pose.restsOn);
  const kept = position.restsOn.flatMap((rest): readonly Rest[] => {
    if (rest === 'knees') return ['knee', 'other-knee'];
    return rest === 'hands' ? ['hand', 'other-hand'] : [rest];
  });
  // On hands and knees a leg that is bent is lifted; a body that only kneels stays on its knees.
  const isOnHands = position.restsOn.includes('hands');
  const isLifted = (hand: Hand, rest: string) => {
    const { angles, foot } = poses[hand];
    const { shoulder_flexion } = angles;
    if (rest.endsWith('knee')) return (isOnHands || foot !== null) && isBentUp(angles);
    return rest.endsWith('hand') && shoulder_flexion !== undefined;
  };
  return new Set(
    kept.filter((rest) => !isLifted(rest.startsWith('other-') ? 'left' : 'right', rest)),
  );
}

/** Whether a limb of one side is among the rests, by its own word or by that for both. */
export function isOn(rests: Rests, hand: Hand, one: Rest, both: Rest): boolean {
  return rests.has(both) || rests.has(hand === 'right' ? one : (`other-${one}` as Rest));
}

/** Which side a body on its side lies on. */
export function lowerSide(rests: Rests): Hand {
  return (['side', 'forearm', 'hand'] as const).some((rest) => rests.has(rest)) ? 'right' : 'left';
}

export const LEG_OPEN = ['hip_flexion', 'knee_flexion', 'ankle_dorsiflexion'] as const;

interface Footing {
  readonly poses: LimbPoses;
  readonly rests: Rests;
  readonly position: Position;
  /** The position's name. */
  readonly name: string;
  /** Whether the pose itself says what the body rests on. */
  readonly isRestSaid: boolean;
}

/** How each foot is: as said; else where the body rests; else on the ground, unless its angles lift it. */
export function footHolds(footing: Footing): Readonly<Record<Hand, FootHold>> {
  const [right, left] = HANDS.map((hand) => footHold(hand, footing)) as [FootHold, FootHold];
  return { right, left };
}

function footHold(hand: Hand, footing: Footing): FootHold {
  const { poses, rests, position, name, isRestSaid } = footing;
  const { foot, angles } = poses[hand];
  if (foot !== null) return foot;
  const isFlat = isOn(rests, hand, 'foot', 'feet');
  if (name === 'side-lying') return isFlat ? 'edge' : 'free';
  const onFloor: FootHold = angles.ankle_dorsiflexion === undefined ? 'floor' : 'lowest';
  if (rests.has('toes')) return 'toes';
  if (rests.has('heels')) return 'heel';
  if (isFlat && (isRestSaid || position.feet !== 'floor')) return onFloor;
  switch (position.feet) {
    case 'instep':
      return isBentUp(angles) ? 'free' : 'instep';
    case 'heel':
      return angles.hip_flexion === undefined ? 'heel' : 'free';
    case 'free':
      return isFlat ? onFloor : 'free';
    default:
      return rests.has('feet')
        ? standing(hand, poses, onFloor)
        : footOfBentLeg(footing, hand, onFloor);
  }
}

type Angles = Readonly<Partial<Record<LimbAngle, number>>>;

function isBentUp({ hip_flexion, knee_flexion }: Angles): boolean {
  return hip_flexion !== undefined && knee_flexion !== undefined;
}

function isMoved({ hip_flexion, knee_flexion, hip_abduction }: Angles): boolean {
  return hip_flexion !== undefined || knee_flexion !== undefined || hip_abduction !== undefined;
}

/** Sitting and crook-lying: a bent knee alone slides the foot, unless the thigh lies on a seat. */
function footOfBentLeg({ rests, poses }: Footing, hand: Hand, onFloor: FootHold): FootHold {
  const { angles } = poses[hand];
  if (rests.has('seat')) return isMoved(angles) ? 'free' : onFloor;
  return isBentUp(angles) ? 'free' : 'lying';
}

/** Standing: a leg that is moved alone is lifted; two that are bent alike both carry. */
function standing(hand: Hand, poses: LimbPoses, onFloor: FootHold): FootHold {
  const { angles } = poses[hand];
  const far = poses[hand === 'right' ? 'left' : 'right'].angles;
  if (!isMoved(angles)) return onFloor;
  if (!isMoved(far)) return 'free';
  return LEG_OPEN.every((angle) => angles[angle] === far[angle]) ? onFloor : 'lowest';
}
