// The stamp on a sheet that must not be used any more. It goes onto the finished page, whatever
// template made it and whoever edited it since; which sheets are outdated is the build's to say.
import { cssText } from './css-text.ts';
import { escapeMarkdown } from './markdown.ts';

export type PageFormat = 'html' | 'markdown';

const MARK = '<!-- outdated -->';
const LOOK =
  'border: 6px solid black; background: white; color: black; margin: 0 0 1rem; padding: 1rem; ' +
  'font: bold 2rem/1.2 sans-serif; text-align: center';

/**
 * The page with the words ("Outdated. Do not use.") plainly at its top, on every printed page, and
 * in the name of its window. A page that is stamped already stays as it is. The words are the practice's,
 * whatever direction the page is read in.
 */
export function stamped(page: string, words: string, format: PageFormat): string {
  if (format === 'html') return stampedHtml(page, words);
  return page.startsWith(MARK) ? page : `${MARK}\n\n# ${escapeMarkdown(words)}\n\n${page}`;
}

function stampedHtml(page: string, words: string): string {
  const [before, after] = partedAtBody(page);
  if (after.startsWith(MARK)) return page;
  const text = escapeHtml(words);
  const named = before
    .replace(/<title>/i, (tag) => `${tag}${text} `)
    .replace(/<\/head>/i, (tag) => `${everyPage(words)}\n${tag}`);
  return `${named}${MARK}\n<p role="alert" dir="auto" style="${LOOK}">${text}</p>${after}`;
}

/** Before and after the start of the body; a page without one is stamped at its very top. */
function partedAtBody(page: string): readonly [string, string] {
  const body = /<body\b[^>]*>/i.exec(page);
  const at = body ? body.index + body[0].length : 0;
  return [page.slice(0, at), page.slice(at)];
}

function everyPage(words: string): string {
  const isolated = `\u2068${words}\u2069`;
  return `<style>@page { @top-center { content: "${cssText(isolated)}"; font: bold 16pt sans-serif; } }</style>`;
}

function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}
