import fc from 'fast-check';
import MarkdownIt from 'markdown-it';
import { describe, expect, it } from 'vitest';
import { escapeMarkdown, escapeMarkdownPath, folded } from '../../src/render/pages/markdown.ts';
import { renderSheetMarkdown } from '../../src/render/pages/pages.ts';
import { madePage, shippedTemplates } from './made-sheet.ts';
import { nastyText, readMarkdown, withTexts } from './nasty-text.ts';

const templates = shippedTemplates();

describe('a text in a Markdown page', () => {
  it.each([
    ['*not bold*', '\\*not bold\\*'],
    ['snake_case', 'snake\\_case'],
    ['1. first', '1\\. first'],
    ['12) twelfth', '12\\) twelfth'],
    ['- a dash', '\\- a dash'],
    ['+ a plus', '\\+ a plus'],
    ['# a number sign', '\\# a number sign'],
    ['<b>bold</b>', '\\<b\\>bold\\</b\\>'],
    ['&amp;', '\\&amp;'],
    ['[x](y)', '\\[x\\](y)'],
    ['a | b', 'a \\| b'],
    ['`code`', '\\`code\\`'],
    ['C:\\new', 'C:\\\\new'],
    ['two\n  lines', 'two lines'],
    ['8 to 12 times. Rest 1 minute - then go on.', '8 to 12 times. Rest 1 minute - then go on.'],
  ])('%j is written %j', (text, written) => {
    expect(escapeMarkdown(text)).toBe(written);
  });

  it.each(['commonmark', 'default'] as const)('comes out as it was, read as %s', (preset) => {
    const reader = new MarkdownIt(preset, { html: true });
    fc.assert(
      fc.property(nastyText, (text) => {
        const tokens = reader.parse(escapeMarkdown(text), {});
        expect(tokens.map((token) => token.type)).toEqual([
          'paragraph_open',
          'inline',
          'paragraph_close',
        ]);
        const inline = tokens[1]?.children ?? [];
        expect(
          inline.every((token) => token.type === 'text' || token.type === 'text_special'),
        ).toBe(true);
        expect(inline.map((token) => token.content).join('')).toBe(folded(text));
      }),
      { numRuns: 500 },
    );
  });

  it('leaves a path as one place, whatever is in its name', () => {
    expect(escapeMarkdownPath('pictures/heel-raise.svg')).toBe('pictures/heel-raise.svg');
    expect(escapeMarkdownPath('pictures/a (b) c_d.svg')).toBe('pictures/a%20%28b%29%20c_d.svg');
  });
});

describe('the whole Markdown page', () => {
  it('says the same texts in the same places, whatever the texts are', () => {
    const marked = withTexts(madePage(), (place) => `Q${place}Q`);
    const plain = rendered(marked.page);
    fc.assert(
      fc.property(fc.array(nastyText, { minLength: 20, maxLength: 20 }), (texts) => {
        const nasty = withTexts(madePage(), (place) => texts[place % texts.length] as string);
        const page = rendered(nasty.page);
        expect(page.blocks).toEqual(plain.blocks);
        const expected = plain.texts.map((text) =>
          text.replace(/Q(\d+)Q/g, (_, place: string) =>
            folded(texts[Number(place) % texts.length] as string),
          ),
        );
        expect(page.texts).toEqual(expected);
      }),
      { numRuns: 60 },
    );
  });

  it('has every text of the view', () => {
    const marked = withTexts(madePage(), (place) => `Q${place}Q`);
    const shown = rendered(marked.page).texts.join('\n');
    const missing = marked.places.filter((path, place) => !shown.includes(`Q${place}Q`) && path);
    // Markdown dials no telephone. A session's sentence says its name and its text; the visit's date stands in the sheet's line.
    expect(missing).toEqual([
      'view.plan',
      'view.safety.dial.contact',
      'view.safety.dial.emergency',
      'view.days.sessions.0.name',
      'view.days.sessions.0.text',
      'view.days.sessions.1.name',
      'view.days.sessions.1.text',
      'view.footer.visitDate',
    ]);
  });

  it('is plain to read as it stands', () => {
    const page = renderSheetMarkdown(madePage(), templates);
    expect(page.ok && page.text).toContain(
      '### 2. Heel raise: both feet\n\n**8 to 12 times with both legs',
    );
    expect(page.ok && page.text).toContain('](../pictures/heel-raise.svg)');
    expect(page.ok && page.text).toContain('| Monday 5 October: Strong ankle | | | |');
    expect(page.ok && page.text).not.toMatch(/[ \t]\n|\r|\n\n\n/);
  });
});

function rendered(page: ReturnType<typeof madePage>) {
  const markdown = renderSheetMarkdown(page, templates);
  if (!markdown.ok) throw new Error(markdown.problem.message);
  return readMarkdown(markdown.text);
}
