// Small cases for the hand-worked sums: one exercise, one item, one session, unless a test says more.

import { simulate } from './simulate.ts';
import type {
  Case,
  WrittenExercise,
  WrittenItem,
  WrittenPlan,
  WrittenPractice,
} from './written.ts';

const PRACTICE: WrittenPractice = { bands: ['light band', 'medium band', 'heavy band'] };

/** One exercise called lift, done once a day. */
export function caseOf(
  exercise: Partial<WrittenExercise>,
  item: Partial<WrittenItem> = {},
  plan: Partial<WrittenPlan> = {},
): Case {
  return {
    practice: { ...PRACTICE },
    exercises: [
      {
        exercise: 'lift',
        purpose: 'strength',
        sides: 'both',
        levels: [{ level: 'one' }],
        ...exercise,
      },
    ],
    plan: {
      plan: 'P-1',
      weeks: 1,
      affected: 'left',
      sessions: [
        {
          session: 'one',
          days: 'daily',
          parts: [{ part: 'strength', items: [{ do: 'lift', ...item }] }],
        },
      ],
      ...plan,
    },
  };
}

/** So many items of the one exercise, numbered on from the first. */
export function items(count: number, from = 0): WrittenItem[] {
  return Array.from({ length: count }, (_, at) => ({ do: 'lift', as: `lift-${from + at}` }));
}

/** A week of the numbers, counted from 1. */
export function weekOf({ practice, exercises, plan }: Case, week: number) {
  const found = simulate(practice, exercises, plan).weeks[week - 1];
  if (!found) throw new Error(`no week ${week}`);
  return found;
}

/** The first item of a week as it is shown; loosely typed, for the tests to look into. */
export function firstIn(all: Case, week: number) {
  const item = weekOf(all, week).sessions[0]?.parts[0]?.items[0];
  if (!item) throw new Error(`nothing there in week ${week}`);
  return item;
}

export function first(
  exercise: Partial<WrittenExercise>,
  item: Partial<WrittenItem> = {},
  plan: Partial<WrittenPlan> = {},
) {
  return firstIn(caseOf(exercise, item, plan), 1);
}
