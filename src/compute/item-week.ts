// One item in one week with its numbers: the doses eased where the week is easy, what each side
// does, and how long it takes.

import { type Finding, finding } from '../finding/finding.ts';
import type { Dose, DoseLayer } from '../model/dose.ts';
import type { Exercise } from '../model/exercise.ts';
import { hasShape } from '../model/merge.ts';
import type { Item, Plan } from '../model/plan.ts';
import type { Practice } from '../model/practice.ts';
import { type Interval, scaled } from '../units/interval.ts';
import { loadKg } from '../units/load.ts';
import { onFloor, repetitionMs, withCounts } from './completed-dose.ts';
import { easedDose } from './easy-week.ts';
import { levelDose, type ResolvedWeek } from './item-weeks.ts';
import type { ItemWeek, SideWork } from './numbers.ts';
import { sideVolume } from './volume.ts';
import { type ItemTiming, itemMs, roundMs } from './work.ts';

export interface WeekOfItem {
  readonly plan: Plan;
  readonly practice: Practice;
  readonly item: Item;
  readonly resolved: ResolvedWeek;
  readonly week: number;
  readonly isEasy: boolean;
  /** Eased already; null outside a circuit. */
  readonly rounds: number | null;
  readonly isWarmUp: boolean;
}

export function itemWeek(week: WeekOfItem): ItemWeek {
  const { plan, practice, item, resolved, rounds } = week;
  const { level, written } = resolved;
  const doses = new Map(
    [...resolved.doses].map(([lane, dose]) => [lane, withCounts(eased(dose, week))] as const),
  );
  const work = (lane: 'left' | 'right' | 'both' | 'middle'): SideWork | null => {
    const dose = doses.get(lane);
    if (!dose) return null;
    const setting = {
      purpose: level.purposes[0] ?? 'strength',
      rounds,
      breathMs: practice.timing.breath,
      oneRepMaxKg: oneRepMaxKg(plan, item),
      isBoth: lane === 'both',
    } as const;
    return { dose, volume: sideVolume(dose.values, setting) };
  };
  const both = work('both');
  const order = (level.sides === 'each' ? (written.order ?? level.order) : null) ?? 'each-set';
  const timing: ItemTiming = {
    order,
    changeSidesMs: practice.timing.changeSides,
    breathMs: practice.timing.breath,
  };
  const values = [...doses.values()].map((dose) => dose.values);
  return {
    item,
    level,
    sides: level.sides,
    order,
    left: both ?? work('left'),
    right: both ?? work('right'),
    middle: work('middle'),
    overrides: written.overrides,
    note: written.note,
    priority: written.priority ?? (week.isWarmUp ? 'must' : 'should'),
    moveOnWhen: written.moveOnWhen ?? level.moveOnWhen,
    advance: written.advance,
    ms: rounds === null ? itemMs(values, timing) : scaled(roundMs(values, timing), rounds),
  };
}

function eased(dose: Dose, { plan, practice, isEasy, rounds }: WeekOfItem): Dose {
  if (!isEasy || !plan.easyWeeks) return dose;
  return easedDose(dose, plan.easyWeeks, practice.timing.breath, rounds !== null);
}

function oneRepMaxKg(plan: Plan, item: Item): Interval | null {
  const load = plan.oneRepMax.get(item.exercise.id);
  return load ? loadKg(load, null) : null;
}

/** What is wrong with an item in a week that only its merged dose shows. */
export function itemWeekFindings(week: WeekOfItem, scope: readonly object[]): readonly Finding[] {
  const { item, resolved, plan } = week;
  const found: Finding[] = [];
  const error = (
    check: 'dose-takes-no-time' | 'one-rep-max-missing' | 'circuit-sets',
    message: string,
    place = item.place,
  ) =>
    found.push(
      finding({ check, severity: 'error', message, place, scope, related: levelOf(resolved) }),
    );
  const doses = [...resolved.doses.values()];
  const noTime = noTimeSentence(
    doses,
    week.practice.timing.breath,
    `"${item.exercise.id}"${week.week === 1 ? '' : ` in week ${week.week}`}`,
  );
  if (noTime !== null) error('dose-takes-no-time', noTime);
  const isShare = doses.some(({ values }) => values.load?.kind === 'percent-1rm');
  if (isShare && !plan.oneRepMax.has(item.exercise.id)) {
    error(
      'one-rep-max-missing',
      `The load of "${item.exercise.id}" is a share of the one-repetition maximum, which the plan does not give; write "one_rep_max: {${item.exercise.id}: 40 kg}".`,
    );
  }
  if (week.rounds !== null) {
    for (const { message, place } of circuitSets(week)) error('circuit-sets', message, place);
  }
  return found;
}

/** That a repetition takes no time, or none at the low end of its range; null where each takes some. */
function noTimeSentence(doses: readonly Dose[], breathMs: number, of: string): string | null {
  const worst = doses.map(({ values }) => repetitionMs(values, breathMs)).find(([low]) => low <= 0);
  if (!worst) return null;
  const end = worst[1] > 0 ? ' at the low end of its range' : '';
  return `A repetition of ${of} takes no time${end}; give it a "move", a "hold" or a "tempo" above 0 s.`;
}

/** The levels of an exercise whose own dose takes no time, whether or not a plan uses them. */
export function levelsWithoutTime(exercise: Exercise, practice: Practice): readonly Finding[] {
  return exercise.levels.flatMap((level) => {
    const dose = levelDose(level);
    if (!hasShape(dose)) return [];
    const message = noTimeSentence(
      [onFloor(dose, practice.timing)],
      practice.timing.breath,
      `level "${level.id}"`,
    );
    return message === null
      ? []
      : [finding({ check: 'dose-takes-no-time', severity: 'error', message, place: level.place })];
  });
}

function levelOf({ level }: ResolvedWeek) {
  return [{ message: `Level "${level.id}".`, place: level.place }];
}

function circuitSets({ resolved, item }: WeekOfItem) {
  const { written } = resolved;
  const layers: readonly (DoseLayer | null)[] = [
    ...written.layers.map(({ layer }) => layer),
    written.overrides?.left ?? null,
    written.overrides?.right ?? null,
  ];
  const isList = [...resolved.doses.values()].some(({ values }) => values.reps?.kind === 'list');
  const places = layers.flatMap((layer) => {
    const place = layer?.keyPlaces.get('sets');
    return place ? [place] : [];
  });
  const dial = written.climb.find(({ key }) => key === 'sets');
  if (dial) places.push(dial.place);
  const told = places.map((place) => ({
    place,
    message:
      '"sets" has no place in a circuit, where "rounds" says how often each exercise comes; take one of the two out.',
  }));
  if (!isList) return told;
  const listPlace = layers.map(
    (layer) => layer?.values.reps?.kind === 'list' && layer.keyPlaces.get('reps'),
  );
  const place =
    listPlace.find((one) => one !== undefined && one !== false && one !== null) || item.place;
  return [
    ...told,
    {
      place,
      message:
        '"reps" is a list with a number for each set, which a circuit does not have; write one number, such as "reps: 8-12".',
    },
  ];
}
