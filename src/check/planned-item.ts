// An item as it stands in one week of a plan, with the part and session around it: what most checks
// walk over, and the place where they put what they find.
import type {
  ItemWeek,
  PartWeek,
  PlanNumbers,
  SessionWeek,
  SideWork,
  WeekNumbers,
} from '../compute/numbers.ts';
import { type CheckName, severityOf } from '../finding/checks.ts';
import { type Finding, finding, type RelatedPlace } from '../finding/finding.ts';
import type { Level } from '../model/exercise.ts';
import type { Item, Plan } from '../model/plan.ts';
import { SIDES, type Side } from '../units/side.ts';
import { listed } from './wording.ts';

export interface PlannedItem {
  readonly week: WeekNumbers;
  readonly session: SessionWeek;
  readonly part: PartWeek;
  readonly item: ItemWeek;
}

/** Every item of a week in the order of the plan. */
export function plannedItems(week: WeekNumbers): readonly PlannedItem[] {
  return week.sessions.flatMap((session) =>
    session.parts.flatMap((part) => part.items.map((item) => ({ week, session, part, item }))),
  );
}

/** Every item with the weeks in which it is there, first week first. */
export function weeksByItem(numbers: PlanNumbers): ReadonlyMap<Item, readonly PlannedItem[]> {
  const weeks = new Map<Item, PlannedItem[]>();
  for (const planned of numbers.weeks.flatMap(plannedItems)) {
    const known = weeks.get(planned.item.item);
    if (known) known.push(planned);
    else weeks.set(planned.item.item, [planned]);
  }
  return weeks;
}

/** What goes wrong with an item over its weeks, each cause where it first does. */
export function firstCauses(
  weeks: readonly PlannedItem[],
  causesIn: (planned: PlannedItem) => readonly string[],
): ReadonlyMap<string, PlannedItem> {
  const first = new Map<string, PlannedItem>();
  for (const planned of weeks) {
    for (const cause of causesIn(planned)) {
      if (!first.has(cause)) first.set(cause, planned);
    }
  }
  return first;
}

/** Causes with the week in which each begins: `a chair (week 1) and a step (week 5)`. */
export function withWeeks(first: ReadonlyMap<string, PlannedItem>): string {
  return listed(
    [...first].map(([cause, { week }]) => `${cause} (week ${week.week})`),
    'and',
  );
}

/** The sides that an item does, with what each does. */
export function sideWorks(item: ItemWeek): readonly (readonly [Side, SideWork])[] {
  return SIDES.flatMap((side) => {
    const work = item[side];
    return work ? [[side, work] as const] : [];
  });
}

/** An item by its exercise's name and, where there are several, its level. */
export function called(item: Item, level: Level): string {
  return item.exercise.levels.length > 1
    ? `${level.exerciseName} (${level.id})`
    : level.exerciseName;
}

function exerciseLine(item: Item): RelatedPlace {
  return { message: `"${item.exercise.id}" stands here.`, place: item.exercise.place };
}

type AtItem = Pick<Finding, 'message'> & Partial<Pick<Finding, 'hints' | 'related'>>;

/** A finding at an item in the plan; it can be accepted there or anywhere around it. */
export function findingAtItem(
  check: CheckName,
  plan: Plan,
  { session, part, item }: PlannedItem,
  parts: AtItem,
): Finding {
  return finding({
    check,
    severity: severityOf(check),
    place: item.item.place,
    scope: [plan, session.session, part.part, item.item],
    related: [exerciseLine(item.item)],
    ...parts,
  });
}
