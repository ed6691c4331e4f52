// One sheet that was handed over: which plan's, which words, and the commit that it was made from.
// Never to whom: a plan is known by its code.
import type { Day } from '../units/day.ts';

export interface Handover {
  readonly date: Day;
  /** The plan's code. */
  readonly plan: string;
  /** The sheet number, "KP4T 7WQM". */
  readonly sheet: string;
  /** The full commit id. */
  readonly commit: string;
  /** BCP 47. */
  readonly language: string;
  /** The practitioner's id in practice.yaml; null in a practice that names none. */
  readonly by: string | null;
}
