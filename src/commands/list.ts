// `carryover list`: finds exercises and plans.

import { compareText } from '../finding/finding.ts';
import type { Exercise } from '../model/exercise.ts';
import type { Plan } from '../model/plan.ts';
import { MUSCLES } from '../model/vocabulary.ts';
import { listExercisesText, listPlansText } from '../render/terminal/list-text.ts';
import { compileWork, type Work } from './compiled.ts';
import { type CommandResult, openFolder, type Session } from './session.ts';

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

export interface PlanFilter {
  readonly due?: boolean;
}

/** Exercises that have all that is asked for at one of their levels, and all the words somewhere. */
export function listExercises(
  session: Session,
  words: readonly string[],
  filter: ExerciseFilter,
): CommandResult {
  const work = compileWork(openFolder(session), null, session);
  const used = new Set(work.compiled.plans.flatMap(({ plan }) => (plan ? exercisesOf(plan) : [])));
  const exercises = work.compiled.library
    .loaded()
    .flatMap(({ exercise }) => exercise ?? [])
    .filter((one) => matches(one, filter) && hasWords(searchText(one), words))
    .filter((one) => !filter.unused || !used.has(one.id))
    .sort((a, b) => compareText(a.id, b.id));
  return {
    ...unread(work),
    ...noHits(work, exercises.length),
    data: { exercises: exercises.map(exerciseJson) },
    out: exercises.length === 0 ? '' : `${listExercisesText(exercises, session)}\n`,
  };
}

export function listPlans(
  session: Session,
  words: readonly string[],
  filter: PlanFilter,
): CommandResult {
  const work = compileWork(openFolder(session), null, session);
  const plans = work.compiled.plans
    .flatMap(({ plan, file }) => (plan ? [{ plan, file }] : []))
    .filter(({ plan }) => hasWords(`${plan.id} ${plan.title} ${plan.goals.join(' ')}`, words))
    .filter(({ plan }) => !filter.due || isDue(plan, session.today))
    .sort(
      (a, b) =>
        (filter.due ? compareText(a.plan.nextVisit ?? '', b.plan.nextVisit ?? '') : 0) ||
        compareText(a.plan.id, b.plan.id),
    );
  return {
    ...unread(work),
    ...noHits(work, plans.length),
    data: { plans: plans.map(planJson) },
    out: plans.length === 0 ? '' : `${listPlansText(plans, session)}\n`,
  };
}

/** What could not be read is not listed, and is said so. */
function unread({ compiled }: Work): Pick<CommandResult, 'status' | 'findings' | 'log'> {
  const missing = [
    ...compiled.plans.filter(({ plan }) => !plan).map(({ file }) => file),
    ...compiled.library
      .loaded()
      .filter(({ exercise }) => !exercise)
      .map(({ file }) => file),
  ];
  const log =
    missing.length === 0
      ? ''
      : `Not listed, because they could not be read: ${missing.join(', ')}. Run "carryover check".\n`;
  return { status: 0, findings: [], log };
}

/** An empty answer is said, so that it is not taken for a hang. */
function noHits(work: Work, hits: number): Pick<CommandResult, 'log'> {
  const { log } = unread(work);
  return { log: hits === 0 ? `${log}Nothing fits.\n` : log };
}

function isDue({ nextVisit, closed }: Plan, today: string): boolean {
  return !closed && nextVisit !== null && nextVisit <= today;
}

function exercisesOf(plan: Plan): readonly string[] {
  return plan.sessions.flatMap(({ parts }) =>
    parts.flatMap(({ items }) => items.map(({ exercise }) => exercise.id)),
  );
}

function matches(exercise: Exercise, filter: ExerciseFilter): boolean {
  return exercise.levels.some((level) => {
    const asked: readonly (readonly [string | undefined, readonly string[]])[] = [
      [filter.region, level.muscles.prime.flatMap(regionOf)],
      [filter.muscle, [...level.muscles.prime, ...level.muscles.assist]],
      [filter.purpose, level.purposes],
      [filter.position, [level.position]],
      [filter.kit, level.kit.flat()],
      [filter.side, [level.sides]],
      [filter.tag, level.tags],
      [filter.demand, level.demands],
    ];
    return asked.every(([wanted, there]) => wanted === undefined || there.includes(wanted));
  });
}

/** The group of a shipped muscle; one of the practice's own has none. */
function regionOf(muscle: string): readonly string[] {
  return isShippedMuscle(muscle) ? [MUSCLES[muscle].group] : [];
}

function isShippedMuscle(id: string): id is keyof typeof MUSCLES {
  return Object.hasOwn(MUSCLES, id);
}

/** The regions that an exercise can be looked for by. */
export const REGIONS: readonly string[] = [
  ...new Set(Object.values(MUSCLES).map(({ group }) => group)),
];

function searchText(exercise: Exercise): string {
  const texts = exercise.levels.flatMap((level) => [
    level.id,
    level.name ?? '',
    level.position,
    ...level.purposes,
    ...level.tags,
    ...level.steps,
    ...level.muscles.prime,
    ...level.muscles.assist,
  ]);
  return [exercise.id, exercise.name, ...texts].join(' ');
}

function hasWords(text: string, words: readonly string[]): boolean {
  const lower = text.toLowerCase();
  return words.every((word) => lower.includes(word.toLowerCase()));
}

function exerciseJson(exercise: Exercise): object {
  const [level] = exercise.levels;
  return {
    exercise: exercise.id,
    name: exercise.name,
    file: exercise.source.file,
    purpose: level?.purposes ?? [],
    position: level?.position ?? '',
    sides: level?.sides ?? 'both',
    muscles: level?.muscles ?? { prime: [], assist: [] },
    kit: level?.kit ?? [],
    demands: level?.demands ?? [],
    tags: level?.tags ?? [],
    levels: exercise.levels.map(({ id }) => id),
  };
}

function planJson({ plan, file }: { readonly plan: Plan; readonly file: string }): object {
  return {
    plan: plan.id,
    title: plan.title,
    file,
    next_visit: plan.nextVisit,
    weeks: plan.weeks,
    closed: plan.closed !== null,
  };
}
