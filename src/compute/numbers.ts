// The numbers of a plan, week by week: what every later floor reads. Section by section the same
// shape as the published JSON, in whole milliseconds.
import type { Dose, MoveOnWhen } from '../model/dose.ts';
import type { Level } from '../model/exercise.ts';
import type {
  Advance,
  Item,
  Part,
  Plan,
  Priority,
  Schedule,
  Session,
  SideOverrides,
} from '../model/plan.ts';
import type { Interval } from '../units/interval.ts';
import type { Order, Sides } from '../units/side.ts';

/** What one side does: counts, time, and load moved. */
export interface Volume {
  readonly sets: Interval;
  readonly reps: Interval;
  readonly holdMs: Interval;
  readonly workMs: Interval;
  readonly volumeKg: Interval;
}

/** One side of an item in one session. */
export interface SideWork {
  readonly dose: Dose;
  readonly volume: Volume;
}

/** An item as it is in one week; numbers are for one session (in a circuit, all rounds). */
export interface ItemWeek {
  readonly item: Item;
  readonly level: Level;
  /** That of the level in force. */
  readonly sides: Sides;
  /** Of an `each`, how the sides take turns; `each-set` otherwise. */
  readonly order: Order;
  /** For `both` left and right hold the same dose; for `middle` only the middle is there. */
  readonly left: SideWork | null;
  readonly right: SideWork | null;
  readonly middle: SideWork | null;
  /** Side overrides in force, for their `why`. */
  readonly overrides: SideOverrides | null;
  readonly note: string | null;
  readonly priority: Priority;
  readonly moveOnWhen: MoveOnWhen | null;
  readonly advance: Advance;
  readonly ms: Interval;
}

export interface PartWeek {
  readonly part: Part;
  readonly name: string | null;
  /** Null where the part is no circuit; in an easy week, the eased number. */
  readonly rounds: number | null;
  readonly restBetweenRoundsMs: Interval;
  readonly betweenItemsMs: Interval;
  readonly items: readonly ItemWeek[];
  readonly ms: Interval;
}

export interface SessionWeek {
  readonly session: Session;
  readonly name: string | null;
  readonly schedule: Schedule;
  readonly timesADay: Interval;
  readonly perWeek: Interval;
  readonly betweenItemsMs: Interval;
  readonly parts: readonly PartWeek[];
  readonly ms: Interval;
}

export interface SidesOf<T> {
  readonly left: T;
  readonly right: T;
  readonly middle: T;
}

export interface WeekNumbers {
  readonly week: number;
  readonly isEasy: boolean;
  /** Only what is there that week. */
  readonly sessions: readonly SessionWeek[];
  readonly ms: Interval;
  readonly left: Volume;
  readonly right: Volume;
  readonly middle: Volume;
  /** Weekly sets by muscle, in order of id. */
  readonly muscles: ReadonlyMap<string, SidesOf<Interval>>;
  readonly change: { readonly all: number | null; readonly strength: number | null };
}

export interface PlanNumbers {
  readonly plan: Plan;
  /** Week 1 first. */
  readonly weeks: readonly WeekNumbers[];
}
