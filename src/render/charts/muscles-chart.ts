// Weekly sets by muscle as a chart: a small row of bars a muscle and side, all to one scale, the number
// of the first week before it and that of the last week after it. The muscles with most sets come first,
// and only as many as a page has room for; all of them stand in the table.
import type { PlanNumbers, WeekNumbers } from '../../compute/numbers.ts';
import { midpoint, ZERO } from '../../units/interval.ts';
import { SIDES } from '../../units/side.ts';
import { plainRange } from '../words/plain-number.ts';
import type { Words } from '../words/words.ts';
import { type Pen, penFor, svgText, textWidth } from './chart.ts';
import { barLegend, legend } from './chart-legend.ts';
import { weekBar, weekColumns } from './chart-weeks.ts';
import { barWords, type Chart } from './minutes-chart.ts';
import { type MuscleRow, muscleRows } from './muscle-rows.ts';
import { nameOf, type Strip, stripsOf } from './muscle-strips.ts';

export interface MusclesChart extends Chart {
  /** How many muscles of the table are not drawn. */
  readonly undrawn: number;
}

const MOST_ROWS = 12;
const ROW = 27;
const TALLEST_BAR = 21;
const HEADING = 40;

/** Null where no muscle has a set. */
export function musclesChart({ weeks }: PlanNumbers, words: Words): MusclesChart | null {
  const all = muscleRows(weeks);
  if (all.length === 0) return null;
  const rows = all.slice(0, MOST_ROWS);
  const pen = penFor(words.direction);
  const sets = rows.flatMap((row) => SIDES.flatMap((side) => row.sets[side]));
  const strips = stripsOf(rows, words);
  const isRange = sets.some(([low, high]) => low < high);
  const isEasy = weeks.some((week) => week.isEasy);
  const key = legend(pen, barLegend(pen, barWords(words), { range: isRange, easy: isEasy }), 0);
  const most = Math.max(...sets.map(([, high]) => high));
  const feet = rows.map((_, r) => key.height + HEADING + (r + 1) * ROW);
  const marks = rows.flatMap((row, r) =>
    rowMarks(pen, row, strips, { weeks, most, foot: feet[r] ?? 0 }, words),
  );
  const title = words.say('clinic.charts.muscles');
  const description = rowsInWords(rows, strips, words);
  const { language, direction } = words;
  const sheet = { language, direction, title, description, height: (feet.at(-1) ?? 0) + 6 };
  const heads = strips.flatMap((strip) =>
    stripHeading(pen, strip, key.height, weeks.length, words),
  );
  const svg = svgText(sheet, [...key.marks, ...heads, ...marks]);
  return { name: 'muscles', title, description, svg, undrawn: all.length - rows.length };
}

/** The side over its bars, and the first and the last week over their numbers. */
function stripHeading(
  pen: Pen,
  { name, whole }: Strip,
  top: number,
  last: number,
  words: Words,
): string[] {
  const [from, to] = whole;
  const week = (n: number) => words.say('clinic.charts.week', { week: String(n) });
  const isRoom = textWidth(week(1)) + textWidth(week(last)) < to - from;
  const named = isRoom ? week : String;
  return [
    pen.text([(from + to) / 2, top + 15], name, 'middle', true),
    pen.text([from, top + 31], named(1), 'start'),
    ...(last > 1 ? [pen.text([to, top + 31], named(last), 'end')] : []),
    pen.line([from, top + 35], [to, top + 35], { line: 0.5 }),
  ];
}

interface RowPlace {
  readonly weeks: readonly WeekNumbers[];
  readonly most: number;
  readonly foot: number;
}

function rowMarks(
  pen: Pen,
  row: MuscleRow,
  strips: readonly Strip[],
  { weeks, most, foot }: RowPlace,
  words: Words,
): string[] {
  const scale = { at: (sets: number) => foot - (TALLEST_BAR * sets) / most };
  const inStrip = ({ side, bars: [from, to], label }: Strip) => {
    const sets = row.sets[side];
    const columns = weekColumns(weeks.length, from, to);
    return [
      pen.text([from - 4, foot - 4], label(sets[0]), 'end'),
      pen.line([from, foot], [to, foot], { line: 0.7 }),
      ...weeks.flatMap(({ isEasy }, i) =>
        weekBar(pen, [columns.middle(i), columns.step], sets[i] ?? ZERO, isEasy, scale),
      ),
      pen.text([to + 4, foot - 4], label(sets.at(-1)), 'start'),
    ];
  };
  return [pen.text([0, foot - 4], nameOf(row, words), 'start'), ...strips.flatMap(inStrip)];
}

/** Which muscles are drawn, and the most sets that any has in a week. */
function rowsInWords(rows: readonly MuscleRow[], strips: readonly Strip[], words: Words): string {
  const cells = rows.flatMap((row) =>
    strips.flatMap(({ side, name }) =>
      row.sets[side].map((sets, i) => ({ row, name, sets, week: i + 1 })),
    ),
  );
  const most = cells.reduce((top, one) => (midpoint(one.sets) > midpoint(top.sets) ? one : top));
  const muscles = rows.map((row) => nameOf(row, words)).join(', ');
  return [
    words.say('clinic.charts.muscles-drawn', { muscles }),
    words.say('clinic.charts.muscles-most', {
      muscle: nameOf(most.row, words),
      side: most.name,
      sets: plainRange(most.sets, 1, words),
      week: String(most.week),
    }),
  ].join(' ');
}
