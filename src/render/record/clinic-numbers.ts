// The numbers of a plan as tables of the clinic copy: by week, by item and side, by muscle and side.
// Weeks in which nothing changes share a row. The numbers themselves are computed elsewhere.
import type {
  ItemWeek,
  PlanNumbers,
  SessionWeek,
  SideWork,
  WeekNumbers,
} from '../../compute/numbers.ts';
import type { Item, Part, Session } from '../../model/plan.ts';
import { addDays } from '../../units/day.ts';
import { SIDES, type Side } from '../../units/side.ts';
import { minutesOf, NOTHING, plainChange, plainRange, secondsOf } from '../words/plain-number.ts';
import type { Words } from '../words/words.ts';
import { doseByLayer } from './clinic-dose.ts';
import { type RowView, runsOf, type TableView, weeksShown } from './table-view.ts';

/** One session's items, each with its own table. */
export interface SessionNumbersView {
  readonly heading: string;
  readonly items: readonly ItemNumbersView[];
}

export interface ItemNumbersView {
  readonly table: TableView;
  /** Why the sides differ. */
  readonly whys: readonly string[];
}

/** Minutes by session, minutes a week, and the change against the last week that was not easy. */
export function weeksTable({ plan, weeks }: PlanNumbers, words: Words): TableView {
  const say = (key: string) => words.say(`clinic.weeks.${key}`);
  return {
    heading: say('heading'),
    columns: [
      say('week'),
      say('from'),
      ...plan.sessions.map((session) =>
        words.say('clinic.weeks.session', { session: nameOf(session) }),
      ),
      say('minutes'),
      say('change'),
      say('change-strength'),
    ],
    rows: weeks.map((week) => ({
      head: weekName(week, words),
      cells: [
        addDays(plan.starts, 7 * (week.week - 1)),
        ...plan.sessions.map((session) => sessionCell(sessionOf(week, session), words)),
        plainRange(minutesOf(week.ms), 1, words),
        plainChange(week.change.all, words),
        plainChange(week.change.strength, words),
      ],
    })),
    none: '',
  };
}

/** Minutes of work a week; a column for each side that does any. */
export function workTable({ weeks }: PlanNumbers, words: Words): TableView {
  const sides = SIDES.filter((side) => weeks.some((week) => week[side].workMs[1] > 0));
  return {
    heading: words.say('clinic.work.heading'),
    columns: [
      words.say('clinic.weeks.week'),
      ...sides.map((side) => words.say(`clinic.sides.${side}`)),
    ],
    rows: weeks.map((week) => ({
      head: weekName(week, words),
      cells: sides.map((side) => plainRange(minutesOf(week[side].workMs), 1, words)),
    })),
    none: '',
  };
}

function weekName({ week, isEasy }: WeekNumbers, words: Words): string {
  const key = isEasy ? 'clinic.weeks.easy-week' : 'clinic.weeks.plain-week';
  return words.say(key, { week: String(week) });
}

function sessionCell(session: SessionWeek | undefined, words: Words): string {
  if (!session) return NOTHING;
  return words.say('clinic.weeks.session-minutes', {
    minutes: plainRange(minutesOf(session.ms), 1, words),
    times: plainRange(session.perWeek, 0, words),
  });
}

function sessionOf(week: WeekNumbers, session: Session): SessionWeek | undefined {
  return week.sessions.find((there) => there.session === session);
}

function nameOf(session: Session): string {
  return session.name ?? session.id;
}

/** For each session of the plan its items, in the plan's order. */
export function sessionNumbers(numbers: PlanNumbers, words: Words): SessionNumbersView[] {
  return numbers.plan.sessions.map((session) => ({
    heading: nameOf(session),
    items: session.parts.flatMap((part) =>
      part.items.map((item) => itemNumbers(numbers, session, part, item, words)),
    ),
  }));
}

function itemNumbers(
  { weeks }: PlanNumbers,
  session: Session,
  part: Part,
  item: Item,
  words: Words,
): ItemNumbersView {
  const there = weeks.map((week) => ({
    week: week.week,
    value:
      sessionOf(week, session)
        ?.parts.find((one) => one.part === part)
        ?.items.find((one) => one.item === item) ?? null,
  }));
  const rows = there.map(({ week, value }) => ({ week, value: value && sideRows(value, words) }));
  const whys = new Set(there.flatMap(({ value }) => value?.overrides?.why ?? []));
  return {
    table: {
      heading: words.say('clinic.items.heading', { exercise: item.exercise.name, item: item.id }),
      columns: ITEM_COLUMNS.map((column) => words.say(`clinic.items.${column}`)),
      rows: runsOf(rows).flatMap((run) =>
        run.value.map((cells): RowView => ({ head: weeksShown(run, words), cells })),
      ),
      none: words.say('clinic.items.none'),
    },
    whys: [...whys].map((why) => words.say('clinic.items.why', { why })),
  };
}

const ITEM_COLUMNS = [
  'weeks',
  'level',
  'side',
  'sets',
  'reps',
  'hold',
  'work',
  'kg',
  'dose',
] as const;

/** One row a side; sides that do the same share one. */
function sideRows(item: ItemWeek, words: Words): string[][] {
  const level = item.level.id;
  const rows = SIDES.flatMap((side) => {
    const work = item[side];
    return work ? [{ side: side as Side | 'both', cells: sideCells(work, words) }] : [];
  });
  const [first, second] = rows;
  const isShared = first && second && JSON.stringify(first.cells) === JSON.stringify(second.cells);
  const shown = isShared ? [{ side: 'both' as const, cells: first.cells }] : rows;
  return shown.map(({ side, cells }) => {
    const key = side === 'both' && item.sides === 'each' ? 'each' : side;
    return [level, words.say(`clinic.sides.${key}`), ...cells];
  });
}

function sideCells({ dose, volume }: SideWork, words: Words): string[] {
  return [
    plainRange(volume.sets, 0, words),
    plainRange(volume.reps, 0, words),
    plainRange(secondsOf(volume.holdMs), 1, words),
    plainRange(secondsOf(volume.workMs), 1, words),
    plainRange(volume.volumeKg, 2, words),
    doseByLayer(dose, words),
  ];
}

/** Weekly sets by muscle, a column for each side that has any; an assisting muscle counts half. */
export function musclesTable({ weeks }: PlanNumbers, words: Words): TableView {
  const muscles = [...new Set(weeks.flatMap((week) => [...week.muscles.keys()]))].sort();
  const isUsed = (side: Side) =>
    weeks.some((week) => [...week.muscles.values()].some((sets) => sets[side][1] > 0));
  const sides = SIDES.filter(isUsed);
  return {
    heading: words.say('clinic.muscles.heading'),
    columns: [
      words.say('clinic.muscles.muscle'),
      words.say('clinic.muscles.weeks'),
      ...sides.map((side) => words.say(`clinic.sides.${side}`)),
    ],
    rows: muscles.flatMap((muscle) => {
      const byWeek = weeks.map(({ week, muscles: sets }) => {
        const there = sets.get(muscle);
        return {
          week,
          value: there ? sides.map((side) => plainRange(there[side], 1, words)) : null,
        };
      });
      const head = words.look('muscles', muscle) ?? muscle;
      return runsOf(byWeek).map((run) => ({ head, cells: [weeksShown(run, words), ...run.value] }));
    }),
    none: words.say('clinic.muscles.none'),
  };
}
