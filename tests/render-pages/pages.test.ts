import fc from 'fast-check';
import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { renderSheetHtml, type SheetPage } from '../../src/render/pages/pages.ts';
import { exercise, madePage, madeView, shippedTemplates } from './made-sheet.ts';
import { nastyText, withTexts } from './nasty-text.ts';

const templates = shippedTemplates();

function html(
  page: SheetPage = madePage(),
  files: ReadonlyMap<string, string> = templates,
): string {
  const rendered = renderSheetHtml(page, files);
  if (!rendered.ok) throw new Error(`${rendered.problem.template}: ${rendered.problem.message}`);
  return rendered.text;
}

const tagsOf = (page: string) => page.match(/<[!/a-z][^\s>]*/gi) ?? [];

describe('the sheet as HTML', () => {
  it('is valid', async () => {
    const report = await new HtmlValidate({
      extends: ['html-validate:recommended'],
      // A title is as long as it is, and what a telephone link says has to wrap.
      rules: { 'long-title': 'off', 'tel-non-breaking': 'off' },
    }).validateString(html());
    expect(report.results.flatMap((result) => result.messages)).toEqual([]);
  });

  it('stands in the order that a person needs', () => {
    const page = html();
    const order = [
      'Saltmarsh Movement Clinic</p>',
      'Front desk, 555 0142</p>',
      'R. Kestrel',
      'For Ada Invented',
      '<h1>Ankle',
      'For Monday 5 October',
      'Next visit',
      'What it is for',
      'Pain and stopping',
      'carry on',
      'ease off',
      'stop for today',
      'Stop for today if:',
      'Call us the same day',
      'and do no more exercises',
      'Call 999 at once if:',
      'Your days',
      'Put ready',
      'Take care',
      'The exercises',
      '1. March',
      '2. Heel raise',
      '<p class="dose">8 to 12 times',
      'data:image/svg+xml',
      'Hold the chair.',
      'Rise onto',
      'You should feel',
      'Do not lean',
      'Too hard?',
      'Too easy, and',
      'What is normal',
      'How it grows',
      'Strong ankle</h3>',
      'Exercise 2: Heel raise',
      'Easy week',
      'Later: not before',
      '6. Heel raise: one foot',
      'It takes the place of exercise 2',
      'On a short day',
      'Tick and note',
      'This sheet was made for one person',
      'Sheet KP4T 7WQM',
    ];
    let at = page.indexOf('<body');
    const found = order.filter((text) => {
      const next = page.indexOf(text, at);
      if (next >= 0) at = next + text.length;
      return next >= 0;
    });
    expect(found).toEqual(order);
  });

  it('says how much right below the name, before any picture', () => {
    expect(html()).toMatch(/<h3>2\. Heel raise: both feet<\/h3>\s*<p class="dose">8 to 12 times/);
  });

  it('asks for nothing and runs nothing', () => {
    const page = html();
    expect(page).not.toMatch(/<script|<link|<iframe|<object|@import|url\(|\son[a-z]+=/i);
    const addresses = [...page.matchAll(/(?:src|href)="([^"]*)"/g)].map((match) => match[1] ?? '');
    expect(addresses.length).toBeGreaterThan(0);
    // What a telephone dials is no request.
    expect(addresses.filter((address) => !/^(data:image\/|tel:)/.test(address))).toEqual([]);
    expect(page).toContain("default-src 'none'; img-src data:;");
  });

  it('never takes a drawing for markup', () => {
    const page = html();
    expect(page).not.toContain('<svg');
    const [, data = ''] = /src="data:image\/svg\+xml;base64,([^"]*)"/.exec(page) ?? [];
    expect(Buffer.from(data.replaceAll('&#x3D;', '='), 'base64').toString()).toMatch(
      /^<svg[\s\S]*<\/svg>$/,
    );
  });

  it('has the same tags, whatever the texts are', () => {
    const plain = tagsOf(html());
    fc.assert(
      fc.property(fc.array(nastyText, { minLength: 20, maxLength: 20 }), (texts) => {
        const page = html(
          withTexts(madePage(), (place) => texts[place % texts.length] as string).page,
        );
        expect(tagsOf(page)).toEqual(plain);
      }),
      { numRuns: 60 },
    );
  });

  it('cannot be broken out of at the foot of the page', () => {
    const page = html({ ...madePage(), sheetLine: '"; } </style><script>x</script> \\' });
    const [style = ''] = /<style>[\s\S]*?<\/style>/.exec(page) ?? [];
    expect(style).toContain('@bottom-right');
    expect(style).toContain('\\22 \\3b  \\7d  \\3c \\2f style\\3e');
  });

  it('takes paper, language and direction from the sheet', () => {
    expect(html()).toContain('size: A4;');
    expect(html({ ...madePage(), paper: 'letter' })).toContain('size: letter;');
    expect(html()).not.toContain('font-size: 18pt');
    expect(html({ ...madePage(), print: 'large' })).toContain('html { font-size: 18pt; }');
    const page = html(madePage({ ...madeView(), language: 'ar', direction: 'rtl' }));
    expect(page).toContain('<html lang="ar" dir="rtl">');
  });

  it('leaves out what a plan does not have, and no heading stands alone', async () => {
    const view = { ...madeView(), news: null, goals: null, putReady: null, growth: null };
    const page = html({
      ...madePage({
        ...view,
        head: { ...view.head, person: null, practitioner: null, nextVisit: null },
        safety: { ...view.safety, getInTouchIf: null },
      }),
      shortDay: null,
    });
    const headings = [...page.matchAll(/<h2>(.*?)<\/h2>/g)].map((match) => match[1]);
    expect(headings).toEqual([
      'Pain and stopping',
      'Your days',
      'The exercises',
      'What is normal',
      'Tick and note',
    ]);
    const report = await new HtmlValidate({
      extends: ['html-validate:recommended'],
      rules: { 'tel-non-breaking': 'off' },
    }).validateString(page);
    expect(report.valid).toBe(true);
  });

  it('gives the same bytes twice, with LF and no blanks at line ends', () => {
    expect(html()).toBe(html());
    expect(html()).not.toMatch(/[ \t]\n|\r/);
  });

  it('keeps a line for each day and an empty box for each column', () => {
    const page = html();
    expect(page.match(/<th scope="row">/g)?.length).toBe(42);
    expect(page.match(/<td><\/td>/g)?.length).toBe(42 * 3);
  });

  it('takes a template of the practice in place of its own', () => {
    const own = new Map(templates).set('partials/exercise.html.hbs', '<p>{{dose}} ({{feel}})</p>');
    const view = madeView();
    const page = html(
      madePage({
        ...view,
        exercises: {
          heading: 'E',
          sessions: [
            {
              heading: null,
              groups: [{ heading: null, together: null, exercises: [exercise()] }],
            },
          ],
        },
      }),
      own,
    );
    expect(page).toContain('10 times each. (You should feel it');
  });

  it('returns the problem of a template of the practice', () => {
    const own = new Map(templates).set('partials/box.html.hbs', '<p>{{#if stopif}}x{{/if}}</p>');
    expect(renderSheetHtml(madePage(), own)).toEqual({
      ok: false,
      problem: {
        template: 'partials/box.html.hbs',
        line: 1,
        column: 4,
        message: '{{#if stopif}} names something that is not there to be printed.',
      },
    });
  });
});
