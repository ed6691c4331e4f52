// The finished pages: which template makes which, and what a page needs beside its words (pictures
// as data, the paper, the line at the foot). Words are the views', looks the templates'; sealing and
// writing are the build's.
import type { ChangesPageView } from '../changes/changes-view.ts';
import type { ClinicView } from '../record/clinic-view.ts';
import type { IndexView } from '../record/index-view.ts';
import type { FiguresView } from '../sheet/figures-view.ts';
import type { SentencesView, SheetView } from '../sheet/sheet-view.ts';
import { cssText } from './css-text.ts';
import { escapedView } from './markdown.ts';
import { withPicturesInside } from './picture.ts';
import { inReadingOrder, withNumbersInOrder } from './reading-order.ts';
import { filled, type Page, type Templates } from './template.ts';

/** A handout, and what is settled only when all its words are there. */
export interface SheetPage {
  readonly view: SheetView;
  /** Null where the plan has no short day. */
  readonly shortDay: SentencesView | null;
  /** "Sheet KP4T 7WQM, visit of 23 November 2026". */
  readonly sheetLine: string;
  readonly paper: 'a4' | 'letter';
  readonly print: 'normal' | 'large';
}

const PAPER_IN_CSS = { a4: 'A4', letter: 'letter' } as const;

/** The handout as one HTML file with everything inside it. */
export function renderSheetHtml(sheet: SheetPage, templates: Templates): Page {
  // A number is not read over two lines.
  const number = sheet.sheetLine.replace(/(?<=\b[A-Z0-9]{4}) (?=[A-Z0-9]{4}\b)/, '\u00a0');
  const foot = `${sheet.view.footer.contact} · ${number}`;
  return filled('sheet.html.hbs', printable(sheetContext(sheet), foot, sheet), templates, 'html');
}

/** The same content as Markdown, its pictures beside it in the practice folder. */
export function renderSheetMarkdown(sheet: SheetPage, templates: Templates): Page {
  const view = escapedView(inReadingOrder(sheetContext(sheet)));
  return filled('sheet.md.hbs', view, templates, 'none');
}

/** The clinic copy. */
export function renderClinic(view: ClinicView, templates: Templates): Page {
  return filled('clinic.html.hbs', printable(view, view.foot, view), templates, 'html');
}

/** What changed, for a letter or the notes. */
export function renderChanges(
  view: ChangesPageView,
  templates: Templates,
  as: 'html' | 'markdown',
): Page {
  return as === 'html'
    ? filled('changes.html.hbs', printable(view, '', view), templates, 'html')
    : filled('changes.md.hbs', escapedView(inReadingOrder(view)), templates, 'none');
}

/** The list of all handouts, with links to them. */
export function renderIndex(view: IndexView, templates: Templates): Page {
  return filled('index.html.hbs', printable(view, view.foot, view), templates, 'html');
}

/** All figures on one page, large and small, for whoever draws them. */
export function renderFigures(view: FiguresView, templates: Templates): Page {
  return filled('figures.html.hbs', printable(view, '', { paper: 'a4' }), templates, 'html');
}

function sheetContext({ view, shortDay, sheetLine }: SheetPage): object {
  return { ...view, shortDay, sheetLine };
}

/** How a page is printed: on which paper, and how large. */
type Printed = Pick<SheetPage, 'paper'> & Partial<Pick<SheetPage, 'print'>>;

function printable(view: object, foot: string, { paper, print }: Printed): object {
  const inside = withPicturesInside(inReadingOrder(view)) as object;
  const isMirrored = 'direction' in view && view.direction === 'rtl';
  return {
    ...inside,
    print: {
      paper: PAPER_IN_CSS[paper],
      foot: cssText(isMirrored ? withNumbersInOrder(foot) : foot),
      isLarge: print === 'large',
      isMirrored,
    },
  };
}
