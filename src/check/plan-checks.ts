// The checks of a plan, and what one practice makes of them: a check that is off, of another
// severity, or with other numbers. Loading and computing have found their own errors before.
import type { PlanNumbers } from '../compute/numbers.ts';
import type { CheckName } from '../finding/checks.ts';
import type { Finding } from '../finding/finding.ts';
import type { Practice } from '../model/practice.ts';
import { idleAccepts, settled } from './accept.ts';
import { concernConflict } from './concern-conflict.ts';
import { datesUnlikely } from './dates-unlikely.ts';
import { easyWeekEmpty } from './easy-week-empty.ts';
import { entryChangesNothing } from './entry-changes-nothing.ts';
import { FIGURE_CHECKS } from './figure-checks.ts';
import { gateAboveStop } from './gate-above-stop.ts';
import { gateOutOfReach } from './gate-out-of-reach.ts';
import { kitMissing } from './kit-missing.ts';
import { longSession } from './long-session.ts';
import { LOOKS_PERSONAL_SETTINGS } from './looks-personal.ts';
import { onlyAgainstAffected } from './only-against-affected.ts';
import { outsideBounds } from './outside-bounds.ts';
import type { PlanCheck, SettingOf, Settings } from './plan-check.ts';
import { positionAvoided } from './position-avoided.ts';
import { READING_GRADE_SETTINGS } from './reading-grade.ts';
import { SHARP_RISE_SETTINGS, sharpRise } from './sharp-rise.ts';
import { SHEET_RUNS_OUT_SETTINGS, sheetRunsOut } from './sheet-runs-out.ts';
import { SIDE_BALANCE_SETTINGS, sideBalance } from './side-balance.ts';
import { sideWord } from './side-word.ts';
import { startBeforeVisit } from './start-before-visit.ts';
import {
  STRETCH_BEFORE_STRENGTH_SETTINGS,
  stretchBeforeStrength,
} from './stretch-before-strength.ts';
import { tradeWord } from './trade-word.ts';
import { WARM_UP_FIRST_SETTINGS, warmUpFirst } from './warm-up-first.ts';

export const PLAN_CHECKS: readonly PlanCheck[] = [
  { check: 'concern-conflict', settings: {}, find: concernConflict },
  { check: 'kit-missing', settings: {}, find: kitMissing },
  { check: 'position-avoided', settings: {}, find: positionAvoided },
  { check: 'outside-bounds', settings: {}, find: outsideBounds },
  { check: 'long-session', settings: {}, find: longSession },
  { check: 'side-balance', settings: SIDE_BALANCE_SETTINGS, find: sideBalance },
  { check: 'sharp-rise', settings: SHARP_RISE_SETTINGS, find: sharpRise },
  { check: 'warm-up-first', settings: WARM_UP_FIRST_SETTINGS, find: warmUpFirst },
  {
    check: 'stretch-before-strength',
    settings: STRETCH_BEFORE_STRENGTH_SETTINGS,
    find: stretchBeforeStrength,
  },
  { check: 'gate-out-of-reach', settings: {}, find: gateOutOfReach },
  { check: 'gate-above-stop', settings: {}, find: gateAboveStop },
  { check: 'easy-week-empty', settings: {}, find: easyWeekEmpty },
  { check: 'entry-changes-nothing', settings: {}, find: entryChangesNothing },
  { check: 'only-against-affected', settings: {}, find: onlyAgainstAffected },
  { check: 'side-word', settings: {}, find: sideWord },
  { check: 'start-before-visit', settings: {}, find: startBeforeVisit },
  { check: 'dates-unlikely', settings: {}, find: datesUnlikely },
  { check: 'sheet-runs-out', settings: SHEET_RUNS_OUT_SETTINGS, find: sheetRunsOut },
  ...FIGURE_CHECKS,
  { check: 'trade-word', settings: {}, find: tradeWord },
];

/** Every check that has numbers to set. */
export const SETTINGS: ReadonlyMap<CheckName, Settings> = new Map<CheckName, Settings>([
  ...PLAN_CHECKS.map(({ check, settings }) => [check, settings] as const),
  ['looks-personal', LOOKS_PERSONAL_SETTINGS],
  ['reading-grade', READING_GRADE_SETTINGS],
]);

/** Everything that the checks find in one plan, with what is accepted marked so. */
export function checkPlan(practice: Practice, numbers: PlanNumbers): Finding[] {
  const { plan } = numbers;
  const subject = { plan, numbers, practice, setting: settingOf(practice) };
  const isOn = (check: CheckName) => practice.checks.get(check)?.severity !== 'off';
  const run = PLAN_CHECKS.filter(({ check }) => isOn(check));
  const found = run.flatMap(({ find }) => find(subject));
  const idle = idleAccepts(found, plan, (check) => run.some((one) => one.check === check));
  return [...settled(asSet(onceACause([...found, ...idle]), practice), plan)];
}

/** An item whose `only` is at odds with the affected side, and puts the sides off balance by it, is told of once. */
function onceACause(findings: readonly Finding[]): readonly Finding[] {
  const told = new Set(
    findings.filter(({ check }) => check === 'side-balance').map(({ scope }) => scope.at(-1)),
  );
  return findings.filter(
    ({ check, scope }) => check !== 'only-against-affected' || !told.has(scope.at(-1)),
  );
}

/** The findings with the severities that a practice gives; those of checks that are off are left out. */
export function asSet(findings: readonly Finding[], practice: Practice): readonly Finding[] {
  return findings.flatMap((one) => {
    const severity = practice.checks.get(one.check)?.severity ?? null;
    if (severity === 'off') return [];
    return [severity === null ? one : { ...one, severity }];
  });
}

/** The numbers of the checks: a practice's own, else the defaults. */
export function settingOf(practice: Practice): SettingOf {
  return (check, name) => {
    const setting = SETTINGS.get(check)?.[name];
    if (!setting) throw new Error(`the check ${check} has no setting ${name}`);
    return practice.checks.get(check)?.numbers.get(name) ?? setting.byDefault;
  };
}
