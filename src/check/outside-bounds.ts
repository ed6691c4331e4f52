// Does a dose in force lie outside what its level calls sensible? Either end of it, on any side;
// in a circuit the rounds are the sets. Reps that nobody wrote are filled in, and not held to it.
import type { SideWork } from '../compute/numbers.ts';
import type { Finding } from '../finding/finding.ts';
import type { Bounds } from '../model/dose.ts';
import type { Plan } from '../model/plan.ts';
import type { Practice } from '../model/practice.ts';
import { type Duration, durationMs } from '../units/duration.ts';
import { formatRange, type Interval } from '../units/interval.ts';
import { formatLoad, type Load, loadKg } from '../units/load.ts';
import { weighed } from './load-weights.ts';
import type { PlanUnderCheck } from './plan-check.ts';
import { called, findingAtItem, type PlannedItem, sideWorks, weeksByItem } from './planned-item.ts';
import { durationText } from './wording.ts';

/** A value of a dose and what it should have been, in words. */
interface Outside {
  readonly key: string;
  readonly says: string;
  readonly sensible: string;
}

/** One finding an item, level and key of the dose, in the first week in which it happens. */
export function outsideBounds({ plan, numbers, practice }: PlanUnderCheck): readonly Finding[] {
  const found: Finding[] = [];
  for (const weeks of weeksByItem(numbers).values()) {
    const told = new Set<string>();
    // An easy week is meant to go below what is sensible otherwise.
    for (const planned of weeks.filter(({ week }) => !week.isEasy)) {
      const { level } = planned.item;
      for (const { key, says, sensible } of outsideIn(planned, plan, practice)) {
        const cause = `${level.id} ${key}`;
        if (told.has(cause) || !level.bounds) continue;
        told.add(cause);
        const when = `in week ${planned.week.week}`;
        found.push(
          findingAtItem('outside-bounds', plan, planned, {
            message: `${called(planned.item.item, level)} has ${says} ${when}; its "bounds" say ${sensible}.`,
            related: [{ message: 'The bounds stand here.', place: level.bounds.place }],
          }),
        );
      }
    }
  }
  return found;
}

function outsideIn(
  { item, part }: PlannedItem,
  plan: Plan,
  practice: Practice,
): readonly Outside[] {
  const { bounds } = item.level;
  if (!bounds) return [];
  const oneRepMax = plan.oneRepMax.get(item.item.exercise.id);
  const scale = { oneRepMaxKg: oneRepMax ? loadKg(oneRepMax, null) : null, bands: practice.bands };
  return sideWorks(item).flatMap(([, work]) => [
    ...counts(work, bounds, part.rounds !== null),
    ...durations(work, bounds, practice.timing.breath),
    ...loads(work, bounds, (a, b) => weighed(a, b, scale)),
  ]);
}

function counts(
  { dose, volume }: SideWork,
  bounds: Bounds,
  isCircuit: boolean,
): readonly Outside[] {
  const outside: Outside[] = [];
  const hold = (key: 'sets' | 'reps', thing: string, is: Interval) => {
    const sensible = bounds[key];
    if (!sensible || isInside(is, sensible)) return;
    outside.push({ key, says: `${formatRange(is)} ${thing}`, sensible: formatRange(sensible) });
  };
  hold('sets', isCircuit ? 'rounds' : 'sets', volume.sets);
  const { reps } = dose.values;
  if (reps && dose.origins.reps) {
    for (const count of reps.kind === 'same' ? [reps.count] : reps.counts)
      hold('reps', 'reps', count);
  }
  return outside;
}

function durations({ dose }: SideWork, bounds: Bounds, breathMs: number): readonly Outside[] {
  return (['hold', 'time'] as const).flatMap((key) => {
    const [is, sensible] = [dose.values[key], bounds[key]];
    if (!is || !sensible) return [];
    if (isInside(durationMs(is, breathMs), durationMs(sensible, breathMs))) return [];
    return [{ key, says: `a ${key} of ${lengthText(is)}`, sensible: lengthText(sensible) }];
  });
}

function loads(
  { dose }: SideWork,
  bounds: Bounds,
  onOneScale: (a: Load, b: Load) => readonly [Interval, Interval] | null,
): readonly Outside[] {
  const { load } = dose.values;
  if (!load || !bounds.load) return [];
  const both = onOneScale(load, bounds.load);
  if (!both || isInside(...both)) return [];
  return [
    { key: 'load', says: `a load of ${formatLoad(load)}`, sensible: formatLoad(bounds.load) },
  ];
}

function isInside([low, high]: Interval, [least, most]: Interval): boolean {
  return low >= least && high <= most;
}

function lengthText({ unit, range: [low, high] }: Duration): string {
  if (unit === 'breaths') return `${formatRange([low, high])} breaths`;
  return low === high ? durationText(low) : `${durationText(low)} to ${durationText(high)}`;
}
