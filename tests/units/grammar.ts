// The forms of quantities as the contract tells them (README, "The files"), written a second time:
// which texts are one, and what they come to, in exact whole thousandths. Nothing here is the product's.
import fc from 'fast-check';

const NUMBER = String.raw`(?:0|[1-9]\d*)(?:\.\d{1,3})?`;
const COUNT = String.raw`[1-9]\d*`;

function range(one: string): string {
  return String.raw`(${one})(?:\s*[-–]\s*(${one}))?`;
}

/** Whole thousandths of a plain decimal. */
export function thousandths(text: string): bigint {
  const [whole = '', decimals = ''] = text.split('.');
  return BigInt(whole) * 1000n + BigInt(decimals.padEnd(3, '0'));
}

export interface Quantity {
  readonly low: bigint;
  readonly high: bigint;
  readonly unit: string;
}

function matched(
  pattern: string,
  text: string,
  toWhole: (text: string) => bigint,
): Quantity | null {
  const match = new RegExp(`^${pattern}$`).exec(text);
  if (!match) return null;
  const low = toWhole(match[1] as string);
  const high = match[2] === undefined ? low : toWhole(match[2]);
  return low <= high ? { low, high, unit: match[3] ?? '' } : null;
}

/** Counts, 1 or more: `3`, `8-12`. */
export function countsMeant(text: string, largest: bigint): Quantity | null {
  const found = matched(range(COUNT), text, BigInt);
  return found && found.high <= largest ? found : null;
}

const MS: Readonly<Record<string, bigint>> = { s: 1n, min: 60n };

/** Milliseconds, or breaths: `5 s`, `1.5-2 min`, `6 breaths`, `1 min 30 s`. A day at the most. */
export function durationMeant(text: string): Quantity | null {
  const mixed = new RegExp(String.raw`^(0|[1-9]\d*)\s*min\s+(${NUMBER})\s*s$`).exec(text);
  if (mixed) {
    const [minutes, seconds] = [thousandths(mixed[1] as string), thousandths(mixed[2] as string)];
    if (minutes > 1_440_000n || seconds > 86_400_000n) return null;
    return { low: minutes * 60n + seconds, high: minutes * 60n + seconds, unit: 'ms' };
  }
  const breaths = matched(String.raw`${range(COUNT)}\s*(breaths?)`, text, BigInt);
  if (breaths) return breaths.high <= 1000n ? { ...breaths, unit: 'breaths' } : null;
  const found = matched(String.raw`${range(NUMBER)}\s*(s|min)`, text, thousandths);
  const perUnit = MS[found?.unit ?? ''] ?? 0n;
  if (!found || found.high * perUnit > 86_400_000n) return null;
  return { low: found.low * perUnit, high: found.high * perUnit, unit: 'ms' };
}

/** Thousandths of a percent. */
export function percentMeant(text: string, least: bigint, most: bigint): bigint | null {
  const match = new RegExp(String.raw`^(${NUMBER})\s*%$`).exec(text);
  const value = match && thousandths(match[1] as string);
  return value !== null && value >= least * 1000n && value <= most * 1000n ? value : null;
}

/** Thousandths of kg or lb, of so many pieces. */
export function massMeant(text: string): (Quantity & { readonly pieces: bigint }) | null {
  const match = new RegExp(String.raw`^(?:(${COUNT})\s*x\s*)?(.*)$`).exec(text);
  const found = matched(String.raw`${range(NUMBER)}\s*(kg|lb)`, match?.[2] ?? '', thousandths);
  const pieces = BigInt(match?.[1] ?? 1);
  return found && found.low > 0n && found.high <= 1_000_000n && pieces <= 10n
    ? { ...found, pieces }
    : null;
}

/** Thousandths on a scale of 0 to 10. */
export function scaleMeant(text: string): Quantity | null {
  const found = matched(range(NUMBER), text, thousandths);
  return found && found.high <= 10_000n ? found : null;
}

/** Numbers that another reader could take for something else than they look like; none is ever read. */
export const LOOK_ALIKES = [
  '08',
  '00',
  '007',
  '0x10',
  '0XFF',
  '0o17',
  '0b11',
  '1e3',
  '1E3',
  '1e-3',
  '1_0',
  '1_000',
  '+5',
  '-5',
  '−5',
  '.5',
  '5.',
  '0.',
  '1.2.3',
  '2,5',
  '1,000',
  '1 000',
  "1'000",
  '.nan',
  '.NaN',
  '.inf',
  '-.inf',
  'NaN',
  'Infinity',
  '٥',
  '５',
  '½',
  '²',
  'Ⅷ',
  'l0',
  '1O',
  '5..',
  '--5',
] as const;

const PIECES = [
  ...'0123456789',
  ...'0123456789',
  '.',
  ',',
  '-',
  '–',
  '—',
  '_',
  '+',
  '%',
  'x',
  'e',
  's',
  ' ',
  ' ',
  ' s',
  ' min',
  ' min ',
  'min',
  ' breaths',
  ' breath',
  ' kg',
  ' lb',
  ' g',
  ' %',
  ' % 1rm',
  ' rm',
  'body weight',
  ' % body weight',
  ' days',
  ' degrees',
  ' x ',
  '0x',
  '08',
  '12',
  '8-12',
  '12-8',
  '2.5',
  '1 min 30 s',
  '٥',
  '',
  '\u00a0',
  '\n',
  'h',
  'S',
  'KG',
] as const;

/** Texts of the pieces that quantities are made of, right and wrong. */
export const nearlyQuantities: fc.Arbitrary<string> = fc
  .array(fc.constantFrom(...PIECES), { minLength: 0, maxLength: 6 })
  .map((pieces) => pieces.join('').trim());

/** A plain number, a look-alike, or a range of two, for a unit to be put after. */
export const amounts: fc.Arbitrary<string> = fc.oneof(
  fc.nat({ max: 2_000 }).map(String),
  fc.tuple(fc.nat({ max: 99 }), fc.nat({ max: 9_999 })).map(([whole, part]) => `${whole}.${part}`),
  fc.constantFrom(...LOOK_ALIKES),
  fc
    .tuple(
      fc.nat({ max: 40 }),
      fc.constantFrom('-', '–', ' - '),
      fc.oneof(fc.nat({ max: 40 }).map(String), fc.constantFrom(...LOOK_ALIKES)),
    )
    .map((parts) => parts.join('')),
);
