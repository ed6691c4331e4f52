// The charts of the clinic copy as pictures of the page, each with a heading and what it shows in words.
// The tables beside them hold the same numbers; what a chart draws is the chart's.
import type { PlanNumbers } from '../../compute/numbers.ts';
import type { PictureView } from '../sheet/sheet-view.ts';
import type { Words } from '../words/words.ts';
import { type Chart, minutesChart } from './minutes-chart.ts';
import { musclesChart } from './muscles-chart.ts';
import { workChart } from './work-chart.ts';

export interface ChartView {
  readonly heading: string;
  readonly drawing: PictureView;
  /** What is not drawn; null where all is. */
  readonly note: string | null;
}

/** Minutes a week, and work by side. */
export function weekCharts(numbers: PlanNumbers, words: Words): ChartView[] {
  return [minutesChart(numbers, words), workChart(numbers, words)].flatMap((chart) =>
    chart ? [chartView(chart, null, words)] : [],
  );
}

/** Weekly sets by muscle; none where no muscle has a set. */
export function muscleCharts(numbers: PlanNumbers, words: Words): ChartView[] {
  const chart = musclesChart(numbers, words);
  if (!chart) return [];
  const n = chart.undrawn;
  const note = n > 0 ? words.say('clinic.charts.undrawn', { n, count: String(n) }) : null;
  return [chartView(chart, note, words)];
}

function chartView(
  { name, title, description, svg }: Chart,
  note: string | null,
  words: Words,
): ChartView {
  return {
    heading: title,
    drawing: {
      picture: {
        file: `${name}.svg`,
        mediaType: 'image/svg+xml',
        bytes: new TextEncoder().encode(svg),
      },
      alt: words.say('clinic.charts.alt', { title, description }),
      caption: null,
    },
    note,
  };
}
