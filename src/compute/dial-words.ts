// Why a dial of a climb has nothing to move, in words.
import type { Dial, Dose } from '../model/dose.ts';
import { formatLoad } from '../units/load.ts';

/** One sentence for a dial that a dose gives nothing to move. */
export function idleDialSentence(
  dial: Dial,
  why: 'lacking' | 'at-end',
  doses: readonly Dose[],
): string {
  if (dial.kind === 'level') {
    return `"level" has no level to climb to: the levels of "through" come after the present one.`;
  }
  if (dial.kind === 'band' && why === 'at-end') {
    return `"load" has no band to climb to: every band of "through" has been passed.`;
  }
  if (why === 'at-end') {
    return `"${dial.key}" is at or past its "to" already, so it has nowhere to climb; write a "to" that lies further on, or a "by" that goes the other way.`;
  }
  const load = doses[0]?.values.load;
  if (dial.key === 'load' && load) {
    return `"load" climbs in another kind of load than the dose, which says "${formatLoad(load)}"; write both in the same: kg, lb, %, or bands.`;
  }
  if (dial.key === 'reps') {
    return `"reps" has nothing to climb from: the dose says no reps, only a hold or a time; add "reps" to the dose.`;
  }
  return `"${dial.key}" has nothing to climb from: the dose has no "${dial.key}"; add it to the dose or take the dial out.`;
}
