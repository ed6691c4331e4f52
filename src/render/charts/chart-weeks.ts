// The weeks along the foot of a chart, in the direction of reading: a column a week, as many numbers
// as there is room for, and the word for an easy week. And the bar of a week: black to the low end,
// striped on to the high end; in an easy week open to the low end.
import type { Interval } from '../../units/interval.ts';
import { CHART_WIDTH, type Pen, textWidth } from './chart.ts';
import type { Scale } from './chart-scale.ts';

export interface ChartWeek {
  readonly week: number;
  readonly isEasy: boolean;
}

export interface WeekColumns {
  readonly step: number;
  /** The x in the middle of a week's column, the first week being 0. */
  readonly middle: (at: number) => number;
}

export function weekColumns(count: number, start: number, end: number): WeekColumns {
  const step = (end - start) / Math.max(1, count);
  return { step, middle: (at) => start + (at + 0.5) * step };
}

const WIDEST_BAR = 44;
const SHARE_OF_COLUMN = 0.66;

/** The bar of a week. */
export function weekBar(
  pen: Pen,
  [x, step]: readonly [middle: number, step: number],
  [low, high]: Interval,
  isEasy: boolean,
  scale: Pick<Scale, 'at'>,
): string[] {
  const width = Math.min(WIDEST_BAR, step * SHARE_OF_COLUMN);
  const line = Math.min(1, width / 4);
  const box = (from: number, to: number, fill: 'black' | 'white' | 'striped') =>
    pen.box(x - width / 2, scale.at(to), width, scale.at(from) - scale.at(to), { fill, line });
  return [
    ...(low > 0 ? [box(0, low, isEasy ? 'white' : 'black')] : []),
    ...(high > low ? [box(low, high, 'striped')] : []),
  ];
}

const FIRST_LINE = 16;
const SECOND_LINE = 30;

/** Numbers of weeks below the columns, and the word for easy ones below that. */
export function weekMarks(
  pen: Pen,
  weeks: readonly ChartWeek[],
  columns: WeekColumns,
  foot: number,
  words: { readonly week: string; readonly easy: string },
): string[] {
  const marks = [pen.text([columns.middle(-0.5) - 6, foot + FIRST_LINE], words.week, 'end')];
  const widest = textWidth(String(weeks.length)) + 4;
  const every = [1, 2, 4].find((one) => one * columns.step >= widest) ?? 8;
  let free = 0;
  for (const [i, { week, isEasy }] of weeks.entries()) {
    const x = columns.middle(i);
    if (i % every === 0) marks.push(pen.text([x, foot + FIRST_LINE], String(week), 'middle'));
    if (!isEasy) continue;
    const half = textWidth(words.easy) / 2;
    const at = Math.min(x, CHART_WIDTH - half);
    // The open bar says it too, where two easy weeks leave no room for two words.
    if (at - half < free) continue;
    marks.push(pen.text([at, foot + SECOND_LINE], words.easy, 'middle'));
    free = at + half + 4;
  }
  return marks;
}
