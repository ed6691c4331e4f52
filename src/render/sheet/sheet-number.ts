// The number of a sheet: the same for two sheets that say the same, another as soon as a word, a
// number or a picture differs. Told over the telephone, so it has no signs that look or sound alike.

import { inTwoFours, LENGTH, LETTERS, SIGNS } from '../../model/sheet-signs.ts';
import type { Hash } from '../pages/fingerprint.ts';
import { folded } from '../pages/markdown.ts';
import { base64, isPictureView } from '../pages/picture.ts';
import type { SheetView } from './sheet-view.ts';

/** Raised when a sheet of the same content begins to be worded or ordered anew. */
const FORMAT_VERSION = 1;

/** What a sheet number is taken of. */
export interface NumberedSheet {
  readonly view: SheetView;
  /** Further words that the sheet shows, such as the short day; in the order shown. */
  readonly alsoShown: readonly unknown[];
}

/** "KP4T 7WQM": 8 signs in two fours, the first a letter. The person's name takes no part. */
export function sheetNumber(sheet: NumberedSheet, hash: Hash): string {
  let rest = wholeNumber(hash(numberedText(sheet)));
  let signs = '';
  for (let i = 0; i < LENGTH; i += 1) {
    const alphabet = i === 0 ? LETTERS : SIGNS;
    const base = BigInt(alphabet.length);
    signs += alphabet[Number(rest % base)];
    rest /= base;
  }
  return inTwoFours(signs);
}

/** All that is shown but the name, as one text: keys in order, so that it hangs on no order of code. */
function numberedText({ view, alsoShown }: NumberedSheet): string {
  // The plan's code is a file's name; it isn't shown.
  const nameless = { ...view, plan: null, head: { ...view.head, person: null } };
  return JSON.stringify([
    FORMAT_VERSION,
    view.language,
    inKeyOrder(nameless),
    inKeyOrder(alsoShown),
  ]);
}

/** What is shown of a value, in an order that hangs on no code: two views with equal content have one number. */
export function inKeyOrder(value: unknown): unknown {
  // Line ends and indents of a file aren't shown, so they don't count.
  if (typeof value === 'string') return folded(value);
  // A drawing is what it shows, whatever its file is called.
  if (isPictureView(value)) {
    const { picture, alt, caption } = value;
    return [base64(picture.bytes), folded(alt), ...(caption === null ? [] : [folded(caption)])];
  }
  if (Array.isArray(value)) return value.map(inKeyOrder);
  if (value === null || typeof value !== 'object') return value;
  const keys = Object.keys(value)
    .sort()
    .filter((key) => !isUnshownLink(key, value));
  return keys.map((key) => [key, inKeyOrder(value[key as keyof typeof value])]);
}

/** A sheet without links keeps the number that it had before there were any. */
function isUnshownLink(key: string, value: object): boolean {
  return key === 'link' && value[key as keyof typeof value] === null;
}

function wholeNumber(bytes: Uint8Array): bigint {
  return bytes.reduce((sum, byte) => sum * 256n + BigInt(byte), 0n);
}
