// Is a level left only at a number to which its dose and climb never lead? The gate is held against
// the most that each side does in any week at that level; what an easy week takes off does not count.
import type { SideWork } from '../compute/numbers.ts';
import type { Finding } from '../finding/finding.ts';
import type { MoveOnWhen } from '../model/dose.ts';
import type { Level, Purpose } from '../model/exercise.ts';
import type { EasyWeeks, Item, Plan } from '../model/plan.ts';
import { type Duration, durationMs } from '../units/duration.ts';
import { formatLoad, type Load, loadKg } from '../units/load.ts';
import type { Side } from '../units/side.ts';
import { type LoadScale, weighed } from './load-weights.ts';
import type { PlanUnderCheck } from './plan-check.ts';
import { called, findingAtItem, type PlannedItem, sideWorks, weeksByItem } from './planned-item.ts';
import { counted, durationText, listed } from './wording.ts';

/** The weeks of an item at one level with one gate. */
interface Stay {
  readonly level: Level;
  readonly gate: MoveOnWhen;
  readonly weeks: readonly PlannedItem[];
}

/** What a gate asks for and the most that is reached, in words. */
interface Unmet {
  readonly key: 'reps' | 'sets' | 'hold' | 'time' | 'load';
  readonly asks: string;
  readonly reached: string;
}

interface Reach {
  readonly breathMs: number;
  readonly scale: LoadScale;
  readonly easy: EasyWeeks | null;
}

/** One finding an item and level, with everything that the gate asks for in vain. */
export function gateOutOfReach({ plan, numbers, practice }: PlanUnderCheck): readonly Finding[] {
  const found: Finding[] = [];
  for (const [item, weeks] of weeksByItem(numbers)) {
    const oneRepMax = plan.oneRepMax.get(item.exercise.id);
    const scale = {
      oneRepMaxKg: oneRepMax ? loadKg(oneRepMax, null) : null,
      bands: practice.bands,
    };
    const reach = { breathMs: practice.timing.breath, scale, easy: plan.easyWeeks };
    for (const stay of staysOf(item, weeks)) {
      const unmet = firstUnmet(stay, reach).filter(isMeant(item, weeks));
      if (unmet.length > 0) found.push(gateFinding(plan, stay, unmet));
    }
  }
  return found;
}

/**
 * Whether a plan means to move on by what the gate asks for: it goes to another level, has a gate of
 * its own, or climbs in the very thing. A gate that only came along with the library is let be.
 */
function isMeant(item: Item, weeks: readonly PlannedItem[]): (unmet: Unmet) => boolean {
  const written = [item, ...item.fromWeek];
  const levels = new Set(weeks.map((planned) => planned.item.level.id));
  const hasOwnGate = written.some(({ moveOnWhen }) => moveOnWhen !== undefined);
  const dials = new Set(written.flatMap(({ climb }) => (climb ?? []).map(({ key }) => key)));
  return ({ key }) => levels.size > 1 || hasOwnGate || dials.has(key);
}

function staysOf(item: Item, weeks: readonly PlannedItem[]): readonly Stay[] {
  const stays = new Map<string, { level: Level; gate: MoveOnWhen; weeks: PlannedItem[] }>();
  const gates: MoveOnWhen[] = [];
  for (const planned of weeks) {
    const { level, moveOnWhen: gate } = planned.item;
    if (!gate) continue;
    if (!gates.includes(gate)) gates.push(gate);
    const key = `${level.id} ${gates.indexOf(gate)}`;
    const known = stays.get(key);
    if (known) known.weeks.push(planned);
    else stays.set(key, { level, gate, weeks: [planned] });
  }
  const all = [...stays.values()];
  return all.filter((stay, index) => !isLeftOver(item, stay, all.slice(0, index)));
}

/** An item's own gate that stayed when the item came to the last level: nothing is left to move on to. */
function isLeftOver(item: Item, { level, gate }: Stay, earlier: readonly Stay[]): boolean {
  return level.id === item.exercise.levels.at(-1)?.id && earlier.some((stay) => stay.gate === gate);
}

/** What is not reached by every side, told of the side that gets least far. */
function firstUnmet({ gate, level, weeks }: Stay, reach: Reach): readonly Unmet[] {
  const bySide = new Map<Side, SideWork[]>();
  const eased = new Set<SideWork>();
  for (const { item, week } of weeks) {
    for (const [side, work] of sideWorks(item)) {
      bySide.set(side, [...(bySide.get(side) ?? []), work]);
      if (week.isEasy) eased.add(work);
    }
  }
  const unmet = [...bySide].map(([, works]) => {
    const inFull = (key: 'reps' | 'sets' | 'hold' | 'time') =>
      (reach.easy?.[key] ?? null) === null || works.some((work) => !eased.has(work));
    return [
      ...unmetCounts(gate, works, inFull),
      ...unmetDurations(gate, works, inFull, reach.breathMs, level.purposes[0]),
      ...unmetLoad(gate.load, works, reach.scale),
    ];
  });
  return unmet.reduce<readonly Unmet[]>((a, b) => (b.length > a.length ? b : a), []);
}

type InFull = (key: 'reps' | 'sets' | 'hold' | 'time') => boolean;

function unmetCounts(
  gate: MoveOnWhen,
  works: readonly SideWork[],
  inFull: InFull,
): readonly Unmet[] {
  const unmet: Unmet[] = [];
  const isOpen = works.some(({ dose }) => dose.values.until === 'tired');
  const reps = Math.max(...works.map(mostReps));
  // Until tired has no end that can be known beforehand.
  if (gate.reps !== undefined && gate.reps > reps && !isOpen && inFull('reps')) {
    unmet.push({ key: 'reps', asks: counted(gate.reps, 'rep'), reached: counted(reps, 'rep') });
  }
  const sets = Math.max(...works.map(({ volume }) => volume.sets[1]));
  if (gate.sets !== undefined && gate.sets > sets && inFull('sets')) {
    unmet.push({ key: 'sets', asks: counted(gate.sets, 'set'), reached: counted(sets, 'set') });
  }
  return unmet;
}

function mostReps({ dose }: SideWork): number {
  const { reps } = dose.values;
  if (!reps) return 1;
  return reps.kind === 'same' ? reps.count[1] : Math.max(...reps.counts.map(([, high]) => high));
}

const HELD_STILL: ReadonlySet<Purpose | undefined> = new Set(['stretch', 'isometric', 'balance']);

function unmetDurations(
  gate: MoveOnWhen,
  works: readonly SideWork[],
  inFull: InFull,
  breathMs: number,
  purpose: Purpose | undefined,
): readonly Unmet[] {
  return (['hold', 'time'] as const).flatMap((key) => {
    const asked = gate[key];
    if (!asked || !inFull(key)) return [];
    const most = Math.max(
      ...works.map(({ dose: { values } }) => {
        // A still position may be written as a time; it is held all the same.
        const stillTime = key === 'hold' && HELD_STILL.has(purpose) ? values.time : undefined;
        const length = values[key] ?? stillTime;
        return length ? durationMs(length, breathMs)[1] : 0;
      }),
    );
    if (durationMs(asked, breathMs)[0] <= most) return [];
    return [
      {
        key,
        asks: `a ${key} of ${lengthText(asked)}`,
        reached: most === 0 ? `no ${key}` : durationText(most),
      },
    ];
  });
}

function lengthText({ unit, range }: Duration): string {
  return unit === 'breaths' ? counted(range[0], 'breath') : durationText(range[0]);
}

function unmetLoad(
  asked: Load | undefined,
  works: readonly SideWork[],
  scale: LoadScale,
): readonly Unmet[] {
  if (!asked) return [];
  const asks = `a load of ${formatLoad(asked)}`;
  const loads = works.flatMap(({ dose }) => (dose.values.load ? [dose.values.load] : []));
  const [first] = loads;
  if (!first)
    return asked.kind === 'body-weight' ? [] : [{ key: 'load', asks, reached: 'no load' }];
  let heaviest = first;
  for (const load of loads) {
    const both = weighed(load, heaviest, scale);
    if (both && both[0][1] > both[1][1]) heaviest = load;
  }
  if (asked.kind === 'band')
    return isBandReached(asked, loads, scale)
      ? []
      : [{ key: 'load', asks, reached: formatLoad(loads.at(-1) ?? first) }];
  const both = weighed(asked, heaviest, scale);
  return both && both[0][0] > both[1][1]
    ? [{ key: 'load', asks, reached: formatLoad(heaviest) }]
    : [];
}

/** A band that helps is climbed from heavy to light, so the order of the weeks tells the direction. */
function isBandReached(asked: Load, loads: readonly Load[], scale: LoadScale): boolean {
  const steps = loads.map((load) => weighed(load, asked, scale));
  const heavier = steps.flatMap((step) => (step ? [step[0][0] - step[1][0]] : []));
  const [first, last] = [heavier[0], heavier.at(-1)];
  if (first === undefined || last === undefined) return true;
  return last < first ? last <= 0 : heavier.some((by) => by >= 0);
}

function gateFinding(plan: Plan, { level, gate, weeks }: Stay, unmet: readonly Unmet[]): Finding {
  const [planned] = weeks;
  if (!planned) throw new Error('a stay at a level has a week');
  const { item } = planned.item;
  const asks = listed(
    unmet.map((one) => one.asks),
    'and',
  );
  const reached = listed(
    unmet.map((one) => one.reached),
    'and',
  );
  return findingAtItem('gate-out-of-reach', plan, planned, {
    message: `${called(item, level)} moves on at ${asks}, but its dose and climb reach ${reached} at the most.`,
    hints: [
      'Let the climb go so far, or give the exercise in this plan a "move_on_when" of its own with what it reaches.',
    ],
    related: [{ message: '"move_on_when" stands here.', place: gate.place }],
  });
}
