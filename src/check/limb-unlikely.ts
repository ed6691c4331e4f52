// Does an exercise call its sides legs while all that it works is in the arm, or the other way round?
// Asked of the library, once an exercise: the sheet would say "left leg" for an exercise of the arm.
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { Exercise, Level, Limb } from '../model/exercise.ts';
import { type MuscleGroup, muscleGroup } from '../model/vocabulary.ts';
import { listed } from './wording.ts';

type Half = 'arm' | 'leg';

const LIMBS_OF: Readonly<Record<Half, readonly Limb[]>> = {
  arm: ['arm', 'hand', 'shoulder'],
  leg: ['leg', 'foot', 'knee', 'foot-in-front'],
};
// Neck, trunk and floor of the pelvis belong to neither.
const GROUPS_OF: Readonly<Record<Half, readonly MuscleGroup[]>> = {
  arm: [
    'upper-back',
    'shoulder',
    'rotator-cuff',
    'chest',
    'elbow-flexors',
    'elbow-extensors',
    'forearm',
  ],
  leg: ['hip-flexors', 'glutes', 'hip-adductors', 'quadriceps', 'hamstrings', 'calf', 'shin'],
};

/** One finding an exercise, at the first level that it holds of; a muscle of no half, or of the practice's own, settles it. */
export function limbUnlikely(exercises: readonly Exercise[]): readonly Finding[] {
  return exercises.flatMap((exercise) => {
    const level = exercise.levels.find(isUnlikely);
    return level ? [limbFinding(exercise, level)] : [];
  });
}

function isUnlikely(level: Level): boolean {
  const half = halfOf(level);
  if (!half) return false;
  const muscles = [...level.muscles.prime, ...level.muscles.assist];
  const others = GROUPS_OF[half === 'arm' ? 'leg' : 'arm'];
  return (
    muscles.length > 0 &&
    muscles.every((muscle) => {
      const group = muscleGroup(muscle);
      return group !== null && others.includes(group);
    })
  );
}

function halfOf({ limb }: Level): Half | undefined {
  return (['arm', 'leg'] as const).find((half) => limb !== null && LIMBS_OF[half].includes(limb));
}

function limbFinding(exercise: Exercise, level: Level): Finding {
  const muscles = [...level.muscles.prime, ...level.muscles.assist].map((one) => `"${one}"`);
  const fitting = LIMBS_OF[halfOf(level) === 'arm' ? 'leg' : 'arm'];
  return finding({
    check: 'limb-unlikely',
    severity: severityOf('limb-unlikely'),
    message: `"limb: ${level.limb}" is what the sheet calls a side, and all that this exercise works is ${listed(muscles, 'and')}; is a side rather called ${listed(fitting, 'or')}?`,
    place: level.limbPlace ?? exercise.place,
  });
}
