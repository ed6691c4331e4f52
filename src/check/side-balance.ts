// Does a muscle get clearly more sets on one side in a week, without a reason that the plan gives?
// Reasons are: it is the affected side, `only: other`, and the `why` of a side override.
import type { Finding } from '../finding/finding.ts';
import type { Item } from '../model/plan.ts';
import { midpoint } from '../units/interval.ts';
import { type Affected, type Only, otherSide } from '../units/side.ts';
import { againstAffected } from './only-against-affected.ts';
import { COMMON_PRACTICE, type PlanUnderCheck, type Settings, WHOLE } from './plan-check.ts';
import { called, findingAtItem, type PlannedItem, plannedItems } from './planned-item.ts';
import { sessionSets, weeklyMidpoint } from './weekly-sets.ts';
import { counted, numberText } from './wording.ts';

export const SIDE_BALANCE_SETTINGS = {
  off_by: { kind: 'share', byDefault: 25_000, source: COMMON_PRACTICE },
} as const satisfies Settings;

type Limb = 'left' | 'right';

/** A muscle with more on one side, and the item that adds most to the difference. */
interface Imbalance {
  readonly muscle: string;
  readonly fuller: Limb;
  readonly more: number;
  readonly less: number;
  readonly most: PlannedItem;
}

/** One finding an item and side, in the first week: the muscle that is off most, and how many others are. */
export function sideBalance(subject: PlanUnderCheck): readonly Finding[] {
  const found: Finding[] = [];
  const told = { left: new Set<Item>(), right: new Set<Item>() };
  for (const week of subject.numbers.weeks) {
    const planned = plannedItems(week);
    const byCause = new Map<string, Imbalance[]>();
    for (const [muscle, sides] of week.muscles) {
      const one = imbalance(subject, planned, muscle, midpoint(sides.left), midpoint(sides.right));
      if (!one || told[one.fuller].has(one.most.item.item)) continue;
      const cause = `${planned.indexOf(one.most)} ${one.fuller}`;
      byCause.set(cause, [...(byCause.get(cause) ?? []), one]);
    }
    for (const imbalances of byCause.values()) {
      const worst = imbalances.reduce((a, b) => (share(b) < share(a) ? b : a));
      told[worst.fuller].add(worst.most.item.item);
      found.push(imbalanceFinding(subject, worst, imbalances.length - 1));
    }
  }
  return found;
}

function share({ more, less }: Imbalance): number {
  return less / more;
}

function imbalance(
  { plan, setting }: PlanUnderCheck,
  planned: readonly PlannedItem[],
  muscle: string,
  left: number,
  right: number,
): Imbalance | null {
  const offBy = setting('side-balance', 'off_by');
  const isOff = (more: number, less: number) => more > less && (more - less) * WHOLE > offBy * more;
  const fuller = left > right ? 'left' : 'right';
  const [more, less] = [Math.max(left, right), Math.min(left, right)];
  if (fuller === plan.affected || !isOff(more, less)) return null;
  let explained = 0;
  let most: PlannedItem | null = null;
  let mostSets = 0;
  for (const one of planned) {
    const sets = surplus(one, muscle, fuller);
    if (sets <= 0) continue;
    if (isExplained(one)) {
      explained += sets;
    } else if (sets > mostSets) {
      most = one;
      mostSets = sets;
    }
  }
  return most && isOff(more - explained, less) ? { muscle, fuller, more, less, most } : null;
}

function surplus({ item, session }: PlannedItem, muscle: string, fuller: Limb): number {
  const on = (side: Limb) => weeklyMidpoint(sessionSets(item, muscle, side), session.perWeek);
  return on(fuller) - on(otherSide(fuller));
}

/** The plan itself says why this item does more on one side. */
function isExplained({ item, week }: PlannedItem): boolean {
  // The why of a side override speaks of both sides; that one is not done at all, only `only` says.
  const doesBoth = item.left !== null && item.right !== null;
  return (doesBoth && item.overrides !== null) || onlyInForce(item.item, week.week) === 'other';
}

function onlyInForce(item: Item, week: number): Only | undefined {
  const entries = item.fromWeek.filter((entry) => entry.week <= week && entry.only !== undefined);
  const latest = [...entries].sort((a, b) => a.week - b.week).at(-1);
  return latest ? latest.only : item.only;
}

function imbalanceFinding({ plan }: PlanUnderCheck, worst: Imbalance, others: number): Finding {
  const { muscle, fuller, more, less, most } = worst;
  const rest = others === 0 ? '' : `, and ${counted(others, 'other muscle')} likewise`;
  const isAgainst =
    onlyInForce(most.item.item, most.week.week) === fuller && plan.affected === otherSide(fuller);
  return findingAtItem('side-balance', plan, most, {
    message: `"${muscle}" gets ${counted(more, 'set')} on the ${fuller} and ${numberText(less)} on the ${otherSide(fuller)} in week ${most.week.week}, most of the difference from ${called(most.item.item, most.item.level)}${rest}.`,
    hints: [isAgainst ? againstAffected(fuller) : waysOut(plan.affected, fuller)],
  });
}

/** The side may be a slip, so that comes first; `affected` is a reason only where the plan names no side. */
function waysOut(affected: Affected, fuller: Limb): string {
  const reasons =
    affected === 'left' || affected === 'right'
      ? '"only: other"'
      : `"affected: ${fuller}" if that is so`;
  return `Is the side right? If it is, do both sides, or give the reason: ${reasons}, or "sides" with a "why".`;
}
