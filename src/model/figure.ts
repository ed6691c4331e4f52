// A figure as written: a view, the joint angles of a start and an end, and what the body touches.
// Angles are clinical: neutral zero, degrees; flexion, abduction, turning out and dorsiflexion are
// positive. How they become a body that rests somewhere is the figure floor's.
import type { Place } from '../finding/place.ts';

const VIEWS = ['side', 'front', 'back', 'above'] as const;
export type View = (typeof VIEWS)[number];

const SHOWN = ['whole', 'upper-body', 'head', 'arm', 'legs', 'lower-leg'] as const;
export type Shown = (typeof SHOWN)[number];

/** Angles that a left and a right limb each have. */
export const LIMB_ANGLES = [
  'hip_flexion',
  'hip_abduction',
  'hip_rotation',
  'knee_flexion',
  'ankle_dorsiflexion',
  'foot_eversion',
  'shoulder_flexion',
  'shoulder_abduction',
  'shoulder_rotation',
  'elbow_flexion',
  'wrist_flexion',
  'shrug',
  'shoulder_forward',
] as const;
export type LimbAngle = (typeof LIMB_ANGLES)[number];

/** Angles of the trunk and the head; a turn or a bend is to the worked side where it is positive. */
export const MIDDLE_ANGLES = [
  'trunk_flexion',
  'trunk_side_bend',
  'trunk_rotation',
  'neck_flexion',
  'neck_side_bend',
  'neck_rotation',
  'chin_back',
] as const;
export type MiddleAngle = (typeof MIDDLE_ANGLES)[number];

export type AngleName = LimbAngle | MiddleAngle;

const HAND_PLACES = [
  'floor',
  'wall',
  'worktop',
  'chair',
  'rail',
  'door-frame',
  'hip',
  'thigh',
  'knee',
  'foot',
  'belly',
  'chest',
  'other-shoulder',
  'other-elbow',
  'head',
  'other-ear',
  'neck',
  'back',
  'free',
] as const;
export type HandPlace = (typeof HAND_PLACES)[number];

const FOOT_PLACES = [
  'floor',
  'toes',
  'heel',
  'step',
  'wall',
  'other-foot',
  'other-knee',
  'free',
] as const;
export type FootPlace = (typeof FOOT_PLACES)[number];

/** What a body can rest on, by one side where it has two: the worked one, or `other-` the other one. */
const RESTS = [
  'feet',
  'foot',
  'other-foot',
  'toes',
  'knees',
  'knee',
  'other-knee',
  'seat',
  'heels',
  'back',
  'upper-back',
  'front',
  'side',
  'other-side',
  'hands',
  'hand',
  'other-hand',
  'forearms',
  'forearm',
  'other-forearm',
  'wall',
] as const;
export type Rest = (typeof RESTS)[number];

const PROPS = [
  'chair',
  'worktop',
  'table',
  'wall',
  'step',
  'stairs',
  'rail',
  'door-frame',
  'bed',
  'mat',
  'pillow',
  'towel',
  'roll',
  'band',
  'weight',
  'stick',
  'ball',
  'bag',
] as const;
export type PropName = (typeof PROPS)[number];

/** Where a thing is held, lies, stands or is tied; `side` is beside the body, `door` a fixed point in front. */
const PROP_PLACES = [
  'hand',
  'hands',
  'other-hand',
  'foot',
  'feet',
  'other-foot',
  'ankle',
  'knee',
  'knees',
  'elbow',
  'head',
  'seat',
  'chest',
  'back',
  'side',
  'other-side',
  'door',
  'floor',
] as const;
export type PropPlace = (typeof PROP_PLACES)[number];

/** Parts of the body that an arrow can follow. */
const ARROW_PARTS = [
  'hand',
  'other-hand',
  'elbow',
  'other-elbow',
  'shoulder',
  'other-shoulder',
  'knee',
  'other-knee',
  'foot',
  'other-foot',
  'heel',
  'other-heel',
  'head',
  'back',
  'seat',
] as const;
export type ArrowPart = (typeof ARROW_PARTS)[number];

export interface Prop {
  readonly name: PropName;
  /** Empty where the thing stands where the body touches it. */
  readonly at: readonly PropPlace[];
  readonly place: Place;
}

/** What one limb does, or the worked one. */
export interface LimbPose {
  readonly angles: Readonly<Partial<Record<LimbAngle, number>>>;
  readonly hand: HandPlace | null;
  readonly foot: FootPlace | null;
}

export interface Pose {
  /** Where `start` or `end` stands. */
  readonly place: Place;
  readonly limb: LimbPose;
  /** What the other limb does: the one that is not worked, or the farther one. */
  readonly other: LimbPose;
  readonly middle: Readonly<Partial<Record<MiddleAngle, number>>>;
  /** The whole body from the upright or level, forwards positive; null where balance tells. */
  readonly lean: number | null;
  /** Null where the position tells. */
  readonly restsOn: readonly Rest[] | null;
  /** Where each key stands, `other.` before those of the other limb. */
  readonly keyPlaces: ReadonlyMap<string, Place>;
}

export interface Figure {
  readonly place: Place;
  readonly view: View;
  readonly shown: Shown;
  /** Degrees that the camera looks down. */
  readonly tilt: number;
  /** Another body position than the exercise's, where that one is the practice's own; else null. */
  readonly position: string | null;
  readonly props: readonly Prop[];
  /** The part of the body that the arrow follows; null for the one that travels farthest. */
  readonly arrow: ArrowPart | null;
  readonly start: Pose;
  /** Null for a position that is held. */
  readonly end: Pose | null;
}
