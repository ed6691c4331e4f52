// How much: the dose as written in one place, and the dials that raise it week by week.

import type { Place } from '../finding/place.ts';
import type { Duration } from '../units/duration.ts';
import type { Interval } from '../units/interval.ts';
import type { Load } from '../units/load.ts';
import type { AngleRange, Tempo } from '../units/measure.ts';

/** One count for every set, or one for each. */
export type Reps =
  | { readonly kind: 'same'; readonly count: Interval }
  | { readonly kind: 'list'; readonly counts: readonly Interval[] };

/** The values of a dose. Which of hold, tempo and time are there tells its shape. */
export interface DoseValues {
  readonly sets?: Interval;
  readonly reps?: Reps;
  readonly hold?: Duration;
  readonly move?: Duration;
  readonly tempo?: Tempo;
  readonly time?: Duration;
  readonly pause?: Duration;
  readonly rest?: Duration;
  readonly load?: Load;
  /** 0 to 10. */
  readonly effort?: Interval;
  readonly until?: 'tired';
  readonly range?: AngleRange;
}

export type DoseKey = keyof DoseValues;

/** What one mapping in a file says of a dose; `unset` are the keys that it takes away with `none`. */
export interface DoseLayer {
  readonly values: DoseValues;
  readonly unset: readonly DoseKey[];
  readonly place: Place;
  readonly keyPlaces: ReadonlyMap<DoseKey, Place>;
}

/** Why a value of a dose is what it is: the layer that set it last. */
export type Origin =
  | { readonly layer: 'timing' | 'exercise' | 'level' | 'plan' | 'side' | 'climb' | 'easy-week' }
  | { readonly layer: 'from-week'; readonly week: number };

/** A dose after merging: every value with the layer that set it. */
export interface Dose {
  readonly values: DoseValues;
  readonly origins: Readonly<Partial<Record<DoseKey, Origin>>>;
}

/** A step of a dial: an amount of the dose's own kind, or a percentage of the load. */
export type DialKey =
  | 'reps'
  | 'hold'
  | 'time'
  | 'sets'
  | 'load'
  | 'rest'
  | 'pause'
  | 'effort'
  | 'level';

interface DialBase {
  readonly key: DialKey;
  readonly restart: readonly DialKey[];
  readonly place: Place;
}

/** Counts and effort: plain numbers. */
export interface NumberDial extends DialBase {
  readonly kind: 'number';
  readonly key: 'reps' | 'sets' | 'effort';
  readonly by: number;
  readonly to: number;
}

/** Lengths of time. `by` may be below 0. */
export interface DurationDial extends DialBase {
  readonly kind: 'duration';
  readonly key: 'hold' | 'time' | 'rest' | 'pause';
  readonly by: Duration;
  readonly to: Duration;
}

/** kg or lb, of one piece, in thousandths; `byPercent` in thousandths of a percent needs `round`. */
export interface MassDial extends DialBase {
  readonly kind: 'mass';
  readonly key: 'load';
  readonly unit: 'kg' | 'lb';
  readonly step: { readonly by: number } | { readonly byPercent: number; readonly round: number };
  readonly to: number;
}

/** `% 1rm` and `% body weight` climb by points, in thousandths of a percent. */
export interface PercentDial extends DialBase {
  readonly kind: 'percent';
  readonly key: 'load';
  readonly of: 'percent-1rm' | 'body-weight';
  readonly by: number;
  readonly to: number;
}

export interface BandDial extends DialBase {
  readonly kind: 'band';
  readonly key: 'load';
  /** 1 up the practice's list of bands, -1 down it (a band that helps); null for a list of one, which goes from the dose's band towards it. */
  readonly direction: 1 | -1 | null;
  readonly through: readonly string[];
}

export interface LevelDial extends DialBase {
  readonly kind: 'level';
  readonly key: 'level';
  readonly through: readonly string[];
}

export type Dial = NumberDial | DurationDial | MassDial | PercentDial | BandDial | LevelDial;

/** What is sensible, by dose key; durations in milliseconds, loads in kg thousandths. */
export interface Bounds {
  readonly place: Place;
  readonly sets?: Interval;
  readonly reps?: Interval;
  readonly hold?: Duration;
  readonly time?: Duration;
  readonly load?: Load;
}

/** When a level is done with. */
export interface MoveOnWhen {
  readonly place: Place;
  readonly reps?: number;
  readonly sets?: number;
  readonly hold?: Duration;
  readonly time?: Duration;
  readonly load?: Load;
  readonly painAtMost?: number;
  readonly effortAtMost?: number;
  readonly sessionsInARow?: number;
}
