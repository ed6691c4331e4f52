// What a person works against: a weight, a band, her own body, or a share of what she can lift.
import { formatRange, type Interval, mapEnds, ZERO } from './interval.ts';
import { parseCount, parseCounts, parseThousandthsRange, THOUSANDTHS } from './number.ts';
import { misread, type Reading, read, withForms } from './reading.ts';

/** One pound in kilograms, exact by the international yard and pound agreement of 1959. */
export const KG_PER_LB = 0.45359237;

/** Amounts are in thousandths of the unit; percents in thousandths of a percent. */
export type Load =
  | {
      readonly kind: 'mass';
      readonly unit: 'kg' | 'lb';
      readonly pieces: number;
      readonly amount: Interval;
    }
  | { readonly kind: 'band'; readonly band: string }
  | { readonly kind: 'body-weight'; readonly percent: Interval | null }
  | { readonly kind: 'rm'; readonly reps: Interval }
  | { readonly kind: 'percent-1rm'; readonly percent: Interval };

const WHOLE_KG = 100_000_000;
const HEAVIEST = 1_000;
const MOST_PIECES = 10;
const MOST_PERCENT = 300;

/** Reads a load. `bands` are the practice's own names; anything else that is no weight is no load. */
export function parseLoad(text: string, bands: readonly string[]): Reading<Load> {
  if (bands.includes(text)) return read({ kind: 'band', band: text });
  if (/^body[ -]?weight$/i.test(text)) {
    return text === 'body weight'
      ? read({ kind: 'body-weight', percent: null })
      : misread('not-understood', `says "${text}"`, 'body weight');
  }
  const mass = /^(?:(\d+)\s*x\s*)?([^a-z%×]*[^a-z%×\s])\s*(kg|lb)$/.exec(text);
  if (mass) return massOf(mass[1], mass[2] as string, mass[3] as 'kg' | 'lb');
  const share = /^([^a-z%]*[^a-z%\s])\s*%\s*(body weight|1rm)$/.exec(text);
  if (share) return shareOf(share[1] as string, share[2] as 'body weight' | '1rm');
  const rm = /^([^a-z%]*[^a-z%\s])\s*rm$/.exec(text);
  if (rm) {
    const reps = parseCounts(rm[1] as string, 100);
    return reps.ok ? read({ kind: 'rm', reps: reps.value }) : withTail(reps, 'rm');
  }
  return noLoad(text);
}

function massOf(pieces: string | undefined, amount: string, unit: 'kg' | 'lb'): Reading<Load> {
  const reading = parseThousandthsRange(amount, HEAVIEST, unit);
  if (!reading.ok) return reading;
  if (reading.value[0] <= 0)
    return misread('out-of-range', `says ${amount} ${unit}, which is no load`, 'body weight');
  const count = pieces === undefined ? read(1) : parseCount(pieces, MOST_PIECES);
  return count.ok
    ? read({ kind: 'mass', unit, pieces: count.value, amount: reading.value })
    : withTail(count, `x ${amount} ${unit}`);
}

function shareOf(amount: string, of: 'body weight' | '1rm'): Reading<Load> {
  const reading = parseThousandthsRange(amount, MOST_PERCENT, `% ${of}`);
  if (!reading.ok) return reading;
  if (reading.value[0] <= 0)
    return misread('out-of-range', `says ${amount} %, which is no load`, 'body weight');
  return read(
    of === '1rm'
      ? { kind: 'percent-1rm', percent: reading.value }
      : { kind: 'body-weight', percent: reading.value },
  );
}

function withTail(
  { misread }: Extract<Reading<never>, { ok: false }>,
  tail: string,
): Reading<never> {
  return withForms(misread, (form) => `${form} ${tail}`);
}

function noLoad(text: string): Reading<never> {
  if (/^[\d.,]+(\s*[-–]\s*[\d.,]+)?$/.test(text)) {
    const checked = parseThousandthsRange(text, HEAVIEST, 'kg');
    return checked.ok ? misread('unit-missing', 'needs a unit', `${text} kg`) : checked;
  }
  const meant =
    /^([\d.]+(?:\s*[-–]\s*[\d.]+)?)\s*(kgs?|kilos?|kilograms?|lbs?|pounds?|g|grams?)\.?$/i.exec(
      text,
    );
  if (meant) {
    const [, amount = '', unit = ''] = meant;
    return misread(
      'unit-unknown',
      `has the unit "${unit}", which is not known`,
      inKnownUnit(amount, unit),
    );
  }
  const nearly = text
    .toLowerCase()
    .replace('×', ' x ')
    .replace(/\s*(kg|lb)\s*-\s*/, '-')
    .replace(/\bbodyweight\b/, 'body weight')
    .replace(/\s+/g, ' ');
  if (/\d/.test(text) && nearly !== text && parseLoad(nearly, []).ok)
    return misread('not-understood', `says "${text}"`, nearly);
  if (/%\s*$/.test(text)) {
    return misread('not-understood', `says "${text}", but not of what`, `${text.trim()} 1rm`);
  }
  const amount =
    /^([\d.]+(?:\s*[-–]\s*[\d.]+)?)\s*(kg|lb)s?\s+(?:in |per |for |on |a )?(?:each|both|either|every|hand|arm|leg|foot|side)/i.exec(
      text,
    );
  if (amount) {
    const one = `${amount[1]} ${(amount[2] as string).toLowerCase()}`;
    const says = `says "${text}", which could be two of them or one`;
    return misread('not-understood', says, `2 x ${one}`, one);
  }
  return misread(
    'not-understood',
    `says "${text}", which is neither a weight nor a band of practice.yaml`,
  );
}

function inKnownUnit(amount: string, unit: string): string | undefined {
  if (!/^g/i.test(unit)) return `${amount} ${/^k/i.test(unit) ? 'kg' : 'lb'}`;
  const grams = parseThousandthsRange(amount, HEAVIEST * THOUSANDTHS, unit);
  return grams.ok ? `${formatRange(inUnits(inUnits(grams.value)))} kg` : undefined;
}

/** Weight in kilograms, where the load has one: bands, body weight and rm count 0. */
export function loadKg(load: Load | null, oneRepMaxKg: Interval | null): Interval {
  if (load?.kind === 'mass') {
    // Whole numbers until the last step, so that 10 lb is 4.5359237 kg to the last digit.
    const perUnit = load.unit === 'kg' ? WHOLE_KG : Math.round(KG_PER_LB * WHOLE_KG);
    return mapEnds(load.amount, (end) => (end * load.pieces * perUnit) / (THOUSANDTHS * WHOLE_KG));
  }
  if (load?.kind === 'percent-1rm' && oneRepMaxKg) {
    return [
      (load.percent[0] * oneRepMaxKg[0]) / (100 * THOUSANDTHS),
      (load.percent[1] * oneRepMaxKg[1]) / (100 * THOUSANDTHS),
    ];
  }
  return ZERO;
}

/** A load in the form that a practice writes: `2 x 4.5 kg`, `70 % 1rm`. */
export function formatLoad(load: Load): string {
  if (load.kind === 'band') return load.band;
  if (load.kind === 'rm') return `${formatRange(load.reps)} rm`;
  if (load.kind === 'mass') {
    const pieces = load.pieces === 1 ? '' : `${load.pieces} x `;
    return `${pieces}${formatRange(inUnits(load.amount))} ${load.unit}`;
  }
  if (load.kind === 'percent-1rm') return `${formatRange(inUnits(load.percent))} % 1rm`;
  return load.percent === null
    ? 'body weight'
    : `${formatRange(inUnits(load.percent))} % body weight`;
}

// Dividing gives the nearest number to the decimal; multiplying by 0.001 would not.
function inUnits(thousandths: Interval): Interval {
  return mapEnds(thousandths, (end) => end / THOUSANDTHS);
}
