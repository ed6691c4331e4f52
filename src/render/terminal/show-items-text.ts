// The items of a plan for `carryover show`: for each session its parts, for each item the weeks in which
// nothing changes, with level, sides, dose and seconds. The numbers come computed.
import type {
  ItemWeek,
  PartWeek,
  PlanNumbers,
  SideWork,
  WeekNumbers,
} from '../../compute/numbers.ts';
import type { Item, Part, Session } from '../../model/plan.ts';
import { milliseconds } from '../../units/duration.ts';
import { scaled } from '../../units/interval.ts';
import { SIDES } from '../../units/side.ts';
import { doseInShort, durationInShort, roundedRange } from './dose-in-short.ts';
import { brokenAtCommas, type Screen } from './terminal-text.ts';
import { type TextColumn, type TextRow, tableText } from './text-table.ts';
import { type WeekStretch, weekStretches } from './week-stretches.ts';

const COLUMNS: readonly TextColumn[] = [
  { heading: 'Weeks', align: 'left' },
  { heading: 'Level', align: 'left' },
  { heading: 'Sides', align: 'left' },
  { heading: 'Dose of a side', align: 'left' },
  { heading: 'Seconds', align: 'right' },
];
const INDENT = 4;
const BLANK: TextRow = { line: '', indent: 0 };
const MS_PER_SECOND = 1000;

/** One session's items as a table; numbers are for one time through the session. */
export function sessionItemsText({ weeks }: PlanNumbers, session: Session, screen: Screen): string {
  const rows = session.parts.flatMap((part, i): TextRow[] => [
    ...(i === 0 ? [] : [BLANK]),
    { line: { text: partLine(weeks, session, part), paint: screen.paint.bold }, indent: 0 },
    ...part.items.flatMap((item) => itemRows(weeks, session, part, item)),
  ]);
  return tableText({ columns: COLUMNS, rows, indent: INDENT }, screen);
}

function partIn(week: WeekNumbers, session: Session, part: Part): PartWeek | undefined {
  return week.sessions
    .find((there) => there.session === session)
    ?.parts.find((there) => there.part === part);
}

/** `strength, Strength circuit: 2 rounds, 90 s between them (weeks 1-3, 5-6); 1 round (week 4 easy)`. */
function partLine(weeks: readonly WeekNumbers[], session: Session, part: Part): string {
  const names = new Set(weeks.map((week) => partIn(week, session, part)?.name).filter(Boolean));
  const title = [part.kind, ...names].join(', ');
  const rounds = byWeek(
    weekStretches(weeks, (week) => {
      const there = partIn(week, session, part);
      return there ? roundsOf(there) : null;
    }),
    'no circuit',
  );
  return rounds === '' ? title : `${title}: ${rounds}`;
}

/** What holds in every week, or each thing that holds with its weeks; empty where nothing ever does. */
function byWeek(stretches: readonly WeekStretch<string>[], none: string): string {
  const labels = new Map<string, string[]>();
  for (const { label, value } of stretches)
    labels.set(value, [...(labels.get(value) ?? []), label]);
  if (labels.size < 2) return [...labels.keys()].join('');
  return [...labels].map(([value, spans]) => `${value || none} (${inWeeks(spans)})`).join('; ');
}

function inWeeks(spans: readonly string[]): string {
  const isOne = spans.length === 1 && !spans[0]?.includes('-');
  return `${isOne ? 'week' : 'weeks'} ${spans.join(', ')}`;
}

function roundsOf({ rounds, restBetweenRoundsMs }: PartWeek): string {
  if (rounds === null) return '';
  if (rounds === 1) return '1 round';
  return `${rounds} rounds, ${durationInShort(milliseconds(restBetweenRoundsMs))} between them`;
}

function itemRows(
  weeks: readonly WeekNumbers[],
  session: Session,
  part: Part,
  item: Item,
): TextRow[] {
  const inWeek = (week: WeekNumbers) => {
    const there = partIn(week, session, part);
    const shown = there?.items.find((one) => one.item === item);
    return there && shown ? { shown, isCircuit: there.rounds !== null } : null;
  };
  const turns = weekStretches(weeks, (week) => {
    const there = inWeek(week);
    return there && turnsOf(there.shown);
  });
  const rows = weekStretches(weeks, (week) => {
    const there = inWeek(week);
    return there && sideRows(there.shown, there.isCircuit);
  }).flatMap(({ label, value }) => value.map((cells, i) => [i === 0 ? label : '', ...cells]));
  const heading = [`${item.id}: ${item.exercise.name}`, byWeek(turns, 'each-set')];
  return [
    { line: heading.filter((text) => text !== '').join('; '), indent: 2 },
    ...(rows.length > 0 ? rows : [{ line: 'In no week.', indent: INDENT }]),
  ];
}

/** How the sides take turns, where that is not the usual set by set. */
function turnsOf({ sides, order, left, right }: ItemWeek): string {
  return sides === 'each' && left && right && order !== 'each-set' ? order : '';
}

/** One row where the sides do the same or only one does anything, else one a side. */
function sideRows(item: ItemWeek, isCircuit: boolean): string[][] {
  const level = item.level.id;
  const seconds = roundedRange(scaled(item.ms, 1 / MS_PER_SECOND), 0);
  const doses = SIDES.flatMap((side) => {
    const work: SideWork | null = item[side];
    return work ? [{ side, dose: brokenAtCommas(doseInShort(work.dose, isCircuit)) }] : [];
  });
  const [first, second] = doses;
  if (!first) return [];
  if (!second) {
    const sides = item.sides === 'middle' ? 'middle' : `${first.side} only`;
    return [[level, sides, first.dose, seconds]];
  }
  if (first.dose === second.dose) return [[level, item.sides, first.dose, seconds]];
  return [
    [level, first.side, first.dose, seconds],
    ['', second.side, second.dose, ''],
  ];
}
