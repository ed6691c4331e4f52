// The legend over a chart: each kind of mark with its word, in as many lines as they need.
import { CHART_WIDTH, type Pen, type Point, textWidth } from './chart.ts';

export interface LegendEntry {
  readonly words: string;
  /** The mark, around a middle. */
  readonly mark: (middle: Point) => readonly string[];
}

const LINE = 18;
const MARK = 24;
const GAP = 18;

/** The marks, and how high they are together. */
export function legend(
  pen: Pen,
  entries: readonly LegendEntry[],
  start: number,
): { readonly marks: readonly string[]; readonly height: number } {
  const marks: string[] = [];
  let x = start;
  let y = LINE - 5;
  for (const { words, mark } of entries) {
    const width = MARK + textWidth(words);
    if (x > start && x + width > CHART_WIDTH) {
      x = start;
      y += LINE;
    }
    marks.push(...mark([x + MARK / 2 - 4, y - 4]), pen.text([x + MARK, y], words, 'start'));
    x += width + GAP;
  }
  return { marks, height: y + 5 };
}

/** What the bars of a week mean, for every chart that has them. */
export function barLegend(
  pen: Pen,
  words: { readonly least: string; readonly most: string; readonly easyWeek: string },
  has: { readonly range: boolean; readonly easy: boolean },
): LegendEntry[] {
  const entry = (text: string, fill: 'black' | 'white' | 'striped'): LegendEntry => ({
    words: text,
    mark: ([x, y]) => [pen.box(x - 8, y - 5, 16, 10, { fill })],
  });
  return [
    ...(has.range ? [entry(words.least, 'black'), entry(words.most, 'striped')] : []),
    ...(has.easy ? [entry(words.easyWeek, 'white')] : []),
  ];
}
