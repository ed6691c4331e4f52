// Numbers as source text. What is read is what is written, so a number that another reader could
// take for a different one (08, 0x10, 1e3, 1_0, 2,5) is refused with the plain form shown.
import type { Interval } from './interval.ts';
import { misread, type Reading, read, withForms } from './reading.ts';

/** Quantities are kept as whole thousandths (milliseconds, grams), so that sums and steps are exact. */
export const THOUSANDTHS = 1000;

const PLAIN = /^(?:0|[1-9]\d*)(?:\.\d+)?$/;
const LOOK_ALIKE =
  /^[+-]?(?:0[xob][\da-f]+|0\d[\d.]*|[\d_]*\d[\d_]*e[+-]?\d+|\d+(?:_\d+)+|\.\d+|\d+\.|\.(?:nan|inf))$/i;
const LARGEST_COUNT = 10_000;
/** Beyond any number that is meant; its thousandths are still exact. */
export const LARGEST = 1_000_000_000;

/** Why a piece of text is no plain number; undefined where it is one. */
export function whyNoNumber(text: string): Reading<never> | undefined {
  if (PLAIN.test(text)) return undefined;
  if (/\d\s*,\s*\d/.test(text)) {
    return misread(
      'decimal-comma',
      'has a comma between digits; a decimal is written with a point',
      text.replace(/(\d)\s*,\s*(\d)/g, '$1.$2'),
    );
  }
  if (LOOK_ALIKE.test(text)) {
    const plain = plainForm(text);
    const says = `says ${text}, which can be read in more than one way`;
    return misread('number-unclear', says, plain);
  }
  if (/^-\s*\d/.test(text)) return belowZero(text);
  if (PLAIN.test(text.replace(/^\+\s*/, ''))) {
    return misread(
      'not-understood',
      `says ${text}, but is written without a sign`,
      text.replace(/^\+\s*/, ''),
    );
  }
  return misread('not-understood', `says "${text}", which is no number`);
}

function belowZero(text: string): Reading<never> {
  const above = text.replace(/^-\s*/, '');
  return misread(
    'out-of-range',
    `says ${text}, which is below zero`,
    PLAIN.test(above) && Number(above) > 0 ? above : undefined,
  );
}

function plainForm(text: string): string | undefined {
  const digits = text.replaceAll('_', '');
  if (/^0\d+$/.test(digits)) return digits.replace(/^0+(?=\d)/, '');
  if (/^\.\d+$/.test(digits)) return `0${digits}`;
  if (/^\d+\.$/.test(digits)) return digits.slice(0, -1);
  return /^\d+$/.test(digits) ? digits : undefined;
}

/** The two ends of `8-12` or `8–12` as text; one number gives it twice; undefined for anything else. */
export function rangeEnds(text: string): readonly [string, string] | undefined {
  const parts = text.split(/\s*[-–]\s*/);
  if (parts.length === 1) return [parts[0] as string, parts[0] as string];
  if (parts.length === 2 && parts[0] !== '' && parts[1] !== '') {
    return [parts[0] as string, parts[1] as string];
  }
  return undefined;
}

/** A plain decimal number as whole thousandths: `2.5` is 2500. More than three decimals are refused. */
export function parseThousandths(text: string, largest: number): Reading<number> {
  const problem = whyNoNumber(text);
  if (problem) return problem;
  const [whole = '', decimals = ''] = text.split('.');
  if (decimals.length > 3) {
    return misread('not-understood', 'has more than three decimals', Number(text).toFixed(2));
  }
  if (Number(text) > largest) {
    // The limit is no form to show: nobody should copy it into a dose.
    return misread('out-of-range', `says ${text}, which is more than ${largest} and surely a slip`);
  }
  return read(Number(whole) * THOUSANDTHS + Number(decimals.padEnd(3, '0')));
}

/** A range of plain decimals in thousandths. `unit` only completes the form that is shown. */
export function parseThousandthsRange(
  text: string,
  largest: number,
  unit: string,
): Reading<Interval> {
  if (/\d\s*,\s*\d/.test(text)) {
    const mended = text.replace(/(\d)\s*,\s*(\d)/g, '$1.$2');
    return misread(
      'decimal-comma',
      'has a comma between digits; a decimal is written with a point',
      withUnit(mended, unit),
    );
  }
  const joined = /^([\d.]+)\s*(to|bis|or|~|—|−|‒|―|\.\.+|\/)\s*([\d.]+)$/.exec(text);
  if (joined) {
    return misread(
      'not-understood',
      `says "${text}", but a range has a hyphen between its numbers`,
      withUnit(`${joined[1]}-${joined[3]}`, unit),
    );
  }
  const ends = rangeEnds(text);
  if (!ends) {
    const dashes = /^([\d.]+)\s*[-–]{2,}\s*([\d.]+)$/.exec(text);
    return /^-/.test(text)
      ? completed(belowZero(text), unit)
      : misread(
          'not-understood',
          `says "${text}", which is neither a number nor a range`,
          dashes ? withUnit(`${dashes[1]}-${dashes[2]}`, unit) : undefined,
        );
  }
  const low = parseThousandths(ends[0], largest);
  if (!low.ok) return completed(low, unit);
  const high = parseThousandths(ends[1], largest);
  if (!high.ok) return completed(high, unit);
  if (low.value > high.value) {
    return misread(
      'range-reversed',
      'has its range the wrong way round; the smaller number comes first',
      withUnit(`${ends[1]}-${ends[0]}`, unit),
    );
  }
  return read([low.value, high.value]);
}

function withUnit(amount: string, unit: string): string {
  return unit === '' ? amount : `${amount} ${unit}`;
}

/** The misread with its unit in the form that it shows. */
function completed(reading: Reading<never>, unit: string): Reading<never> {
  return reading.ok ? reading : withForms(reading.misread, (form) => withUnit(form, unit));
}

/** A count: a whole number, 1 or more. */
export function parseCount(text: string, largest = LARGEST_COUNT): Reading<number> {
  const reading = parseCounts(text, largest);
  if (!reading.ok) return reading;
  const [low, high] = reading.value;
  return low === high && !/[-–]/.test(text)
    ? read(low)
    : misread('not-understood', `says ${text}, but takes one number, not a range`, String(low));
}

/** A count or a range of counts: `3`, `8-12`. */
export function parseCounts(text: string, largest = LARGEST_COUNT): Reading<Interval> {
  const reading = parseThousandthsRange(text, LARGEST, '');
  const atMost = misread('out-of-range', `says ${text}, but is ${largest} at the most`);
  if (!reading.ok)
    return (
      withoutUnit(text) ?? (isTooLarge(reading, text) ? atMost : inWholeNumbers(reading, text))
    );
  const [low, high] = reading.value;
  if (low % THOUSANDTHS !== 0 || high % THOUSANDTHS !== 0) {
    return misread(
      'not-a-count',
      `says ${text}, but is counted in whole numbers`,
      ...wholeForms([low / THOUSANDTHS, high / THOUSANDTHS]),
    );
  }
  if (/\./.test(text)) {
    return misread(
      'number-unclear',
      `says ${text}, but is counted in whole numbers`,
      text.replace(/\.0+/g, ''),
    );
  }
  if (low < THOUSANDTHS) {
    return misread(
      'out-of-range',
      `says ${text}, but is 1 or more`,
      high > THOUSANDTHS ? `1-${high / THOUSANDTHS}` : '1',
    );
  }
  if (high > largest * THOUSANDTHS) {
    return atMost;
  }
  return read([low / THOUSANDTHS, high / THOUSANDTHS]);
}

/** A fraction of a count in whole numbers, below and above: which of the two was meant is not for us to say. */
function wholeForms([low, high]: Interval): readonly [below: string, above: string] {
  const form = (rounded: (end: number) => number) =>
    [...new Set([low, high].map((end) => Math.max(1, rounded(end))))].join('-');
  return [form(Math.floor), form(Math.ceil)];
}

/** Whether a misread number is a plain one, only beyond all that can be counted. */
export function isTooLarge(reading: Reading<unknown>, text: string): boolean {
  return !reading.ok && reading.misread.check === 'out-of-range' && !text.startsWith('-');
}

/** A misread count with a form that is one: a comma that parts thousands goes, another is between two counts. */
function inWholeNumbers(reading: Reading<never>, text: string): Reading<never> {
  if (reading.ok) throw new Error('a reading that succeeded has no misread');
  const { check } = reading.misread;
  if (check !== 'decimal-comma') return reading;
  const plain = text.replace(/(\d),(\d{3})(?!\d)/g, '$1$2').replaceAll(',', '.');
  const ends = rangeEnds(plain)?.map(Number);
  const says = 'has a comma between digits, but is counted in whole numbers';
  return ends?.every((end) => end > 0)
    ? misread(check, says, ...wholeForms(ends as unknown as Interval))
    : misread(check, says);
}

const NUMBER_WORDS = [
  '',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];
const OFTEN = ['', 'once', 'twice'];

/** What a count written with a unit, or in words, should be. */
function withoutUnit(text: string): Reading<never> | undefined {
  const inWords = Math.max(
    NUMBER_WORDS.indexOf(text.toLowerCase()),
    OFTEN.indexOf(text.toLowerCase()),
  );
  if (inWords > 0)
    return misread('not-understood', `says "${text}", but is written in digits`, String(inWords));
  const match =
    /^([\d–-]+)\s*[a-z]+$/i.exec(text) ??
    /^([\d–-]+)\s*(?:\/|\ba\b|per|each|on|for|left|right|both)[a-z /]+$/i.exec(text);
  return match?.[1]
    ? misread('unit-unknown', `says "${text}", but is a bare count, with no unit`, match[1])
    : undefined;
}
