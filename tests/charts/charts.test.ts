// The charts of the clinic copy: that they are drawings which any reader takes, stay inside their frame,
// and are in proportion to the numbers.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlanNumbers } from '../../src/compute/numbers.ts';
import { muscleCharts, weekCharts } from '../../src/render/charts/clinic-charts.ts';
import { type Chart, minutesChart } from '../../src/render/charts/minutes-chart.ts';
import { musclesChart } from '../../src/render/charts/muscles-chart.ts';
import { workChart } from '../../src/render/charts/work-chart.ts';
import type { Words } from '../../src/render/words/words.ts';
import { englishWords, numbers } from '../render-pages/made-plan.ts';
import { madeWeeks, numbersOf, plainWeek, wordsWith } from './made-weeks.ts';
import { bars, drawn, extentOf, type Mark, marksOf } from './svg-marks.ts';

const words = englishWords();
const CHARTS = { minutes: minutesChart, work: workChart, muscles: musclesChart };
const allOf = (made: PlanNumbers, inWords: Words = words): Chart[] =>
  Object.values(CHARTS).flatMap((chart) => chart(made, inWords) ?? []);

/** The marks that are not whole within the frame that the root names. */
function outside(marks: readonly Mark[]): Mark[] {
  const frame = (marks[0]?.attributes.viewBox ?? '').split(' ').map(Number);
  const [, , right = 0, bottom = 0] = frame;
  expect(right).toBe(560);
  return marks.filter((mark) => {
    const box = extentOf(mark);
    if (!box) return false;
    const ends = [
      box.x,
      box.y,
      box.width,
      box.height,
      right - box.x - box.width,
      bottom - box.y - box.height,
    ];
    // Two decimals, rounded twice.
    return !ends.every((end) => end >= -0.011);
  });
}

describe('the charts of a small plan', () => {
  it.each(['minutes', 'work', 'muscles'] as const)('%s, as drawn before', async (name) => {
    const chart = CHARTS[name](numbers, words);
    await expect(chart?.svg).toMatchFileSnapshot(`golden/${name}.svg`);
  });
});

describe('any chart', () => {
  it('is well-formed XML with nothing outside its frame, whatever the numbers', () => {
    const readings = [wordsWith('ltr'), wordsWith('rtl')];
    let drawings = 0;
    fc.assert(
      fc.property(madeWeeks, fc.constantFrom(...readings), (weeks, inWords) => {
        for (const { svg } of allOf(numbersOf(weeks), inWords)) {
          drawings += 1;
          expect(svg).not.toMatch(/NaN|Infinity|undefined|\de[+-]\d/);
          expect(outside(marksOf(svg))).toEqual([]);
        }
      }),
      { numRuns: 100 },
    );
    expect(drawings).toBeGreaterThan(100);
  });

  it('is the same bytes for the same numbers', () => {
    fc.assert(
      fc.property(madeWeeks, (weeks) => {
        const svgs = () => allOf(numbersOf(weeks)).map(({ svg }) => svg);
        expect(svgs()).toEqual(svgs());
      }),
      { numRuns: 30 },
    );
  });

  it('has black, white and stripes, and no other colour', () => {
    for (const { svg } of allOf(numbers)) {
      const paints = [...svg.matchAll(/ (?:fill|stroke)="([^"]*)"/g)].map((match) => match[1]);
      expect(paints.length).toBeGreaterThan(5);
      for (const paint of paints)
        expect(['black', 'white', 'none', 'url(#striped)']).toContain(paint);
    }
  });

  it('says what it is in the words of the pack', () => {
    const own = wordsWith('ltr', { minutes: 'Minuten', muscles: 'Sätze' });
    const minutes = drawn(minutesChart(numbers, own));
    expect(minutes[0]?.attributes).toMatchObject({
      role: 'img',
      'xml:lang': 'en',
      direction: 'ltr',
    });
    expect(minutes.find(({ name }) => name === 'title')?.text).toBe('Minuten');
    expect(minutes.find(({ name }) => name === 'desc')?.text).toBe(
      'Week 1: 15.9–22.3 minutes; week 3: 15.9–22.3. Most: 21.3–28.9, in week 2. Easy: week 3.',
    );
    expect(drawn(musclesChart(numbers, own)).find(({ name }) => name === 'title')?.text).toBe(
      'Sätze',
    );
  });

  it('takes any text as text', () => {
    const nasty = `</text><script>x</script>&"' ]]>\u0000\u0007\uD800\uFFFE`;
    const own = wordsWith('ltr', { easy: nasty, 'easy-week': nasty, minutes: nasty });
    const made = numbersOf([{ ...plainWeek, isEasy: true }, plainWeek]);
    for (const { svg } of allOf(made, own)) {
      expect(svg).not.toContain('<script');
      expect(() => marksOf(svg)).not.toThrow();
    }
    expect(minutesChart(made, own)?.svg).toContain('&lt;script&gt;x&lt;/script&gt;&amp;&quot;');
  });

  it('is the mirror image where reading starts at the right', () => {
    const [left, right] = (['ltr', 'rtl'] as const).map((direction) =>
      drawn(minutesChart(numbers, wordsWith(direction))),
    );
    expect(right?.[0]?.attributes.direction).toBe('rtl');
    const [there = [], mirrored = []] = [left, right].map((marks = []) => bars(marks, 'black'));
    expect(there).toHaveLength(2);
    for (const [i, bar] of there.entries()) {
      expect(mirrored[i]).toEqual({ ...bar, x: expect.closeTo(560 - bar.x - bar.width, 1) });
    }
  });
});

it('tells a person who cannot see a chart what it shows', () => {
  const alts = [...weekCharts(numbers, words), ...muscleCharts(numbers, words)].map(
    ({ drawing }) => drawing.alt,
  );
  expect(alts).toEqual([
    'Minutes a week. Week 1: 15.9–22.3 minutes; week 3: 15.9–22.3. Most: 21.3–28.9, in week 2. Easy: week 3. The table has all the numbers.',
    'Minutes of work a week, by side. left: 4.8–7.2 minutes in week 1, 4.8–7.2 in week 3. right: 4.8–7.2 minutes in week 1, 4.8–7.2 in week 3. The table has all the numbers.',
    'Sets a week by muscle and side, first week to last. In order of sets: soleus, tibialis posterior. Most: soleus, left, 9 in week 2. The table has all the numbers.',
  ]);
});
