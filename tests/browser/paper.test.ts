/// <reference lib="dom" />
// The pages on paper, A4 and Letter, in normal and large print: nothing torn apart that fits on a page,
// what does not fit only between steps, no heading alone at the foot, the sheet's number on every page, and boxes that a shaky hand can tick.
import type { Browser, Page } from 'playwright-core';
import { afterAll, describe, expect, it } from 'vitest';
import {
  type BuiltPage,
  builtExamples,
  type Look,
  type Paper,
  TRANSLATED,
} from './built-examples.ts';
import { leftOut, openedBrowser } from './chromium.ts';
import { canReadPdfText, pdfLines, printedPages } from './pdf.ts';

const opened = await openedBrowser();
const LOOKS: readonly Look[] = [
  { paper: 'a4' },
  { paper: 'letter' },
  { paper: 'a4', print: 'large' },
  { paper: 'letter', print: 'large' },
  ...TRANSLATED.flatMap((language): Look[] => [
    { paper: 'a4', language },
    { paper: 'letter', print: 'large', language },
  ]),
];
const { pages, remove } = builtExamples(LOOKS);

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
const LARGE_BOTTOM = 25;
/** Marks of the direction of text, Unicode UAX 9. */
const TURNS = /[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;
const LARGE_POINTS = 18;
/** Common practice, no source: what a pen finds without aiming. */
const LEAST_BOX_MM = 8;

interface Printed {
  readonly pdf: Buffer;
  /** Headings, each with what follows it. */
  readonly headings: readonly {
    readonly id: string;
    readonly next: string;
    readonly text: string;
  }[];
  /** Exercises, from their heading to their last line, with their height on paper in mm; a heading
   *  right above one is not left alone, and so counts. */
  readonly exercises: readonly {
    readonly first: string;
    readonly last: string;
    readonly text: string;
    readonly heightMm: number;
    /** Its blocks in order: where each begins and ends. */
    readonly blocks: readonly {
      readonly id: string;
      readonly end: string;
      readonly text: string;
      readonly isStep: boolean;
    }[];
  }[];
  /** Of the running text and of the page to tick, in points. */
  readonly textSizes: readonly number[];
  readonly boxes: readonly { readonly widthMm: number; readonly heightMm: number }[];
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
        const bottom = built.print ? LARGE_BOTTOM : MARGINS.bottom;
        expect(tornApart(made, pageOf, height - MARGINS.top - bottom)).toEqual([]);
        expect(splitAmiss(made, pageOf)).toEqual([]);
        if (built.name.startsWith('edges')) expect(isAnySplit(made, pageOf)).toBe(true);
        expect(made.textSizes.length).toBeGreaterThan(10);
        if (built.print) expect(Math.min(...made.textSizes)).toBeGreaterThanOrEqual(LARGE_POINTS);
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
    const textSizes = [...document.querySelectorAll('p,li,th,td,footer,a,h1,h2,h3')].map(
      (element) => (Number.parseFloat(getComputedStyle(element).fontSize) * 72) / 96,
    );
    const corner = document.createElement('div');
    corner.style.cssText = 'position:absolute;top:0;left:0;font-size:1px;line-height:1px';
    const linkTo = (id: string) => {
      const link = document.createElement('a');
      link.href = `#${id}`;
      link.textContent = '.';
      corner.append(link);
    };
    blocks.forEach((block, at) => {
      block.id = `mark-${at}`;
      linkTo(block.id);
      if (!block.matches('.exercise :is(h3, p, li)')) return;
      const end = document.createElement('span');
      end.id = `mark-${at}-end`;
      block.append(end);
      linkTo(end.id);
    });
    document.body.append(corner);
    const textOf = (element: Element) => element.textContent?.replace(/\s+/g, ' ').trim() ?? '';
    const headings = blocks.flatMap((block, at) =>
      /^H\d$/.test(block.tagName)
        ? [{ id: block.id, next: blocks[at + 1]?.id ?? '', text: textOf(block) }]
        : [],
    );
    const topWithHeadings = (exercise: Element) => {
      const first = blocks.findIndex((block) => exercise.contains(block));
      const above = blocks
        .slice(0, first)
        .findLastIndex((block) => !block.matches('h2, h3, .together'));
      return (blocks[above + 1] ?? exercise).getBoundingClientRect().top;
    };
    const exercises = [...document.querySelectorAll('.exercise')].map((exercise) => {
      const inside = blocks.filter((block) => exercise.contains(block));
      return {
        first: inside[0]?.id ?? '',
        last: inside.at(-1)?.id ?? '',
        text: inside[0] ? textOf(inside[0]) : '',
        heightMm: (exercise.getBoundingClientRect().bottom - topWithHeadings(exercise)) / mm,
        blocks: inside.map((block) => ({
          id: block.id,
          end: block.lastElementChild?.id || block.id,
          text: textOf(block),
          isStep: block.matches('ol > li'),
        })),
      };
    });
    const boxes = [...document.querySelectorAll('.tick td')].map((box) => {
      const { width, height } = box.getBoundingClientRect();
      return { widthMm: width / mm, heightMm: height / mm };
    });
    return { headings, exercises, boxes, textSizes };
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

function isAnySplit({ exercises }: Printed, pageOf: ReadonlyMap<string, number>): boolean {
  return exercises.some(({ first, last }) => pageIn(pageOf, first) !== pageIn(pageOf, last));
}

/** Where an exercise is split anywhere but at the end of a step, or a step or a sentence is split itself. */
function splitAmiss({ exercises }: Printed, pageOf: ReadonlyMap<string, number>): string[] {
  return exercises.flatMap(({ blocks }) =>
    blocks.flatMap(({ id, end, text, isStep }, at) => {
      const next = blocks[at + 1];
      const isWhole = pageIn(pageOf, id) === pageIn(pageOf, end);
      const goesOn = !next || pageIn(pageOf, end) === pageIn(pageOf, next.id) || isStep;
      return isWhole && goesOn ? [] : [text];
    }),
  );
}

/** What each page lacks: words of its own, the number at its foot, the stamp where it is outdated. */
function wordsMissing({ kind, html }: BuiltPage, lines: string[][], count: number): string[] {
  const number = /<footer>[\s\S]*?\b([A-Z][A-Z0-9]{3} [A-Z0-9]{4})\b/.exec(html)?.[1];
  const stamp = /<p role="alert"[^>]*>([^<]+)</.exec(html)?.[1];
  if (kind !== 'index' && !number) throw new Error('the page has no sheet number');
  // Written from the right, a line of the foot comes out of pdftotext in pieces.
  const isFromTheRight = / dir="rtl"/.test(html);
  const missing = lines.flatMap((page, at) => {
    const foot = page
      .slice(isFromTheRight ? -5 : -2)
      .join(' ')
      .replace(TURNS, '');
    const counted = `${at + 1}/${count}`;
    const close = foot.replace(/ /g, '');
    const isCounted = isFromTheRight ? close.includes(counted) : close.endsWith(counted);
    const isNumbered = kind === 'index' || foot.includes(number ?? '');
    const isStamped =
      kind !== 'outdated sheet' || (stamp && page[0]?.replace(TURNS, '').includes(stamp));
    return [
      ...(page.length > 2 ? [] : [`page ${at + 1} is empty`]),
      ...(isCounted ? [] : [`page ${at + 1} ends with ${foot}`]),
      ...(isNumbered ? [] : [`page ${at + 1} has no sheet number`]),
      ...(isStamped ? [] : [`page ${at + 1} is not stamped`]),
    ];
  });
  return lines.length === count ? missing : [`${lines.length} pages of ${count} have words`];
}
