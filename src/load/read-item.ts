// An item of a plan: an exercise at a level with a dose, and what changes from a week on.
import type { Place } from '../finding/place.ts';
import type { Exercise, Level } from '../model/exercise.ts';
import type { Item, ItemEntry, ItemSettings, SideOverrides } from '../model/plan.ts';
import { parseCount } from '../units/number.ts';
import { sideMeant } from '../units/side.ts';
import {
  type At,
  entries,
  hasKey,
  keysOf,
  pairs,
  placeOf,
  quantity,
  startPlace,
  tellAt,
  textOf,
  textUnder,
  under,
  wordUnder,
} from './at.ts';
import { wordHints } from './did-you-mean.ts';
import { idMeant } from './meant-id.ts';
import { readClimb, tellUnknownLevel } from './read-climb.ts';
import { readDose, readMoveOnWhen } from './read-dose.ts';
import { type PlanReading, readAccepts, readEntries, readWindows } from './read-plan-parts.ts';
import type { ItemEntryFile, ItemFile, SideOverridesFile } from './written.ts';

/** The item; null where its exercise or level cannot be told. */
function readItem(at: At<ItemFile>, reading: PlanReading): Item | null {
  const doAt = under(at, 'do');
  if (!doAt) return null;
  const id = textOf(doAt);
  const loaded = reading.exercise(id);
  if (!loaded) {
    tellUnknownExercise(doAt, reading);
    return null;
  }
  const { exercise } = loaded;
  const first = exercise?.levels[0];
  if (!exercise || !first) return null;
  const level = readLevel(at, exercise);
  // Without its level nothing that hangs on it can be judged.
  if (level === null) return null;
  const settings = readSettings(at, exercise, level ?? first, reading);
  const fromWeek = readItemEntries(at, exercise, level ?? first, reading);
  return {
    ...settings,
    id: textUnder(at, 'as') ?? id,
    place: placeOf(doAt),
    extent: placeOf(at),
    exercise,
    level: level ?? first,
    windows: readWindows(under(at, 'weeks'), reading.weeks),
    startWhen: textUnder(at, 'start_when'),
    fromWeek,
    accepts: readAccepts(under(at, 'accept')),
  };
}

/** An exercise that is not there under this id: the one of that name, or spelt as an id, else what there is. */
function tellUnknownExercise(at: At<unknown>, reading: PlanReading): void {
  const word = textOf(at);
  const meant = idMeant(word, reading.exerciseIds, reading.exerciseOfName);
  const what = `There is no exercise "${word}"`;
  if (meant === undefined)
    return tellAt(at, 'unknown-exercise', `${what}.`, {
      hints: wordHints(word, reading.exerciseIds),
    });
  tellAt(at, 'unknown-exercise', `${what}; an exercise goes by its id: write "do: ${meant}".`);
}

/** Undefined: none is named. Null: one is named that is not there. */
function readLevel(
  at: At<ItemFile> | At<ItemEntryFile>,
  exercise: Exercise,
): Level | undefined | null {
  const levelAt = under(at as At<ItemFile>, 'level');
  if (!levelAt) return hasKey(at, 'level') ? null : undefined;
  const id = textOf(levelAt);
  const level = exercise.levels.find((one) => one.id === id);
  if (level) return level;
  tellUnknownLevel(levelAt, exercise, (meant) => `write "level: ${meant}"`);
  return null;
}

function readItemEntries(
  at: At<ItemFile>,
  exercise: Exercise,
  level: Level,
  reading: PlanReading,
): readonly ItemEntry[] {
  let present = level;
  return readEntries(under(at, 'from_week'), reading.weeks).flatMap(({ week, at: entry }) => {
    const named = readLevel(entry, exercise);
    if (named === null) return [];
    present = named ?? present;
    return [{ ...readSettings(entry, exercise, present, reading), level: named, week }];
  });
}

function readSettings(
  at: At<ItemFile> | At<ItemEntryFile>,
  exercise: Exercise,
  level: Level,
  reading: PlanReading,
): ItemSettings {
  const one = at as At<ItemEntryFile>;
  const { bands } = reading.practice;
  const keyPlaces = new Map<string, Place>();
  for (const { key, keyPlace } of pairs(one)) if (keyPlace) keyPlaces.set(key, keyPlace);
  return {
    place: placeOf(one),
    level: undefined,
    dose: readDose(under(one, 'dose'), bands),
    sides: readSides(under(one, 'sides'), reading),
    only: readOnly(one, reading),
    order: wordUnder(one, 'order'),
    climb: readClimb(under(one, 'climb'), { bands, exercise, level }),
    climbEvery: quantity(under(one, 'climb_every'), (text) => parseCount(text)),
    note: textUnder(one, 'note') ?? undefined,
    priority: wordUnder(one, 'priority'),
    moveOnWhen: readMoveOnWhen(under(one, 'move_on_when'), bands) ?? undefined,
    advance: wordUnder(one, 'advance'),
    keyPlaces,
  };
}

function readOnly(at: At<ItemEntryFile>, { affected }: PlanReading): ItemSettings['only'] {
  const only = wordUnder(at, 'only');
  if (!only || affected === null || sideMeant(only, affected) !== undefined) return only;
  const onlyAt = under(at, 'only') as At<unknown>;
  const why = affected === 'both' ? '"other" needs one affected side' : 'no side is affected';
  tellAt(
    onlyAt,
    'side-unclear',
    `"only: ${only}" names no side, because the plan says "affected: ${affected}" and ${why}; write "only: left" or "only: right".`,
  );
  return undefined;
}

function readSides(
  at: At<SideOverridesFile> | undefined,
  { practice }: PlanReading,
): SideOverrides | undefined {
  if (!at) return undefined;
  const left = readDose(under(at, 'left'), practice.bands) ?? null;
  const right = readDose(under(at, 'right'), practice.bands) ?? null;
  // Any other key is no side's name, which has been told of.
  if (keysOf(at).every((key) => key === 'why')) {
    tellAt(
      at,
      'missing-key',
      '"sides" says nothing for either side; write what differs on each, such as "sides: {left: {…}, right: {…}, why: …}".',
      { place: startPlace(at) },
    );
  }
  return { left, right, why: textUnder(at, 'why') ?? '', place: placeOf(at) };
}

/** The items of a part, each known by its own id in the session. */
export function readItems(
  at: At<readonly ItemFile[]> | undefined,
  reading: PlanReading,
  seen: Map<string, Place>,
): readonly Item[] {
  return entries(at).flatMap((one) => {
    tellTwice(one, seen);
    const item = readItem(one, reading);
    return item ? [item] : [];
  });
}

function tellTwice(at: At<ItemFile>, seen: Map<string, Place>): void {
  const idAt = under(at, 'as') ?? under(at, 'do');
  if (!idAt) return;
  const id = textOf(idAt);
  const before = seen.get(id);
  if (!before) {
    seen.set(id, placeOf(idAt));
    return;
  }
  const what =
    idAt.key === 'as'
      ? `"as: ${id}" stands twice in this session`
      : `"${id}" comes twice in this session`;
  tellAt(idAt, 'duplicate-item', `${what}; give one of them an id of its own: "as: ${id}-again".`, {
    related: [{ message: 'The first one.', place: before }],
  });
}
