// `carryover build --pdf` with a real browser: what a screen reader is told of the PDF, whether other
// programs read it, the codes of links read back, and that nothing is asked of a network.
import { execFileSync, spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import jsQR from 'jsqr';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { foundBrowser } from '../../src/handouts/browser.ts';
import { freshFolder, runIn } from '../support/cases.ts';
import { leftOut } from './chromium.ts';
import { canReadPdfText, pdfLines } from './pdf.ts';

const found = foundBrowser(process.env, process.cwd());
const SHEET = 'handouts/M-0412.html';
const PDF = 'handouts/M-0412.pdf';
const MM_AN_INCH = 25.4;

if (!found.ok) leftOut('PDFs', found.why);
else if (!canReadPdfText()) leftOut('PDFs', 'pdftotext is not installed (poppler-utils)');
else {
  const { command } = found.browser;
  const built = (folder: string) => {
    const ran = runIn(folder, ['build', '--pdf'], '2026-10-20', { CHROMIUM: command });
    if (ran.status !== 0) throw new Error(`${ran.out}${ran.err}`);
    return join(folder, PDF);
  };

  describe('a PDF', () => {
    let folder = '';
    let path = '';
    let html = '';
    beforeAll(() => {
      folder = freshFolder(join(import.meta.dirname, 'edges'));
      path = built(folder);
      html = readFileSync(join(folder, SHEET), 'utf8');
    });
    afterAll(() => rmSync(folder, { recursive: true, force: true }));

    it('is tagged, and has the title and the language of its page', () => {
      const told = execFileSync('pdfinfo', [path], { encoding: 'utf8' });
      expect(told).toMatch(/^Tagged: +yes$/m);
      expect(told).toMatch(/^Page size: .*\(A4\)$/m);
      const title = /<title>(.*)<\/title>/.exec(html)?.[1] ?? '';
      expect(/^Title: +(.*)$/m.exec(told)?.[1]).toBe(title);
      const catalog = catalogOf(readFileSync(path, 'latin1'));
      expect(catalog).toMatch(/\/Lang \(en\)/);
      // PDF/UA-1 (ISO 14289-1), 7.1: the window shows the title, not the name of the file.
      expect(catalog).toMatch(/\/DisplayDocTitle true/);
      const alts = readFileSync(path, 'latin1').match(/\/Alt \(Code for a phone's camera/g);
      expect(alts).toHaveLength(html.match(/<img class="code"/g)?.length ?? 0);
    });

    it('is read aloud in the order of its page, and from the top down', () => {
      const tree = execFileSync('pdfinfo', ['-struct-text', path], { encoding: 'utf8' });
      const aloud = [...tree.matchAll(/^ *"(.*)"$/gm)].map(([, text]) => text).join('');
      expect(wordsIn(html).length).toBeGreaterThan(1000);
      // What stands in the margins is no part of the page's content.
      expect(aloud.replace(/\s+/g, '')).toBe(wordsIn(html));
      const kinds = new Set(
        [...tree.matchAll(/^ *(H[1-6]|L|LI|Table|TH|TD|Figure|Link)\b/gm)].map(([, kind]) => kind),
      );
      expect([...kinds].sort()).toEqual([
        'Figure',
        'H1',
        'H2',
        'H3',
        'L',
        'LI',
        'Link',
        'TH',
        'Table',
      ]);
    });

    it('is read by other programs, whatever its last line says', () => {
      expect(readFileSync(path, 'latin1')).toMatch(/%%EOF\n%carryover sheet [^\n]+\n$/);
      const pages = pdfLines(readFileSync(path));
      expect(pages.length).toBeGreaterThan(3);
      expect(pages.flat()).toContain('Ankle, back to hill walking');
    });

    it('has codes that a camera reads as the links below them', () => {
      const links = [...html.matchAll(/<a href="(https:[^"]*)"/g)].map(([, to = '']) =>
        unescaped(to),
      );
      expect(
        links
          .map((link) => link.length)
          .sort((a, b) => a - b)
          .at(-1),
      ).toBe(200);
      const read = pdfLines(readFileSync(path)).flatMap((lines, at) =>
        lines.some((line) => line.includes('https://')) ? codesOn(path, at + 1) : [],
      );
      expect(read.map(({ text }) => text)).toEqual(links);
      // Common practice, no source: what a telephone reads from a hand's breadth away.
      for (const { widthMm } of read) expect(widthMm).toBeGreaterThanOrEqual(25);
    });
  });

  describe('a page that asks for something', () => {
    it('gets no answer, not from this machine either', async () => {
      // In a process of its own, since a build waits for the browser.
      const server = spawn(process.execPath, ['-e', SERVER]);
      const said = server.stdout.setEncoding('utf8')[Symbol.asyncIterator]();
      const port = String((await said.next()).value).trim();
      const folder = freshFolder();
      try {
        mkdirSync(join(folder, 'templates/partials'), { recursive: true });
        // Without the line that forbids the page to ask.
        const image = `<link rel="stylesheet" href="http://127.0.0.1:${port}/style.css"><link rel="stylesheet" href="http://localhost:${port}/style.css">`;
        writeFileSync(
          join(folder, 'templates/partials/head.html.hbs'),
          `<meta charset="utf-8">\n${image}\n`,
        );
        built(folder);
        // What is asked now is the first thing that was asked.
        await fetch(`http://127.0.0.1:${port}/by-the-test`);
        expect(String((await said.next()).value).trim()).toBe('/by-the-test');
      } finally {
        server.kill();
        rmSync(folder, { recursive: true, force: true });
      }
    });
  });
}

/** Says its port, then what it is asked for. */
const SERVER = `
const server = require('node:http').createServer((request, response) => {
  console.log(request.url);
  response.end();
});
server.listen(0, '127.0.0.1', () => console.log(server.address().port));
`;

/** The words of a page in the order of its text, with the numbers of steps, and without blanks. */
function wordsIn(html: string): string {
  const body = html.slice(html.indexOf('<body>')).replace(/<ol>[\s\S]*?<\/ol>/g, (list) => {
    let step = 0;
    return list.replace(/<li>/g, () => {
      step += 1;
      return `${step}.`;
    });
  });
  return unescaped(body.replace(/<[^>]*>/g, '')).replace(/\s+/g, '');
}

const ENTITIES: Readonly<Record<string, string>> = {
  amp: '&',
  quot: '"',
  '#x27': "'",
  '#x3D': '=',
};

function unescaped(text: string): string {
  return text.replace(/&([#\w]+);/g, (whole, name) => ENTITIES[name] ?? whole);
}

function catalogOf(pdf: string): string {
  return (
    [...pdf.matchAll(/\d+ 0 obj\n([\s\S]*?)\nendobj/g)]
      .map(([, body = '']) => body)
      .find((body) => /\/Type \/Catalog\b/.test(body)) ?? ''
  );
}

const DOTS_AN_INCH = 200;

/** The codes on a page as it is printed: what they say, and how wide they are without their quiet zone. */
function codesOn(path: string, page: number): readonly { text: string; widthMm: number }[] {
  const pgm = execFileSync(
    'pdftoppm',
    ['-gray', '-r', String(DOTS_AN_INCH), '-f', String(page), '-l', String(page), path],
    { maxBuffer: 64 * 1024 * 1024 },
  );
  const [head = '', width = '', height = ''] =
    /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.toString('latin1', 0, 40)) ?? [];
  const grey = pgm.subarray(head.length);
  const pixels = new Uint8ClampedArray(4 * grey.length);
  for (const [at, tone] of grey.entries()) pixels.set([tone, tone, tone, 255], 4 * at);
  const codes: { text: string; widthMm: number }[] = [];
  for (;;) {
    const code = jsQR.default(pixels, Number(width), Number(height));
    if (!code) return codes;
    const { topLeftCorner, topRightCorner, bottomLeftCorner } = code.location;
    const dots = topRightCorner.x - topLeftCorner.x;
    codes.push({ text: code.data, widthMm: (dots / DOTS_AN_INCH) * MM_AN_INCH });
    // One code is seen at a time: this one is painted over.
    for (let y = Math.floor(topLeftCorner.y); y <= bottomLeftCorner.y; y += 1) {
      const from = 4 * (y * Number(width) + Math.floor(topLeftCorner.x));
      pixels.fill(255, from, from + 4 * Math.ceil(dots));
    }
  }
}
