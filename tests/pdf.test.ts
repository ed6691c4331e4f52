// `carryover build --pdf`, and what becomes of a PDF when its sheet changes. The browser here is a
// script that writes what it is told to; tests/browser/pdf.test.ts prints with a real one.
import {
  appendFileSync,
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { pdfSeal, sealedPdf } from '../src/render/pages/pdf-seal.ts';
import { sha256 } from './render-pages/made-sheet.ts';
import { freshFolder, type Ran, runIn } from './support/cases.ts';

const made: string[] = [];
afterAll(() => {
  for (const one of made) rmSync(one, { recursive: true, force: true });
});

const PDF = 'handouts/M-0412.pdf';
const SHEET = 'handouts/M-0412.html';
const PLAN = 'plans/M-0412.yaml';

let root = '';
let browser = '';
beforeEach(() => {
  root = freshFolder();
  made.push(root);
  browser = browserThat('%PDF-1.4\n(Skia/PDF m150)\n%%EOF');
});

/** A browser that notes with what it was run, and writes this in the place of a PDF; null writes nothing. */
function browserThat(writes: string | null, status = 0): string {
  const folder = freshFolder();
  made.push(folder);
  const path = join(folder, 'browser');
  const program = [
    `#!${process.execPath}`,
    "const { appendFileSync, writeFileSync } = require('node:fs');",
    'const words = process.argv.slice(2);',
    `appendFileSync(${JSON.stringify(`${path}.log`)}, JSON.stringify(words) + '\\n');`,
    "const to = words.find((word) => word.startsWith('--print-to-pdf=')).slice(15);",
    `const text = ${JSON.stringify(writes)};`,
    'if (text !== null) writeFileSync(to, text);',
    `process.exit(${status});`,
  ];
  writeFileSync(path, program.join('\n'));
  chmodSync(path, 0o755);
  return path;
}

function runsOf(path: string): readonly (readonly string[])[] {
  const log = `${path}.log`;
  if (!existsSync(log)) return [];
  return readFileSync(log, 'utf8')
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));
}

function run(args: readonly string[], env: Record<string, string> = {}): Ran {
  return runIn(root, args, '2026-10-20', env);
}
const buildPdf = (...plans: readonly string[]) =>
  run(['build', '--pdf', ...plans], { CHROMIUM: browser });
const edit = (path: string, from: string, to: string) => {
  const text = readFileSync(join(root, path), 'utf8');
  if (!text.includes(from)) throw new Error(`${path} has no ${from}`);
  writeFileSync(join(root, path), text.replace(from, to));
};
const outdated = () => {
  const folder = join(root, 'handouts/outdated');
  return existsSync(folder) ? readdirSync(folder).sort() : [];
};
const checks = ({ out }: Ran) =>
  [...out.matchAll(/^(\S+):1:1 {2}error {2}(\S+)$/gm)].map(([, file, check]) => [file, check]);
const numberIn = () => /Sheet (\w{4} \w{4})/.exec(readFileSync(join(root, SHEET), 'utf8'))?.[1];

describe('build --pdf', () => {
  it('lays a PDF beside the sheet, and prints it anew only when the sheet changes', () => {
    const { status, out } = buildPdf();
    expect(status).toBe(0);
    expect(out).toMatch(
      /^M-0412 {2}sheet \w{4} \w{4} {2}handouts\/M-0412\.html {2}handouts\/M-0412\.pdf\n/,
    );
    const seal = pdfSeal(readFileSync(join(root, PDF), 'latin1'), sha256);
    expect(seal?.sheetNumber).toBe(numberIn());
    expect(run(['check', '--handouts']).status).toBe(0);
    expect(buildPdf().out).toContain('All pages were up to date.');
    expect(run(['build']).out).toContain(PDF);
    expect(runsOf(browser)).toHaveLength(1);
    expect(readdirSync(join(root, 'handouts')).filter((name) => /unfinished/.test(name))).toEqual(
      [],
    );
  });

  it('runs the browser without a network, on the sheet itself, with a profile that is gone afterwards', () => {
    buildPdf();
    const [words = []] = runsOf(browser);
    expect(words).toContain('--headless');
    expect(words).toContain('--host-resolver-rules=MAP * ~NOTFOUND');
    expect(words.at(-1)).toMatch(/^file:\/\/\/.*\/handouts\/M-0412\.html$/);
    const profile = words.find((word) => word.startsWith('--user-data-dir='))?.slice(16) ?? '';
    expect(profile).not.toBe('');
    expect(existsSync(profile)).toBe(false);
  });

  it('tells the PDF in JSON', () => {
    const { out } = run(['build', '--pdf', '--format', 'json'], { CHROMIUM: browser });
    const { data } = JSON.parse(out);
    expect(data.written).toContain(PDF);
    expect(data.sheets[0].files.at(-1)).toBe(PDF);
  });
});

describe('without a browser that can do it', () => {
  it('says so before anything is written', () => {
    const none = run(['build', '--pdf'], { PATH: join(root, 'nothing') });
    expect(none.status).toBe(2);
    expect(none.err).toMatch(/no browser of the Chromium family was found/);
    const wrong = run(['build', '--pdf'], { CHROMIUM: '/nowhere/chromium' });
    expect(wrong.status).toBe(2);
    expect(wrong.err).toBe('carryover: CHROMIUM names "/nowhere/chromium", which is not there.\n');
    expect(existsSync(join(root, 'handouts'))).toBe(false);
  });

  it('finds one by its usual name, or by a name or a path from where one stands', () => {
    const folder = join(root, 'programs');
    mkdirSync(folder);
    const program = join(folder, 'google-chrome');
    writeFileSync(program, readFileSync(browser));
    chmodSync(program, 0o755);
    const PATH = `${folder}:${process.env.PATH?.replace(/[^:]*/, folder)}`;
    for (const env of [
      { PATH: folder },
      { PATH, CHROMIUM: 'google-chrome' },
      { CHROMIUM: 'programs/google-chrome' },
    ]) {
      rmSync(join(root, PDF), { force: true });
      expect(run(['build', '--pdf'], env).err).toBe('');
      expect(existsSync(join(root, PDF))).toBe(true);
    }
  });

  it.each([
    ['ends badly', null, 3, 'it ended with 3'],
    ['writes nothing', null, 0, 'it wrote none'],
    ['writes something else', 'Hello', 0, 'what it wrote is no PDF'],
    ['prints no page numbers', '%PDF-1.4\n(Skia/PDF m130)', 0, 'it is of version 130'],
    ['does not say its version', '%PDF-1.4\n', 0, 'its version cannot be told'],
  ])('takes no PDF from one that %s', (_, writes, status, why) => {
    writeFileSync(
      join(root, 'plans/N-0001.yaml'),
      readFileSync(join(root, PLAN), 'utf8').replace('M-0412', 'N-0001').replace('Ankle', 'Knee'),
    );
    browser = browserThat(writes, status);
    const ran = buildPdf();
    expect(ran.status).toBe(1);
    expect(ran.err).toContain(`${SHEET}:1:1  error  pdf-not-made`);
    expect(ran.err).toContain(why);
    // One cause, one finding: the second plan is not tried, but both have their pages.
    expect(ran.err.match(/pdf-not-made/g)).toHaveLength(1);
    expect(runsOf(browser)).toHaveLength(1);
    expect(readdirSync(join(root, 'handouts')).sort()).toEqual(
      ['M-0412', 'N-0001']
        .flatMap((plan) => [`${plan}.clinic.html`, `${plan}.html`, `${plan}.md`])
        .concat('index.html')
        .sort(),
    );
  });
});

describe('a PDF of an older sheet', () => {
  beforeEach(() => {
    buildPdf();
  });

  it('is told of by check, and moved by a build without --pdf, which says so', () => {
    const number = numberIn();
    edit(PLAN, 'weeks: 6', 'weeks: 5');
    expect(checks(run(['check', '--handouts']))).toContainEqual([PDF, 'handout-stale']);
    const moved = `handouts/outdated/M-0412.outdated.${number?.replace(' ', '-')}.pdf`;
    const before = readFileSync(join(root, PDF), 'latin1');
    expect(run(['build']).out).toContain(`moved  ${PDF} -> ${moved}  (outdated, do not hand out)`);
    expect(existsSync(join(root, PDF))).toBe(false);
    expect(readFileSync(join(root, moved), 'latin1')).toBe(before);
    expect(run(['check', '--handouts']).status).toBe(0);
  });

  it('is moved where only the name of the person or the layout changed', () => {
    writeFileSync(join(root, 'people.yaml'), 'M-0412: {name: Ada Invented}\n');
    expect(run(['build']).out).toContain(`moved  ${PDF}`);
    buildPdf();
    edit(PLAN, 'affected: left', 'print: large\naffected: left');
    expect(run(['build']).out).toContain(`moved  ${PDF}`);
    // The sheet number is the same each time: an older one there is kept.
    expect(outdated()).toHaveLength(2);
  });

  it('makes room for a new one', () => {
    edit(PLAN, 'weeks: 6', 'weeks: 5');
    const { out } = buildPdf('M-0412');
    expect(out).toContain(`moved  ${PDF}`);
    expect(pdfSeal(readFileSync(join(root, PDF), 'latin1'), sha256)?.sheetNumber).toBe(numberIn());
  });

  it('goes although the browser fails', () => {
    edit(PLAN, 'weeks: 6', 'weeks: 5');
    browser = browserThat(null, 1);
    expect(buildPdf().status).toBe(1);
    expect(existsSync(join(root, PDF))).toBe(false);
    expect(outdated()).toHaveLength(1);
  });

  it('goes with the sheet of a plan that has a mistake, or is gone', () => {
    edit(PLAN, 'weeks: 6', 'weeks: six');
    expect(checks(run(['check', '--handouts']))).toContainEqual([SHEET, 'handout-stale']);
    expect(run(['build']).out).toContain(`moved  ${PDF}`);
    edit(PLAN, 'weeks: six', 'weeks: 6');
    buildPdf();
    rmSync(join(root, PLAN));
    run(['build']);
    expect(readdirSync(join(root, 'handouts')).filter((name) => name.endsWith('.pdf'))).toEqual([]);
    expect(outdated().filter((name) => name.endsWith('.pdf'))).toHaveLength(1);
  });

  it('stays with the sheet of a closed plan', () => {
    edit(PLAN, 'weeks: 6', 'weeks: 6\nclosed: {date: 2026-12-01, why: Back on the hills}');
    expect(run(['build']).out).not.toContain('moved');
    expect(existsSync(join(root, PDF))).toBe(true);
  });
});

describe('a PDF that no build made', () => {
  it.each([
    ['was changed since', () => appendFileSync(join(root, PDF), 'a note\n')],
    ['lies there instead', () => writeFileSync(join(root, PDF), '%PDF-1.4\n%%EOF\n')],
  ])('as it %s, is told of and moved, but never lost', (_, change) => {
    buildPdf();
    change();
    const text = readFileSync(join(root, PDF), 'latin1');
    expect(checks(run(['check', '--handouts']))).toEqual([[PDF, 'handout-edited']]);
    expect(run(['build']).out).toContain(`moved  ${PDF} -> handouts/outdated/M-0412.outdated.pdf`);
    expect(readFileSync(join(root, 'handouts/outdated/M-0412.outdated.pdf'), 'latin1')).toBe(text);
  });
});

describe('the seal of a PDF', () => {
  const seal = { sheetNumber: 'KP4T 7WQM', page: 'ab12' };

  it('is a comment behind the end of the file, and breaks at any change', () => {
    const pdf = sealedPdf('%PDF-1.4\n\u00e9\u00ff\n%%EOF', seal, sha256);
    expect(pdf).toMatch(/%%EOF\n%carryover sheet KP4T 7WQM, page ab12, pdf [0-9a-f]{32}\n$/);
    expect(pdfSeal(pdf, sha256)).toEqual(seal);
    for (let at = 0; at < pdf.length; at += 1) {
      const cut = pdf.slice(0, at) + pdf.slice(at + 1);
      expect(pdfSeal(cut, sha256), String(at)).toBeNull();
    }
    expect(pdfSeal('%PDF-1.4\n%%EOF\n', sha256)).toBeNull();
  });
});
