// What a printed page says of itself: its size, and where each marked place came to lie. Read from
// the parts of a PDF that Chromium writes plainly; its words are left to pdftotext.
import { execFileSync } from 'node:child_process';

export interface PrintedPages {
  /** Width and height of each page, in points. */
  readonly sizes: readonly (readonly [number, number])[];
  /** Number of the page, from 1, on which the element of this id begins. */
  readonly pageOf: ReadonlyMap<string, number>;
}

/** The pages of a PDF in order, and the places in it that a link leads to. */
export function printedPages(pdf: Buffer): PrintedPages {
  const objects = objectsOf(pdf.toString('latin1'));
  const root = [...objects.values()].find((text) => /\/Type \/Catalog\b/.test(text)) ?? '';
  const order = leaves(referenceAfter(root, 'Pages'), objects);
  const places = objects.get(referenceAfter(root, 'Dests')) ?? '';
  const pageOf = new Map<string, number>();
  for (const [, id = '', page] of places.matchAll(/\/([\w-]+) \[(\d+) 0 R \/XYZ/g)) {
    pageOf.set(id, order.indexOf(Number(page)) + 1);
  }
  return { sizes: order.map((id) => sizeOf(objects.get(id) ?? '')), pageOf };
}

function objectsOf(text: string): ReadonlyMap<number, string> {
  const found = text.matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g);
  return new Map([...found].map(([, id, body = '']) => [Number(id), body]));
}

function referenceAfter(text: string, key: string): number {
  return Number(new RegExp(`/${key} (\\d+) 0 R`).exec(text)?.[1] ?? Number.NaN);
}

/** The pages below a node of the page tree, in the order printed. */
function leaves(id: number, objects: ReadonlyMap<number, string>): number[] {
  const node = objects.get(id) ?? '';
  const kids = /\/Kids \[([^\]]*)\]/.exec(node)?.[1];
  if (kids === undefined) return [id];
  return [...kids.matchAll(/(\d+) 0 R/g)].flatMap(([, kid]) => leaves(Number(kid), objects));
}

function sizeOf(page: string): readonly [number, number] {
  const [, width, height] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(page) ?? [];
  return [Number(width), Number(height)];
}

/** Whether this machine can read a PDF's words. */
export function canReadPdfText(): boolean {
  try {
    execFileSync('pdftotext', ['-v'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

/** The words of each page, line by line as they stand on the paper. */
export function pdfLines(pdf: Buffer): string[][] {
  const text = execFileSync('pdftotext', ['-layout', '-enc', 'UTF-8', '-', '-'], {
    input: pdf,
    encoding: 'utf8',
  });
  const pages = text.split('\f').slice(0, -1);
  return pages.map((page) =>
    page
      .split('\n')
      .map((line) => line.replace(/\s+/g, ' ').trim())
      .filter((line) => line !== ''),
  );
}
