// Why a dial of a climb has nothing to move, in words.
import type { Dial, DialKey, Dose } from '../model/dose.ts';
import { formatRange, mapEnds } from '../units/interval.ts';
import { formatLoad } from '../units/load.ts';

/** One sentence for a dial that a dose gives nothing to move. */
export function idleDialSentence(
  dial: Dial,
  why: 'lacking' | 'at-end',
  doses: readonly Dose[],
  exercise: string,
): string {
  if (dial.kind === 'level') {
    return `"level" has no level to climb to: the levels of "through" come after the present one.`;
  }
  if (dial.kind === 'band' && why === 'at-end') {
    return `"load" has no band to climb to: every band of "through" has been passed.`;
  }
  if (why === 'at-end') {
    const now = doses[0] && presentText(dial.key, doses[0]);
    const stands = now === undefined ? '' : `, for "${exercise}" has "${now}"`;
    return `"${dial.key}" is at or past its "to" already${stands}, so it has nowhere to climb; correct the dose, or write a "to" that lies further on, or a "by" that goes the other way.`;
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

/** What a dose says of a key, as a practice writes it. */
function presentText(key: DialKey, { values }: Dose): string | undefined {
  switch (key) {
    case 'level':
      return undefined;
    case 'reps':
      return values.reps?.kind === 'same'
        ? `reps: ${formatRange(values.reps.count)}`
        : `reps: [${values.reps?.counts.map(formatRange).join(', ')}]`;
    case 'load':
      return values.load && `load: ${formatLoad(values.load)}`;
    case 'sets':
      return `sets: ${formatRange(values.sets ?? [1, 1])}`;
    case 'effort':
      return values.effort && `effort: ${formatRange(values.effort)}`;
    default: {
      const length = values[key];
      if (!length) return undefined;
      const range = length.unit === 'ms' ? mapEnds(length.range, (ms) => ms / 1000) : length.range;
      return `${key}: ${formatRange(range)} ${length.unit === 'ms' ? 's' : 'breaths'}`;
    }
  }
}
