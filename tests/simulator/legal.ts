// Which generated items are valid plans: the contract's rules on doses, sides, orders, circuits and
// climbs, held against every week. plans.ts adds one written thing after another and keeps what
// passes here, so that a generated plan is valid by construction.
//
// Left out although the contract doesn't plainly forbid it, because it leaves room:
// - an override for a side that `only` leaves out;
// - a level in `through` that is passed already where the climb is written.

import type { Ladder, Stand } from './climb.ts';
import { isOpen, lineOf } from './climb.ts';
import { exerciseOf } from './in-force.ts';
import type { Dose } from './merge.ts';
import { complete, isList, NotAllowed, repetition } from './merge.ts';
import type { Frame, Written } from './resolve.ts';
import { itemIn, levelDose, levelOf, startOf, writtenIn } from './resolve.ts';
import type { WrittenDose, WrittenExercise, WrittenItem } from './written.ts';

/** What an item is judged in: the plan's frame, its length, and whether its part is a circuit. */
export interface Surroundings {
  readonly frame: Frame;
  readonly weeks: number;
  readonly circuit: boolean;
  readonly exercises: readonly WrittenExercise[];
}

function ladderOf(exercise: WrittenExercise, frame: Frame): Ladder {
  return {
    setting: frame,
    levelIds: exercise.levels.map(({ level }) => level),
    own: () => ({}),
  };
}

/** The written level, and those that its climb may reach from there. */
function levelsAhead(written: Written, exercise: WrittenExercise): number[] {
  const through = written.climb.flatMap((line) => lineOf(line)[1].through ?? []);
  const later = exercise.levels.flatMap(({ level }, at) =>
    at > written.level && through.includes(level) ? [at] : [],
  );
  return [written.level, ...later];
}

const dials = (written: Written): string[] => written.climb.map((line) => lineOf(line)[0]);

function hasFittingSides(written: Written, start: Stand, exercise: WrittenExercise): boolean {
  const each = levelsAhead(written, exercise).every(
    (level) => levelOf(exercise, level).sides === 'each',
  );
  if ((written.only ?? written.order) && !each) return false;
  if (!written.sides) return true;
  if (levelOf(exercise, written.level).sides !== 'each') return false;
  return (['left', 'right'] as const).every((side) => !written.sides?.[side] || start.now[side]);
}

function hasFittingLists(
  written: Written,
  start: Stand,
  exercise: WrittenExercise,
  around: Surroundings,
): boolean {
  const [, ...ahead] = levelsAhead(written, exercise);
  const own = ahead.map((level) =>
    complete(levelDose(exercise, level, around.frame), around.frame),
  );
  const lists = [written.dose, ...own, ...Object.values(start.now)].some(({ reps }) =>
    isList(reps),
  );
  return !(lists && (around.circuit || dials(written).includes('sets')));
}

function hasOpenDials(written: Written, start: Stand, ladder: Ladder): boolean {
  const through = written.climb.flatMap((line) => line.level?.through ?? []);
  if (through.some((id) => ladder.levelIds.indexOf(id) <= start.level)) return false;
  return written.climb.every((line) =>
    Object.values(start.now).some((dose) => isOpen(line, dose, start.level, ladder)),
  );
}

function isSensible(dose: Dose): boolean {
  return repetition(dose)[0] > 0 && (dose.effort?.[1] ?? 0) <= 10;
}

function dosesWritten(item: WrittenItem): (WrittenDose | undefined)[] {
  return [item, ...(item.from_week ?? [])].flatMap(({ dose, sides }) => [
    dose,
    sides?.left,
    sides?.right,
  ]);
}

function fitsCircuit(item: WrittenItem): boolean {
  const climbs = [item, ...(item.from_week ?? [])].flatMap(({ climb }) => climb ?? []);
  const turns = climbs.map((line) => lineOf(line)[0]);
  if (turns.includes('sets')) return false;
  return dosesWritten(item).every((dose) => !dose?.sets && !Array.isArray(dose?.reps));
}

function isValidFrom(
  base: number,
  item: WrittenItem,
  exercise: WrittenExercise,
  around: Surroundings,
): boolean {
  const written = writtenIn(item, exercise, base, around.frame);
  const start = startOf(written, exercise, around.frame);
  const entry = item.from_week?.find(({ week }) => week === base);
  const judged = base === 1 || entry?.climb !== undefined;
  return (
    hasFittingSides(written, start, exercise) &&
    hasFittingLists(written, start, exercise, around) &&
    (!judged || hasOpenDials(written, start, ladderOf(exercise, around.frame)))
  );
}

/** Whether the contract lets an item be written so. */
export function isValidItem(item: WrittenItem, around: Surroundings): boolean {
  const exercise = exerciseOf(around.exercises, item);
  if (around.circuit && !fitsCircuit(item)) return false;
  try {
    const bases = [1, ...(item.from_week ?? []).map(({ week }) => week)];
    if (!bases.every((base) => isValidFrom(base, item, exercise, around))) return false;
    for (let week = 1; week <= around.weeks; week += 1) {
      const { doses } = itemIn(item, exercise, week, around.frame);
      if (!Object.values(doses).every(isSensible)) return false;
    }
    return true;
  } catch (fault) {
    if (fault instanceof NotAllowed) return false;
    throw fault;
  }
}

/** Whether a level has a dose with a shape after merging. */
export function isValidLevel(exercise: WrittenExercise, at: number, frame: Frame): boolean {
  try {
    return isSensible(complete(levelDose(exercise, at, frame), frame));
  } catch (fault) {
    if (fault instanceof NotAllowed) return false;
    throw fault;
  }
}
