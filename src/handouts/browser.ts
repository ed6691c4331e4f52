// An installed browser of the Chromium family, found and set to print: without a network, with a profile
// of its own that is gone afterwards. What is printed, and what becomes of it, is told elsewhere.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, isAbsolute, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

export interface Browser {
  /** As it was named, or where it was found. */
  readonly command: string;
  readonly env: Env;
}

type Env = Readonly<Record<string, string | undefined>>;

export type BrowserFound =
  | { readonly ok: true; readonly browser: Browser }
  | { readonly ok: false; readonly why: string };

/** The PDF as a text of one sign a byte. */
export type Printed =
  | { readonly ok: true; readonly pdf: string }
  | { readonly ok: false; readonly why: string };

const USUAL_NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
  'microsoft-edge',
  'msedge',
  'brave-browser',
];

const USUAL_PLACES = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
  'C:\\Program Files\\Microsoft\\Edge\\Application\\msedge.exe',
];

/** The browser that CHROMIUM names, as a path from where one stands or as a command; else a usual one. */
export function foundBrowser(env: Env, cwd: string): BrowserFound {
  const named = env.CHROMIUM;
  if (named) {
    const command = onPath(named, env) ?? (isPath(named) ? resolve(cwd, named) : named);
    return existsSync(command)
      ? { ok: true, browser: { command, env } }
      : { ok: false, why: `CHROMIUM names "${named}", which is not there` };
  }
  const command =
    USUAL_NAMES.map((name) => onPath(name, env)).find((path) => path !== undefined) ??
    USUAL_PLACES.find((path) => isAbsolute(path) && existsSync(path));
  if (command !== undefined) return { ok: true, browser: { command, env } };
  const why =
    'no browser of the Chromium family was found to make PDFs with; let CHROMIUM name one, or leave out --pdf and print the page from your own browser';
  return { ok: false, why };
}

function isPath(name: string): boolean {
  return /[\\/]/.test(name);
}

function onPath(name: string, { PATH = '' }: Env): string | undefined {
  if (isPath(name)) return undefined;
  const endings = process.platform === 'win32' ? ['.exe', ''] : [''];
  return PATH.split(delimiter)
    .filter((folder) => folder !== '')
    .flatMap((folder) => endings.map((ending) => join(folder, `${name}${ending}`)))
    .find((path) => existsSync(path));
}

const LONGEST_MS = 120_000;
/** The first version that prints what a page's style puts into its margins; from memory. */
const LEAST_VERSION = 131;

const SETTINGS = [
  '--headless',
  '--disable-gpu',
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-extensions',
  '--disable-sync',
  '--disable-default-apps',
  '--disable-component-update',
  '--disable-background-networking',
  '--disable-breakpad',
  // A page asks for nothing; one of a practice's own template gets no answer, from this machine neither.
  '--host-resolver-rules=MAP * ~NOTFOUND',
  '--proxy-server=127.0.0.1:9',
  '--proxy-bypass-list=<-loopback>',
  '--no-pdf-header-footer',
  '--export-tagged-pdf',
  '--generate-pdf-document-outline',
];

/** Prints a page to a new file, which is read and taken away again. Both are whole paths. */
export function printed({ command, env }: Browser, page: string, to: string): Printed {
  const profile = mkdtempSync(join(tmpdir(), 'carryover-browser-'));
  // Chromium has no sandbox for root, as whom a container runs.
  const asRoot = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  try {
    const own = [`--user-data-dir=${profile}`, `--print-to-pdf=${to}`, pathToFileURL(page).href];
    const { error, status, signal } = spawnSync(command, [...SETTINGS, ...asRoot, ...own], {
      env,
      stdio: 'ignore',
      timeout: LONGEST_MS,
      killSignal: 'SIGKILL',
    });
    const code = error && 'code' in error ? error.code : undefined;
    if (code === 'ETIMEDOUT') return { ok: false, why: 'it did not come to an end' };
    if (error) return { ok: false, why: `it cannot be started (${code})` };
    if (status !== 0) return { ok: false, why: `it ended with ${status ?? signal}` };
    return existsSync(to)
      ? judged(readFileSync(to, 'latin1'))
      : { ok: false, why: 'it wrote none' };
  } finally {
    rmSync(to, { force: true });
    rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  }
}

/** An older browser prints no page numbers and no sheet number, so its PDF is none. */
function judged(pdf: string): Printed {
  if (!pdf.startsWith('%PDF-')) return { ok: false, why: 'what it wrote is no PDF' };
  const version = Number(/Skia\/PDF m(\d+)/.exec(pdf)?.[1]);
  if (version >= LEAST_VERSION) return { ok: true, pdf };
  const which = Number.isNaN(version)
    ? 'its version cannot be told'
    : `it is of version ${version}`;
  return { ok: false, why: `${which}, and pages have no numbers before version ${LEAST_VERSION}` };
}
