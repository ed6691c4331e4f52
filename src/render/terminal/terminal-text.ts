// Text made fit for a terminal: nothing in it can move the cursor, colour the screen, hide or turn the
// words around it; its width is counted in columns of the screen; lines are broken between words.
// Colours and the width of the screen are the caller's.
import stringWidth from 'string-width';

/** How the caller makes text stand out; plain text comes back as it went in where colour is off. */
export interface Paint {
  readonly bold: (text: string) => string;
  readonly dim: (text: string) => string;
  readonly warn: (text: string) => string;
}

/** The screen to write for. */
export interface Screen {
  /** In columns. */
  readonly width: number;
  readonly paint: Paint;
}

// Control characters, lone surrogates, line separators, and what does not show or turns the direction.
// Joiners (U+200C, U+200D) and marks stay: scripts need them.
const UNSEEN =
  /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u00AD\u061C\u180E\u200B\u200E\u200F\u202A-\u202E\u2060-\u206F\uFEFF\uFFF9-\uFFFB\u{E0000}-\u{E007F}]/gu;
const PICTURES = 0x2400;
const DELETE = 0x7f;
const DELETE_PICTURE = '\u2421';

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** The text with a sign for every character that does not show: `␛`, `␉`, `<U+202E>`. */
export function visible(text: string): string {
  return text.replace(UNSEEN, (one) => {
    const code = one.codePointAt(0) as number;
    if (code < 0x20) return String.fromCodePoint(PICTURES + code);
    if (code === DELETE) return DELETE_PICTURE;
    return `<U+${code.toString(16).toUpperCase().padStart(4, '0')}>`;
  });
}

/** Visible text on one line: line ends become spaces. */
export function oneLine(text: string): string {
  const lines = text.split(/\r?\n/).map((line) => line.trim());
  return visible(lines.filter((line) => line !== '').join(' '));
}

/** Columns that visible text takes: 2 for a wide character, 0 for a mark over another. */
export function displayWidth(text: string): number {
  return stringWidth(text);
}

/** As much of the start as fits. */
export function startWithin(text: string, width: number): string {
  let kept = '';
  let taken = 0;
  for (const { segment } of graphemes.segment(text)) {
    taken += displayWidth(segment);
    if (taken > width) break;
    kept += segment;
  }
  return kept;
}

/** As much of the end as fits. */
export function endWithin(text: string, width: number): string {
  const pieces = [...graphemes.segment(text)].map(({ segment }) => segment);
  let from = pieces.length;
  for (let taken = 0; from > 0; from -= 1) {
    taken += displayWidth(pieces[from - 1] as string);
    if (taken > width) break;
  }
  return pieces.slice(from).join('');
}

const NO_BREAK = '\u00A0';

/** The text as one piece, that no line end parts. */
export function unbroken(text: string): string {
  return text.replaceAll(' ', NO_BREAK);
}

/** The text broken only after its commas: `2 x 8-12, hold 2 s` never parts a number from its unit. */
export function brokenAtCommas(text: string): string {
  return text.replace(/(?<!,) /g, NO_BREAK);
}

/**
 * Visible text as lines of no more than `width` columns, broken between words; a word too long is cut.
 * A no-break space holds words together, and is a plain one on the screen.
 */
export function wrappedLines(text: string, width: number): string[] {
  if (displayWidth(text) <= width) return [text.replaceAll(NO_BREAK, ' ')];
  const lines: string[] = [];
  let line = '';
  let taken = 0;
  for (const word of text.split(' ').filter((one) => one !== '')) {
    const pieces = wordPieces(word, width);
    for (const [i, piece] of pieces.entries()) {
      const long = displayWidth(piece);
      const isBesides = i === 0 && line !== '' && taken + 1 + long <= width;
      if (!isBesides && line !== '') lines.push(line);
      line = isBesides ? `${line} ${piece}` : piece;
      taken = isBesides ? taken + 1 + long : long;
    }
  }
  return [...lines, line].map((one) => one.replaceAll(NO_BREAK, ' '));
}

function wordPieces(word: string, width: number): string[] {
  if (displayWidth(word) <= width) return [word];
  const pieces: string[] = [];
  let piece = '';
  let taken = 0;
  for (const { segment } of graphemes.segment(word)) {
    const long = displayWidth(segment);
    if (piece !== '' && taken + long > width) {
      pieces.push(piece);
      piece = '';
      taken = 0;
    }
    piece += segment;
    taken += long;
  }
  return [...pieces, piece];
}

/** Prose for the screen: one line's worth of text, wrapped. */
export function prose(text: string, width: number): string {
  return wrappedLines(oneLine(text), width).join('\n');
}
