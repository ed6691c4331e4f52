// How far joints normally go, in degrees from neutral zero. Of two published columns the larger holds:
// American Academy of Orthopaedic Surgeons 1965, as in Norkin CC, White DJ, Measurement of Joint Motion,
// app. A; and US 38 CFR 4.71a, Plates I and II (VA). Spine, foot and shoulder blade: from memory.
import type { AngleName, Rest } from '../model/figure.ts';

export interface JointRange {
  /** The joint as it is called. */
  readonly joint: string;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

const BOTH = 'AAOS 1965, US 38 CFR 4.71a';
const AAOS = 'AAOS 1965';
const VA = 'US 38 CFR 4.71a';
const MEMORY = 'from memory';
const COMMON = 'common practice, no source';

function range(joint: string, low: number, high: number, source: string): JointRange {
  return { joint, low, high, source };
}

const JOINT_RANGES: Readonly<Record<AngleName, JointRange>> = {
  // AAOS 120 and 30, VA 125 and 30.
  hip_flexion: range('hip', -30, 125, BOTH),
  // AAOS 45 and 30, VA 45 and 25.
  hip_abduction: range('hip', -30, 45, BOTH),
  // In 45 and 40, out 45 and 60.
  hip_rotation: range('hip', -45, 60, BOTH),
  // AAOS 135, over-straight 10; VA 140, 0.
  knee_flexion: range('knee', -10, 140, BOTH),
  // Up 20 and 20, pointed 50 and 45.
  ankle_dorsiflexion: range('ankle', -50, 20, BOTH),
  foot_eversion: range('foot', -35, 15, `AAOS 1965, ${MEMORY}`),
  // VA gives no extension; AAOS 60.
  shoulder_flexion: range('shoulder', -60, 180, BOTH),
  // Neither column has the arm across the body.
  shoulder_abduction: range('shoulder', -50, 180, `${BOTH}; across the body ${COMMON}`),
  // In 70 and 90, out 90 and 90.
  shoulder_rotation: range('shoulder', -90, 90, BOTH),
  // AAOS 150, VA 145.
  elbow_flexion: range('elbow', 0, 150, BOTH),
  wrist_flexion: range('wrist', -70, 80, BOTH),
  // The collar bone's way up and down, forwards and back.
  shrug: range('shoulder blade', -10, 45, MEMORY),
  shoulder_forward: range('shoulder blade', -30, 30, MEMORY),
  // AAOS 80 and 25, VA 90 and 30.
  trunk_flexion: range('back', -30, 90, `${BOTH}, ${MEMORY}`),
  trunk_side_bend: range('back', -35, 35, `${AAOS}, ${MEMORY}`),
  trunk_rotation: range('back', -45, 45, `${AAOS}, ${MEMORY}`),
  neck_flexion: range('neck', -45, 45, `${BOTH}, ${MEMORY}`),
  neck_side_bend: range('neck', -45, 45, `${BOTH}, ${MEMORY}`),
  // AAOS 60, VA 80.
  neck_rotation: range('neck', -80, 80, `${VA}, ${MEMORY}`),
  chin_back: range('chin', -30, 30, COMMON),
};

/**
 * Sitting on the heels, the body's weight folds hip, knee and ankle further than muscles do: hip to 130,
 * knee to 165 (Mulholland SJ, Wyss UP, Int J Rehabil Res 2001;24:191-198, kneeling; from memory); the
 * foot's back flat on the floor is common practice, no source.
 */
const FOLDED: Readonly<Partial<Record<AngleName, JointRange>>> = {
  hip_flexion: range('hip', -30, 130, 'kneeling, Mulholland and Wyss 2001, from memory'),
  knee_flexion: range('knee', -10, 165, 'kneeling, Mulholland and Wyss 2001, from memory'),
  ankle_dorsiflexion: range('ankle', -70, 20, `kneeling, ${COMMON}`),
};

/** Knees bent further than muscles bend them. */
const FOLDED_FROM = 140;

/** By how many degrees beyond the normal range no joint goes. Common practice, no source. */
export const IMPOSSIBLE_BEYOND = 25;

/**
 * A joint's normal range while its limb is in a pose. Turning an arm counts from the forearm that points
 * ahead, the arm hanging or out to the side; raised forwards, the same turn is counted from the forearm
 * that points up, so that turning in goes further by as much as the arm is raised, up to 90 degrees.
 */
export function rangeIn(
  angle: AngleName,
  limb: Readonly<Partial<Record<AngleName, number>>>,
  restsOn: readonly Rest[] | null,
): JointRange {
  const isFolded = restsOn?.includes('knees') && (limb.knee_flexion ?? 0) > FOLDED_FROM;
  const normal = (isFolded ? FOLDED[angle] : undefined) ?? JOINT_RANGES[angle];
  if (angle !== 'shoulder_rotation') return normal;
  const raised = Math.max(0, Math.min(90, limb.shoulder_flexion ?? 0));
  return { ...normal, low: normal.low - raised };
}

/** By how many degrees an angle is beyond a range; 0 within it. */
export function beyondRange({ low, high }: JointRange, degrees: number): number {
  return Math.max(0, degrees - high, low - degrees);
}
