// One person's programme for one complaint, as written: sessions of parts of items, each with what
// changes from a week on. Exercises, levels and kit are already looked up.

import type { CheckName } from '../finding/checks.ts';
import type { Place, SourceText } from '../finding/place.ts';
import type { Day, Weekday } from '../units/day.ts';
import type { Interval } from '../units/interval.ts';
import type { Load } from '../units/load.ts';
import type { Affected, Only, Order } from '../units/side.ts';
import type { Dial, DoseLayer, MoveOnWhen } from './dose.ts';
import type { Exercise, Level } from './exercise.ts';
import type { PainRanges } from './practice.ts';
import type { PrintedText } from './printed-text.ts';

/** Weeks first to last, both included. */
export type Window = readonly [first: number, last: number];

export interface Accept {
  readonly check: CheckName;
  readonly why: string;
  readonly until: Day | null;
  readonly place: Place;
}

export type Schedule =
  | { readonly kind: 'days'; readonly days: readonly Weekday[] }
  | { readonly kind: 'days-a-week'; readonly count: Interval }
  | { readonly kind: 'every'; readonly days: number }
  | { readonly kind: 'as-needed' };

export interface SideOverrides {
  readonly left: DoseLayer | null;
  readonly right: DoseLayer | null;
  readonly why: string;
  readonly place: Place;
}

export type Priority = 'must' | 'should' | 'could';
export type Advance = 'when-ready' | 'by-week';

/** Keys that an item and its `from_week` entries share; undefined is "not named here". */
export interface ItemSettings {
  readonly place: Place;
  readonly level: Level | undefined;
  readonly dose: DoseLayer | undefined;
  readonly sides: SideOverrides | undefined;
  readonly only: Only | undefined;
  readonly order: Order | undefined;
  readonly climb: readonly Dial[] | undefined;
  readonly climbEvery: number | undefined;
  readonly note: string | undefined;
  readonly priority: Priority | undefined;
  readonly moveOnWhen: MoveOnWhen | undefined;
  readonly advance: Advance | undefined;
  /** Where each key stands, for findings about it. */
  readonly keyPlaces: ReadonlyMap<string, Place>;
}

export interface ItemEntry extends ItemSettings {
  readonly week: number;
}

export interface Item extends ItemSettings {
  readonly id: string;
  readonly exercise: Exercise;
  /** The whole item in the file; `place` is where its exercise is named. */
  readonly extent: Place;
  /** The level that the item is written for: the one named, or the first. */
  readonly level: Level;
  readonly windows: readonly Window[] | null;
  readonly startWhen: string | null;
  readonly fromWeek: readonly ItemEntry[];
  readonly accepts: readonly Accept[];
}

export interface PartSettings {
  readonly name: string | undefined;
  readonly rounds: number | undefined;
  readonly restBetweenRoundsMs: Interval | undefined;
  readonly betweenItemsMs: Interval | undefined;
  readonly place: Place;
}

export interface PartEntry extends PartSettings {
  readonly week: number;
}

export const PART_KINDS = [
  'warm-up',
  'mobility',
  'strength',
  'balance',
  'cardio',
  'practice',
  'stretch',
  'relaxation',
] as const;
export type PartKind = (typeof PART_KINDS)[number];

export interface Part extends PartSettings {
  readonly kind: PartKind;
  readonly items: readonly Item[];
  readonly windows: readonly Window[] | null;
  readonly fromWeek: readonly PartEntry[];
  readonly accepts: readonly Accept[];
}

export interface SessionSettings {
  readonly name: string | undefined;
  readonly schedule: Schedule | undefined;
  readonly timesADay: Interval | undefined;
  readonly betweenItemsMs: Interval | undefined;
  readonly place: Place;
}

export interface SessionEntry extends SessionSettings {
  readonly week: number;
}

export interface Session extends SessionSettings {
  readonly id: string;
  readonly schedule: Schedule;
  readonly parts: readonly Part[];
  readonly windows: readonly Window[] | null;
  readonly fromWeek: readonly SessionEntry[];
  readonly accepts: readonly Accept[];
}

export interface Visit {
  readonly date: Day;
  readonly found: string | null;
  readonly why: string | null;
}

/** Percentages in thousandths of a percent. */
export interface EasyWeeks {
  readonly weeks: readonly number[];
  readonly sets: number | null;
  readonly reps: number | null;
  readonly hold: number | null;
  readonly time: number | null;
  readonly place: Place;
}

export interface Limits {
  readonly timeMs: number | null;
  /** Null: anything. Kit ids and bands' names. */
  readonly kit: readonly string[] | null;
  readonly positionsToAvoid: readonly string[];
  readonly concerns: readonly string[];
}

export interface Profile {
  readonly ageBand: 'under-18' | '18-64' | '65-plus' | null;
  readonly training: 'new' | 'some' | 'trained' | null;
}

export interface Plan {
  readonly id: string;
  readonly source: SourceText;
  readonly place: Place;
  readonly person: string;
  readonly title: string;
  /** The language of its sheet and of its own words, where it says so. */
  readonly handoutLanguage: string | null;
  /** The practitioner's id in practice.yaml. */
  readonly by: string | null;
  /** Dates ascend; never empty. */
  readonly visits: readonly Visit[];
  readonly starts: Day;
  readonly nextVisit: Day | null;
  readonly weeks: number;
  readonly affected: Affected;
  readonly print: 'normal' | 'large';
  readonly goals: readonly string[];
  readonly profile: Profile;
  readonly limits: Limits;
  readonly precautions: readonly string[];
  readonly pain: PainRanges | null;
  readonly stopIfAlso: readonly string[];
  readonly easyWeeks: EasyWeeks | null;
  readonly shortDayMs: number | null;
  readonly betweenItemsMs: Interval | null;
  /** By exercise. */
  readonly oneRepMax: ReadonlyMap<string, Load>;
  readonly sessions: readonly Session[];
  readonly report: ReadonlyMap<string, string>;
  readonly closed: { readonly date: Day; readonly why: string } | null;
  readonly accepts: readonly Accept[];
  readonly printed: readonly PrintedText[];
  /** Where each value of the plan itself stands, for findings about it. */
  readonly valuePlaces: ReadonlyMap<string, Place>;
}
