// A link of an exercise on its sheet: as words, as something to follow, and as a code that reads as it.
import fc from 'fast-check';
import jsQR from 'jsqr';
import MarkdownIt from 'markdown-it';
import { describe, expect, it } from 'vitest';
import { linkCode } from '../../src/render/pages/link-code.ts';
import { renderSheetHtml, renderSheetMarkdown } from '../../src/render/pages/pages.ts';
import { sheetNumber } from '../../src/render/sheet/sheet-number.ts';
import type { ExerciseView, LinkView, SheetView } from '../../src/render/sheet/sheet-view.ts';
import { exercise, madePage, madeView, sha256, shippedTemplates } from './made-sheet.ts';

const ADDRESS = "https://example.org/heel_raise?a=1&copy=2*x*#it's(so)";

function linkTo(address: string): LinkView {
  return { lead: 'More about it:', address, codeAlt: 'A code.' };
}

/** A sheet with one exercise. */
function sheetOf(one: ExerciseView): SheetView {
  const view = madeView();
  const [session] = view.exercises.sessions;
  if (!session) throw new Error('the sheet has no session');
  const group = { heading: null, together: null, exercises: [one] };
  return { ...view, exercises: { ...view.exercises, sessions: [{ ...session, groups: [group] }] } };
}

const withLink = (address: string) => sheetOf(exercise({ link: linkTo(address) }));

const textOf = (page: ReturnType<typeof renderSheetHtml>) => {
  if (!page.ok) throw new Error(page.problem.message);
  return page.text;
};

/** A drawing of rectangles as a camera sees it: so many dots for each unit, in black and white. */
function seen(svg: string, dots = 4) {
  const size = Number(/viewBox="0 0 (\d+) /.exec(svg)?.[1]);
  const width = size * dots;
  const pixels = new Uint8ClampedArray(4 * width * width).fill(255);
  for (const [, x, y, n] of svg.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g)) {
    for (let row = Number(y) * dots; row < (Number(y) + 1) * dots; row += 1) {
      for (let at = Number(x) * dots; at < (Number(x) + Number(n)) * dots; at += 1)
        pixels.set([0, 0, 0, 255], 4 * (row * width + at));
    }
  }
  return { pixels, width, size };
}

describe('the code of a link', () => {
  it('reads as its address, whatever that is', () => {
    const signs = fc.constantFrom(..."abcxyzABC0189._~:/?#@!$&'()*+,;=%-");
    const address = fc
      .string({ unit: signs, minLength: 0, maxLength: 180 })
      .map((rest) => `https://example.org/${rest}`);
    fc.assert(
      fc.property(address, (one) => {
        const { pixels, width } = seen(linkCode(one));
        expect(jsQR.default(pixels, width, width)?.data).toBe(one);
      }),
      { numRuns: 40 },
    );
  });

  it('has a quiet zone of four modules all round (ISO/IEC 18004)', () => {
    const svg = linkCode(ADDRESS);
    const { size } = seen(svg);
    const runs = [...svg.matchAll(/M(\d+) (\d+)h(\d+)v1/g)].map((one) => one.slice(1).map(Number));
    const least = (at: number) => Math.min(...runs.map((run) => run[at] ?? 0));
    expect([least(0), least(1)]).toEqual([4, 4]);
    expect(Math.max(...runs.map(([x = 0, , n = 0]) => x + n))).toBe(size - 4);
    expect(Math.max(...runs.map(([, y = 0]) => y))).toBe(size - 5);
  });
});

describe('a link on a sheet', () => {
  it('is printed in full below its code, and can be followed', () => {
    const html = textOf(renderSheetHtml(madePage(withLink(ADDRESS)), shippedTemplates()));
    const escaped = ADDRESS.replaceAll('&', '&amp;')
      .replaceAll('=', '&#x3D;')
      .replace("'", '&#x27;');
    const [, code = '', below = ''] =
      /<img class="code" src="data:image\/svg\+xml;base64,([^"]+)" alt="A code\.">\n<p>([^\n]+)<\/p>/.exec(
        html,
      ) ?? [];
    expect(Buffer.from(code.replaceAll('&#x3D;', '='), 'base64').toString()).toBe(
      linkCode(ADDRESS),
    );
    expect(below).toBe(`<a href="${escaped}" dir="ltr">${escaped}</a>`);
  });

  it('is a link in Markdown too', () => {
    const page = textOf(renderSheetMarkdown(madePage(withLink(ADDRESS)), shippedTemplates()));
    const tokens = new MarkdownIt('commonmark')
      .parse(page, {})
      .flatMap(({ children }) => children ?? []);
    const links = tokens.flatMap((token, at) =>
      token.type === 'link_open' ? [tokens[at + 1]?.content] : [],
    );
    expect(links).toEqual([ADDRESS]);
  });

  it('counts for the number of the sheet, and only where there is one', () => {
    const number = (view: SheetView) => sheetNumber({ view, alsoShown: [] }, sha256);
    expect(number(withLink(ADDRESS))).not.toBe(number(withLink(`${ADDRESS}b`)));
    const { link: _, ...older } = exercise();
    expect(number(sheetOf(exercise()))).toBe(number(sheetOf(older as ExerciseView)));
  });
});
