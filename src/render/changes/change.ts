// One change between two versions of a plan. Read backwards, with before and after swapped, it is the
// change of the way back.
import type { Section } from './fact.ts';

export type SubjectKind = 'plan' | 'practice' | 'session' | 'part' | 'item' | 'exercise' | 'sheet';

/** What a change is about, as it is called in one version. */
export interface Named {
  /** The id that the files give it. */
  readonly id: string;
  readonly name: string;
}

export interface Subject {
  readonly kind: SubjectKind;
  /** Null: it was not there before. */
  readonly before: Named | null;
  /** Null: it is there no more. */
  readonly after: Named | null;
}

export interface Step {
  /** Null: in all weeks that both versions have, or no matter of weeks. */
  readonly weeks: readonly [first: number, last: number] | null;
  /** Of a list, the entries that are gone and those that are new; else the one value, or none. */
  readonly before: readonly string[];
  readonly after: readonly string[];
}

export interface Change {
  readonly subject: Subject;
  /** A key below `changes.aspects`; `presence` for what came or went as a whole. */
  readonly aspect: string;
  readonly side: 'left' | 'right' | null;
  /** Never empty. */
  readonly steps: readonly Step[];
  /** The sections that it can show in. */
  readonly shows: readonly Section[];
}

/** A change, and whether it shows on the sheet. */
export interface JudgedChange extends Change {
  /** Null where it cannot be told, for a version has no sheet. */
  readonly isOnSheet: boolean | null;
}
