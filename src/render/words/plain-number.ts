// Numbers as the clinic copy and the list of handouts show them: ranges, shares, minutes. The digits
// and signs come from here and the words pack, never from the machine's own settings.
import { type Interval, mapEnds } from '../../units/interval.ts';
import type { Words } from './words.ts';

const MS_PER_SECOND = 1000;
const MS_PER_MINUTE = 60_000;

/** What stands where there is no number. */
export const NOTHING = '–';

/** A number with that many decimals at the most: 1.5, 12, 0.45. */
export function plainNumber(n: number, decimals: number, words: Words): string {
  const factor = 10 ** decimals;
  const [whole = '0', part] = String(Math.round(n * factor) / factor).split('.');
  return part === undefined ? whole : `${whole}${words.say('numbers.decimal')}${part}`;
}

/** "8–12", or "8" where both ends look the same. */
export function plainRange([low, high]: Interval, decimals: number, words: Words): string {
  const [first, last] = [plainNumber(low, decimals, words), plainNumber(high, decimals, words)];
  return first === last ? first : words.say('numbers.short-range', { low: first, high: last });
}

export function secondsOf(ms: Interval): Interval {
  return mapEnds(ms, (end) => end / MS_PER_SECOND);
}

export function minutesOf(ms: Interval): Interval {
  return mapEnds(ms, (end) => end / MS_PER_MINUTE);
}

/** "+12 %", "−8 %", "0 %": a change against an earlier week. */
export function plainChange(change: number | null, words: Words): string {
  if (change === null) return NOTHING;
  const percent = Math.round(change * 100);
  const sign = percent > 0 ? '+' : percent < 0 ? '−' : '';
  return words.say('clinic.percent', { number: `${sign}${Math.abs(percent)}` });
}
