// The pen of the charts: marks of an SVG in black on white, that a photocopy keeps. It turns a chart
// round for a language written from right to left, so that a chart counts in the direction of reading.
// What a chart shows is its own; how it comes into a page is the picture's.
import { displayWidth } from '../terminal/terminal-text.ts';

/** Told apart without colour: a striped area is neither black nor white on any copy. */
export type Fill = 'black' | 'white' | 'striped' | 'none';

export interface Ink {
  readonly fill?: Fill;
  /** Width of the outline; 0 is none. */
  readonly line?: number;
  /** As `5 3`: drawn and left out in turn. */
  readonly dashes?: string;
}

/** Where a text hangs on its point, in the direction of reading. */
export type Anchor = 'start' | 'middle' | 'end';

/** Marks at places counted from the side where reading starts. */
export interface Pen {
  readonly box: (x: number, y: number, width: number, height: number, ink: Ink) => string;
  readonly line: (from: Point, to: Point, ink: Ink) => string;
  readonly path: (points: readonly Point[], ink: Ink) => string;
  readonly dot: (at: Point, radius: number, ink: Ink) => string;
  readonly text: (at: Point, words: string, anchor: Anchor, isBold?: boolean) => string;
}

export type Point = readonly [x: number, y: number];

/** What surrounds the marks. */
export interface Sheet {
  readonly language: string;
  readonly direction: 'ltr' | 'rtl';
  readonly title: string;
  readonly description: string;
  readonly height: number;
}

/** All charts are as wide as that: 14 cm on paper make a unit a quarter of a millimetre. */
export const CHART_WIDTH = 560;
export const FONT_SIZE = 12;

const FONT = 'system-ui, Liberation Sans, Arial, sans-serif';
const LETTER = 0.58 * FONT_SIZE;
const STRIPES =
  '<defs><pattern id="striped" width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">' +
  '<rect width="4" height="4" fill="white"/><rect width="1.4" height="4" fill="black"/></pattern></defs>';
const FILLS = { black: 'black', white: 'white', striped: 'url(#striped)', none: 'none' } as const;

/** The finished drawing; the same marks give the same bytes. */
export function svgText(sheet: Sheet, marks: readonly string[]): string {
  const { language, direction, title, description, height } = sheet;
  const size = `width="${CHART_WIDTH}" height="${digits(height)}" viewBox="0 0 ${CHART_WIDTH} ${digits(height)}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} role="img" xml:lang="${escaped(language)}" direction="${direction}" font-family="${FONT}" font-size="${FONT_SIZE}">`,
    `<title>${escaped(title)}</title>`,
    `<desc>${escaped(description)}</desc>`,
    STRIPES,
    `<rect width="${CHART_WIDTH}" height="${digits(height)}" fill="white"/>`,
    ...marks,
    '</svg>\n',
  ].join('\n');
}

/** A pen for one direction of reading. Texts turn by the drawing's own direction. */
export function penFor(direction: 'ltr' | 'rtl'): Pen {
  const across = (x: number) => digits(direction === 'rtl' ? CHART_WIDTH - x : x);
  const place = ([x, y]: Point) => `${across(x)},${digits(y)}`;
  return {
    box: (x, y, width, height, ink) =>
      `<rect x="${across(direction === 'rtl' ? x + width : x)}" y="${digits(y)}" width="${digits(width)}" height="${digits(height)}"${inked(ink)}/>`,
    line: (from, to, ink) => `<path d="M${place(from)}L${place(to)}"${inked(ink)}/>`,
    path: (points, ink) => `<path d="M${points.map(place).join('L')}"${inked(ink)}/>`,
    dot: ([x, y], radius, ink) =>
      `<circle cx="${across(x)}" cy="${digits(y)}" r="${digits(radius)}"${inked(ink)}/>`,
    text: ([x, y], words, anchor, isBold = false) =>
      `<text x="${across(x)}" y="${digits(y)}" text-anchor="${anchor}"${isBold ? ' font-weight="bold"' : ''}>${escaped(words)}</text>`,
  };
}

function inked({ fill = 'none', line = 1, dashes }: Ink): string {
  const stroke = line > 0 ? ` stroke="black" stroke-width="${digits(line)}"` : '';
  return ` fill="${FILLS[fill]}"${stroke}${dashes === undefined ? '' : ` stroke-dasharray="${dashes}"`}`;
}

/** At the most two decimals: the same on every machine, and finer than any printer. */
function digits(n: number): string {
  if (!Number.isFinite(n)) throw new Error('a place in a chart is no number');
  // Adding 0 turns the -0 of a tiny number into 0.
  return String(Math.round(n * 100) / 100 + 0);
}

/** About how wide a text is drawn; which font a reader has is not known. */
export function textWidth(words: string): number {
  return displayWidth(words) * LETTER;
}

// What XML 1.0 has no place for, even escaped: one of them would spoil the whole drawing.
const NOT_XML = /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu;
const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
};

function escaped(text: string): string {
  return text.replace(NOT_XML, '\uFFFD').replace(/[&<>"]/g, (one) => ESCAPES[one] ?? one);
}
