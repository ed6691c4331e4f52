// `carryover list`: finds exercises and plans.

import { compareText } from '../finding/finding.ts';
import { wordHints } from '../load/did-you-mean.ts';
import type { Exercise } from '../model/exercise.ts';
import type { Plan } from '../model/plan.ts';
import { listExercisesText, listPlansText } from '../render/terminal/list-text.ts';
import { compileWork, type Work } from './compiled.ts';
import { checkFilter, type ExerciseFilter, fitsFilter } from './exercise-filter.ts';
import { type CommandResult, openFolder, type Session } from './session.ts';

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
  checkFilter(filter, work.compiled.practice);
  const used = new Set(work.compiled.plans.flatMap(({ plan }) => (plan ? exercisesOf(plan) : [])));
  const exercises = work.compiled.library
    .loaded()
    .flatMap(({ exercise }) => exercise ?? [])
    .filter((one) => fitsFilter(one, filter) && hasWords(searchText(one), words))
    .filter((one) => !filter.unused || !used.has(one.id))
    .sort((a, b) => compareText(a.id, b.id));
  return {
    ...unread(work),
    ...noHits(work, exercises.length, unknownTag(work, filter)),
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
function noHits(work: Work, hits: number, why = ''): Pick<CommandResult, 'log'> {
  const { log } = unread(work);
  return { log: hits === 0 ? `${log}Nothing fits.${why}\n` : log };
}

/** Tags are free words, so that one that no exercise has is no mistake; those that there are help on. */
function unknownTag({ compiled }: Work, { tag }: ExerciseFilter): string {
  const levels = compiled.library.loaded().flatMap(({ exercise }) => exercise?.levels ?? []);
  const tags = [...new Set(levels.flatMap((level) => level.tags))].sort(compareText);
  if (tag === undefined || tags.includes(tag)) return '';
  return [` No exercise has the tag "${tag}".`, ...wordHints(tag, tags)].join(' ');
}

function isDue({ nextVisit, closed }: Plan, today: string): boolean {
  return !closed && nextVisit !== null && nextVisit <= today;
}

function exercisesOf(plan: Plan): readonly string[] {
  return plan.sessions.flatMap(({ parts }) =>
    parts.flatMap(({ items }) => items.map(({ exercise }) => exercise.id)),
  );
}

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
