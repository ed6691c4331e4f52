// What a body does in each position where a figure says nothing: how it lies in the room, its
// joint angles, and what it rests on. A rule of thumb throughout: common practice, no source.
import type { LimbAngle, MiddleAngle, Rest } from '../model/figure.ts';
import { type Frame, turnZxy, UPRIGHT } from './space.ts';

type LimbAngles = Readonly<Partial<Record<LimbAngle, number>>>;

export interface Position {
  /** How the body is turned before any leaning. */
  readonly base: Frame;
  readonly limbs: LimbAngles;
  /** What is different for the worked limb, and for the other one. */
  readonly worked: LimbAngles;
  readonly other: LimbAngles;
  readonly middle: Readonly<Partial<Record<MiddleAngle, number>>>;
  readonly restsOn: readonly Rest[];
  /** Where feet are that no angle is given for. */
  readonly feet: 'floor' | 'heel' | 'instep' | 'free';
  /** Whether the body can turn about more than the axis through its hips. */
  readonly canRoll: boolean;
  /** How much a held body keeps from turning about x, y and z: little about the axis it can tip on. */
  readonly stiffness: readonly [number, number, number];
}

const ARMS_DOWN = { shoulder_abduction: 9, elbow_flexion: 12 };
const LEVEL = {
  stiffness: [1, 1, 0.06] as const,
  canRoll: false,
  worked: {},
  other: {},
  middle: {},
} as const;
const ON_BACK = turnZxy(90, 0, 0);

const SUPINE: Position = {
  ...LEVEL,
  base: ON_BACK,
  limbs: {
    shoulder_abduction: 14,
    shoulder_flexion: 4,
    elbow_flexion: 10,
    ankle_dorsiflexion: -20,
  },
  restsOn: ['back'],
  feet: 'heel',
  canRoll: true,
  stiffness: [0.3, 0.5, 0.02],
};

const STANDING: Position = {
  ...LEVEL,
  base: UPRIGHT,
  limbs: ARMS_DOWN,
  restsOn: ['feet'],
  feet: 'floor',
};

const SIDE_UP = turnZxy(0, -90, 0);
export const SIDE_DOWN = turnZxy(0, 90, 0);

export const NEUTRAL: Readonly<Record<string, Position>> = {
  standing: STANDING,
  walking: {
    ...STANDING,
    worked: { hip_flexion: 24, knee_flexion: 6, shoulder_flexion: -18, elbow_flexion: 15 },
    other: { hip_flexion: -14, knee_flexion: 12, shoulder_flexion: 20, elbow_flexion: 25 },
  },
  sitting: {
    ...LEVEL,
    base: UPRIGHT,
    limbs: {
      hip_flexion: 87,
      knee_flexion: 87,
      shoulder_flexion: 24,
      shoulder_abduction: 5,
      elbow_flexion: 52,
    },
    restsOn: ['seat'],
    feet: 'floor',
  },
  'long-sitting': {
    ...LEVEL,
    base: UPRIGHT,
    limbs: { hip_flexion: 90, shoulder_flexion: 25, elbow_flexion: 45, shoulder_abduction: 6 },
    restsOn: ['seat'],
    feet: 'heel',
  },
  supine: SUPINE,
  'crook-lying': {
    ...SUPINE,
    limbs: { ...SUPINE.limbs, hip_flexion: 55, knee_flexion: 95, ankle_dorsiflexion: 0 },
    feet: 'floor',
  },
  prone: {
    ...LEVEL,
    base: turnZxy(-90, 0, 0),
    limbs: {
      ankle_dorsiflexion: -48,
      shoulder_flexion: -3,
      shoulder_abduction: 14,
      knee_flexion: 6,
    },
    restsOn: ['front'],
    feet: 'instep',
    canRoll: true,
    stiffness: [0.3, 0.5, 0.05],
  },
  'side-lying': {
    ...LEVEL,
    base: SIDE_UP,
    limbs: { hip_flexion: 32, knee_flexion: 45 },
    worked: { hip_abduction: -4, shoulder_flexion: 42, elbow_flexion: 70, shoulder_abduction: -12 },
    other: { shoulder_flexion: 118, elbow_flexion: 125, shoulder_abduction: -8, hip_abduction: 4 },
    restsOn: ['other-side'],
    feet: 'free',
    canRoll: true,
    stiffness: [0.02, 0.5, 0.5],
  },
  'hands-and-knees': {
    ...LEVEL,
    base: turnZxy(-75, 0, 0),
    limbs: {
      hip_flexion: 75,
      knee_flexion: 90,
      shoulder_flexion: 75,
      wrist_flexion: -80,
      ankle_dorsiflexion: -45,
    },
    middle: { neck_flexion: -18 },
    restsOn: ['hands', 'knees'],
    feet: 'instep',
  },
  kneeling: {
    ...LEVEL,
    base: UPRIGHT,
    limbs: { ...ARMS_DOWN, knee_flexion: 90, ankle_dorsiflexion: -45 },
    restsOn: ['knees'],
    feet: 'instep',
  },
  'half-kneeling': {
    ...LEVEL,
    base: UPRIGHT,
    limbs: ARMS_DOWN,
    worked: { knee_flexion: 90, ankle_dorsiflexion: -45 },
    other: { hip_flexion: 88, knee_flexion: 90 },
    restsOn: ['knee', 'other-foot'],
    feet: 'free',
  },
};

/** Whether a figure can draw a position: the shipped ones, but none of a practice's own. */
export function isDrawnPosition(position: string): boolean {
  return Object.hasOwn(NEUTRAL, position);
}
