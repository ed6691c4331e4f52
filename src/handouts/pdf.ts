// The PDF of a sheet, where one was asked for: a print of its HTML page, known by a seal. Its bytes differ
// from one printing to the next, so it is held against the page that it was printed from.
import { join } from 'node:path';
import { type Finding, finding } from '../finding/finding.ts';
import { fileOnly } from '../finding/place.ts';
import { sealOf } from '../render/pages/fingerprint.ts';
import { type PdfSeal, pdfSeal, sealedPdf } from '../render/pages/pdf-seal.ts';
import { type Browser, printed } from './browser.ts';
import { unfinished, writePdf } from './disk.ts';
import { HANDOUTS, type Pages, pathsOf, sha256 } from './pages.ts';

export function pdfPath(plan: string): string {
  return `${HANDOUTS}/${plan}.pdf`;
}

/** What is wrong with a PDF that lies there: it was not made by a build, or of another page. */
export function pdfFault(pdf: string | undefined, pages: Pages): 'edited' | 'stale' | null {
  const seal = pdf === undefined ? null : pdfSeal(pdf, sha256);
  if (seal === null) return 'edited';
  return seal.page === sealFor(pages).page ? null : 'stale';
}

function sealFor({ plan, sheetNumber, files }: Pages): PdfSeal {
  const page = sealOf(files.get(pathsOf(plan)[0]) ?? '');
  if (page === null) throw new Error(`the sheet of ${plan} has no seal`);
  return { sheetNumber, page };
}

/** Prints the sheet that was just written; what keeps the browser from it is a finding at the sheet. */
export function makePdf(root: string, pages: Pages, browser: Browser): Finding | null {
  const [sheet] = pathsOf(pages.plan);
  const to = pdfPath(pages.plan);
  const outcome = printed(browser, join(root, sheet), unfinished(root, to));
  if (outcome.ok) {
    writePdf(root, to, sealedPdf(outcome.pdf, sealFor(pages), sha256));
    return null;
  }
  return finding({
    check: 'pdf-not-made',
    severity: 'error',
    message: `The browser ${browser.command} made no PDF of this sheet (${outcome.why}), so no other one was tried.`,
    place: fileOnly(sheet),
    hints: ['The page can be printed from any browser.'],
  });
}
