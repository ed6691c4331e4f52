// The charts within the clinic copy: as pictures inside the page, each beside a table of its numbers.
import { HtmlValidate } from 'html-validate';
import { expect, it } from 'vitest';
import { renderClinic } from '../../src/render/pages/pages.ts';
import { clinicView } from '../../src/render/record/clinic-view.ts';
import { englishWords, findings, numbers, plan, practice } from '../render-pages/made-plan.ts';
import { madeView, shippedTemplates } from '../render-pages/made-sheet.ts';
import { numbersOf, plainWeek } from './made-weeks.ts';
import { marksOf } from './svg-marks.ts';

const view = clinicView({
  practice,
  plan,
  numbers,
  findings,
  sheet: madeView(),
  shortDay: null,
  sheetNumber: 'KP4T 7WQM',
  reading: null,
  words: englishWords(),
  sheetWords: englishWords(),
});

function pageOf(made: typeof view): string {
  const page = renderClinic(made, shippedTemplates());
  if (!page.ok) throw new Error(page.problem.message);
  return page.text;
}

const IMAGE = /<img class="chart" src="data:image\/svg\+xml;base64,([^"]+)" alt="([^"]+)">/g;

it('has three charts in the page, each with what it shows in words', () => {
  const images = [...pageOf(view).matchAll(IMAGE)];
  expect(images).toHaveLength(3);
  for (const [, data = '', alt = ''] of images) {
    const svg = Buffer.from(data.replaceAll('&#x3D;', '='), 'base64').toString('utf8');
    const title = marksOf(svg).find(({ name }) => name === 'title')?.text ?? '';
    expect(title.length).toBeGreaterThan(5);
    expect(alt).toContain(title);
  }
});

// 4.8 min: 2 sets of 8 repetitions of 6 s are 96 s a session, three times a week.
it('has the minutes of work as a table', () => {
  expect(view.work.columns).toEqual(['Week', 'left', 'right']);
  expect(view.work.rows).toEqual([
    { head: '1', cells: ['4.8–7.2', '4.8–7.2'] },
    { head: '2', cells: ['7.2–10.8', '4.8–7.2'] },
    { head: '3, easy', cells: ['4.8–7.2', '4.8–7.2'] },
  ]);
});

it('is valid where there is nothing to draw, and where not all is drawn', async () => {
  const nothing = { left: [0, 0], right: [0, 0], middle: [0, 0] } as const;
  const many = Object.fromEntries('abcdefghijklmno'.split('').map((id) => [id, plainWeek.work]));
  const made = [
    numbersOf([{ ...plainWeek, minutes: [0, 0], work: nothing, muscles: {} }]),
    numbersOf([{ ...plainWeek, muscles: many }]),
  ].map((one) =>
    clinicView({
      practice,
      plan,
      numbers: one,
      findings: [],
      sheet: madeView(),
      shortDay: null,
      sheetNumber: 'KP4T 7WQM',
      reading: null,
      words: englishWords(),
      sheetWords: englishWords(),
    }),
  );
  expect(made.map((one) => [...pageOf(one).matchAll(IMAGE)].length)).toEqual([0, 3]);
  expect(pageOf(made[1] as typeof view)).toContain('<p>3 more muscles stand in the table.</p>');
  const validator = new HtmlValidate({
    extends: ['html-validate:recommended'],
    rules: { 'long-title': 'off' },
  });
  for (const one of made) {
    const report = await validator.validateString(pageOf(one));
    expect(report.results.flatMap(({ messages }) => messages)).toEqual([]);
  }
});
