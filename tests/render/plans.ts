// A plan with its numbers, made by hand: each item says what it is in each week. The sums are not
// those of the compute floor; only doses, levels and lengths matter to the words.
import type {
  ItemWeek,
  PartWeek,
  PlanNumbers,
  SessionWeek,
  Volume,
  WeekNumbers,
} from '../../src/compute/numbers.ts';
import { startOf } from '../../src/finding/place.ts';
import type { Exercise, Level } from '../../src/model/exercise.ts';
import type { Item, Part, Plan, Schedule, Session } from '../../src/model/plan.ts';
import type { Practice, VocabularyKind } from '../../src/model/practice.ts';
import { exactly, type Interval, ZERO } from '../../src/units/interval.ts';
import { type ItemWeekSettings, itemOf, itemWeekOf } from './records.ts';

const place = startOf({ file: 'plans/test.yaml', text: '' });
const NONE: Volume = { sets: ZERO, reps: ZERO, holdMs: ZERO, workMs: ZERO, volumeKg: ZERO };

export interface MadeItem {
  readonly exercise: Exercise;
  readonly settings?: Partial<Item>;
  /** What it is in a week; null where it is not there. `level` is a level's id. */
  readonly at: (
    week: number,
  ) => (Omit<ItemWeekSettings, 'level' | 'item'> & { level?: string }) | null;
}

export interface MadePart {
  readonly name?: string;
  readonly rounds?: (week: number) => number;
  readonly restMs?: Interval;
  readonly items: readonly MadeItem[];
}

export interface MadeSession {
  readonly id: string;
  readonly name?: string;
  readonly schedule: (week: number) => Schedule;
  readonly timesADay?: Interval;
  readonly isThere?: (week: number) => boolean;
  readonly ms?: Interval;
  readonly parts: readonly MadePart[];
}

export interface MadePlan {
  readonly sessions: readonly MadeSession[];
  readonly easy?: readonly number[];
  readonly plan?: Partial<Plan>;
}

export function days(
  ...names: ('mon' | 'tue' | 'wed' | 'thu' | 'fri' | 'sat' | 'sun')[]
): Schedule {
  return { kind: 'days', days: names };
}

function itemsOf(session: MadeSession): ReadonlyMap<MadeItem, Item> {
  const items = session.parts.flatMap((part) => part.items);
  return new Map(items.map((made) => [made, itemOf(made.exercise, made.settings)] as const));
}

export function planNumbersOf({ sessions, easy = [], plan: settings = {} }: MadePlan): PlanNumbers {
  const records = sessions.map((made) => recordsOf(made));
  const plan: Plan = {
    id: 'T-1',
    source: place.source,
    place,
    person: 'T-1',
    title: 'Steadier on your feet',
    handoutLanguage: null,
    by: 'rk',
    visits: [{ date: '2026-11-23', found: null, why: null }],
    starts: '2026-11-25',
    nextVisit: '2027-01-06',
    weeks: 6,
    affected: 'none',
    print: 'normal',
    goals: [],
    profile: { ageBand: null, training: null },
    limits: { timeMs: null, kit: null, positionsToAvoid: [], concerns: [] },
    precautions: [],
    pain: null,
    stopIfAlso: [],
    easyWeeks: null,
    shortDayMs: null,
    betweenItemsMs: null,
    oneRepMax: new Map(),
    report: new Map(),
    closed: null,
    accepts: [],
    printed: [],
    valuePlaces: new Map(),
    ...settings,
    sessions: records.map(({ session }) => session),
  };
  const weeks = Array.from({ length: plan.weeks }, (_, at): WeekNumbers => {
    const week = at + 1;
    return {
      week,
      isEasy: easy.includes(week),
      ms: ZERO,
      left: NONE,
      right: NONE,
      middle: NONE,
      muscles: new Map(),
      change: { all: null, strength: null },
      sessions: records.flatMap(({ weekOf }) => weekOf(week) ?? []),
    };
  });
  return { plan, weeks };
}

function recordsOf(made: MadeSession) {
  const items = itemsOf(made);
  const parts = made.parts.map(
    (part): Part => ({
      kind: 'strength',
      name: part.name,
      rounds: undefined,
      restBetweenRoundsMs: undefined,
      betweenItemsMs: undefined,
      place,
      windows: null,
      fromWeek: [],
      accepts: [],
      items: part.items.map((item) => items.get(item) as Item),
    }),
  );
  const session: Session = {
    id: made.id,
    name: made.name,
    schedule: made.schedule(1),
    timesADay: made.timesADay,
    betweenItemsMs: undefined,
    place,
    parts,
    windows: null,
    fromWeek: [],
    accepts: [],
  };
  const weekOf = (week: number): SessionWeek | null => {
    if (made.isThere && !made.isThere(week)) return null;
    const present = made.parts.flatMap(
      (part, at) => partWeek(part, parts[at] as Part, items, week) ?? [],
    );
    if (present.length === 0) return null;
    const schedule = made.schedule(week);
    const perWeek =
      schedule.kind === 'days'
        ? exactly(schedule.days.length)
        : schedule.kind === 'days-a-week'
          ? schedule.count
          : exactly(0);
    return {
      session,
      name: made.name ?? null,
      schedule,
      timesADay: made.timesADay ?? exactly(1),
      perWeek,
      betweenItemsMs: ZERO,
      parts: present,
      ms: made.ms ?? [900_000, 1_000_000],
    };
  };
  return { session, weekOf };
}

function partWeek(
  made: MadePart,
  part: Part,
  items: ReadonlyMap<MadeItem, Item>,
  week: number,
): PartWeek | null {
  const present = made.items.flatMap((item): ItemWeek[] => {
    const now = item.at(week);
    if (!now) return [];
    const record = items.get(item) as Item;
    const level =
      now.level === undefined
        ? record.level
        : record.exercise.levels.find(({ id }) => id === now.level);
    return [itemWeekOf({ ...now, item: record, level: level as Level })];
  });
  if (present.length === 0) return null;
  return {
    part,
    name: made.name ?? null,
    rounds: made.rounds?.(week) ?? null,
    restBetweenRoundsMs: made.restMs ?? exactly(60_000),
    betweenItemsMs: ZERO,
    items: present,
    ms: ZERO,
  };
}

export function practiceOf(settings: Partial<Practice> = {}): Practice {
  const none = new Map<string, string>();
  const words: Record<VocabularyKind, ReadonlyMap<string, string>> = {
    positions: none,
    kit: none,
    muscles: none,
    demands: none,
    concerns: none,
  };
  return {
    source: place.source,
    name: 'Saltmarsh Movement Clinic',
    contact: 'Front desk, 555 0142',
    emergency: '999',
    emergencyIf: ['You have chest pain, or trouble breathing'],
    getInTouch: ['The pain keeps you awake'],
    stopIf: ['The pain is sharp, or spreads'],
    language: 'en',
    inLanguage: new Map(),
    paper: 'a4',
    timing: {
      move: exactly(3000),
      pause: exactly(2000),
      rest: exactly(30000),
      changeSides: exactly(5000),
      betweenItems: exactly(30000),
      breath: 5000,
    },
    pain: { carryOn: [0, 3], easeOff: [4, 5], stop: [6, 10] },
    settlesBy: 'next-morning',
    bands: [],
    practitioners: new Map([['rk', 'R. Kestrel, physiotherapist']]),
    vocabulary: {
      positions: new Set(),
      kit: new Set(),
      muscles: new Set(),
      demands: new Set(),
      concerns: new Map(),
      words,
    },
    plainWords: [],
    printed: [],
    checks: new Map(),
    ...settings,
  };
}
