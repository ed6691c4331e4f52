// Texts that a page could trip over, and a view with any texts put in the place of its own.
import fc from 'fast-check';
import MarkdownIt, { type Token } from 'markdown-it';
import type { SheetPage } from '../../src/render/pages/pages.ts';

const SNIPPETS = [
  '*',
  '**',
  '_',
  '__',
  '`',
  '```',
  '~~',
  '~~~',
  '#',
  '## ',
  '>',
  '- ',
  '+ ',
  '* ',
  '-',
  '1. ',
  '2) ',
  '10.',
  '---',
  '===',
  '***',
  '|',
  '| --- |',
  ':--',
  '\\',
  '\\*',
  '<b>',
  '</b>',
  '<script>alert(1)</script>',
  '<!-- x -->',
  '-->',
  '&amp;',
  '&lt;',
  '&#65;',
  '&',
  '[x](y)',
  '![a](b)',
  '[x]: /y',
  '[ ]',
  '<http://a.b>',
  'https://a.b/_c_',
  'www.a.b',
  'a@b.c',
  '$x$',
  '{{name}}',
  '{{{name}}}',
  '{.c}',
  '^2',
  '"',
  "'",
  '=',
  '(',
  ')',
  '!',
  '.',
  '\n',
  '\r\n',
  '\n\n',
  '    ',
  '\t',
  '\u2028',
  '\u00a0',
  'é',
  '足',
  '🦶',
  'مشي',
  'word',
  ' ',
  '8',
  ' to ',
  '12 kg',
];

/** Never empty: a view has null where it says nothing. */
export const nastyText = fc
  .array(
    fc.oneof(
      { weight: 4, arbitrary: fc.constantFrom(...SNIPPETS) },
      fc.string({ unit: 'grapheme' }),
    ),
    {
      minLength: 1,
      maxLength: 8,
    },
  )
  .map((parts) => parts.join('').replaceAll('\0', ''))
  .filter((text) => text.trim() !== '' && !/^[\s\u0085\u2028\u2029]*$/.test(text));

/** The page with every text of it replaced, and the path of each in order. Codes and bytes stay. */
export function withTexts(page: SheetPage, textFor: (place: number) => string) {
  const places: string[] = [];
  const KEPT = new Set(['view.language', 'view.direction', 'paper', 'print']);
  const replaced = (value: unknown, path: string): unknown => {
    if (value instanceof Uint8Array || KEPT.has(path) || /\.picture\.picture\./.test(path))
      return value;
    if (typeof value === 'string') return textFor(places.push(path) - 1);
    if (Array.isArray(value)) return value.map((one, i) => replaced(one, `${path}.${i}`));
    if (value === null || typeof value !== 'object') return value;
    return Object.fromEntries(
      Object.entries(value).map(([key, one]) => [
        key,
        replaced(one, path === '' ? key : `${path}.${key}`),
      ]),
    );
  };
  return { page: replaced(page, '') as SheetPage, places };
}

/** What a reader of Markdown makes of a page: its blocks, and the text of each line and picture. */
export function readMarkdown(markdown: string): { blocks: string[]; texts: string[] } {
  const tokens = new MarkdownIt('default', { html: true, linkify: true }).parse(markdown, {});
  const inline = tokens.filter((token) => token.type === 'inline');
  return {
    blocks: tokens.map((token) => `${token.type} ${token.tag} ${token.info}`),
    texts: inline.map((token) => textOf(token)),
  };
}

/** A picture's words are a text of their own inside it. */
function textOf(token: Token): string {
  return (token.children ?? [])
    .map((child) => (child.children ? textOf(child) : child.content))
    .join('');
}
