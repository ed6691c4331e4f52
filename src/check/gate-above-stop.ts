// May a level be left with a pain at which the same sheet says to stop? An error: the two sentences
// would stand on one sheet. A gate of the library that this plan never comes to use is let be.
import type { Finding } from '../finding/finding.ts';
import type { MoveOnWhen } from '../model/dose.ts';
import type { Item } from '../model/plan.ts';
import { formatRange } from '../units/interval.ts';
import type { PlanUnderCheck } from './plan-check.ts';
import { called, findingAtItem, type PlannedItem, weeksByItem } from './planned-item.ts';

/** One finding an item and gate. Pain in the range in which one eases off is the practitioner's to judge. */
export function gateAboveStop({ plan, numbers, practice }: PlanUnderCheck): readonly Finding[] {
  const { stop } = plan.pain ?? practice.pain;
  const found: Finding[] = [];
  for (const [item, weeks] of weeksByItem(numbers)) {
    const told = new Set<MoveOnWhen>();
    for (const planned of weeks) {
      const gate = planned.item.moveOnWhen;
      const pain = gate?.painAtMost;
      if (!gate || pain === undefined || pain < stop[0] || told.has(gate)) continue;
      if (!isUsed(item, gate, planned, weeks)) continue;
      told.add(gate);
      const message = `"pain_at_most: ${pain}" lets ${called(item, planned.item.level)} move on with a pain at which this plan says to stop (${formatRange(stop)}); write a number below ${stop[0]}, or give the item a "move_on_when" of its own.`;
      found.push(
        findingAtItem('gate-above-stop', plan, planned, {
          message,
          related: [{ message: '"move_on_when" stands here.', place: gate.place }],
        }),
      );
    }
  }
  return found;
}

/** Written in the plan itself, or printed because a later week has another level. */
function isUsed(
  item: Item,
  gate: MoveOnWhen,
  { week, item: now }: PlannedItem,
  weeks: readonly PlannedItem[],
): boolean {
  if ([item, ...item.fromWeek].some(({ moveOnWhen }) => moveOnWhen === gate)) return true;
  return weeks.some(
    (later) =>
      later.week.week > week.week &&
      later.item.level !== now.level &&
      later.item.advance !== 'by-week',
  );
}
