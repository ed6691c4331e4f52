// Does a figure draw a joint further than it normally goes, or than it can go? What is drawn is what
// a person tries to do.

import {
  beyondRange,
  IMPOSSIBLE_BEYOND,
  type JointRange,
  rangeIn,
} from '../figure/joint-ranges.ts';
import { mergedPose } from '../figure/limb-poses.ts';
import { type CheckName, severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import type { Exercise } from '../model/exercise.ts';
import type { AngleName, Figure, Pose } from '../model/figure.ts';
import { figuresOf } from './figure-levels.ts';

interface WrittenAngle {
  readonly angle: AngleName;
  readonly degrees: number;
  readonly range: JointRange;
  readonly place: Place;
}

type Angles = Readonly<Partial<Record<AngleName, number>>>;

function writtenAngles({ start, end }: Figure): readonly WrittenAngle[] {
  // What the end leaves out is as at the start.
  const whole = end === null ? start : mergedPose(start, end);
  return [...(end === null ? [] : anglesOf(end, whole)), ...anglesOf(start, start)];
}

function anglesOf({ limb, other, middle, keyPlaces, place }: Pose, whole: Pose): WrittenAngle[] {
  const all = (prefix: string, angles: Angles, around: Angles) =>
    Object.entries(angles).map(([name, degrees]) => {
      const angle = name as AngleName;
      const range = rangeIn(angle, around, whole.restsOn);
      return { angle, degrees, range, place: keyPlaces.get(prefix + angle) ?? place };
    });
  return [
    ...all('', limb.angles, whole.limb.angles),
    ...all('other.', other.angles, whole.other.angles),
    ...all('', middle, whole.middle),
  ];
}

function told(
  check: CheckName & ('joint-range' | 'joint-impossible'),
  { angle, degrees, range, place }: WrittenAngle,
  scope: readonly object[],
): Finding {
  const { joint, low, high, source } = range;
  const normal = `${low} to ${high} degrees (${source})`;
  const message =
    check === 'joint-range'
      ? `"${angle}: ${degrees}" is beyond the normal range of the ${joint}, ${normal}.`
      : `"${angle}: ${degrees}" is more than ${IMPOSSIBLE_BEYOND} degrees beyond the normal range of the ${joint}, ${normal}; no ${joint} goes that far.`;
  return finding({ check, severity: severityOf(check), message, place, scope });
}

/** A warning for each angle beyond the normal range; none for one that is impossible and told of as such. */
export function jointRange(figure: Figure, scope: readonly object[]): readonly Finding[] {
  return writtenAngles(figure)
    .filter(({ range, degrees }) => {
      const beyond = beyondRange(range, degrees);
      return beyond > 0 && beyond <= IMPOSSIBLE_BEYOND;
    })
    .map((one) => told('joint-range', one, scope));
}

/** An error for each angle of an exercise's figures that no joint reaches. */
export function impossibleJoints(exercise: Exercise): readonly Finding[] {
  return figuresOf(exercise.levels).flatMap(({ figure }) =>
    writtenAngles(figure)
      .filter((one) => isImpossible(one))
      .map((one) => told('joint-impossible', one, [])),
  );
}

function isImpossible({ range, degrees }: WrittenAngle): boolean {
  return beyondRange(range, degrees) > IMPOSSIBLE_BEYOND;
}

/** Whether a figure has an angle that no joint reaches, so that nothing else about it can be told. */
export function isImpossibleFigure(figure: Figure): boolean {
  return writtenAngles(figure).some(isImpossible);
}
