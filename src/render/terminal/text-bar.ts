// Amounts drawn with signs of a terminal: a bar from nothing to the low end and on to the high end, and
// a row of small columns over the weeks. Plain signs where the output is no terminal, so that a file or
// a mail keeps them.
import type { Interval } from '../../units/interval.ts';

/** What a bar is drawn with, to its low end and from there to its high end. */
export interface BarSigns {
  readonly low: string;
  readonly high: string;
}

export const BLOCK_SIGNS: BarSigns = { low: '\u2588', high: '\u2591' };
export const PLAIN_SIGNS: BarSigns = { low: '#', high: '-' };
const COLUMNS = '\u2581\u2582\u2583\u2584\u2585\u2586\u2587\u2588';
const NONE = '\u00B7';

/** `######--`: the low end, and on to the high end; the most of all fills the width. */
export function textBar(
  [low, high]: Interval,
  most: number,
  width: number,
  signs: BarSigns,
): string {
  if (most <= 0) return '';
  const toLow = Math.round((low / most) * width);
  const toHigh = Math.round((high / most) * width);
  // What is there at all is never drawn as nothing.
  const shown = Math.max(toHigh, high > 0 ? 1 : 0);
  return signs.low.repeat(toLow) + signs.high.repeat(shown - toLow);
}

/** `▃▃▅▂▇`: a column an amount, the most of all as high as a line, a dot for nothing. */
export function textColumns(amounts: readonly number[], most: number): string {
  const column = (amount: number) =>
    COLUMNS[Math.max(0, Math.ceil((amount / most) * COLUMNS.length) - 1)] ?? NONE;
  return amounts.map((amount) => (amount > 0 ? column(amount) : NONE)).join('');
}
