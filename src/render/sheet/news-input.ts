// What "New since last time" is told from: the sheet as it is, and the version of the sheet before.
import type { PlanNumbers } from '../../compute/numbers.ts';
import type { Practice } from '../../model/practice.ts';
import type { Day } from '../../units/day.ts';
import type { Words } from '../words/words.ts';
import type { Numbering, Slot } from './exercise-slots.ts';
import type { Shown } from './shown-week.ts';

/** A version of the plan that a sheet was handed over of. */
export interface LastTime {
  readonly practice: Practice;
  readonly numbers: PlanNumbers;
  /** The day of the handover. */
  readonly date: Day;
}

export interface NewsInput {
  readonly words: Words;
  readonly practice: Practice;
  readonly numbers: PlanNumbers;
  readonly shown: Shown;
  readonly slots: readonly Slot[];
  readonly numbering: Numbering;
  readonly last: LastTime;
}
