// A dose in the trade's short form, as a clinician writes it in a record: `2 x 8-12, hold 2 s, rest 60 s,
// 4 kg`. For the terminal; the sheet says a dose in sentences, the clinic copy with its layers.
import type { Dose, DoseKey, DoseValues } from '../../model/dose.ts';
import type { Duration } from '../../units/duration.ts';
import { exactly, formatRange, type Interval, isExact, mapEnds } from '../../units/interval.ts';
import { formatLoad, type Load } from '../../units/load.ts';
import { THOUSANDTHS } from '../../units/number.ts';

const MINUTE_MS = 60_000;
const ONE = exactly(1);

/** A number with that many decimals at the most. */
export function rounded(n: number, decimals: number): string {
  const factor = 10 ** decimals;
  // Adding 0 turns the -0 of a tiny fall into 0.
  return String(Math.round(n * factor) / factor + 0);
}

/** `8-12`, or `8` where both ends look the same. */
export function roundedRange([low, high]: Interval, decimals: number): string {
  const [first, last] = [rounded(low, decimals), rounded(high, decimals)];
  return first === last ? first : `${first}-${last}`;
}

/** `20-30 s`, `5 min`, `6 breaths`. Minutes where both ends are whole minutes, and it is two or more. */
export function durationInShort({ unit, range }: Duration): string {
  if (unit === 'breaths') return `${formatRange(range)} ${range[1] === 1 ? 'breath' : 'breaths'}`;
  const isMinutes = range.every((end) => end % MINUTE_MS === 0) && range[1] >= 2 * MINUTE_MS;
  const shown = mapEnds(range, (end) => end / (isMinutes ? MINUTE_MS : THOUSANDTHS));
  return `${formatRange(shown)} ${isMinutes ? 'min' : 's'}`;
}

/**
 * The dose of one side. In a circuit without sets and rest, which are the part's. `move`, `pause` and
 * `rest` that come from the practice's timing go without saying, but for a rest between sets.
 */
export function doseInShort(dose: Dose, isCircuit: boolean): string {
  const { values } = dose;
  const { hold, move, tempo, pause, rest, load, effort, until, range } = values;
  const isOwn = (key: DoseKey) => dose.origins[key]?.layer !== 'timing';
  const holdIsSaid = isHoldAlone(values);
  const parts = [
    amount(values, isCircuit),
    hold && !holdIsSaid && `hold ${durationInShort(hold)}`,
    tempo && `tempo ${tempo.map((ms) => ms / THOUSANDTHS).join('-')}`,
    move && isOwn('move') && `move ${durationInShort(move)}`,
    pause && isOwn('pause') && mostReps(values) > 1 && `pause ${durationInShort(pause)}`,
    rest && !isCircuit && (values.sets ?? ONE)[1] > 1 && `rest ${durationInShort(rest)}`,
    load && loadInShort(load),
    effort && `effort ${formatRange(effort)}`,
    until && `until ${until}`,
    range && `joint ${range[0]} to ${range[1]} degrees`,
  ];
  return parts.filter((part) => typeof part === 'string').join(', ');
}

function amount(values: DoseValues, isCircuit: boolean): string {
  const { reps, time, hold } = values;
  const sets = values.sets ?? ONE;
  const before = isCircuit ? '' : `${formatRange(sets)} x `;
  if (reps?.kind === 'list') return `${reps.counts.map(formatRange).join(', ')} reps`;
  const count = reps?.count ?? ONE;
  if (time) {
    const isOnce = isExact(sets) && sets[0] === 1;
    const bouts = count[1] > 1 ? `${formatRange(count)} bouts of ` : '';
    return `${isOnce ? '' : before}${bouts}${durationInShort(time)}`;
  }
  if (hold && isHoldAlone(values)) return `${before}hold ${durationInShort(hold)}`;
  return isCircuit
    ? `${formatRange(count)} ${count[1] === 1 ? 'rep' : 'reps'}`
    : `${before}${formatRange(count)}`;
}

/** A still position, held once a set. */
function isHoldAlone(values: DoseValues): boolean {
  return values.hold !== undefined && values.hold.range[1] > 0 && mostReps(values) === 1;
}

function mostReps({ reps }: DoseValues): number {
  if (reps?.kind === 'list') return Math.max(...reps.counts.map((count) => count[1]));
  return reps?.count[1] ?? 1;
}

/** Said as a load where it has an x of its own, that could be taken for sets. */
function loadInShort(load: Load): string {
  const shown = formatLoad(load);
  return load.kind === 'mass' && load.pieces > 1 ? `load ${shown}` : shown;
}
