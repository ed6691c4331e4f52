// Who prints the sheets, and everything that a practice settles once for all its plans.

import type { CheckName, Severity } from '../finding/checks.ts';
import type { Place, SourceText } from '../finding/place.ts';
import type { Interval } from '../units/interval.ts';
import type { PrintedText } from './printed-text.ts';

/** All in milliseconds; ranges are allowed but for a breath. */
export interface Timing {
  readonly move: Interval;
  readonly pause: Interval;
  readonly rest: Interval;
  readonly changeSides: Interval;
  readonly betweenItems: Interval;
  readonly breath: number;
}

export type SettlesBy = 'same-evening' | 'next-morning' | 'within-24-hours';

/** Whole points 0 to 10; the three ranges cover the scale without gap or overlap. */
export interface PainRanges {
  readonly carryOn: Interval;
  readonly easeOff: Interval;
  readonly stop: Interval;
}

/** A share has %, a time its unit, a count none. */
export type NumberKind = 'share' | 'time' | 'count';

/** What a practice says of one check: a severity of its own, `off`, or numbers of its own. */
export interface CheckSetting {
  readonly severity: Severity | 'off' | null;
  /** Percentages as thousandths of a percent, other numbers as they are. */
  readonly numbers: ReadonlyMap<string, number>;
  /** Where each number stands, and what its unit made of it. */
  readonly writtenAs: ReadonlyMap<string, { readonly kind: NumberKind; readonly place: Place }>;
  readonly place: Place;
}

export interface Concern {
  readonly limits: readonly string[];
  readonly positions: readonly string[];
}

/** Ids that may be used, with the practice's own words for them where it gives some. */
export interface Vocabulary {
  readonly positions: ReadonlySet<string>;
  readonly kit: ReadonlySet<string>;
  readonly muscles: ReadonlySet<string>;
  readonly demands: ReadonlySet<string>;
  readonly concerns: ReadonlyMap<string, Concern>;
  /** The practice's own words, by kind and id; they win over those of the words pack. */
  readonly words: Readonly<Record<VocabularyKind, ReadonlyMap<string, string>>>;
}

export type VocabularyKind = 'positions' | 'kit' | 'muscles' | 'demands' | 'concerns';

/** What a practice says itself in one further language; what is missing there is told of for the plans that need it. */
export interface PracticeTexts {
  readonly contact: string | null;
  readonly emergencyIf: readonly string[];
  readonly getInTouch: readonly string[];
  readonly stopIf: readonly string[];
  /** By the name of the band. */
  readonly bands: ReadonlyMap<string, string>;
  readonly practitioners: ReadonlyMap<string, string>;
  readonly positions: ReadonlyMap<string, string>;
  readonly kit: ReadonlyMap<string, string>;
  /** The start of its group in the file, and where each key of it stands. */
  readonly place: Place;
  readonly keyPlaces: ReadonlyMap<string, Place>;
}

export interface Practice {
  readonly source: SourceText;
  readonly name: string;
  readonly contact: string;
  readonly emergency: string;
  readonly emergencyIf: readonly string[];
  readonly getInTouch: readonly string[];
  readonly stopIf: readonly string[];
  readonly language: string;
  /** What it says in further languages, by BCP 47 tag. */
  readonly inLanguage: ReadonlyMap<string, PracticeTexts>;
  readonly paper: 'a4' | 'letter';
  readonly timing: Timing;
  readonly pain: PainRanges;
  readonly settlesBy: SettlesBy;
  /** Easiest first. */
  readonly bands: readonly string[];
  readonly practitioners: ReadonlyMap<string, string>;
  readonly vocabulary: Vocabulary;
  /** Words that her people know, long or of the trade: they count as easy. */
  readonly plainWords: readonly string[];
  readonly printed: readonly PrintedText[];
  readonly checks: ReadonlyMap<CheckName, CheckSetting>;
}

/** The one person behind a code: never under version control. */
export interface Person {
  readonly code: string;
  readonly name: string | null;
  readonly language: string | null;
  /** Where the language, or else the person, stands. */
  readonly place: Place;
}

/** The practice as it speaks in a language; its own words for things are of its own language alone. */
export function practiceIn(practice: Practice, language: string): Practice {
  if (language === practice.language) return practice;
  const texts = practice.inLanguage.get(language);
  const { vocabulary } = practice;
  const none = new Map<string, string>();
  const { positions = none, kit = none } = texts ?? {};
  const words = { positions, kit, muscles: none, demands: none, concerns: none };
  const other = { ...practice, vocabulary: { ...vocabulary, words } };
  if (!texts) return other;
  return {
    ...other,
    contact: texts.contact ?? practice.contact,
    emergencyIf: texts.emergencyIf,
    getInTouch: texts.getInTouch,
    stopIf: texts.stopIf,
    practitioners: texts.practitioners,
  };
}
