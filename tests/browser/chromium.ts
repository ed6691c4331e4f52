// The browser that looks at the pages: the one that CHROMIUM names, else the system's. Nothing is
// downloaded. Without one the tests are left out, and say so; in CI that is a failure.
import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';
import { it } from 'vitest';

const USUAL_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

type Opened = { readonly browser: Browser } | { readonly browser: null; readonly reason: string };

/** One browser for a whole test file, or why there is none. */
export async function openedBrowser(): Promise<Opened> {
  const named = process.env.CHROMIUM;
  if (named && !existsSync(named)) return none(`CHROMIUM names ${named}, which is not there`);
  const executablePath = named || USUAL_PLACES.find((path) => existsSync(path));
  if (!executablePath) {
    return none('no Chromium was found; install one, or let CHROMIUM name one');
  }
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
