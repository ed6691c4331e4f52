// Is a muscle stretched for a minute or more before it is trained in the same session? Seconds held
// are added up by muscle and side, at their low end; a circuit brings its stretches round again.
import type { PartWeek, SessionWeek, WeekNumbers } from '../compute/numbers.ts';
import type { Finding } from '../finding/finding.ts';
import type { Item, Plan } from '../model/plan.ts';
import type { Side } from '../units/side.ts';
import type { PlanUnderCheck, Settings } from './plan-check.ts';
import { called, findingAtItem, type PlannedItem, sideWorks } from './planned-item.ts';
import { counted, durationText } from './wording.ts';

export const STRETCH_BEFORE_STRENGTH_SETTINGS = {
  hold: {
    kind: 'time',
    byDefault: 60_000,
    // 60 s or more a muscle -4.6 %, less than 60 s -1.1 %.
    source: 'Behm DG, Blazevich AJ, Kay AD, McHugh M. Appl Physiol Nutr Metab 2016;41(1):1-11.',
  },
} as const satisfies Settings;

interface Held {
  readonly stretch: PlannedItem;
  readonly muscle: string;
  readonly side: Side;
  readonly ms: number;
}

/** A muscle that comes to its strength work stretched, with the item that stretched it longest. */
interface Stretched {
  readonly stretch: PlannedItem;
  readonly strength: PlannedItem;
  readonly muscle: string;
  readonly lane: 'left' | 'right';
  readonly ms: number;
}

/** One finding a stretch, in the first week: the muscle held longest, and how many others are. */
export function stretchBeforeStrength({
  plan,
  numbers,
  setting,
}: PlanUnderCheck): readonly Finding[] {
  const found = new Map<Item, Finding>();
  const leastMs = setting('stretch-before-strength', 'hold');
  for (const week of numbers.weeks) {
    const byStretch = new Map<Item, Stretched[]>();
    for (const one of week.sessions.flatMap((session) => stretchedIn(week, session))) {
      const { item } = one.stretch.item;
      if (one.ms < leastMs || found.has(item)) continue;
      byStretch.set(item, [...(byStretch.get(item) ?? []), one]);
    }
    for (const [item, stretched] of byStretch) found.set(item, stretchFinding(plan, stretched));
  }
  return [...found.values()];
}

function stretchedIn(week: WeekNumbers, session: SessionWeek): readonly Stretched[] {
  const held: Held[] = [];
  const stretched: Stretched[] = [];
  for (const part of session.parts) {
    for (const rounds of passes(part)) {
      for (const item of part.items) {
        const planned = { week, session, part, item };
        stretched.push(...stretchedBefore(planned, held));
        held.push(...heldIn(planned, rounds));
      }
    }
  }
  return stretched;
}

/** A circuit as two stretches of rounds: all but the last, then the last, which all the others precede. */
function passes({ rounds }: PartWeek): readonly number[] {
  return rounds === null || rounds < 2 ? [1] : [rounds - 1, 1];
}

function heldIn(stretch: PlannedItem, rounds: number): readonly Held[] {
  const { item, part } = stretch;
  if (item.level.purposes[0] !== 'stretch') return [];
  return sideWorks(item).flatMap(([side, { volume }]) => {
    const ms = (volume.holdMs[0] / (part.rounds ?? 1)) * rounds;
    return item.level.muscles.prime.map((muscle) => ({ stretch, muscle, side, ms }));
  });
}

function stretchedBefore(strength: PlannedItem, held: readonly Held[]): readonly Stretched[] {
  const { item } = strength;
  if (item.level.purposes[0] !== 'strength') return [];
  const stretched: Stretched[] = [];
  for (const muscle of item.level.muscles.prime) {
    for (const lane of ['left', 'right'] as const) {
      if (!item[lane] && !item.middle) continue;
      // A stretch of the middle reaches both sides.
      const on = held.filter(
        (one) => one.muscle === muscle && (one.side === lane || one.side === 'middle'),
      );
      const [first, ...more] = on;
      if (!first) continue;
      const longest = more.reduce((a, b) => (b.ms > a.ms ? b : a), first);
      const ms = on.reduce((sum, one) => sum + one.ms, 0);
      stretched.push({ stretch: longest.stretch, strength, muscle, lane, ms });
    }
  }
  return stretched;
}

function stretchFinding(plan: Plan, stretched: readonly Stretched[]): Finding {
  const worst = stretched.reduce((a, b) => (b.ms > a.ms ? b : a));
  const { stretch, strength, muscle, ms } = worst;
  const lanes = new Set(stretched.filter((one) => one.muscle === muscle).map((one) => one.lane));
  const where = lanes.size === 1 ? ` on the ${worst.lane}` : '';
  const others = new Set(stretched.map((one) => one.muscle)).size - 1;
  const rest =
    others === 0
      ? ''
      : `, and so ${others === 1 ? 'is' : 'are'} ${counted(others, 'other muscle')}`;
  return findingAtItem('stretch-before-strength', plan, stretch, {
    message: `"${muscle}"${where} is stretched for ${durationText(ms)} before ${called(strength.item.item, strength.item.level)} trains it in week ${stretch.week.week}${rest}; move the stretch after it.`,
    hints: [
      'Move it after the strength work; do not shorten it. With lively movement between the two the effect was not clear (Behm 2016).',
    ],
    related: [{ message: 'The strength exercise stands here.', place: strength.item.item.place }],
  });
}
