// The browser that looks at the pages: the one that `build --pdf` would take. Nothing is downloaded.
// Without one the tests are left out, and say so; in CI that is a failure.
import { type Browser, chromium } from 'playwright-core';
import { it } from 'vitest';
import { foundBrowser } from '../../src/handouts/browser.ts';

type Opened = { readonly browser: Browser } | { readonly browser: null; readonly reason: string };

/** One browser for a whole test file, or why there is none. */
export async function openedBrowser(): Promise<Opened> {
  const found = foundBrowser(process.env, process.cwd());
  if (!found.ok) return none(found.why);
  const executablePath = found.browser.command;
  // Chromium has no sandbox for root, as whom a container runs.
  const args = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  try {
    return { browser: await chromium.launch({ executablePath, args }) };
  } catch (cause) {
    return none(`${executablePath} does not start: ${String(cause).split('\n')[0]}`);
  }
}

function none(reason: string): Opened {
  return { browser: null, reason };
}

/** Declares what becomes of tests that lack something: a failure in CI, elsewhere left out with the reason. */
export function leftOut(what: string, reason: string): void {
  if (process.env.CI) {
    it(what, () => {
      throw new Error(reason);
    });
    return;
  }
  console.warn(`${what}: left out, ${reason}.`);
  it.skip(`${what} (left out: ${reason})`, () => {});
}
