// For one item and one week: which level, in which order, and each side's dose, after the merge
// order of the contract: exercise, level, plan, from_week entries, side overrides, climb, easy week.
// How long it takes and what it adds up to is walk.ts's and simulate.ts's.
//
// Readings of the contract where it leaves room:
// - an entry without a level, after a climb has reached one, starts again at the level as written,
//   with the side overrides as written: only a written change of level drops those for good;
// - an entry's own order wins over the level's, which wins over the exercise's;
// - `only: affected` with `affected: both` leaves both sides in place.

import type { Stand, Track, Tracks } from './climb.ts';
import { ticked } from './climb.ts';
import { eased, isEasy } from './easing.ts';
import type { Dose, Setting } from './merge.ts';
import { complete, layered, NotAllowed, sideLayered } from './merge.ts';
import { readGap } from './quantities.ts';
import type {
  ClimbLine,
  EasyWeeks,
  ItemEntry,
  Muscles,
  Only,
  Order,
  SideOverrides,
  Sides,
  WrittenDose,
  WrittenExercise,
  WrittenItem,
  WrittenPlan,
  WrittenPractice,
} from './written.ts';

export interface Level {
  readonly id: string;
  readonly sides: Sides;
  readonly purpose: string;
  readonly muscles: Muscles;
  readonly order: Order;
}

/** Everything of practice and plan that an item's dose depends on. */
export interface Frame extends Setting {
  readonly changeSides: number;
  readonly betweenItems: number;
  readonly affected: WrittenPlan['affected'];
  readonly easy: EasyWeeks | undefined;
}

export interface ItemNow {
  readonly level: Level;
  readonly order: Order;
  readonly doses: Tracks;
}

export function frameOf(practice: WrittenPractice, plan: WrittenPlan): Frame {
  const timing = practice.timing ?? {};
  const breath = readGap(timing.breath ?? '5 s', 0);
  return {
    breath,
    bands: practice.bands,
    move: readGap(timing.move ?? '3 s', breath),
    pause: readGap(timing.pause ?? '2 s', breath),
    rest: readGap(timing.rest ?? '30 s', breath),
    changeSides: readGap(timing.change_sides ?? '5 s', breath),
    betweenItems: readGap(timing.between_items ?? '30 s', breath),
    affected: plan.affected,
    easy: plan.easy_weeks,
  };
}

const firstOf = (purpose: string | string[]): string =>
  (Array.isArray(purpose) ? purpose[0] : purpose) ?? '';

/** A level with what the exercise gives it; keys are replaced whole. */
export function levelOf(exercise: WrittenExercise, at: number): Level {
  const level = exercise.levels[at];
  if (!level) throw new NotAllowed(`no level ${at}`);
  const sides = level.sides ?? exercise.sides;
  return {
    id: level.level,
    sides,
    purpose: firstOf(level.purpose ?? exercise.purpose),
    muscles: level.muscles ?? exercise.muscles ?? {},
    order: (sides === 'each' ? (level.order ?? exercise.order) : undefined) ?? 'each-set',
  };
}

export function levelDose(exercise: WrittenExercise, at: number, setting: Setting): Dose {
  return layered(layered({}, exercise.dose, setting), exercise.levels[at]?.dose, setting);
}

/** What is written for an item up to a week, before sides and climb are worked out. */
export interface Written {
  readonly base: number;
  readonly level: number;
  readonly dose: Dose;
  readonly sides: SideOverrides | undefined;
  readonly only: Only | undefined;
  readonly order: Order | undefined;
  readonly climb: readonly ClimbLine[];
  readonly every: number;
}

function withEntry(
  under: Written,
  entry: ItemEntry,
  exercise: WrittenExercise,
  setting: Setting,
): Written {
  const named = exercise.levels.findIndex(({ level }) => level === entry.level);
  const changes = entry.level !== undefined && named !== under.level;
  const level = changes ? named : under.level;
  const beneath = changes ? levelDose(exercise, level, setting) : under.dose;
  return {
    base: entry.week,
    level,
    dose: layered(beneath, entry.dose, setting),
    sides: entry.sides ?? (changes ? undefined : under.sides),
    only: entry.only ?? under.only,
    order: entry.order ?? under.order,
    climb: entry.climb ?? under.climb,
    every: entry.climb_every ?? under.every,
  };
}

export function writtenIn(
  item: WrittenItem,
  exercise: WrittenExercise,
  week: number,
  setting: Setting,
): Written {
  const { level, dose, sides, only, order, climb, climb_every } = item;
  const first = exercise.levels[0]?.level ?? '';
  const nothing: Written = {
    base: 1,
    level: -1,
    dose: {},
    sides: undefined,
    only: undefined,
    order: undefined,
    climb: [],
    every: 1,
  };
  const start: ItemEntry = { week: 1, level: level ?? first };
  Object.assign(start, { dose, sides, only, order, climb, climb_every });
  return [...(item.from_week ?? [])]
    .filter((entry) => entry.week <= week)
    .sort((one, other) => one.week - other.week)
    .reduce(
      (under, entry) => withEntry(under, entry, exercise, setting),
      withEntry(nothing, start, exercise, setting),
    );
}

/** The sides that are done at a level. */
function tracksOf(sides: Sides, only: Only | undefined, frame: Frame): Track[] {
  if (sides !== 'each') return [sides];
  if (only === undefined) return ['left', 'right'];
  if (only === 'left' || only === 'right') return [only];
  if (frame.affected === 'none') throw new NotAllowed(`only: ${only} without an affected side`);
  if (only === 'affected') {
    return frame.affected === 'both' ? ['left', 'right'] : [frame.affected];
  }
  if (frame.affected === 'both') throw new NotAllowed('only: other with both affected');
  return [frame.affected === 'left' ? 'right' : 'left'];
}

/** The doses of the sides as written, before any tick. */
export function startOf(written: Written, exercise: WrittenExercise, frame: Frame): Stand {
  const { sides } = levelOf(exercise, written.level);
  const doses: Tracks = {};
  for (const track of tracksOf(sides, written.only, frame)) {
    const own: WrittenDose | undefined =
      track === 'left' || track === 'right' ? written.sides?.[track] : undefined;
    doses[track] = complete(sideLayered(written.dose, own, frame), frame);
  }
  return { level: written.level, now: doses, start: doses };
}

/** How often the climb has ticked: the weeks after the base that were not easy, in steps. */
function ticksBy(written: Written, week: number, easy: EasyWeeks | undefined): number {
  let weeks = 0;
  for (let at = written.base + 1; at <= week; at += 1) if (!isEasy(easy, at)) weeks += 1;
  return Math.floor(weeks / written.every);
}

/** The item as it is done in a week: its level, and the dose of every side that does it. */
export function itemIn(
  item: WrittenItem,
  exercise: WrittenExercise,
  week: number,
  frame: Frame,
): ItemNow {
  const written = writtenIn(item, exercise, week, frame);
  const ladder = {
    setting: frame,
    levelIds: exercise.levels.map(({ level }) => level),
    own: (level: number) => {
      const bare = { ...written, level, dose: levelDose(exercise, level, frame), sides: undefined };
      return startOf(bare, exercise, frame).now;
    },
  };
  let stand = startOf(written, exercise, frame);
  for (let tick = ticksBy(written, week, frame.easy); tick > 0; tick -= 1) {
    stand = ticked(written.climb, stand, ladder);
  }
  const level = levelOf(exercise, stand.level);
  const doses: Tracks = {};
  for (const [track, dose] of Object.entries(stand.now) as [Track, Dose][]) {
    doses[track] = frame.easy && isEasy(frame.easy, week) ? eased(dose, frame.easy) : dose;
  }
  return { level, order: (level.sides === 'each' && written.order) || level.order, doses };
}
