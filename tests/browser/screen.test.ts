/// <reference lib="dom" />
// The pages as a browser shows them: for everyone to use, valid, closed in themselves, and no wider
// than the window.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type axe from 'axe-core';
import { HtmlValidate } from 'html-validate';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BuiltPage, builtExamples, type Look, TRANSLATED } from './built-examples.ts';
import { leftOut, openedBrowser } from './chromium.ts';

const opened = await openedBrowser();
const LOOKS: readonly Look[] = [
  { paper: 'a4' },
  { paper: 'a4', print: 'large' },
  ...TRANSLATED.map((language): Look => ({ paper: 'a4', language })),
];
const { pages, remove } = builtExamples(LOOKS);

afterAll(async () => {
  await opened.browser?.close();
  remove();
});

// WCAG 2.2, levels A and AA: what axe can see of it.
const AXE_TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core'), 'utf8');

const LANGUAGES = ['en', ...TRANSLATED];
/** Unicode CLDR, character order of a language. */
const WRITTEN_FROM_THE_RIGHT = /^(ar|fa|he|ur)\b/;

/** In CSS pixels. */
const PHONE = { name: 'a small phone, 320 px', width: 320, height: 640 };
const DESK = { name: 'a desk, 1280 px', width: 1280, height: 900 };
const WINDOWS = [
  PHONE,
  { name: 'a tablet, 768 px', width: 768, height: 1024 },
  DESK,
  // What a window of 1280 has at 200 %.
  { name: 'a desk at 200 % zoom', width: 640, height: 450 },
];

it('has pages of every kind to look at', () => {
  expect(new Set(pages.map(({ kind }) => kind))).toEqual(
    new Set(['sheet', 'clinic copy', 'index', 'outdated sheet']),
  );
});

if (!opened.browser) leftOut('pages in a browser', opened.reason);
else {
  const { browser } = opened;

  const context = await browser.newContext();

  describe.each(pages)('$name', (built: BuiltPage) => {
    let open: Awaited<ReturnType<typeof shown>>;
    beforeAll(async () => {
      open = await shown(await context.newPage(), built);
    });
    afterAll(() => open.page.close());

    it('asks for nothing but itself', () => {
      expect(open.requests).toEqual([built.url]);
      expect(open.complaints).toEqual([]);
    });

    it('has a language, a direction, a title, and headings in order', async () => {
      const head = await open.page.evaluate(() => {
        const { lang, dir } = document.documentElement;
        return { lang, dir, title: document.title, mode: document.compatMode };
      });
      const title = expect.stringMatching(/\S/);
      const lang = expect.stringMatching(
        new RegExp(`^(${built.language ?? LANGUAGES.join('|')})$`),
      );
      const dir = WRITTEN_FROM_THE_RIGHT.test(head.lang) ? 'rtl' : 'ltr';
      expect(head).toEqual({ lang, dir, title, mode: 'CSS1Compat' });
      const levels = await open.page.evaluate(() =>
        [...document.querySelectorAll('h1,h2,h3,h4,h5,h6')].map(({ tagName }) =>
          Number(tagName.slice(1)),
        ),
      );
      expect(levels.filter((level) => level === 1)).toEqual([1]);
      expect(levels[0]).toBe(1);
      expect(levels.length).toBeGreaterThan(1);
      const skips = levels.filter((level, at) => level - (levels[at - 1] ?? 0) > 1);
      expect(skips).toEqual([]);
    });

    it('fits every window', async () => {
      for (const { name, width, height } of WINDOWS) {
        await open.page.setViewportSize({ width, height });
        expect(await tooWide(open.page), name).toEqual([]);
      }
    });

    it('fits the window at twice the size of text', async () => {
      await open.page.setViewportSize({ width: 768, height: 1024 });
      const session = await context.newCDPSession(open.page);
      await session.send('Page.setFontSizes', { fontSizes: { standard: 32, fixed: 26 } });
      const size = () =>
        open.page.evaluate(() => getComputedStyle(document.documentElement).fontSize);
      const sheetSize = built.print === 'large' ? '48px' : '38px';
      expect(await size()).toBe(built.kind.endsWith('sheet') ? sheetSize : '32px');
      expect(await tooWide(open.page)).toEqual([]);
      await session.send('Page.setFontSizes', { fontSizes: { standard: 16, fixed: 13 } });
      await session.detach();
    });

    it('can be used by everyone, on a phone and at a desk', async () => {
      // The page's own rules let no script in; this is the browser's own door.
      await open.page.evaluate(AXE);
      for (const { name, width, height } of [PHONE, DESK]) {
        await open.page.setViewportSize({ width, height });
        expect(await violations(open.page), name).toEqual([]);
      }
    }, 30_000);
  });
}

describe.each(pages)('$name', ({ html, kind }) => {
  it('is valid HTML', async () => {
    const validator = new HtmlValidate({
      extends: ['html-validate:recommended'],
      rules: {
        // A title is as long as the practitioner's; no search engine is to shorten it.
        'long-title': 'off',
        // What a telephone link says is a whole sentence, which has to wrap.
        'tel-non-breaking': 'off',
        // The stamp brings its look along, onto pages of any make.
        ...(kind === 'outdated sheet' ? { 'no-inline-style': 'off' } : {}),
      },
    });
    const report = await validator.validateString(html);
    expect(report.results.flatMap(({ messages }) => messages)).toEqual([]);
  });

  it('runs nothing and asks for nothing', () => {
    expect(html).not.toMatch(/<(script|link|iframe|object|embed|base|form|video|audio)\b/i);
    expect(html).not.toMatch(/\son[a-z]+\s*=|javascript:|@import|url\(/i);
    const addresses = [...html.matchAll(/\b(src|href|srcset)="([^"]*)"/g)];
    // A telephone dials, and a link waits to be followed, which asks for nothing; the index links to the
    // pages beside it, and to its own orders.
    const inward =
      kind === 'index'
        ? /^(?:[\w-][\w.-]*|#by-[a-z-]+)$/
        : /^(?:tel:\+?\d+|https:\/\/example\.org\/[\w?&;#=-]+)$/;
    const outward = addresses.filter(([, key, to = '']) =>
      key === 'src' ? !to.startsWith('data:image/') : !inward.test(to),
    );
    expect(outward.map(([whole]) => whole)).toEqual([]);
  });
});

/** The page once it is there, with all that it asked for and complained about. */
async function shown(page: Page, { url }: BuiltPage) {
  const requests: string[] = [];
  const complaints: string[] = [];
  page.on('request', (request) => {
    if (!request.url().startsWith('data:')) requests.push(request.url());
  });
  page.on('console', (message) => complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(url, { waitUntil: 'load' });
  return { page, requests, complaints };
}

async function violations(page: Page): Promise<string[]> {
  const results = await page.evaluate(
    (tags) =>
      (window as unknown as { axe: typeof axe }).axe.run(document, {
        runOnly: { type: 'tag', values: tags },
        resultTypes: ['violations'],
      }),
    AXE_TAGS,
  );
  if (results.passes.length < 5) throw new Error('axe hardly looked at the page');
  return results.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html} ${failureSummary}`),
  );
}

/** What reaches beyond the window, but for what stands in a region that scrolls and can be reached by key. */
function tooWide(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const width = document.documentElement.clientWidth;
    const isScrolled = (element: Element) => {
      const region = element.closest('[tabindex="0"][aria-label]');
      return region !== null && region !== element && getComputedStyle(region).overflowX === 'auto';
    };
    const wide = [...document.body.querySelectorAll('*')].filter((element) => {
      const { left, right } = element.getBoundingClientRect();
      return (right > width + 0.5 || left < -0.5) && !isScrolled(element);
    });
    const told = wide.map(({ outerHTML }) => outerHTML.slice(0, 120));
    const scrolled = document.documentElement.scrollWidth;
    return scrolled > width
      ? [...told, `the page is ${scrolled} px wide, the window ${width}`]
      : told;
  });
}
