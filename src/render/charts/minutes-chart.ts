// Minutes a week as a chart: a bar a week, low end to high end, easy weeks open. The same numbers stand
// in the table of weeks.
import type { PlanNumbers, WeekNumbers } from '../../compute/numbers.ts';
import { type Interval, midpoint } from '../../units/interval.ts';
import { minutesOf, plainNumber, plainRange } from '../words/plain-number.ts';
import type { Words } from '../words/words.ts';
import {
  CHART_WIDTH,
  FONT_SIZE,
  type Pen,
  type Point,
  penFor,
  svgText,
  textWidth,
} from './chart.ts';
import { barLegend, legend } from './chart-legend.ts';
import { scaleMarks, scaleTo } from './chart-scale.ts';
import { weekBar, weekColumns, weekMarks } from './chart-weeks.ts';

/** A drawing and what it shows, in words. */
export interface Chart {
  readonly name: string;
  readonly title: string;
  readonly description: string;
  readonly svg: string;
}

const PLOT = 110;
const ABOVE = 22;
const BELOW = 38;
/** Under ten minutes a tenth counts. */
const FEW_MINUTES = 10;

/** Null where no week takes any time. */
export function minutesChart({ weeks }: PlanNumbers, words: Words): Chart | null {
  const minutes = weeks.map(({ ms }) => minutesOf(ms));
  const most = Math.max(...minutes.map(([, high]) => high));
  if (most === 0) return null;
  const pen = penFor(words.direction);
  const start = chartStart(words);
  const has = {
    range: minutes.some(([low, high]) => low < high),
    easy: weeks.some(({ isEasy }) => isEasy),
  };
  const key = legend(pen, barLegend(pen, barWords(words), has), start);
  const head = key.height + ABOVE;
  const scale = scaleTo(most, head + PLOT, head);
  const columns = weekColumns(weeks.length, start, CHART_WIDTH);
  const decimals = most < FEW_MINUTES ? 1 : 0;
  const labels = minutes.map((one) => plainRange(one, decimals, words));
  const isRoom = labels.every((label) => textWidth(label) < columns.step);
  const marks = [
    ...key.marks,
    ...scaleMarks(pen, scale, [start, CHART_WIDTH], (n) => plainNumber(n, 2, words)),
    ...weeks.flatMap(({ isEasy }, i) => {
      const one = minutes[i] as Interval;
      const label = barLabel(pen, labels[i] ?? '', [columns.middle(i), scale.at(one[1]) - 5]);
      return [
        ...weekBar(pen, [columns.middle(i), columns.step], one, isEasy, scale),
        ...(isRoom ? label : []),
      ];
    }),
    ...weekMarks(pen, weeks, columns, scale.foot, axisWords(words)),
  ];
  const title = words.say('clinic.charts.minutes');
  const description = minutesInWords(weeks, minutes, words);
  const { language, direction } = words;
  const height = scale.foot + BELOW;
  const svg = svgText({ language, direction, title, description, height }, marks);
  return { name: 'minutes', title, description, svg };
}

/** A number over its bar, on white, so that no line of the scale runs through it. */
function barLabel(pen: Pen, label: string, [x, y]: Point): string[] {
  const width = textWidth(label);
  return [
    pen.box(x - width / 2, y - FONT_SIZE + 2, width, FONT_SIZE, { fill: 'white', line: 0 }),
    pen.text([x, y], label, 'middle'),
  ];
}

/** Where the columns of a chart over the weeks begin: beside the numbers and the word for a week. */
export function chartStart(words: Words): number {
  return Math.min(120, Math.max(40, textWidth(axisWords(words).week) + 8));
}

export function axisWords(words: Words): { readonly week: string; readonly easy: string } {
  return { week: words.say('clinic.weeks.week'), easy: words.say('clinic.charts.easy') };
}

export function barWords(words: Words) {
  const [least, most, easyWeek] = ['least', 'most', 'easy-week'].map((key) =>
    words.say(`clinic.charts.${key}`),
  ) as [string, string, string];
  return { least, most, easyWeek };
}

function minutesInWords(
  weeks: readonly WeekNumbers[],
  minutes: readonly Interval[],
  words: Words,
): string {
  const shown = (at: number) => plainRange(minutes[at] as Interval, 1, words);
  const last = weeks.length - 1;
  const most = minutes.reduce(
    (at, one, i) => (midpoint(one) > midpoint(minutes[at] as Interval) ? i : at),
    0,
  );
  const easy = weeks.filter(({ isEasy }) => isEasy).map(({ week }) => String(week));
  return [
    words.say('clinic.charts.minutes-course', {
      first: shown(0),
      last: shown(last),
      week: String(last + 1),
    }),
    words.say('clinic.charts.minutes-most', { most: shown(most), week: String(most + 1) }),
    ...(easy.length > 0
      ? [words.say('clinic.charts.easy-weeks', { n: easy.length, weeks: easy.join(', ') })]
      : []),
  ].join(' ');
}
