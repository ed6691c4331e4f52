// Writes a case as the files of a practice folder: path to YAML text. It adds the words that the
// contract requires and that no number depends on, quoted; the quantities stay plain.

import { Document, Scalar } from 'yaml';
import type { Case, WrittenExercise, WrittenPlan, WrittenPractice } from './written.ts';

function prose(text: string): Scalar {
  const scalar = new Scalar(text);
  scalar.type = Scalar.QUOTE_DOUBLE;
  return scalar;
}

function write(value: unknown): string {
  const document = new Document(value, { aliasDuplicateObjects: false });
  return document.toString({ lineWidth: 0 });
}

function musclesIn(exercises: readonly WrittenExercise[]): string[] {
  const lists = exercises
    .flatMap((exercise) => [exercise.muscles, ...exercise.levels.map(({ muscles }) => muscles)])
    .flatMap((muscles) => [...(muscles?.prime ?? []), ...(muscles?.assist ?? [])]);
  return [...new Set(lists)].sort();
}

function practiceText(practice: WrittenPractice, exercises: readonly WrittenExercise[]): string {
  const muscles = musclesIn(exercises).map((id) => [id, prose(`the ${id.replaceAll('-', ' ')}`)]);
  return write({
    schema: 1,
    practice: prose('The invented practice'),
    contact: prose('The front desk'),
    emergency: prose('999'),
    emergency_if: [prose('You have chest pain')],
    stop_if: [prose('The pain is sharp')],
    ...practice,
    ...(muscles.length ? { words: { muscles: Object.fromEntries(muscles) } } : {}),
  });
}

function exerciseText(exercise: WrittenExercise): string {
  const { exercise: id, levels, ...rest } = exercise;
  return write({
    exercise: id,
    name: prose(`Exercise ${id}`),
    position: 'standing',
    limb: 'leg',
    steps: [prose('Do it slowly')],
    ...rest,
    levels: levels.map(({ level, ...own }) => ({ level, name: prose(`Level ${level}`), ...own })),
  });
}

function planText(plan: WrittenPlan): string {
  const { plan: code, ...rest } = plan;
  return write({
    plan: code,
    title: prose('A plan of numbers'),
    visits: [{ date: '2026-10-05', why: prose('To hold two readings together') }],
    ...rest,
  });
}

/** The practice folder of a case. */
export function filesOf({ practice, exercises, plan }: Case): Record<string, string> {
  const files: Record<string, string> = { 'practice.yaml': practiceText(practice, exercises) };
  for (const exercise of exercises) {
    files[`exercises/${exercise.exercise}.yaml`] = exerciseText(exercise);
  }
  files[`plans/${plan.plan}.yaml`] = planText(plan);
  return files;
}
