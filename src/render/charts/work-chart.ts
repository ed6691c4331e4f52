// Minutes of work a week by side as a chart: a mark of its own kind for each side at the middle of its
// range, a line from low to high end, and the marks of a side joined. The same numbers stand in the table.
import type { PlanNumbers, WeekNumbers } from '../../compute/numbers.ts';
import { type Interval, isSame, midpoint } from '../../units/interval.ts';
import { SIDES, type Side } from '../../units/side.ts';
import { minutesOf, plainNumber, plainRange } from '../words/plain-number.ts';
import type { Words } from '../words/words.ts';
import { CHART_WIDTH, type Pen, type Point, penFor, svgText } from './chart.ts';
import { type LegendEntry, legend } from './chart-legend.ts';
import { type Scale, scaleMarks, scaleTo } from './chart-scale.ts';
import { weekColumns, weekMarks } from './chart-weeks.ts';
import { axisWords, type Chart, chartStart } from './minutes-chart.ts';

interface Course {
  readonly name: string;
  readonly look: Side;
  /** By week, in minutes. */
  readonly minutes: readonly Interval[];
}

const PLOT = 130;
const ABOVE = 12;
const BELOW = 38;
const DASHES: Readonly<Record<Side, string | undefined>> = {
  left: undefined,
  right: '6 3',
  middle: '1.5 2.5',
};

/** Null where no side does any work that is counted in time. */
export function workChart({ weeks }: PlanNumbers, words: Words): Chart | null {
  const courses = coursesOf(weeks, words);
  if (courses.length === 0) return null;
  const pen = penFor(words.direction);
  const start = chartStart(words);
  const columns = weekColumns(weeks.length, start, CHART_WIDTH);
  const key = legend(pen, legendEntries(pen, courses, words), start);
  const head = key.height + ABOVE;
  const most = Math.max(...courses.flatMap(({ minutes }) => minutes.map(([, high]) => high)));
  const scale = scaleTo(most, head + PLOT, head);
  const apart = Math.min(14, columns.step * 0.26);
  const marks = [
    ...key.marks,
    ...scaleMarks(pen, scale, [start, CHART_WIDTH], (n) => plainNumber(n, 2, words)),
    ...courses.flatMap((course, i) => {
      const aside = (i - (courses.length - 1) / 2) * apart;
      const places = weeks.map((_, at) => columns.middle(at) + aside);
      return courseMarks(pen, course, places, scale, Math.min(3.6, columns.step * 0.2));
    }),
    ...weekMarks(pen, weeks, columns, scale.foot, axisWords(words)),
  ];
  const title = words.say('clinic.work.heading');
  const description = courses.map((course) => courseInWords(course, words)).join(' ');
  const { language, direction } = words;
  const height = scale.foot + BELOW;
  const svg = svgText({ language, direction, title, description, height }, marks);
  return { name: 'work', title, description, svg };
}

/** A course for each side that does any work; left and right share one where they never differ. */
function coursesOf(weeks: readonly WeekNumbers[], words: Words): Course[] {
  const isEven = weeks.every(({ left, right }) => isSame(left.workMs, right.workMs));
  return SIDES.filter((side) => !(isEven && side === 'right'))
    .map((side) => ({
      name: words.say(`clinic.sides.${isEven && side === 'left' ? 'each' : side}`),
      look: side,
      minutes: weeks.map((week) => minutesOf(week[side].workMs)),
    }))
    .filter(({ minutes }) => minutes.some(([, high]) => high > 0));
}

function courseMarks(
  pen: Pen,
  { look, minutes }: Course,
  places: readonly number[],
  scale: Scale,
  radius: number,
): string[] {
  const dashes = DASHES[look];
  const middles = minutes.map((one, i): Point => [places[i] ?? 0, scale.at(midpoint(one))]);
  return [
    ...(middles.length > 1 ? [pen.path(middles, { line: 1, ...(dashes && { dashes }) })] : []),
    ...minutes.flatMap(([low, high], i) => {
      const x = places[i] ?? 0;
      const range = low < high ? rangeMarks(pen, x, scale.at(low), scale.at(high), radius) : [];
      return [...range, sideMark(pen, look, middles[i] as Point, radius)];
    }),
  ];
}

/** A line from end to end, closed at both, so that it shows where the mark covers most of it. */
function rangeMarks(pen: Pen, x: number, low: number, high: number, radius: number): string[] {
  const end = (y: number) => pen.line([x - radius, y], [x + radius, y], { line: 1 });
  return [pen.line([x, low], [x, high], { line: 1 }), end(low), end(high)];
}

function sideMark(pen: Pen, side: Side, [x, y]: Point, radius: number): string {
  if (side === 'middle') {
    return pen.box(x - radius, y - radius, 2 * radius, 2 * radius, { fill: 'striped' });
  }
  const fill = side === 'left' ? 'black' : 'white';
  return pen.dot([x, y], radius, { fill, line: 1.4 });
}

function legendEntries(pen: Pen, courses: readonly Course[], words: Words): LegendEntry[] {
  const sides = courses.map(({ name, look }) => ({
    words: name,
    mark: (at: Point) => {
      const dashes = DASHES[look];
      const [x, y] = at;
      return [
        pen.line([x - 12, y], [x + 12, y], { line: 1, ...(dashes && { dashes }) }),
        sideMark(pen, look, at, 3.6),
      ];
    },
  }));
  const isRange = courses.some(({ minutes }) => minutes.some(([low, high]) => low < high));
  const range = {
    words: words.say('clinic.charts.range'),
    mark: ([x, y]: Point) => rangeMarks(pen, x, y + 6, y - 6, 4),
  };
  return [...sides, ...(isRange ? [range] : [])];
}

function courseInWords({ name, minutes }: Course, words: Words): string {
  const shown = (at: number) => plainRange(minutes[at] as Interval, 1, words);
  const last = minutes.length - 1;
  return words.say('clinic.charts.work-course', {
    side: name,
    first: shown(0),
    last: shown(last),
    week: String(last + 1),
  });
}
