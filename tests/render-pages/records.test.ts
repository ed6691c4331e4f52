import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { renderClinic, renderIndex } from '../../src/render/pages/pages.ts';
import type { Page } from '../../src/render/pages/template.ts';
import { clinicView } from '../../src/render/record/clinic-view.ts';
import { indexView } from '../../src/render/record/index-view.ts';
import { runsOf } from '../../src/render/record/table-view.ts';
import { englishWords, findings, numbers, plan, practice } from './made-plan.ts';
import { madePage, madeView, shippedTemplates } from './made-sheet.ts';

const templates = shippedTemplates();
const words = englishWords();
const validator = new HtmlValidate({
  extends: ['html-validate:recommended'],
  rules: { 'long-title': 'off' },
});

const madeClinic = () =>
  clinicView({
    practice,
    plan,
    numbers,
    findings,
    sheet: madeView(),
    shortDay: madePage().shortDay,
    sheetNumber: 'KP4T 7WQM',
    reading: null,
    words,
    sheetWords: words,
  });

const madeIndex = (today = '2026-10-20') =>
  indexView({
    practice,
    plans: [
      {
        plan: { ...plan, id: 'Z-1', nextVisit: null },
        numbers,
        findings: [],
        sheetNumber: 'CCCC CCCC',
      },
      { plan, numbers, findings, sheetNumber: 'KP4T 7WQM' },
    ],
    without: [
      { plan: 'B-2', title: 'Shoulder', why: 'It has 2 errors.' },
      { plan: 'A-1', title: null, why: 'It cannot be read.' },
    ],
    today,
    words,
  });

function textOf(page: Page): string {
  if (!page.ok)
    throw new Error(`${page.problem.template}:${page.problem.line} ${page.problem.message}`);
  return page.text;
}

describe('the clinic copy', () => {
  const view = madeClinic();

  it('is valid HTML and escapes what was written', async () => {
    const page = textOf(renderClinic(view, templates));
    const report = await validator.validateString(page);
    expect(report.results.flatMap((result) => result.messages)).toEqual([]);
    expect(page).toContain('back to &lt;hill&gt; walking');
    expect(page).toContain('A &lt;weight&gt; is needed.');
  });

  it('has the visits with found and why', () => {
    expect(view.visits.rows).toEqual([
      { head: '2026-09-21', cells: ['Limps & favours the right', '–'] },
      { head: '2026-10-05', cells: ['Walks without a limp', 'Ready for strength'] },
    ]);
  });

  // 318 s = 5.3 min and 446 s = 7.43 min a session; three of them 15.9 to 22.3 min.
  it('has minutes by session and week, and the change', () => {
    expect(view.weeks.columns).toHaveLength(6);
    expect(view.weeks.rows).toEqual([
      { head: '1', cells: ['2026-10-06', '5.3–7.4 × 3', '15.9–22.3', '–', '–'] },
      { head: '2', cells: ['2026-10-13', '7.1–9.6 × 3', '21.3–28.9', '+25 %', '+25 %'] },
      { head: '3, easy', cells: ['2026-10-20', '5.3–7.4 × 3', '15.9–22.3', '−20 %', '−20 %'] },
    ]);
  });

  it('has the numbers of each side, and which layer set each value', () => {
    const [one] = view.sessions[0]?.items ?? [];
    const rest =
      "practice's timing: pause 0 s; exercise: move 4 s, rest 60 s; level: reps 8–12, hold 2 s";
    expect(one?.table.rows).toEqual([
      {
        head: '1',
        cells: [
          'one-foot',
          'left and right, each',
          '2',
          '16–24',
          '32–48',
          '96–144',
          '72–108',
          `${rest}; plan, from week 2: sets 2; climb: load 4.5 kg`,
        ],
      },
      {
        head: '2',
        cells: [
          'one-foot',
          'left',
          '3',
          '24–36',
          '48–72',
          '144–216',
          '108–162',
          `${rest}; side override: sets 3; climb: load 4.5 kg`,
        ],
      },
      {
        head: '2',
        cells: [
          'one-foot',
          'right',
          '2',
          '16–24',
          '32–48',
          '96–144',
          '72–108',
          `${rest}; plan, from week 2: sets 2; climb: load 4.5 kg`,
        ],
      },
      {
        head: '3',
        cells: [
          'one-foot',
          'left and right, each',
          '2',
          '16–24',
          '32–48',
          '96–144',
          '72–108',
          `${rest}; climb: load 4.5 kg; easy week: sets 2`,
        ],
      },
    ]);
    expect(one?.whys).toEqual(['Sides differ: Left calf is catching up']);
  });

  it('has weekly sets by muscle and side, without a column for a side that has none', () => {
    expect(view.muscles.columns).toEqual(['Muscle', 'Weeks', 'left', 'right']);
    expect(view.muscles.rows).toContainEqual({ head: 'soleus', cells: ['2', '9', '6'] });
    expect(view.muscles.rows).toContainEqual({
      head: 'tibialis posterior',
      cells: ['2', '4.5', '3'],
    });
  });

  it('parts open findings from accepted ones, these with their reason', () => {
    expect(view.openFindings.rows).toEqual([
      {
        head: 'plans/M-0412.yaml:2',
        cells: [
          'warning',
          'long-session',
          'The session can take 26 minutes, 1 more than there is.',
        ],
      },
    ]);
    expect(view.acceptedFindings.rows).toEqual([
      {
        head: 'plans/M-0412.yaml:2',
        cells: ['warning', 'kit-missing', 'A <weight> is needed.', 'Has a bag of 4.5 kg'],
      },
    ]);
  });

  it('says so where there are no findings', () => {
    const none = clinicView({
      practice,
      plan,
      numbers,
      findings: [],
      sheet: madeView(),
      shortDay: null,
      sheetNumber: 'KP4T 7WQM',
      reading: null,
      words,
      sheetWords: words,
    });
    expect(textOf(renderClinic(none, templates)).match(/<p>None\.<\/p>/g)).toHaveLength(2);
  });

  it('says what the sheet says, later exercises with their condition', () => {
    const said = view.sheet.flatMap(({ sentences }) => sentences);
    expect(said).toContain('Call 999 at once if: You have chest pain, or trouble breathing');
    expect(
      said.some((one) =>
        one.startsWith('6. Heel raise: one foot · From Monday 2 November, only if'),
      ),
    ).toBe(true);
    expect(said).toContain(
      'If you have only 10 minutes: exercise 1, then one round of exercise 2.',
    );
  });
});

describe('weeks that are alike', () => {
  it('share a row only where they follow each other', () => {
    const weeks = ['a', 'a', null, 'a', 'b', 'b', 'a'].map((value, i) => ({ week: i + 1, value }));
    expect(runsOf(weeks)).toEqual([
      { first: 1, last: 2, value: 'a' },
      { first: 4, last: 4, value: 'a' },
      { first: 5, last: 6, value: 'b' },
      { first: 7, last: 7, value: 'a' },
    ]);
  });
});

describe('the list of handouts', () => {
  it('is valid HTML, with links to each page', async () => {
    const page = textOf(renderIndex(madeIndex(), templates));
    const report = await validator.validateString(page);
    expect(report.results.flatMap((result) => result.messages)).toEqual([]);
    for (const file of ['M-0412.html', 'M-0412.md', 'M-0412.clinic.html'])
      expect(page).toContain(`<a href="${file}">`);
    expect(page).toContain('As of 2026-10-20.');
  });

  it('has every order with every plan once', () => {
    const { orders } = madeIndex();
    const names = orders.map(({ plans }) => plans.map(({ name }) => name).sort());
    expect(orders.map(({ id }) => id)).toEqual([
      'by-code',
      'by-next-visit',
      'by-last-visit',
      'by-findings',
    ]);
    for (const one of names) expect(one).toEqual(names[0]);
  });

  it('says where a plan stands, in order of code', () => {
    expect(madeIndex().orders[0]?.plans.map(({ links, ...one }) => one)).toEqual([
      {
        name: 'M-0412: Ankle, back to <hill> walking',
        weeks: ['Week 3 of 3,', '2026-10-06 to 2026-10-26'],
        nextVisit: '2026-11-16',
        lastVisit: '2026-10-05',
        minutes: 'Strong ankle: 5 to 8 minutes. This week: 15 to 23 minutes.',
        findings: '1 warning',
        sheetNumber: 'KP4T 7WQM',
      },
      expect.objectContaining({ nextVisit: 'not set', findings: 'none' }),
    ]);
  });

  it.each([
    ['2026-10-05', 'Starts 2026-10-06; 3 weeks, to 2026-10-26', '2026-11-16'],
    ['2026-10-06', 'Week 1 of 3, 2026-10-06 to 2026-10-26', '2026-11-16'],
    ['2026-10-26', 'Week 3 of 3, 2026-10-06 to 2026-10-26', '2026-11-16'],
    ['2026-10-27', 'Over: 3 weeks, 2026-10-06 to 2026-10-26', '2026-11-16'],
    ['2026-11-16', 'Over: 3 weeks, 2026-10-06 to 2026-10-26', '2026-11-16, today'],
    ['2026-11-17', 'Over: 3 weeks, 2026-10-06 to 2026-10-26', '2026-11-16, past'],
  ])('on %s it says %s and %s', (today, weeks, nextVisit) => {
    const shown = madeIndex(today).orders[0]?.plans[0];
    expect([shown?.weeks.join(' '), shown?.nextVisit]).toEqual([weeks, nextVisit]);
  });

  it('has the plans without a sheet first, and why', () => {
    const page = textOf(renderIndex(madeIndex(), templates));
    expect(page.indexOf('It cannot be read.')).toBeLessThan(page.indexOf('B-2: Shoulder'));
    expect(page.indexOf('It has 2 errors.')).toBeLessThan(page.indexOf('<table'));
  });

  it('says so where there are none', () => {
    const none = indexView({ practice, plans: [], without: [], today: '2026-10-20', words });
    expect(textOf(renderIndex(none, templates))).toContain('There are no sheets yet.');
  });
});
