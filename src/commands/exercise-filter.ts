// What exercises can be looked for by, and whether one fits. A word that the practice does not know is a
// slip, and is said so: "nothing fits" would be taken for an answer.
import { kitOfLoad } from '../check/kit-missing.ts';
import { listed } from '../check/wording.ts';
import { nearest } from '../load/did-you-mean.ts';
import { type Exercise, type Level, PURPOSES } from '../model/exercise.ts';
import type { Practice } from '../model/practice.ts';
import { MUSCLES, type MuscleGroup, muscleGroup } from '../model/vocabulary.ts';
import { UsageError } from './session.ts';

export interface ExerciseFilter {
  readonly region?: string;
  readonly muscle?: string;
  readonly purpose?: string;
  readonly position?: string;
  readonly kit?: string;
  readonly side?: string;
  readonly tag?: string;
  readonly demand?: string;
  readonly unused?: boolean;
}

/** The regions that an exercise can be looked for by. */
export const REGIONS: readonly string[] = [
  ...new Set(Object.values(MUSCLES).map(({ group }) => group)),
];

/** Regions of muscles within another: who asks for the shoulder means the cuff too. */
const WITHIN: Readonly<Partial<Record<MuscleGroup, string>>> = { 'rotator-cuff': 'shoulder' };

/** The options whose words are closed in this practice; tags are free. */
const KNOWN: Readonly<
  Partial<Record<keyof ExerciseFilter, (practice: Practice) => readonly string[]>>
> = {
  muscle: ({ vocabulary }) => [...vocabulary.muscles],
  purpose: () => PURPOSES,
  position: ({ vocabulary }) => [...vocabulary.positions],
  kit: ({ vocabulary, bands }) => [...vocabulary.kit, ...bands],
  demand: ({ vocabulary }) => [...vocabulary.demands],
};

/** The words that an option may have in this practice; none where they are not closed. */
export function knownTo(option: string, practice: Practice): readonly string[] {
  return KNOWN[option as keyof ExerciseFilter]?.(practice) ?? [];
}

/** A usage error where an option has a word that this practice does not know. */
export function checkFilter(filter: ExerciseFilter, practice: Practice): void {
  for (const option of Object.keys(KNOWN)) {
    const asked = filter[option as keyof ExerciseFilter];
    const known = knownTo(option, practice);
    if (typeof asked !== 'string' || known.includes(asked)) continue;
    const hint =
      option === 'muscle' && REGIONS.includes(asked)
        ? `it is a region of muscles: --region ${asked}`
        : hintFor(asked, known, KINDS[option]);
    throw new UsageError(`"--${option} ${asked}" is not known here; ${hint}`);
  }
}

/** What `list words` calls the words of an option. */
const KINDS: Readonly<Record<string, string>> = {
  muscle: 'muscles',
  position: 'positions',
  kit: 'kit',
  demand: 'demands',
};

function hintFor(asked: string, known: readonly string[], kind: string | undefined): string {
  const near = nearest(asked, known);
  if (near !== undefined) return `did you mean "${near}"?`;
  return kind === undefined
    ? `write ${listed(known, 'or')}`
    : `"carryover list words ${kind}" shows what there is`;
}

/** Whether one of its levels has all that is asked for. */
export function fitsFilter({ levels }: Exercise, filter: ExerciseFilter): boolean {
  return levels.some((level) => {
    const asked: readonly (readonly [string | undefined, readonly string[]])[] = [
      [filter.region, level.muscles.prime.flatMap(regionsOf)],
      [filter.muscle, [...level.muscles.prime, ...level.muscles.assist]],
      [filter.purpose, level.purposes],
      [filter.position, [level.position]],
      [filter.kit, [...level.kit.flat(), ...kitOfLoads(level)]],
      [filter.side, [level.sides]],
      [filter.tag, level.tags],
      [filter.demand, level.demands],
    ];
    return asked.every(([wanted, there]) => wanted === undefined || there.includes(wanted));
  });
}

function regionsOf(muscle: string): readonly string[] {
  const group = muscleGroup(muscle);
  if (group === null) return [];
  const around = WITHIN[group];
  return around === undefined ? [group] : [group, around];
}

/** A band by its name, or weight, that the doses of the level ask for. */
function kitOfLoads({ exerciseDose, levelDose }: Level): readonly string[] {
  return [exerciseDose, levelDose].flatMap((layer) => {
    const load = layer?.values.load;
    return (load && kitOfLoad(load)) ?? [];
  });
}
