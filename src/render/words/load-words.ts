// What a person works against, in words: `using the medium band`, `holding 4 kg in each hand`.

import { type Interval, scaled } from '../../units/interval.ts';
import { type Load, loadKg } from '../../units/load.ts';
import { THOUSANDTHS } from '../../units/number.ts';
import { numberText, percentText, timesText, weightText } from './amounts.ts';
import type { Words } from './words.ts';

const PAIR = 2;

/** The load as it follows a turn. `oneRepMax` is the most that can be lifted once, where the plan gives it. */
export function loadText(words: Words, load: Load, oneRepMax: Load | null): string {
  switch (load.kind) {
    case 'band':
      return words.say('load.band', { band: words.band(load.band) });
    case 'mass': {
      const weight = weightText(words, load.unit, load.amount);
      if (load.pieces === 1) return words.say('load.weight', { weight });
      if (load.pieces === PAIR) return words.say('load.each-hand', { weight });
      return words.say('load.pieces', { weight, count: numberText(words, load.pieces) });
    }
    case 'rm':
      return words.say('load.rm', {
        times: timesText(words, load.reps),
        more: numberText(words, load.reps[1] + 1),
      });
    case 'percent-1rm':
      return percentOfMost(words, load, oneRepMax);
    case 'body-weight':
      return load.percent === null
        ? words.say('load.body-weight')
        : words.say('load.percent-body-weight', { percent: percentText(words, load.percent) });
  }
}

/** A share of a maximum is no weight to take from a shelf, and asks to be tried out; its weight is said. */
function percentOfMost(
  words: Words,
  load: Extract<Load, { kind: 'percent-1rm' }>,
  oneRepMax: Load | null,
): string {
  const share = weightOfShare(load, oneRepMax);
  return share
    ? words.say('load.weight', { weight: weightText(words, share.unit, share.amount) })
    : words.say('load.percent-1rm', { percent: percentText(words, load.percent) });
}

/** The weight that a share of a maximum comes to; null where the maximum is not known. */
export function weightOfShare(
  load: Extract<Load, { kind: 'percent-1rm' }>,
  oneRepMax: Load | null,
): { readonly unit: 'kg' | 'lb'; readonly amount: Interval } | null {
  if (oneRepMax?.kind !== 'mass') return null;
  const unit = oneRepMax.unit;
  const most =
    unit === 'kg'
      ? loadKg(oneRepMax, null)
      : scaled(oneRepMax.amount, oneRepMax.pieces / THOUSANDTHS);
  const kg = loadKg({ ...load }, most);
  // To a tenth: finer than any weight at home, and 70 % of 40.5 kg stays readable.
  return { unit, amount: [Math.round(kg[0] * 10) * 100, Math.round(kg[1] * 10) * 100] };
}
