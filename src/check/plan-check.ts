// What a check of a plan is given and gives back, and how it names the numbers that a practice may
// set. The checks themselves stand one question a file; plan-checks.ts lists them.
import type { PlanNumbers } from '../compute/numbers.ts';
import type { CheckName } from '../finding/checks.ts';
import type { Finding } from '../finding/finding.ts';
import type { Plan } from '../model/plan.ts';
import type { Practice } from '../model/practice.ts';

/** A threshold that a practice may set: a share in thousandths of a percent, a time in ms, a count. */
export interface Setting {
  readonly kind: 'share' | 'time' | 'count';
  readonly byDefault: number;
  readonly source: string;
}

export type Settings = Readonly<Record<string, Setting>>;

/** The number of a check's setting: the practice's own, or the default. */
export type SettingOf = (check: CheckName, name: string) => number;

export interface PlanUnderCheck {
  readonly plan: Plan;
  readonly numbers: PlanNumbers;
  readonly practice: Practice;
  readonly setting: SettingOf;
}

export interface PlanCheck {
  readonly check: CheckName;
  readonly settings: Settings;
  readonly find: (subject: PlanUnderCheck) => readonly Finding[];
}

/** 100 % in thousandths of a percent. */
export const WHOLE = 100_000;

export const COMMON_PRACTICE = 'Common practice, no source.';
