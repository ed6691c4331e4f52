// What each chart shows of the numbers: bars in proportion, easy weeks, sides, the muscles that are drawn.
import { describe, expect, it } from 'vitest';
import { muscleCharts } from '../../src/render/charts/clinic-charts.ts';
import { minutesChart } from '../../src/render/charts/minutes-chart.ts';
import { musclesChart } from '../../src/render/charts/muscles-chart.ts';
import { workChart } from '../../src/render/charts/work-chart.ts';
import { englishWords } from '../render-pages/made-plan.ts';
import { type MadeWeek, numbersOf, plainWeek } from './made-weeks.ts';
import { type Box, bars, drawn, type Mark, textsOf } from './svg-marks.ts';

const words = englishWords();

describe('minutes a week', () => {
  it('has bars in proportion, from the same foot: to the low end, and on to the high end', () => {
    const ends = [
      [10, 20],
      [20, 40],
      [40, 50],
      [80, 100],
    ] as const;
    const made = numbersOf(ends.map((minutes) => ({ ...plainWeek, minutes })));
    const marks = drawn(minutesChart(made, words));
    const [low, high] = [bars(marks, 'black'), bars(marks, 'url(#striped)')];
    expect(low).toHaveLength(4);
    expect(high).toHaveLength(4);
    const unit = (low[0] as Box).height / 10;
    expect(unit).toBeGreaterThan(1);
    for (const [i, [least, most]] of ends.entries()) {
      const [below, above] = [low[i] as Box, high[i] as Box];
      expect(below.height).toBeCloseTo(unit * least, 1);
      expect(above.height).toBeCloseTo(unit * (most - least), 1);
      expect(above.y + above.height).toBeCloseTo(below.y, 1);
      expect(below.y + below.height).toBeCloseTo((low[0] as Box).y + (low[0] as Box).height, 1);
      expect(above.x).toBe(below.x);
    }
  });

  it('leaves the bar of an easy week open, and says easy below it', () => {
    const marks = drawn(
      minutesChart(numbersOf([plainWeek, { ...plainWeek, isEasy: true }]), words),
    );
    const [open] = bars(marks, 'white');
    expect(bars(marks, 'black')).toHaveLength(1);
    const easy = marks.find(({ text }) => text === 'easy');
    expect(Number(easy?.attributes.x)).toBeCloseTo((open?.x ?? 0) + (open?.width ?? 0) / 2, 1);
    expect(textsOf(marks)).toContain('easy week');
    expect(textsOf(drawn(minutesChart(numbersOf([plainWeek]), words)))).not.toContain('easy week');
  });

  it('says the minutes over each bar where there is room for all', () => {
    const of = (count: number) =>
      textsOf(drawn(minutesChart(numbersOf(Array(count).fill(plainWeek)), words)));
    expect(of(8).filter((text) => text === '60–80')).toHaveLength(8);
    expect(of(30)).not.toContain('60–80');
  });

  it('is not drawn where no week takes time', () => {
    expect(minutesChart(numbersOf([{ ...plainWeek, minutes: [0, 0] }]), words)).toBeNull();
  });
});

describe('work by side', () => {
  const heights = (marks: readonly Mark[], fill: string) =>
    marks
      .filter(({ name, attributes }) => name === 'circle' && attributes.fill === fill)
      .map(({ attributes }) => Number(attributes.cy))
      .slice(1);

  it('has a mark of its own for each side, as high as the middle of its range', () => {
    const week = (left: number, right: number): MadeWeek => ({
      ...plainWeek,
      work: { left: [left, left + 10], right: [right, right + 10], middle: [30, 30] },
    });
    const marks = drawn(workChart(numbersOf([week(15, 5), week(75, 25)]), words));
    const [one = 0, two = 0] = heights(marks, 'black');
    const [three = 0, four = 0] = heights(marks, 'white');
    expect((one - two) / (three - four)).toBeCloseTo(3, 1);
    expect((one - two) / (three - one)).toBeCloseTo(6, 1);
    expect(textsOf(marks)).toEqual(expect.arrayContaining(['left', 'right', 'middle']));
  });

  it('has one course for left and right where they never differ', () => {
    const work: MadeWeek['work'] = { left: [9, 9], right: [9, 9], middle: [0, 0] };
    const texts = textsOf(drawn(workChart(numbersOf([{ ...plainWeek, work }]), words)));
    expect(texts).toContain('left and right, each');
    expect(texts).not.toContain('right');
    expect(texts).not.toContain('middle');
  });

  it('is not drawn where no side works', () => {
    const work: MadeWeek['work'] = { left: [0, 0], right: [0, 0], middle: [0, 0] };
    expect(workChart(numbersOf([{ ...plainWeek, work }]), words)).toBeNull();
  });
});

describe('sets by muscle', () => {
  const sets = (left: number, right: number) =>
    ({ left: [left, left], right: [right, right], middle: [0, 0] }) as const;

  it('has the muscle with most sets first, all to one scale, with first and last number', () => {
    const muscles = { hamstrings: sets(2, 1), soleus: sets(16, 8) };
    const later = { hamstrings: sets(4, 1), soleus: sets(20, 8) };
    const marks = drawn(
      musclesChart(
        numbersOf([
          { ...plainWeek, muscles },
          { ...plainWeek, muscles: later },
        ]),
        words,
      ),
    );
    expect(textsOf(marks)).toEqual([
      ...['left', 'week 1', 'week 2', 'right', 'week 1', 'week 2'],
      ...['soleus', '16', '20', '8', '8', 'hamstrings', '2', '4', '1', '1'],
    ]);
    const drawnBars = bars(marks, 'black').map(({ height }) => height);
    const unit = Math.max(...drawnBars) / 20;
    for (const [i, n] of [16, 20, 8, 8, 2, 4, 1, 1].entries())
      expect(drawnBars[i]).toBeCloseTo(unit * n, 1);
  });

  it('draws twelve at the most, and says how many more stand in the table', () => {
    const of = (count: number) =>
      numbersOf([
        {
          ...plainWeek,
          muscles: Object.fromEntries(
            'abcdefghijklmno'
              .slice(0, count)
              .split('')
              .map((id, i) => [id, sets(i + 1, 1)]),
          ),
        },
      ]);
    const [view] = muscleCharts(of(15), words);
    expect(view?.note).toBe('3 more muscles stand in the table.');
    const texts = textsOf(drawn(musclesChart(of(15), words)));
    expect(texts).toContain('d');
    expect(texts).not.toContain('c');
    expect(muscleCharts(of(13), words)[0]?.note).toBe('1 more muscle stands in the table.');
    expect(muscleCharts(of(12), words)[0]?.note).toBeNull();
  });

  it('is not drawn where no muscle has a set', () => {
    expect(
      muscleCharts(numbersOf([{ ...plainWeek, muscles: { soleus: sets(0, 0) } }]), words),
    ).toEqual([]);
  });
});
