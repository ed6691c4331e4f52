// Where hands are, and from where an arm begins its reach, so that the elbow points where a
// person's would. Angles in degrees; a rule of thumb throughout: common practice, no source.
import type { HandPlace, LimbAngle, Rest } from '../model/figure.ts';
import { type Beside, handHold } from './beside.ts';
import { isOn } from './footing.ts';
import type { Hand } from './skeleton.ts';
import type { HandHold } from './touches.ts';

/** Angles that give way where a hand has to get somewhere. */
export const ARM_OPEN = [
  'shoulder_flexion',
  'shoulder_abduction',
  'shoulder_rotation',
  'elbow_flexion',
] as const;

/** A forearm that carries keeps its elbow bent as it is wanted. */
export const FOREARM_OPEN = ['shoulder_flexion', 'shoulder_abduction'] as const;

/** Holds that carry some of the body, so that it need not stand in balance by itself. */
export const CARRIES: ReadonlySet<HandHold> = new Set(['floor', 'wall', 'worktop'] as const);

/** Holds that the wrist bends for. */
export const HAS_SURFACE: ReadonlySet<HandHold> = new Set([
  ...CARRIES,
  'worktop-beside',
  'chair-beside',
  'wall-beside',
  'door-frame',
] as const);

type Angles = Readonly<Partial<Record<LimbAngle, number>>>;

export const REACHES: Readonly<Partial<Record<HandHold, Angles>>> = {
  floor: { shoulder_flexion: 85, elbow_flexion: 4, wrist_flexion: -80 },
  wall: { shoulder_flexion: 85, elbow_flexion: 8, wrist_flexion: -75 },
  worktop: { shoulder_flexion: 35, elbow_flexion: 40, shoulder_abduction: 6, wrist_flexion: -10 },
  'worktop-beside': {
    shoulder_flexion: 6,
    shoulder_abduction: 22,
    elbow_flexion: 48,
    wrist_flexion: -38,
  },
  'chair-beside': {
    shoulder_flexion: 22,
    shoulder_abduction: 16,
    elbow_flexion: 8,
    wrist_flexion: -75,
  },
  'wall-beside': { shoulder_flexion: 40, shoulder_abduction: 35, elbow_flexion: 50 },
  rail: { shoulder_flexion: 45, shoulder_abduction: 16, elbow_flexion: 60 },
  'door-frame': { shoulder_abduction: 70, shoulder_rotation: 60, elbow_flexion: 70 },
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

/** Where an arm that props the body up begins. */
export function proppedArm(isOnSide: boolean): Angles {
  return {
    shoulder_flexion: isOnSide ? 0 : 80,
    shoulder_abduction: isOnSide ? 80 : 4,
    elbow_flexion: 90,
  };
}

/** Where a hand is: as said; else on the floor where it carries; else where it was, but for the floor. */
export function handPlace(
  hand: Hand,
  said: HandPlace | null,
  rests: ReadonlySet<Rest>,
  before: HandHold | null,
  beside: Beside,
): HandHold {
  if (said !== null) return handHold(hand, said, beside);
  if (isOn(rests, hand, 'hand', 'hands')) return 'floor';
  return before === null || before === 'floor' ? 'free' : before;
}
