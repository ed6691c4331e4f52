// Practitioner's text in a Markdown page: every sign that a reader of Markdown would act on is
// escaped, so that a sentence comes out as it was written. Stands before the Markdown templates;
// which sentences there are is the view's.
import { isLinkView } from './link-code.ts';
import { isPictureView } from './picture.ts';

/** Signs that CommonMark, or its common extensions (tables, strikethrough, sums), act on anywhere. */
const ACTIVE = /[\\`*_[\]<>&#|~$^{}]/g;
/** What makes a list, a heading's underline or a table's rule where it opens a line. */
const OPENS_LIST = /^[-+=:!]/;
// A number and a point make a list only with a blank behind them.
const OPENS_NUMBERED = /^(\d+)([.)])(?=\s|$)/;
// Some readers turn bare addresses into links, and then show the escapes inside them.
const OPENS_ADDRESS = /(?<=[ps]):(?=\/)|(?<=www)\.|@/gi;
// Line ends of every kind, and the blanks that CommonMark counts as indent.
const LINE_ENDS_AND_BLANKS = /[ \t\r\n\f\v\u0085\u2028\u2029]+/g;

/** The text on one line, as it reads on paper: line ends and runs of blanks are one blank. */
export function folded(text: string): string {
  return text.replace(LINE_ENDS_AND_BLANKS, ' ').trim();
}

/** The text for a place in a Markdown page, on one line; `1. <b>` is `1\. \<b\>`. */
export function escapeMarkdown(text: string): string {
  return folded(text)
    .replace(ACTIVE, '\\$&')
    .replace(OPENS_ADDRESS, '\\$&')
    .replace(OPENS_LIST, '\\$&')
    .replace(OPENS_NUMBERED, '$1\\$2');
}

/** A path for the place between the brackets of a link: every sign but the plain ones as %XX. */
export function escapeMarkdownPath(path: string): string {
  return path
    .split('/')
    .map((name) => encodeURIComponent(name).replace(/[!'()*~]/g, percentForm))
    .join('/');
}

function percentForm(sign: string): string {
  return `%${sign.charCodeAt(0).toString(16).toUpperCase()}`;
}

/** The same view with every text in it escaped; of a picture only its path, if it has a file, and its words are left. */
export function escapedView(view: unknown): unknown {
  if (typeof view === 'string') return escapeMarkdown(view);
  if (Array.isArray(view)) return view.map(escapedView);
  if (isPictureView(view)) {
    // A page stands in handouts/, one step below the practice folder.
    const { file } = view.picture;
    return {
      path: file === null ? null : `../${escapeMarkdownPath(file)}`,
      alt: escapeMarkdown(view.alt),
      caption: view.caption === null ? null : escapeMarkdown(view.caption),
    };
  }
  // An address stands between < and >, where nothing is escaped; no sign that is let into one needs it.
  if (isLinkView(view)) return { lead: escapeMarkdown(view.lead), address: view.address };
  if (view === null || typeof view !== 'object') return view;
  return Object.fromEntries(Object.entries(view).map(([key, value]) => [key, escapedView(value)]));
}
