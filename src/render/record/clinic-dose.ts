// A dose for the record: every value, and which layer set it ("plan: sets 2; level: reps 8–12").
// What a layer does to a dose is settled in the numbers; the sheet has sentences of its own.
import type { Dose, DoseKey, DoseValues, Origin } from '../../model/dose.ts';
import type { Duration } from '../../units/duration.ts';
import { type Interval, scaled } from '../../units/interval.ts';
import { formatLoad } from '../../units/load.ts';
import { THOUSANDTHS } from '../../units/number.ts';
import { plainNumber, plainRange } from '../words/plain-number.ts';
import type { Words } from '../words/words.ts';

export const DOSE_KEYS: readonly DoseKey[] = [
  'sets',
  'reps',
  'hold',
  'move',
  'tempo',
  'time',
  'pause',
  'rest',
  'load',
  'effort',
  'until',
  'range',
];
// Later wins, as a dose is merged.
const LAYERS = [
  'timing',
  'exercise',
  'level',
  'plan',
  'from-week',
  'side',
  'climb',
  'easy-week',
] as const;

/** The values of a dose grouped by the layer that set them, the first layer first. */
export function doseByLayer(dose: Dose, words: Words): string {
  const values = new Map<string, string[]>();
  const keys = DOSE_KEYS.filter((key) => dose.values[key] !== undefined);
  for (const key of [...keys].sort((a, b) => layerOrder(dose, a) - layerOrder(dose, b))) {
    const layer = layerName(dose.origins[key], words);
    const shown = words.say(`clinic.dose.${key}`, { value: valueShown(key, dose.values, words) });
    values.set(layer, [...(values.get(layer) ?? []), shown]);
  }
  return [...values]
    .map(([layer, shown]) => words.say('clinic.dose-of-layer', { layer, values: shown.join(', ') }))
    .join('; ');
}

/** Entries of different weeks stand in order of week. */
function layerOrder(dose: Dose, key: DoseKey): number {
  const origin = dose.origins[key];
  if (!origin) return LAYERS.length;
  const week = origin.layer === 'from-week' ? origin.week / THOUSANDTHS : 0;
  return LAYERS.indexOf(origin.layer) + week;
}

function layerName(origin: Origin | undefined, words: Words): string {
  // Not one of a plan's layers: a value that follows from the others, as one set where none is said.
  if (!origin) return words.say('clinic.layer.none');
  return origin.layer === 'from-week'
    ? words.say('clinic.layer.from-week', { week: String(origin.week) })
    : words.say(`clinic.layer.${origin.layer}`);
}

export function valueShown(key: DoseKey, values: DoseValues, words: Words): string {
  const { reps, tempo, load, range } = values;
  switch (key) {
    case 'sets':
    case 'effort':
      return plainRange(values[key] as Interval, 1, words);
    case 'reps':
      return (reps?.kind === 'list' ? reps.counts : [reps?.count as Interval])
        .map((count) => plainRange(count, 0, words))
        .join(' / ');
    case 'tempo':
      return (tempo ?? []).map((ms) => plainNumber(ms / THOUSANDTHS, 3, words)).join('-');
    case 'load':
      return load ? formatLoad(load) : '';
    case 'range':
      return range ? plainRange(range, 0, words) : '';
    case 'until':
      return words.say('clinic.tired');
    default:
      return durationShown(values[key] as Duration, words);
  }
}

export function durationShown({ unit, range }: Duration, words: Words): string {
  return unit === 'ms'
    ? words.say('clinic.seconds', { number: plainRange(scaled(range, 1 / THOUSANDTHS), 3, words) })
    : words.say('clinic.breaths', { number: plainRange(range, 0, words), n: range[1] });
}
