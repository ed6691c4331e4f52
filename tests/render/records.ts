// Small builders of the records that the worded half of a sheet reads: an item in one week, a plan
// of some weeks. Doses are written as in a practice's files, and read by the same parsers.
import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import type { ItemWeek, SideWork, Volume } from '../../src/compute/numbers.ts';
import { startOf } from '../../src/finding/place.ts';
import type { Dose, DoseKey, DoseValues, MoveOnWhen, Origin, Reps } from '../../src/model/dose.ts';
import type { Exercise, Level, Limb, Purpose } from '../../src/model/exercise.ts';
import type { Item } from '../../src/model/plan.ts';
import type { Practice } from '../../src/model/practice.ts';
import { type Words, wordsFrom } from '../../src/render/words/words.ts';
import { parseDuration } from '../../src/units/duration.ts';
import { exactly, type Interval, ZERO } from '../../src/units/interval.ts';
import { parseLoad } from '../../src/units/load.ts';
import { parseAngleRange, parseScale, parseTempo } from '../../src/units/measure.ts';
import { parseCounts } from '../../src/units/number.ts';
import type { Reading } from '../../src/units/reading.ts';
import type { Order, Sides } from '../../src/units/side.ts';

const BANDS = ['light band', 'medium band', 'heavy band'];
const place = startOf({ file: 'plans/test.yaml', text: '' });

export const englishPack: unknown = parse(
  readFileSync(new URL('../../templates/words/en.yaml', import.meta.url), 'utf8'),
);

export function english(own?: Practice['vocabulary']['words']): Words {
  const reading = wordsFrom(englishPack, {
    language: 'en',
    shipped: englishPack,
    ...(own ? { own } : {}),
  });
  if (!reading.ok) throw new Error(reading.problems.map(({ message }) => message).join('\n'));
  return reading.words;
}

function got<T>(reading: Reading<T>): T {
  if (!reading.ok) throw new Error(`a test's dose: ${reading.misread.says}`);
  return reading.value;
}

/** A dose as a file has it: `{sets: 2, reps: 8-12, hold: 2 s}`. */
export type Written = Readonly<Record<string, string | number | readonly (string | number)[]>>;

function repsFrom(value: Written[string]): Reps {
  return Array.isArray(value)
    ? { kind: 'list', counts: value.map((one) => got(parseCounts(String(one)))) }
    : { kind: 'same', count: got(parseCounts(String(value))) };
}

function valueFrom(key: string, value: Written[string]): unknown {
  const text = String(value);
  if (key === 'sets') return got(parseCounts(text));
  if (key === 'reps') return repsFrom(value);
  if (key === 'tempo') return got(parseTempo(text));
  if (key === 'load') return got(parseLoad(text, BANDS));
  if (key === 'effort') return got(parseScale(text));
  if (key === 'range') return got(parseAngleRange(text));
  if (key === 'until') return 'tired';
  return got(parseDuration(text));
}

/** A finished dose: pause, rest and move come from the practice's timing where nothing is written. */
function doseFrom(written: Written): Dose {
  const values: Record<string, unknown> = {
    sets: exactly(1),
    reps: { kind: 'same', count: exactly(1) },
    pause: got(parseDuration('2 s')),
    rest: got(parseDuration('30 s')),
  };
  const origins: Partial<Record<DoseKey, Origin>> = {
    pause: { layer: 'timing' },
    rest: { layer: 'timing' },
  };
  for (const [key, value] of Object.entries(written)) {
    values[key] = valueFrom(key, value);
    origins[key as DoseKey] = { layer: 'exercise' };
  }
  const reps = values.reps as Reps;
  if (reps.kind === 'list') values.sets = exactly(reps.counts.length);
  return { values: values as DoseValues, origins };
}

/** Counts only, enough to tell more from less. */
function volumeOf({ values }: Dose): Volume {
  const sets = values.sets ?? exactly(1);
  const reps = values.reps?.kind === 'same' ? values.reps.count : exactly(10);
  const total: Interval = [sets[0] * reps[0], sets[1] * reps[1]];
  const each = values.time?.range ?? values.hold?.range ?? ZERO;
  const held: Interval = [total[0] * each[0], total[1] * each[1]];
  return {
    sets,
    reps: total,
    holdMs: held,
    workMs: values.time || values.hold ? held : total,
    volumeKg: ZERO,
  };
}

function workOf(written: Written): SideWork {
  const dose = doseFrom(written);
  return { dose, volume: volumeOf(dose) };
}

export interface ExerciseSettings {
  readonly id?: string;
  readonly name?: string;
  readonly levels?: readonly Partial<Level>[];
}

function levelOf(exercise: string, settings: Partial<Level> = {}): Level {
  return {
    id: 'first',
    name: null,
    place,
    exerciseName: exercise,
    purposes: ['strength'],
    position: 'standing',
    sides: 'each',
    limb: 'leg',
    limbPlace: null,
    order: null,
    tempoWords: 'down-up',
    muscles: { prime: [], assist: [] },
    kit: [],
    demands: [],
    tags: [],
    setup: [],
    steps: ['Do it'],
    feel: null,
    avoid: [],
    easier: null,
    harder: null,
    picture: null,
    figure: null,
    link: null,
    exerciseDose: null,
    levelDose: null,
    bounds: null,
    moveOnWhen: null,
    translations: new Map(),
    ...settings,
  };
}

export function exerciseOf({
  id = 'heel-raise',
  name = 'Heel raise',
  levels = [{}],
}: ExerciseSettings): Exercise {
  return {
    id,
    name,
    place,
    source: place.source,
    levels: levels.map((level) => levelOf(name, level)),
    printed: [],
  };
}

export function itemOf(exercise: Exercise, settings: Partial<Item> = {}): Item {
  return {
    id: exercise.id,
    exercise,
    level: exercise.levels[0] as Level,
    place,
    extent: place,
    windows: null,
    startWhen: null,
    fromWeek: [],
    accepts: [],
    dose: undefined,
    sides: undefined,
    only: undefined,
    order: undefined,
    climb: undefined,
    climbEvery: undefined,
    note: undefined,
    priority: undefined,
    moveOnWhen: undefined,
    advance: undefined,
    keyPlaces: new Map(),
    ...settings,
  };
}

export interface ItemWeekSettings {
  readonly dose: Written;
  readonly left?: Written;
  readonly right?: Written;
  readonly only?: 'left' | 'right';
  readonly sides?: Sides;
  readonly order?: Order;
  readonly limb?: Limb | null;
  readonly purpose?: Purpose;
  readonly tempoWords?: 'down-up' | 'up-down';
  readonly item?: Item;
  readonly level?: Level;
  readonly note?: string | null;
  readonly moveOnWhen?: MoveOnWhen | null;
  readonly advance?: 'when-ready' | 'by-week';
  readonly ms?: Interval;
}

/** An item as it is in one week; `left` and `right` override the dose for their side. */
export function itemWeekOf(settings: ItemWeekSettings): ItemWeek {
  const { dose, only, order = 'each-set' } = settings;
  const item = settings.item ?? itemOf(exerciseOf({}));
  const given = settings.level ?? item.level;
  const level: Level = {
    ...given,
    ...(settings.sides ? { sides: settings.sides } : {}),
    ...(settings.limb !== undefined ? { limb: settings.limb } : {}),
    ...(settings.purpose ? { purposes: [settings.purpose] } : {}),
    ...(settings.tempoWords ? { tempoWords: settings.tempoWords } : {}),
  };
  const isMiddle = level.sides === 'middle';
  return {
    item,
    level,
    sides: level.sides,
    order,
    left: isMiddle || only === 'right' ? null : workOf({ ...dose, ...settings.left }),
    right: isMiddle || only === 'left' ? null : workOf({ ...dose, ...settings.right }),
    middle: isMiddle ? workOf(dose) : null,
    overrides: null,
    note: settings.note ?? null,
    priority: 'should',
    moveOnWhen: settings.moveOnWhen ?? null,
    advance: settings.advance ?? 'when-ready',
    ms: settings.ms ?? [60_000, 90_000],
  };
}
