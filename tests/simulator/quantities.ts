// Reads what is written after a key: counts, times (as whole milliseconds), gaps, loads, weeks.
// Anything that isn't in the contract's form throws: the simulator is only fed valid plans.

import type { Fraction } from './fraction.ts';
import { fraction, readDecimal, times, whole, writeDecimal } from './fraction.ts';
import type { Count } from './written.ts';

/** From the low end to the high end; of counts, or of milliseconds. */
export type Range = readonly [number, number];

export const ONE: Range = [1, 1];

export function readCount(written: Count): Range {
  const match = /^(\d+)(?:[-–](\d+))?$/.exec(String(written).trim());
  if (!match) throw new Error(`not a count: ${written}`);
  return [Number(match[1]), Number(match[2] ?? match[1])];
}

const NUMBER = '(-?\\d+(?:\\.\\d+)?)';
const TIME = new RegExp(`^${NUMBER}(?:[-–](\\d+(?:\\.\\d+)?))?\\s*(s|min|breaths?)$`);
const MINUTES_AND_SECONDS = new RegExp(`^${NUMBER}\\s*min\\s+${NUMBER}\\s*s$`);

function exactly(size: Fraction): number {
  if (size.d !== 1n) throw new Error('finer than a millisecond');
  return Number(size.n);
}

/** Milliseconds of "2 s", "8-12 s", "1 min 30 s", "6 breaths", and of a dial's "-5 s". */
export function readTime(written: string, breath: number): Range {
  const text = written.trim();
  const both = MINUTES_AND_SECONDS.exec(text);
  if (both?.[1] && both[2]) {
    const minutes = exactly(times(readDecimal(both[1]), whole(60_000)));
    const ms = minutes + exactly(times(readDecimal(both[2]), whole(1000)));
    return [ms, ms];
  }
  const match = TIME.exec(text);
  if (!match?.[1]) throw new Error(`not a time: ${written}`);
  const unit = match[3] === 's' ? 1000 : match[3] === 'min' ? 60_000 : breath;
  const low = exactly(times(readDecimal(match[1]), whole(unit)));
  return [low, match[2] ? exactly(times(readDecimal(match[2]), whole(unit))) : low];
}

/** Milliseconds of a time that is one number, such as a gap. */
export const readGap = (written: string, breath: number): number => readTime(written, breath)[0];

export function readPercent(written: string): Fraction {
  const match = /^(-?\d+(?:\.\d+)?)\s*%$/.exec(written.trim());
  if (!match?.[1]) throw new Error(`not a percentage: ${written}`);
  return times(readDecimal(match[1]), fraction(1n, 100n));
}

/** The first and last week of "3-6", in order. */
export function readWeeks(written: string): Range {
  return readCount(written);
}

export type LoadKind = 'kg' | 'lb' | '% 1rm' | '% body weight' | 'rm' | 'body weight' | 'band';

export interface Load {
  readonly kind: LoadKind;
  readonly pieces: number;
  /** Of one piece, in the load's own unit. */
  readonly low: Fraction;
  readonly high: Fraction;
  /** The place among the practice's bands, easiest first. */
  readonly band: number;
  readonly text: string;
}

const MEASURED =
  /^(?:(\d+)\s*x\s*)?(\d+(?:\.\d+)?)(?:[-–](\d+(?:\.\d+)?))?\s*(kg|lb|rm|% 1rm|% body weight)$/;

export function readLoad(written: string, bands: readonly string[]): Load {
  const text = written.trim();
  const nothing = { pieces: 1, low: fraction(0n), high: fraction(0n), band: -1, text };
  if (text === 'body weight') return { ...nothing, kind: 'body weight' };
  const band = bands.indexOf(text);
  if (band >= 0) return { ...nothing, kind: 'band', band };
  const match = MEASURED.exec(text);
  if (!match?.[2]) throw new Error(`not a load: ${written}`);
  return {
    ...nothing,
    kind: match[4] as LoadKind,
    pieces: Number(match[1] ?? 1),
    low: readDecimal(match[2]),
    high: readDecimal(match[3] ?? match[2]),
  };
}

/** The load's words, in the form it was written in, with its present numbers. */
export function writeLoad(load: Omit<Load, 'text'>, bands: readonly string[]): string {
  if (load.kind === 'band') return bands[load.band] ?? '';
  const low = writeDecimal(load.low);
  const high = writeDecimal(load.high);
  const pieces = load.pieces === 1 ? '' : `${load.pieces} x `;
  return `${pieces}${low === high ? low : `${low}-${high}`} ${load.kind}`;
}

const KG_IN_LB = readDecimal('0.45359237');

/** Kilograms at the low or the high end; what isn't weighed counts nothing. */
export function kilograms(load: Load, end: 0 | 1, oneRepMax: string | undefined): Fraction {
  const size = times(end === 0 ? load.low : load.high, whole(load.pieces));
  if (load.kind === 'kg') return size;
  if (load.kind === 'lb') return times(size, KG_IN_LB);
  if (load.kind !== '% 1rm') return fraction(0n);
  if (!oneRepMax) throw new Error('a % 1rm without its one_rep_max');
  const best = readLoad(oneRepMax, []);
  return times(times(size, fraction(1n, 100n)), kilograms(best, end, undefined));
}
