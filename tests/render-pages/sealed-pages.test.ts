import fc from 'fast-check';
import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { isSealIntact, sealed } from '../../src/render/pages/fingerprint.ts';
import { stamped } from '../../src/render/pages/outdated.ts';
import { renderSheetHtml, renderSheetMarkdown } from '../../src/render/pages/pages.ts';
import { sheetNumber } from '../../src/render/sheet/sheet-number.ts';
import type { SheetView } from '../../src/render/sheet/sheet-view.ts';
import { drawing, exercise, madePage, madeView, sha256, shippedTemplates } from './made-sheet.ts';
import { withTexts } from './nasty-text.ts';

const templates = shippedTemplates();
const page = (render: typeof renderSheetHtml) => {
  const made = render(madePage(), templates);
  if (!made.ok) throw new Error(made.problem.message);
  return made.text;
};

describe('the fingerprint of a page', () => {
  it.each([
    ['HTML', renderSheetHtml],
    ['Markdown', renderSheetMarkdown],
  ])('holds for %s and breaks at any change', (_, render) => {
    const written = sealed(page(render), sha256);
    expect(isSealIntact(written, sha256)).toBe(true);
    expect(isSealIntact(page(render), sha256)).toBe(false);
    fc.assert(
      fc.property(fc.nat(written.length - 1), fc.constantFrom('x', ' ', '\n', ''), (at, sign) => {
        const edited = written.slice(0, at) + sign + written.slice(at + 1);
        expect(isSealIntact(edited, sha256)).toBe(edited === written);
      }),
    );
    expect(isSealIntact(`${written} `, sha256)).toBe(false);
    expect(isSealIntact(written.replaceAll('\n', '\r\n'), sha256)).toBe(false);
  });

  it('leaves the page valid', async () => {
    const report = await new HtmlValidate({
      extends: ['html-validate:recommended'],
      rules: { 'tel-non-breaking': 'off' },
    }).validateString(sealed(page(renderSheetHtml), sha256));
    expect(report.valid).toBe(true);
  });
});

describe('the stamp of an outdated sheet', () => {
  const WORDS = 'Outdated. Do not use.';

  it('stands first on an HTML page, in its title and on every printed page', async () => {
    const once = stamped(sealed(page(renderSheetHtml), sha256), WORDS, 'html');
    expect(once).toMatch(
      /<body><!-- outdated -->\n<p role="alert"[^>]*>Outdated\. Do not use\.<\/p>/,
    );
    expect(once).toContain('<title>Outdated. Do not use. Ankle');
    expect(once).toMatch(/@top-center \{ content: "\\2068 Outdated\\2e {2}Do not use\\2e \\2069 "/);
    expect(stamped(once, WORDS, 'html')).toBe(once);
    const report = await new HtmlValidate({
      extends: ['html-validate:recommended'],
      rules: { 'no-inline-style': 'off', 'long-title': 'off', 'tel-non-breaking': 'off' },
    }).validateString(once);
    expect(report.results.flatMap((result) => result.messages)).toEqual([]);
  });

  it('stands first in Markdown', () => {
    const once = stamped(page(renderSheetMarkdown), WORDS, 'markdown');
    expect(once.startsWith('<!-- outdated -->\n\n# Outdated. Do not use.\n\nSaltmarsh')).toBe(true);
    expect(stamped(once, WORDS, 'markdown')).toBe(once);
  });

  it('reaches a page of any other make, and one that only speaks of the mark', () => {
    expect(stamped('by hand', WORDS, 'html')).toContain('<p role="alert"');
    expect(
      stamped('<body class="x"><p>&lt;!-- outdated --&gt; <!-- outdated --></p>', WORDS, 'html'),
    ).toContain('<p role="alert"');
  });

  it('takes words of any kind', () => {
    const once = stamped('<head></head><body>', '<b> & "x" $& \\', 'html');
    expect(once).toContain('>&#60;b&#62; &#38; &#34;x&#34; $&#38; \\</p>');
    expect(once).not.toContain('<b>');
  });
});

describe('the sheet number', () => {
  const numberOf = (view: SheetView, alsoShown: readonly unknown[] = []) =>
    sheetNumber({ view, alsoShown }, sha256);
  const first = numberOf(madeView());

  it('is two fours of signs that cannot be taken for each other, a letter first', () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 32, maxLength: 32 }), (bytes) => {
        expect(sheetNumber({ view: madeView(), alsoShown: [] }, () => bytes)).toMatch(
          /^[CDFHJKMNPQRTWXY][CDFHJKMNPQRTWXY3479]{3} [CDFHJKMNPQRTWXY3479]{4}$/,
        );
      }),
    );
    expect(numberOf(madeView())).toBe(first);
  });

  it('changes with every word that is shown, but not with the name or the code', () => {
    const { places } = withTexts(madePage(), () => '');
    const inView = places.filter((path) => path.startsWith('view.'));
    expect(inView.length).toBeGreaterThan(100);
    const changed = inView.filter(
      (path) => numberOf(viewWith(path, (text) => `${text} x`)) !== first,
    );
    expect(inView.filter((path) => !changed.includes(path))).toEqual([
      'view.plan',
      'view.head.person',
    ]);
    const numbers = new Set(changed.map((path) => numberOf(viewWith(path, (text) => `${text} x`))));
    expect(numbers.size).toBe(changed.length);
  });

  it('changes with a number, a picture, its words, the language and the short day', () => {
    const groups = (one: Parameters<typeof exercise>[0]) => ({
      ...madeView(),
      exercises: {
        heading: 'E',
        sessions: [
          {
            heading: null,
            groups: [{ heading: null, together: null, exercises: [exercise(one)] }],
          },
        ],
      },
    });
    const all = [
      groups({}),
      groups({ number: 7 }),
      groups({ picture: drawing() }),
      groups({ picture: drawing(undefined, '<svg/>') }),
      groups({ picture: { ...drawing(), alt: 'Another' } }),
      { ...groups({}), language: 'es' },
    ];
    const numbers = [...all.map((view) => numberOf(view)), numberOf(groups({}), ['short day'])];
    expect(new Set(numbers).size).toBe(numbers.length);
  });

  it('does not change with the name of a picture, but with what it shows', () => {
    const withPicture = (file: string) => ({
      ...madeView(),
      exercises: {
        heading: 'E',
        sessions: [
          {
            heading: null,
            groups: [
              { heading: null, together: null, exercises: [exercise({ picture: drawing(file) })] },
            ],
          },
        ],
      },
    });
    expect(numberOf(withPicture('pictures/a.svg'))).toBe(numberOf(withPicture('pictures/b.svg')));
  });

  it('does not change with line ends, nor with the order in which keys were written', () => {
    const two = (text: string) => viewWith('view.goals.sentences.0', () => text);
    expect(numberOf(two('a\r\nb'))).toBe(numberOf(two('a\nb')));
    expect(numberOf(two('a\nb'))).not.toBe(numberOf(two('a\nc')));
    expect(
      numberOf(Object.fromEntries(Object.entries(madeView()).reverse()) as unknown as SheetView),
    ).toBe(first);
  });
});

function viewWith(path: string, change: (text: string) => string): SheetView {
  const view = structuredClone(madeView());
  const steps = path.split('.').slice(1);
  const last = steps.pop() as string;
  const holder = steps.reduce(
    (at, step) => at[step] as Record<string, unknown>,
    view as unknown as Record<string, unknown>,
  );
  holder[last] = change(holder[last] as string);
  return view;
}
