// Figures as records, without files: from a few keys, at random, and those of the example clinic.
import fc from 'fast-check';
import { compile } from '../../src/build.ts';
import { startOf } from '../../src/finding/place.ts';
import { memoryFolder } from '../../src/load/folder.ts';
import type { Level } from '../../src/model/exercise.ts';
import {
  type Figure,
  LIMB_ANGLES,
  type LimbAngle,
  type LimbPose,
  MIDDLE_ANGLES,
  type MiddleAngle,
  type Pose,
  type PropName,
  type PropPlace,
  type Rest,
} from '../../src/model/figure.ts';
import { exampleFiles } from '../support/pages-of.ts';

const place = startOf({ file: 'exercises/made.yaml', text: '' });

type Angles = Partial<Record<LimbAngle | MiddleAngle, number>>;

export interface MadeLimb {
  readonly angles?: Angles;
  readonly hand?: LimbPose['hand'];
  readonly foot?: LimbPose['foot'];
}

export interface MadePose extends MadeLimb {
  readonly other?: MadeLimb;
  readonly lean?: number;
  readonly restsOn?: readonly Rest[];
}

export interface MadeFigure extends Partial<Omit<Figure, 'start' | 'end' | 'place' | 'props'>> {
  readonly props?: readonly { readonly name: PropName; readonly at: readonly PropPlace[] }[];
  readonly start?: MadePose;
  readonly end?: MadePose;
}

function only<K extends string>(angles: Angles, names: readonly K[]): Partial<Record<K, number>> {
  return Object.fromEntries(
    Object.entries(angles).filter(([name]) => (names as readonly string[]).includes(name)),
  ) as Partial<Record<K, number>>;
}

function limb({ angles = {}, hand = null, foot = null }: MadeLimb): LimbPose {
  return { angles: only(angles, LIMB_ANGLES), hand, foot };
}

function pose(made: MadePose): Pose {
  return {
    place,
    limb: limb(made),
    other: limb(made.other ?? {}),
    middle: only(made.angles ?? {}, MIDDLE_ANGLES),
    lean: made.lean ?? null,
    restsOn: made.restsOn ?? null,
    keyPlaces: new Map(),
  };
}

export function madeFigure({ start = {}, end, props = [], ...rest }: MadeFigure): Figure {
  return {
    place,
    view: 'side',
    shown: 'whole',
    tilt: 0,
    position: null,
    arrow: null,
    props: props.map((one) => ({ ...one, place })),
    start: pose(start),
    end: end ? pose(end) : null,
    ...rest,
  };
}

export interface ExampleLevel {
  /** `heel-raise two-feet`. */
  readonly id: string;
  readonly level: Level;
  readonly figure: Figure;
}

/** Every level of the example clinic that has a figure. */
export const EXAMPLE_LEVELS: readonly ExampleLevel[] = (() => {
  const { library } = compile(memoryFolder(exampleFiles('saltmarsh')), {
    plans: [],
    exercises: [],
  });
  return library.ids.flatMap((id) =>
    (library.load(id)?.exercise?.levels ?? []).flatMap((level) =>
      level.figure ? [{ id: `${id} ${level.id}`, level, figure: level.figure }] : [],
    ),
  );
})();

export const POSITIONS = [
  'supine',
  'crook-lying',
  'prone',
  'side-lying',
  'hands-and-knees',
  'sitting',
  'long-sitting',
  'half-kneeling',
  'kneeling',
  'standing',
  'walking',
] as const;

/** Inside every published range, in whole degrees. */
const NORMAL: Readonly<Record<LimbAngle | MiddleAngle, readonly [number, number]>> = {
  hip_flexion: [-20, 110],
  hip_abduction: [-20, 40],
  hip_rotation: [-35, 40],
  knee_flexion: [0, 130],
  ankle_dorsiflexion: [-40, 15],
  foot_eversion: [-15, 10],
  shoulder_flexion: [-40, 170],
  shoulder_abduction: [-10, 80],
  shoulder_rotation: [-60, 80],
  elbow_flexion: [0, 140],
  wrist_flexion: [-60, 60],
  shrug: [0, 20],
  shoulder_forward: [-15, 15],
  trunk_flexion: [-20, 70],
  trunk_side_bend: [-25, 25],
  trunk_rotation: [-30, 30],
  neck_flexion: [-40, 40],
  neck_side_bend: [-35, 35],
  neck_rotation: [-55, 55],
  chin_back: [0, 20],
};

/** Some of the angles, each in its normal range. */
export function angles(names: readonly (LimbAngle | MiddleAngle)[]): fc.Arbitrary<Angles> {
  const each = Object.fromEntries(
    names.map((name) => {
      const [min, max] = NORMAL[name];
      return [name, fc.integer({ min, max })];
    }),
  );
  return fc.record(each, { requiredKeys: [] }) as fc.Arbitrary<Angles>;
}

export { LIMB_ANGLES, MIDDLE_ANGLES };
