// Does an exercise ask something of the body, or take a position, that one of the person's concerns
// limits? What each concern limits is the vocabulary's: those that ship, and the practice's own.
import type { Finding } from '../finding/finding.ts';
import type { Concern } from '../model/practice.ts';
import type { PlanUnderCheck } from './plan-check.ts';
import {
  called,
  findingAtItem,
  firstCauses,
  type PlannedItem,
  weeksByItem,
  withWeeks,
} from './planned-item.ts';

/** One finding for an item and a concern, with all that conflicts and the first week of each. */
export function concernConflict({ plan, numbers, practice }: PlanUnderCheck): readonly Finding[] {
  const found: Finding[] = [];
  for (const [item, weeks] of weeksByItem(numbers)) {
    for (const id of plan.limits.concerns) {
      const concern = practice.vocabulary.concerns.get(id);
      if (!concern) continue;
      const first = firstCauses(weeks, (planned) => conflicts(planned, concern));
      const [planned] = first.values();
      if (!planned) continue;
      const message = `${called(item, planned.item.level)} ${withWeeks(first)}, which the concern "${id}" limits.`;
      found.push(findingAtItem('concern-conflict', plan, planned, { message }));
    }
  }
  return found;
}

function conflicts({ item }: PlannedItem, { limits, positions }: Concern): readonly string[] {
  const { demands, position } = item.level;
  const limited = demands.filter((demand) => limits.includes(demand));
  const asks = limited.map((demand) => `asks for "${demand}"`);
  return positions.includes(position) ? [...asks, `is done in "${position}"`] : asks;
}
