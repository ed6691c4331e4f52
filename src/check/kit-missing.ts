// Does an exercise need something that the person does not have, in any week? Also what its load
// needs: a band by its name, `weight` for kilograms, pounds and shares of the most she can lift.
import type { Finding } from '../finding/finding.ts';
import type { Load } from '../units/load.ts';
import type { PlanUnderCheck } from './plan-check.ts';
import {
  called,
  findingAtItem,
  firstCauses,
  type PlannedItem,
  sideWorks,
  weeksByItem,
  withWeeks,
} from './planned-item.ts';
import { listed } from './wording.ts';

/** One finding an item, with all that is missing; a plan without `limits: kit` has anything. */
export function kitMissing({ plan, numbers }: PlanUnderCheck): readonly Finding[] {
  const has = plan.limits.kit;
  if (has === null) return [];
  const found: Finding[] = [];
  for (const [item, weeks] of weeksByItem(numbers)) {
    const first = firstCauses(weeks, (planned) => missing(planned, new Set(has)));
    const [planned] = first.values();
    if (!planned) continue;
    const message = `${called(item, planned.item.level)} needs ${withWeeks(first)}, and the plan's "kit" does not list it.`;
    const hints = [
      has.length === 0
        ? 'The plan\'s "kit" is empty.'
        : `The plan's "kit" lists ${listed(has, 'and')}.`,
    ];
    found.push(findingAtItem('kit-missing', plan, planned, { message, hints }));
  }
  return found;
}

function missing({ item }: PlannedItem, has: ReadonlySet<string>): readonly string[] {
  const groups = [...item.level.kit];
  for (const [, { dose }] of sideWorks(item)) {
    const needed = dose.values.load ? kitOfLoad(dose.values.load) : null;
    if (needed) groups.push([needed]);
  }
  const unmet = groups.filter((group) => !group.some((kit) => has.has(kit)));
  return unmet.map((group) =>
    listed(
      group.map((kit) => `"${kit}"`),
      'or',
    ),
  );
}

/** The band by its name, or weight; null where a load needs nothing. */
export function kitOfLoad(load: Load): string | null {
  if (load.kind === 'band') return load.band;
  return load.kind === 'body-weight' ? null : 'weight';
}
