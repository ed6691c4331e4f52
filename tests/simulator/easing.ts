// Eases a dose in an easy week, by the contract's last paragraph of section 5.5, and says which weeks
// are easy. When it comes in the merge order is resolve.ts's.

import type { Dose } from './merge.ts';
import { isList } from './merge.ts';
import type { Range } from './quantities.ts';
import { readCount } from './quantities.ts';
import type { EasyWeeks } from './written.ts';

export function isEasy(easy: EasyWeeks | undefined, week: number): boolean {
  return (easy?.weeks ?? []).some((written) => {
    const [first, last] = readCount(written);
    return first <= week && week <= last;
  });
}

const percent = (written: string): number => Number(written.replace(/\s*%$/, ''));

/** A count at so many percent: half up, and at least 1. */
export function easedCount(count: number, share: string | undefined): number {
  if (share === undefined) return count;
  return Math.max(1, Math.floor((2 * count * percent(share) + 100) / 200));
}

/** Milliseconds at so many percent: whole seconds, half up, at least 1 s; nothing stays nothing. */
function easedTime(ms: number, share: string): number {
  if (ms === 0) return 0;
  return Math.max(1, Math.floor((2 * ms * percent(share) + 100_000) / 200_000)) * 1000;
}

const ends = (range: Range, ease: (end: number) => number): Range => [
  ease(range[0]),
  ease(range[1]),
];

export function eased(dose: Dose, easy: EasyWeeks): Dose {
  const next: { -readonly [K in keyof Dose]: Dose[K] } = { ...dose };
  const byReps = (range: Range): Range => ends(range, (end) => easedCount(end, easy.reps));
  if (isList(dose.reps)) {
    const kept = dose.reps.slice(0, easedCount(dose.reps.length, easy.sets));
    next.reps = kept.map(byReps);
    next.sets = [kept.length, kept.length];
  } else {
    if (dose.reps) next.reps = byReps(dose.reps as Range);
    if (dose.sets) next.sets = ends(dose.sets, (end) => easedCount(end, easy.sets));
  }
  const { hold, time } = easy;
  if (dose.hold && hold) next.hold = ends(dose.hold, (end) => easedTime(end, hold));
  if (dose.time && time) next.time = ends(dose.time, (end) => easedTime(end, time));
  return next;
}
