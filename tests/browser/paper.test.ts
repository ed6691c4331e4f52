/// <reference lib="dom" />
// The pages on paper, A4 and Letter: nothing torn apart that fits on a page, no heading alone at the
// foot, the sheet's number on every page, and boxes that a shaky hand can tick.
import type { Browser, Page } from 'playwright-core';
import { afterAll, describe, expect, it } from 'vitest';
import { type BuiltPage, builtExamples, type Paper } from './built-examples.ts';
import { leftOut, openedBrowser } from './chromium.ts';
import { canReadPdfText, pdfLines, printedPages } from './pdf.ts';

const opened = await openedBrowser();
const { pages, remove } = builtExamples(['a4', 'letter']);

afterAll(async () => {
  await opened.browser?.close();
  remove();
});

const MM = 96 / 25.4;
const POINTS_A_MM = 72 / 25.4;
/** ISO 216, and ANSI/ASME Y14.1 for Letter; in mm. */
const PAPERS: Record<Paper, readonly [number, number]> = { a4: [210, 297], letter: [215.9, 279.4] };
/** As @page of templates/sheet.css has it: top, sides, bottom. */
const MARGINS = { top: 12, side: 15, bottom: 16 };
/** Common practice, no source: what a pen finds without aiming. */
const LEAST_BOX_MM = 8;
/** The English pack's words on a sheet that must not be used any more. */
const STAMP = 'Outdated. Do not use.';

interface Printed {
  readonly pdf: Buffer;
  /** Headings, each with what follows it. */
  readonly headings: readonly {
    readonly id: string;
    readonly next: string;
    readonly text: string;
  }[];
  /** Exercises, from their heading to their last line, with their height on paper in mm. */
  readonly exercises: readonly {
    readonly first: string;
    readonly last: string;
    readonly text: string;
    readonly heightMm: number;
  }[];
  readonly boxes: readonly { readonly widthMm: number; readonly heightMm: number }[];
  readonly tickHeading: string | null;
}

if (!opened.browser) leftOut('pages on paper', opened.reason);
else {
  const { browser } = opened;
  const readsText = canReadPdfText();
  if (!readsText) leftOut('the words on paper', 'pdftotext is not installed (poppler-utils)');

  describe.each(pages)('$name', (built: BuiltPage) => {
    it('is printed well', async () => {
      const made = await printed(browser, built);
      const { sizes, pageOf } = printedPages(made.pdf);
      const [width, height] = PAPERS[built.paper];
      for (const [w, h] of sizes) {
        expect([w / POINTS_A_MM, h / POINTS_A_MM].map(Math.round)).toEqual(
          [width, height].map(Math.round),
        );
      }
      expect(headingsLeftAlone(made, pageOf)).toEqual([]);
      if (built.kind.endsWith('sheet')) {
        expect(tornApart(made, pageOf, height - MARGINS.top - MARGINS.bottom)).toEqual([]);
        expect(made.boxes.length).toBeGreaterThan(0);
        const least = (key: 'widthMm' | 'heightMm') =>
          Math.min(...made.boxes.map((box) => box[key]));
        expect(least('widthMm')).toBeGreaterThanOrEqual(LEAST_BOX_MM);
        expect(least('heightMm')).toBeGreaterThanOrEqual(LEAST_BOX_MM);
      }
      if (readsText) expect(wordsMissing(built, pdfLines(made.pdf), sizes.length)).toEqual([]);
    }, 30_000);
  });
}

async function printed(browser: Browser, { url, paper }: BuiltPage): Promise<Printed> {
  const [width] = PAPERS[paper];
  const context = await browser.newContext({
    viewport: { width: Math.round((width - 2 * MARGINS.side) * MM), height: 1000 },
  });
  try {
    const page = await context.newPage();
    await page.emulateMedia({ media: 'print' });
    await page.goto(url);
    const measured = await marked(page);
    const pdf = await page.pdf({ preferCSSPageSize: true, tagged: true });
    return { ...measured, pdf };
  } finally {
    await context.close();
  }
}

/** Gives every block an id and a link from a corner, so that the PDF says on which page each begins. */
function marked(page: Page): Promise<Omit<Printed, 'pdf'>> {
  return page.evaluate((mm) => {
    const blocks = [...document.querySelectorAll('h1,h2,h3,h4,p,li,img,tr')];
    const corner = document.createElement('div');
    corner.style.cssText = 'position:absolute;top:0;left:0;font-size:1px;line-height:1px';
    blocks.forEach((block, at) => {
      block.id = `mark-${at}`;
      const link = document.createElement('a');
      link.href = `#mark-${at}`;
      link.textContent = '.';
      corner.append(link);
    });
    document.body.append(corner);
    const textOf = (element: Element) => element.textContent?.replace(/\s+/g, ' ').trim() ?? '';
    const headings = blocks.flatMap((block, at) =>
      /^H\d$/.test(block.tagName)
        ? [{ id: block.id, next: blocks[at + 1]?.id ?? '', text: textOf(block) }]
        : [],
    );
    const exercises = [...document.querySelectorAll('.exercise')].map((exercise) => {
      const inside = blocks.filter((block) => exercise.contains(block));
      return {
        first: inside[0]?.id ?? '',
        last: inside.at(-1)?.id ?? '',
        text: inside[0] ? textOf(inside[0]) : '',
        heightMm: exercise.getBoundingClientRect().height / mm,
      };
    });
    const boxes = [...document.querySelectorAll('.tick td')].map((box) => {
      const { width, height } = box.getBoundingClientRect();
      return { widthMm: width / mm, heightMm: height / mm };
    });
    const tickHeading = document.querySelector('.tick-page h2')?.id ?? null;
    return { headings, exercises, boxes, tickHeading };
  }, MM);
}

function pageIn(pageOf: ReadonlyMap<string, number>, id: string): number {
  const page = pageOf.get(id);
  if (!page) throw new Error(`${id || 'what follows'} is on no page`);
  return page;
}

/** Headings whose first line below stands on another page. */
function headingsLeftAlone({ headings }: Printed, pageOf: ReadonlyMap<string, number>): string[] {
  if (headings.length === 0) throw new Error('there are no headings to look at');
  return headings
    .filter(({ id, next }) => pageIn(pageOf, id) !== pageIn(pageOf, next))
    .map(({ text }) => text);
}

/** Exercises on two pages that would have fitted on one. */
function tornApart(
  { exercises }: Printed,
  pageOf: ReadonlyMap<string, number>,
  roomMm: number,
): string[] {
  if (exercises.length === 0) throw new Error('there are no exercises to look at');
  return exercises
    .filter(({ heightMm }) => heightMm <= roomMm)
    .filter(({ first, last }) => pageIn(pageOf, first) !== pageIn(pageOf, last))
    .map(({ text }) => text);
}

/** What each page lacks: words of its own, the number at its foot, the stamp where it is outdated. */
function wordsMissing({ kind, html }: BuiltPage, lines: string[][], count: number): string[] {
  const number = /[Ss]heet ([A-Z0-9]{4} [A-Z0-9]{4}), visit/.exec(html)?.[1];
  if (kind !== 'index' && !number) throw new Error('the page has no sheet number');
  const missing = lines.flatMap((page, at) => {
    const foot = page.slice(-2).join(' ');
    const isCounted = foot.replace(/ /g, '').endsWith(`${at + 1}/${count}`);
    const isNumbered = kind === 'index' || foot.includes(number ?? '');
    const isStamped = kind !== 'outdated sheet' || page[0]?.includes(STAMP);
    return [
      ...(page.length > 2 ? [] : [`page ${at + 1} is empty`]),
      ...(isCounted ? [] : [`page ${at + 1} ends with ${foot}`]),
      ...(isNumbered ? [] : [`page ${at + 1} has no sheet number`]),
      ...(isStamped ? [] : [`page ${at + 1} is not stamped`]),
    ];
  });
  return lines.length === count ? missing : [`${lines.length} pages of ${count} have words`];
}
