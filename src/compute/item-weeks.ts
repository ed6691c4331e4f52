// One item, week by week: the layers of its dose, its from_week entries, its climb and the easy
// weeks, resolved to a dose for each side that it does. Total: what cannot be followed becomes a
// finding, and the week still has a dose.

import { type Finding, finding } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import type { Dial, Dose, DoseLayer, MoveOnWhen, Origin } from '../model/dose.ts';
import type { Level } from '../model/exercise.ts';
import { EMPTY_DOSE, mergeLayer, mergeProblem, mergeProblemSentence } from '../model/merge.ts';
import type {
  Advance,
  Item,
  ItemEntry,
  ItemSettings,
  Plan,
  Priority,
  SideOverrides,
} from '../model/plan.ts';
import type { Practice } from '../model/practice.ts';
import { type Only, type Order, sideMeant } from '../units/side.ts';
import {
  type ClimbSetting,
  type ClimbState,
  idleDials,
  type Lane,
  type LaneDoses,
  oriented,
  ticked,
} from './climb.ts';
import { onFloor } from './completed-dose.ts';
import { idleDialSentence } from './dial-words.ts';

/** What is written for an item in one week, before its climb. */
export interface Written {
  readonly level: Level;
  readonly layers: readonly { readonly layer: DoseLayer; readonly origin: Origin }[];
  readonly overrides: SideOverrides | null;
  readonly only: Only | null;
  readonly order: Order | null;
  readonly climb: readonly Dial[];
  readonly climbEvery: number;
  readonly note: string | null;
  readonly priority: Priority | null;
  readonly moveOnWhen: MoveOnWhen | null;
  readonly advance: Advance;
  readonly keyPlaces: ReadonlyMap<string, Place>;
}

/** An item in one week: what is written, the level in force, and the dose of each side. */
export interface ResolvedWeek {
  readonly written: Written;
  readonly level: Level;
  readonly doses: LaneDoses;
}

interface Resolving {
  readonly item: Item;
  readonly plan: Plan;
  readonly practice: Practice;
  readonly scope: readonly object[];
  readonly findings: Finding[];
  readonly told: Set<string>;
}

/** The weeks of an item, week 1 first, whether or not it is there in them; easing comes later. */
export function itemWeeks(
  item: Item,
  plan: Plan,
  practice: Practice,
  scope: readonly object[],
): { readonly weeks: readonly ResolvedWeek[]; readonly findings: readonly Finding[] } {
  const resolving: Resolving = { item, plan, practice, scope, findings: [], told: new Set() };
  const entries = new Map(item.fromWeek.map((entry) => [entry.week, entry]));
  const easy = new Set(plan.easyWeeks?.weeks ?? []);
  const weeks: ResolvedWeek[] = [];
  let written = asWritten(item);
  let growth = startedClimb(resolving, written, item.climb !== undefined);
  let ticks = 0;
  for (let week = 1; week <= plan.weeks; week += 1) {
    const entry = entries.get(week);
    if (entry) {
      written = withEntry(written, entry);
      growth = startedClimb(resolving, written, entry.climb !== undefined);
      ticks = 0;
    } else if (week > 1 && !easy.has(week)) {
      ticks += 1;
      if (ticks % written.climbEvery === 0) {
        growth = { ...growth, state: ticked(growth.climb, growth.state, growth.setting) };
      }
    }
    tellSidesNotEach(resolving, written, growth.state.level, week);
    tellSetsOverList(resolving, growth);
    const climbed = growth.state.level !== written.level;
    weeks.push({
      written: climbed ? { ...written, overrides: null } : written,
      level: growth.state.level,
      doses: growth.state.doses,
    });
  }
  return { weeks, findings: resolving.findings };
}

function asWritten(item: Item): Written {
  return {
    level: item.level,
    layers: item.dose ? [{ layer: item.dose, origin: { layer: 'plan' } }] : [],
    overrides: item.sides ?? null,
    only: item.only ?? null,
    order: item.order ?? null,
    climb: item.climb ?? [],
    climbEvery: item.climbEvery ?? 1,
    note: item.note ?? null,
    priority: item.priority ?? null,
    moveOnWhen: item.moveOnWhen ?? null,
    advance: item.advance ?? 'when-ready',
    keyPlaces: item.keyPlaces,
  };
}

/** An entry that changes the level starts from that level's dose; keys that it does not name stay. */
function withEntry(before: Written, entry: ItemEntry): Written {
  const isNewLevel = entry.level !== undefined && entry.level !== before.level;
  const origin: Origin = { layer: 'from-week', week: entry.week };
  const added = entry.dose ? [{ layer: entry.dose, origin }] : [];
  return {
    level: entry.level ?? before.level,
    layers: isNewLevel ? added : [...before.layers, ...added],
    overrides: entry.sides ?? (isNewLevel ? null : before.overrides),
    ...staying(before, entry),
    keyPlaces: new Map([...before.keyPlaces, ...entry.keyPlaces]),
  };
}

function staying(before: Written, entry: ItemSettings) {
  return {
    only: entry.only ?? before.only,
    order: entry.order ?? before.order,
    climb: entry.climb ?? before.climb,
    climbEvery: entry.climbEvery ?? before.climbEvery,
    note: entry.note ?? before.note,
    priority: entry.priority ?? before.priority,
    moveOnWhen: entry.moveOnWhen ?? before.moveOnWhen,
    advance: entry.advance ?? before.advance,
  };
}

interface Growth {
  readonly climb: readonly Dial[];
  readonly state: ClimbState;
  readonly setting: ClimbSetting;
}

function startedClimb(resolving: Resolving, written: Written, isClimbWritten: boolean): Growth {
  const { item, practice } = resolving;
  const doses = writtenDoses(resolving, written);
  const setting: ClimbSetting = {
    breathMs: practice.timing.breath,
    bands: practice.bands,
    levels: item.exercise.levels,
    dosesOfLevel: (level) => {
      const dose = onFloor(levelDose(level), practice.timing);
      return new Map(lanesOf(resolving, written, level).map((lane) => [lane, dose]));
    },
  };
  const climb = oriented(written.climb, doses, practice.bands);
  const state = { level: written.level, doses, starts: doses };
  if (isClimbWritten) {
    for (const { dial, why } of idleDials(climb, state, setting)) {
      const message = idleDialSentence(dial, why, [...doses.values()], item.exercise.id);
      tell(resolving, 'dial-idle', dial.place, message);
    }
  }
  return { climb, state, setting };
}

/** The dose of a level as the library gives it: exercise, then level. */
export function levelDose(level: Level): Dose {
  let dose = EMPTY_DOSE;
  if (level.exerciseDose) dose = mergeLayer(dose, level.exerciseDose, { layer: 'exercise' });
  if (level.levelDose) dose = mergeLayer(dose, level.levelDose, { layer: 'level' });
  return dose;
}

function writtenDoses(resolving: Resolving, written: Written): LaneDoses {
  let dose = levelDose(written.level);
  for (const { layer, origin } of written.layers) {
    dose = layered(resolving, dose, layer, origin);
  }
  const doses = new Map<Lane, Dose>();
  for (const lane of lanesOf(resolving, written, written.level)) {
    const override = lane === 'left' || lane === 'right' ? written.overrides?.[lane] : null;
    const own = override ? layered(resolving, dose, override, { layer: 'side' }) : dose;
    doses.set(lane, onFloor(own, resolving.practice.timing));
  }
  return doses;
}

function layered(resolving: Resolving, beneath: Dose, layer: DoseLayer, origin: Origin): Dose {
  const problem = mergeProblem(beneath, layer, origin.layer === 'side');
  if (problem) {
    const place = layer.keyPlaces.get(problem.key) ?? layer.place;
    tell(resolving, problem.check, place, mergeProblemSentence(problem));
    // With the reps taken as meant, a later entry is not told of for the same cause.
    return problem.check === 'dose-reps-over-time' ? mergeLayer(beneath, layer, origin) : beneath;
  }
  return mergeLayer(beneath, layer, origin);
}

function lanesOf({ plan }: Resolving, written: Written, level: Level): readonly Lane[] {
  if (level.sides !== 'each') return [level.sides];
  const only = written.only === null ? null : sideMeant(written.only, plan.affected);
  return only ? [only] : ['left', 'right'];
}

const SIDE_KEYS = ['sides', 'only', 'order'] as const;

/** `sides`, `only` and `order` make sense only where the level in force is done one side at a time. */
function tellSidesNotEach(
  resolving: Resolving,
  written: Written,
  level: Level,
  week: number,
): void {
  if (level.sides === 'each') return;
  const inForce = {
    sides: level === written.level ? written.overrides : null,
    only: written.only,
    order: written.order,
  };
  for (const key of SIDE_KEYS) {
    if (!inForce[key]) continue;
    const place = written.keyPlaces.get(key) ?? resolving.item.place;
    const when = week === 1 ? '' : ` in week ${week}`;
    const { id, levels } = resolving.item.exercise;
    const fitting = levels.find(({ sides }) => sides === 'each');
    // A level that was changed is named first: with "only" taken out, both sides would work.
    const ways = [
      `make the level "sides: each" in the exercise`,
      ...(fitting ? [`use a level done so, such as "level: ${fitting.id}"`] : []),
      `take "${key}" out, so that both sides do the same`,
    ];
    const message = `"${key}" is for an exercise done one side at a time, but level "${level.id}" of "${id}"${when} has "sides: ${level.sides}"; ${ways.join(', or ')}.`;
    tell(resolving, 'sides-not-each', place, message, [
      { message: 'This level is meant.', place: level.place },
    ]);
  }
}

/** A list has a number for each set, so that a further set would have none. */
function tellSetsOverList(resolving: Resolving, { climb, state }: Growth): void {
  const dial = climb.find(({ key }) => key === 'sets');
  if (!dial || ![...state.doses.values()].some(({ values }) => values.reps?.kind === 'list'))
    return;
  const message =
    '"sets" climbs, but "reps" is a list with a number for each set; write one for all, such as "reps: 8-12", or take the dial out.';
  tell(resolving, 'dose-sets-and-list', dial.place, message);
}

function tell(
  resolving: Resolving,
  check: 'dial-idle' | 'sides-not-each' | 'dose-reps-over-time' | 'dose-sets-and-list',
  place: Place,
  message: string,
  related: Finding['related'] = [],
): void {
  // The first week tells of a cause; later weeks would only say it again.
  const cause = `${check} ${place.source.file} ${place.start}`;
  if (resolving.told.has(cause)) return;
  resolving.told.add(cause);
  resolving.findings.push(
    finding({ check, severity: 'error', message, place, related, scope: resolving.scope }),
  );
}
