// Does an exercise take a position that the plan says to avoid?
import type { Finding } from '../finding/finding.ts';
import type { PlanUnderCheck } from './plan-check.ts';
import { called, findingAtItem, firstCauses, weeksByItem, withWeeks } from './planned-item.ts';

/** One finding an item, with every such position that its levels take over the weeks. */
export function positionAvoided({ plan, numbers }: PlanUnderCheck): readonly Finding[] {
  const avoided = new Set(plan.limits.positionsToAvoid);
  const found: Finding[] = [];
  for (const [item, weeks] of weeksByItem(numbers)) {
    const first = firstCauses(weeks, ({ item: { level } }) =>
      avoided.has(level.position) ? [`"${level.position}"`] : [],
    );
    const [planned] = first.values();
    if (!planned) continue;
    const message = `${called(item, planned.item.level)} is done in ${withWeeks(first)}, which the plan says to avoid.`;
    found.push(findingAtItem('position-avoided', plan, planned, { message }));
  }
  return found;
}
