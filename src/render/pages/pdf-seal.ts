// What a PDF says of the page that it was printed from: its last line, a comment behind the end of the
// file that readers pass over. A PDF is here a text of one sign a byte. Printing it is not here.
import { fingerprint, type Hash } from './fingerprint.ts';

export interface PdfSeal {
  /** "KP4T 7WQM". */
  readonly sheetNumber: string;
  /** The fingerprint of the sealed HTML page. */
  readonly page: string;
}

const LINE = /%carryover sheet (\w{4} \w{4}), page ([0-9a-f]+), pdf ([0-9a-f]+)\n$/;

/** The PDF with a last line that names its page, and ends with a fingerprint of all before it. */
export function sealedPdf(pdf: string, { sheetNumber, page }: PdfSeal, hash: Hash): string {
  const lineEnd = pdf.endsWith('\n') ? '' : '\n';
  const named = `${pdf}${lineEnd}%carryover sheet ${sheetNumber}, page ${page}, pdf `;
  return `${named}${fingerprint(named, hash)}\n`;
}

/** The seal of a PDF that is byte for byte as it was made; null for any other. */
export function pdfSeal(pdf: string, hash: Hash): PdfSeal | null {
  const [, sheetNumber = '', page = '', made = ''] = LINE.exec(pdf) ?? [];
  const named = pdf.slice(0, -`${made}\n`.length);
  return made !== '' && made === fingerprint(named, hash) ? { sheetNumber, page } : null;
}
