// Small records for the tests of the checks: each function fills in what a test does not care about.
// The numbers come from the compute floor, so a test writes a plan and not its sums.

import type { PlanUnderCheck } from '../../src/check/plan-check.ts';
import { checkPlan, settingOf } from '../../src/check/plan-checks.ts';
import { planNumbers } from '../../src/compute/plan-numbers.ts';
import type { CheckName } from '../../src/finding/checks.ts';
import type { Finding } from '../../src/finding/finding.ts';
import type { Place, SourceText } from '../../src/finding/place.ts';
import type { Dial, DoseKey, DoseLayer, DoseValues } from '../../src/model/dose.ts';
import type { Exercise, Level } from '../../src/model/exercise.ts';
import type {
  Accept,
  EasyWeeks,
  Item,
  ItemEntry,
  Part,
  PartEntry,
  PartKind,
  Plan,
  Session,
  SessionEntry,
  SideOverrides,
} from '../../src/model/plan.ts';
import type { CheckSetting, Practice } from '../../src/model/practice.ts';
import { type Duration, milliseconds } from '../../src/units/duration.ts';
import { exactly, type Interval } from '../../src/units/interval.ts';
import type { Load } from '../../src/units/load.ts';

export const PLAN_SOURCE: SourceText = { file: 'plans/M-0412.yaml', text: '.'.repeat(10_000) };
const LIBRARY_SOURCE: SourceText = { file: 'exercises/any.yaml', text: '.'.repeat(10_000) };

let nextStart = 0;

/** A place of its own, so that a finding's place tells which record it is at. */
export function placeIn(source: SourceText): Place {
  nextStart = (nextStart + 1) % 9_000;
  return { source, start: nextStart, end: nextStart + 1 };
}

export function seconds(low: number, high = low): Duration {
  return milliseconds([low * 1000, high * 1000]);
}

export function kg(low: number, high = low, pieces = 1): Load {
  return { kind: 'mass', unit: 'kg', pieces, amount: [low * 1000, high * 1000] };
}

function layer(values: DoseValues): DoseLayer {
  return { values, unset: [], place: placeIn(PLAN_SOURCE), keyPlaces: new Map<DoseKey, Place>() };
}

/** `sets` of `reps`, each plain or a range. */
export function dose(
  sets: number | Interval,
  reps: number | Interval,
  more: DoseValues = {},
): DoseValues {
  const range = (n: number | Interval) => (typeof n === 'number' ? exactly(n) : n);
  return { sets: range(sets), reps: { kind: 'same', count: range(reps) }, ...more };
}

export type LevelParts = Partial<Level> & { readonly dose?: DoseValues };

export function exercise(id: string, ...levels: readonly LevelParts[]): Exercise {
  return {
    id,
    name: id,
    source: LIBRARY_SOURCE,
    place: placeIn(LIBRARY_SOURCE),
    levels: (levels.length === 0 ? [{}] : levels).map((parts, index) => level(id, index, parts)),
    printed: [],
  };
}

function level(exerciseName: string, index: number, { dose: own, ...parts }: LevelParts): Level {
  return {
    id: `level-${index + 1}`,
    name: null,
    place: placeIn(LIBRARY_SOURCE),
    exerciseName,
    purposes: ['strength'],
    position: 'standing',
    sides: 'both',
    limb: null,
    limbPlace: null,
    order: null,
    tempoWords: 'down-up',
    muscles: { prime: ['calf'], assist: [] },
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
    levelDose: layer(own ?? dose(2, 10)),
    bounds: null,
    moveOnWhen: null,
    translations: new Map(),
    ...parts,
  };
}

export type ItemParts = Partial<Omit<Item, 'dose'>> & { readonly dose?: DoseValues };
export type EntryParts = Partial<Omit<ItemEntry, 'dose'>> & { readonly dose?: DoseValues };

const NOTHING_NAMED = {
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
  keyPlaces: new Map<string, Place>(),
};

export function item(of: Exercise, { dose: own, ...parts }: ItemParts = {}): Item {
  const [first] = of.levels;
  if (!first) throw new Error('an exercise has a level');
  return {
    ...NOTHING_NAMED,
    id: of.id,
    exercise: of,
    level: first,
    place: placeIn(PLAN_SOURCE),
    extent: placeIn(PLAN_SOURCE),
    windows: null,
    startWhen: null,
    fromWeek: [],
    accepts: [],
    ...parts,
    dose: own ? layer(own) : undefined,
  };
}

export function entry(week: number, { dose: own, ...parts }: EntryParts = {}): ItemEntry {
  return {
    ...NOTHING_NAMED,
    week,
    level: undefined,
    place: placeIn(PLAN_SOURCE),
    ...parts,
    dose: own ? layer(own) : undefined,
  };
}

export function override(left: DoseValues | null, right: DoseValues | null): SideOverrides {
  return {
    left: left && layer(left),
    right: right && layer(right),
    why: 'One side is catching up',
    place: placeIn(PLAN_SOURCE),
  };
}

export function part(kind: PartKind, items: readonly Item[], parts: Partial<Part> = {}): Part {
  return {
    kind,
    items,
    name: undefined,
    rounds: undefined,
    restBetweenRoundsMs: undefined,
    betweenItemsMs: undefined,
    place: placeIn(PLAN_SOURCE),
    windows: null,
    fromWeek: [],
    accepts: [],
    ...parts,
  };
}

export function partEntry(week: number, rounds: number): PartEntry {
  return {
    week,
    rounds,
    name: undefined,
    restBetweenRoundsMs: undefined,
    betweenItemsMs: undefined,
    place: placeIn(PLAN_SOURCE),
  };
}

/** Once a week unless a test says otherwise, so that weekly sets are a session's. */
export function session(parts: readonly Part[], more: Partial<Session> = {}): Session {
  return {
    id: 'daily',
    parts,
    name: undefined,
    schedule: { kind: 'days', days: ['mon'] },
    timesADay: undefined,
    betweenItemsMs: undefined,
    place: placeIn(PLAN_SOURCE),
    windows: null,
    fromWeek: [],
    accepts: [],
    ...more,
  };
}

export function sessionEntry(week: number, more: Partial<SessionEntry>): SessionEntry {
  return {
    week,
    name: undefined,
    schedule: undefined,
    timesADay: undefined,
    betweenItemsMs: undefined,
    place: placeIn(PLAN_SOURCE),
    ...more,
  };
}

export function easyWeeks(weeks: readonly number[], shares: Partial<EasyWeeks> = {}): EasyWeeks {
  return {
    weeks,
    sets: null,
    reps: null,
    hold: null,
    time: null,
    place: placeIn(PLAN_SOURCE),
    ...shares,
  };
}

export function accept(check: CheckName, until: string | null = null): Accept {
  return { check, why: 'Talked over', until, place: placeIn(PLAN_SOURCE) };
}

export function repsDial(by: number, to: number): Dial {
  return { key: 'reps', kind: 'number', by, to, restart: [], place: placeIn(PLAN_SOURCE) };
}

export type PlanParts = Partial<Omit<Plan, 'limits'>> & {
  readonly limits?: Partial<Plan['limits']>;
};

export function plan(sessions: readonly Session[], { limits, ...parts }: PlanParts = {}): Plan {
  return {
    id: 'M-0412',
    source: PLAN_SOURCE,
    place: { source: PLAN_SOURCE, start: 0, end: 0 },
    person: 'M-0412',
    title: 'Ankle',
    handoutLanguage: null,
    by: null,
    visits: [{ date: '2026-10-05', found: null, why: null }],
    starts: '2026-10-05',
    nextVisit: null,
    weeks: 1,
    affected: 'none',
    print: 'normal',
    goals: [],
    profile: { ageBand: null, training: null },
    limits: { timeMs: null, kit: null, positionsToAvoid: [], concerns: [], ...limits },
    precautions: [],
    pain: null,
    stopIfAlso: [],
    easyWeeks: null,
    shortDayMs: null,
    betweenItemsMs: null,
    oneRepMax: new Map(),
    sessions,
    report: new Map(),
    closed: null,
    accepts: [],
    printed: [],
    valuePlaces: new Map(),
    ...parts,
  };
}

export function practice(parts: Partial<Practice> = {}): Practice {
  const source: SourceText = { file: 'practice.yaml', text: '' };
  return {
    source,
    name: 'Saltmarsh Movement Clinic',
    contact: 'Front desk',
    emergency: '999',
    emergencyIf: ['You have chest pain'],
    getInTouch: [],
    stopIf: ['The pain spreads'],
    language: 'en',
    inLanguage: new Map(),
    paper: 'a4',
    timing: {
      move: exactly(3000),
      pause: exactly(2000),
      rest: exactly(30_000),
      changeSides: exactly(5000),
      betweenItems: exactly(30_000),
      breath: 5000,
    },
    pain: { carryOn: [0, 3], easeOff: [4, 5], stop: [6, 10] },
    settlesBy: 'next-morning',
    bands: ['light band', 'medium band', 'heavy band'],
    practitioners: new Map(),
    vocabulary: {
      positions: new Set(),
      kit: new Set(),
      muscles: new Set(),
      demands: new Set(),
      concerns: new Map([['new-lens', { limits: ['head-down'], positions: ['prone'] }]]),
      words: {
        positions: new Map(),
        kit: new Map(),
        muscles: new Map(),
        demands: new Map(),
        concerns: new Map(),
      },
    },
    plainWords: [],
    printed: [],
    checks: new Map(),
    ...parts,
  };
}

export function checkSetting(parts: {
  severity?: CheckSetting['severity'];
  numbers?: Record<string, number>;
}): CheckSetting {
  return {
    severity: parts.severity ?? null,
    numbers: new Map(Object.entries(parts.numbers ?? {})),
    writtenAs: new Map(),
    place: { source: { file: 'practice.yaml', text: '' }, start: 0, end: 0 },
  };
}

/** What one check is given. */
export function subject(of: Plan, by: Practice = practice()): PlanUnderCheck {
  return { plan: of, practice: by, numbers: planNumbers(of, by).value, setting: settingOf(by) };
}

/** Everything that all checks find in a plan. */
export function checked(of: Plan, by: Practice = practice()): readonly Finding[] {
  return checkPlan(by, planNumbers(of, by).value);
}

export function messages(findings: readonly Finding[]): readonly string[] {
  return findings.map((one) => one.message);
}
