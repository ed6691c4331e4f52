// A figure's poses by the limbs of the drawn body: the worked limb is the right one; where both
// work, what is written holds for both and `other` for the farther one.
import type { LimbPose, Pose } from '../model/figure.ts';
import type { Sides } from '../units/side.ts';
import type { Hand } from './skeleton.ts';

export type LimbPoses = Readonly<Record<Hand, LimbPose>>;

export function limbPoses({ limb, other }: Pose, sides: Sides): LimbPoses {
  return { right: limb, left: sides === 'each' ? other : merged(limb, other) };
}

/** The end with what it leaves out taken from the start. */
export function mergedPose(start: Pose, end: Pose): Pose {
  return {
    ...end,
    limb: merged(start.limb, end.limb),
    other: merged(start.other, end.other),
    middle: { ...start.middle, ...end.middle },
    restsOn: end.restsOn ?? start.restsOn,
  };
}

function merged(one: LimbPose, two: LimbPose): LimbPose {
  return {
    angles: { ...one.angles, ...two.angles },
    hand: two.hand ?? one.hand,
    foot: two.foot ?? one.foot,
  };
}
