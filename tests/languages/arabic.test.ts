// A sheet in Arabic from a practice that speaks English: right to left in every detail, nothing left in
// English by accident, and a record in the language of the practice.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/build.ts';
import { memoryFolder } from '../../src/load/folder.ts';
import { withNumbersInOrder } from '../../src/render/pages/reading-order.ts';
import { type Files, pagesIn } from '../support/pages-of.ts';

const ROOT = join(import.meta.dirname, 'arabic');
const WORDS = join(import.meta.dirname, '..', '..', 'templates', 'words');

const files: Files = Object.fromEntries(
  readdirSync(ROOT, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile())
    .map((one) => {
      const path = join(one.parentPath, one.name);
      return [path.slice(ROOT.length + 1).replaceAll('\\', '/'), readFileSync(path, 'utf8')];
    }),
);
const { html, markdown, clinic, sheetNumber } = pagesIn(files, 'A-0730');

/** What is read of a page: its text without marks, style and what no eye sees. */
function readText(page: string): string {
  return page.replace(/<style>[\s\S]*?<\/style>|<!--[\s\S]*?-->/g, ' ').replace(/<[^>]+>/g, '\n');
}

describe('the Arabic sheet', () => {
  it('has no open finding', () => {
    const { findings } = compile(memoryFolder(files), null);
    expect(findings.filter(({ accepted }) => !accepted)).toEqual([]);
  });

  it('is Arabic, from right to left', () => {
    expect(html).toContain('<html lang="ar" dir="rtl">');
  });

  it('says at its top, in both languages, that nobody has checked the words', () => {
    const body = html.slice(html.indexOf('<body>'));
    expect(body.slice(0, 400)).toMatch(/<div class="unreviewed">\n<p class="lead">لم يراجع/);
    expect(body.slice(0, 600)).toContain(
      '<p class="lead" lang="en" dir="ltr">This translation has not been',
    );
    expect(markdown).toMatch(/^\*\*لم يراجع.*\*\*\n\n\*\*This translation/);
  });

  it.each([
    ['page', readText(html)],
    ['Markdown', markdown.replace(/!\[.*\]\(.*\)|<!--.*-->/g, '')],
  ])('has nothing in English on its %s but names and the address', (_, text) => {
    const left = text
      .replace(/This translation has not .*? before you do it\./g, '')
      .replaceAll('Dunlin Movement Practice', '')
      .replace(/https:\S*heel-raise/g, '')
      .replaceAll(sheetNumber, '')
      .replaceAll(sheetNumber.replace(' ', '\u00a0'), '');
    expect(left.match(/[A-Za-z]{2,}/g)).toBeNull();
  });

  it('keeps telephone numbers in order, wherever they stand', () => {
    const ISOLATED = /\u2066[^\u2066\u2069]*\u2069/g;
    for (const page of [readText(html), markdown]) {
      expect(page).toContain('\u2066+44\u00a020\u00a07946\u00a00000\u2069');
      expect(page).toContain('\u2066555\u00a00199\u2069');
      expect(page.replace(ISOLATED, '')).not.toMatch(/\d[ \u00a0]\d|\+\d/);
    }
    const style = /<style>[\s\S]*?<\/style>/.exec(html)?.[0] ?? '';
    expect(style).toMatch(/@bottom-right \{ content: "[^"]*\\2066 /);
  });

  it('opens and closes each isolate within one text, and uses no override', () => {
    for (const line of [...readText(html).split('\n'), ...markdown.split('\n')]) {
      const opened = line.match(/[\u2066-\u2068]/g)?.length ?? 0;
      expect(line.match(/\u2069/g)?.length ?? 0, line).toBe(opened);
    }
    expect(html + markdown).not.toMatch(/[\u202a-\u202e]/);
  });

  it('dials what is written, with no signs in it', () => {
    expect(html.match(/href="tel:[^"]*"/g)).toEqual(['href="tel:999"']);
    expect(html).toContain('href="https://example.org/heel-raise" dir="ltr"');
  });

  it('has one kind of digit', () => {
    expect(readText(html)).toMatch(/\d/);
    expect(html + markdown).not.toMatch(/[\u0660-\u0669\u06f0-\u06f9]/);
  });

  it('names every side of the plan, the left first', () => {
    const sides = [...markdown.matchAll(/الساق اليسرى|الساق اليمنى/g)].map(([side]) => side);
    expect(sides.length).toBeGreaterThan(4);
    expect(sides[0]).toBe('الساق اليسرى');
    expect(markdown).toContain('10 مرات بالذراع اليسرى فقط، باستخدام الشريط الخفيف');
    expect(markdown).not.toMatch(/الذراع اليمنى/);
  });
});

describe('its clinic copy', () => {
  it('is in the language of the practice', () => {
    expect(clinic).toContain('<html lang="en" dir="ltr">');
    expect(clinic).toContain('8 to 12 times with the left leg');
    expect(clinic).toContain('Front desk, +44 20 7946 0000');
    expect(clinic).not.toContain('بالساق');
  });

  it('says what language the sheet is in, and who has reviewed its words', () => {
    expect(clinic).toContain('Language of the sheet: ar; nobody has reviewed its words.');
  });
});

describe('a pack that somebody has reviewed', () => {
  const pack = readFileSync(join(WORDS, 'ar.yaml'), 'utf8');
  const own = pack.replace('reviewed_by: ""', 'reviewed_by: "A. Invented, {interpreter}"');
  const reviewed = pagesIn({ ...files, 'templates/words/ar.yaml': own }, 'A-0730');

  it('says nothing at the top, so the sheet has another number', () => {
    expect(own).not.toBe(pack);
    expect(reviewed.html).not.toContain('class="unreviewed"');
    expect(reviewed.markdown.startsWith('Dunlin')).toBe(true);
    expect(reviewed.sheetNumber).not.toBe(sheetNumber);
  });

  it('is named in the clinic copy', () => {
    expect(reviewed.clinic).toContain('its words were reviewed by A. Invented, {interpreter}.');
  });
});

describe('a number of several groups', () => {
  it.each([
    ['555 0142', '⟦555_0142⟧'],
    ['+44 20 7946 0000', '⟦+44_20_7946_0000⟧'],
    ['(555) 0142', '⟦(555)_0142⟧'],
    ['+5550142', '⟦+5550142⟧'],
    ['2026-11-23', '⟦2026-11-23⟧'],
    ['8 إلى 12', '8 إلى 12'],
    ['مرتين (2) 3', 'مرتين (2) 3'],
    ['10. 8', '10. 8'],
    ['1، 2 و5', '1، 2 و5'],
  ])('%s', (text, expected) => {
    const shown = withNumbersInOrder(text)
      .replaceAll('\u2066', '⟦')
      .replaceAll('\u2069', '⟧')
      .replaceAll('\u00a0', '_');
    expect(shown).toBe(expected);
  });
});
