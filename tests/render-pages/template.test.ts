import { describe, expect, it } from 'vitest';
import { filled } from '../../src/render/pages/template.ts';

function problemOf(
  text: string,
  more: Record<string, string> = {},
  view: unknown = { name: 'A', none: null, list: ['x'] },
) {
  const page = filled(
    'page.html.hbs',
    view,
    new Map(Object.entries({ 'page.html.hbs': text, ...more })),
    'html',
  );
  if (page.ok) throw new Error(`filled in as ${page.text}`);
  return page.problem;
}

describe('a template that cannot be used', () => {
  it('names a name that is not there, with its place', () => {
    expect(problemOf('<p>\n  {{nmae}}')).toMatchObject({
      template: 'page.html.hbs',
      line: 2,
      column: 5,
      message: expect.stringContaining('nmae'),
    });
  });

  it.each(['if', 'unless', 'each', 'with'])(
    'does not take a name that is not there for "no" in #%s',
    (block) => {
      expect(problemOf(`a\n{{#${block} nmae}}x{{/${block}}}`)).toEqual({
        template: 'page.html.hbs',
        line: 2,
        column: 1,
        message: `{{#${block} nmae}} names something that is not there to be printed.`,
      });
    },
  );

  it('names the partial in which the mistake is', () => {
    const more = {
      'partials/a.html.hbs': '{{> partials/b.html}}',
      'partials/b.html.hbs': '\n\n{{nmae}}',
    };
    expect(problemOf('{{> partials/a.html}}', more)).toMatchObject({
      template: 'partials/b.html.hbs',
      line: 3,
    });
  });

  it.each([
    ['an unclosed block', 'a\n{{#if name}}b', 'never closed'],
    ['blocks that do not match', '{{#if name}}\n{{/each}}', '{{#if}} is closed by {{/each}}'],
    ['braces that do not fit', 'a\n{{name}', "don't fit together"],
    ['three braces', '\n{{{name}}}', 'unescaped'],
    ['an ampersand', '\n{{&name}}', 'unescaped'],
    [
      'a partial that is not there',
      '\n{{> partials/c.html}}',
      'There is no partial partials/c.html',
    ],
    ['a helper that is not there', '\n{{shout name}}', 'There is no {{shout'],
    ['a section in place of a block', '\n{{#list}}x{{/list}}', 'There is no {{#list'],
    ['a log', '\n{{log name}}', 'There is no {{log'],
    ['a block without a name', '\n{{#if}}x{{/if}}', 'takes one name'],
    ['an inline partial', '\n{{#*inline "x"}}y{{/inline}}', 'not used here'],
    ['counting what is no number', '\n{{counted name}}', '{{counted name}}'],
    ['a group of values where a text belongs', '{{this}}', 'a whole group'],
  ])('tells %s', (_, text, message) => {
    expect(problemOf(text).message).toContain(message);
  });

  it('tells a partial that calls itself', () => {
    expect(problemOf('{{> a.html}}', { 'a.html.hbs': '{{> a.html}}' }).message).toContain(
      'without end',
    );
  });

  it('tells that the template is not there', () => {
    expect(filled('x.hbs', {}, new Map(), 'html')).toMatchObject({
      ok: false,
      problem: { template: 'x.hbs' },
    });
  });
});

describe('a template that is filled', () => {
  const fill = (text: string, escaping: 'html' | 'none' = 'html') =>
    filled(
      'page',
      { name: '<b> & "c"', list: ['x', 'y'], none: null },
      new Map([['page', text]]),
      escaping,
    );

  it('escapes for HTML, and leaves Markdown to its own escaping', () => {
    expect(fill('{{name}}')).toEqual({ ok: true, text: '&lt;b&gt; &amp; &quot;c&quot;\n' });
    expect(fill('{{name}}', 'none')).toEqual({ ok: true, text: '<b> & "c"\n' });
  });

  it('takes null for nothing and counts from 1', () => {
    expect(
      fill('{{#if none}}a{{else}}b{{/if}}{{#each list}}{{counted @index}}{{this}}{{/each}}'),
    ).toEqual({ ok: true, text: 'b1x2y\n' });
  });

  it('ends lines with LF alone and nothing before it', () => {
    expect(fill('a  \r\nb\t\n\n\n\nc')).toEqual({ ok: true, text: 'a\nb\n\nc\n' });
  });
});
