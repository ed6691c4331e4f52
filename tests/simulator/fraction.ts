// Exact fractions for loads and percentages, so that 5 % of 4 kg is 0.2 kg and nothing beside it.
// Times need none of this: they are whole milliseconds (quantities.ts).

export interface Fraction {
  readonly n: bigint;
  readonly d: bigint;
}

function greatestDivisor(a: bigint, b: bigint): bigint {
  return b === 0n ? (a < 0n ? -a : a) : greatestDivisor(b, a % b);
}

export function fraction(n: bigint, d = 1n): Fraction {
  const divisor = greatestDivisor(n, d) * (d < 0n ? -1n : 1n);
  return { n: n / divisor, d: d / divisor };
}

export const ZERO = fraction(0n);

/** Reads "4", "-2.5" or "0.45359237" exactly. */
export function readDecimal(text: string): Fraction {
  const match = /^(-?)(\d+)(?:\.(\d+))?$/.exec(text.trim());
  if (!match) throw new Error(`not a decimal: ${text}`);
  const [, sign, whole, part = ''] = match;
  const size = BigInt(`${whole}${part}`);
  return fraction(sign === '-' ? -size : size, 10n ** BigInt(part.length));
}

export const plus = (a: Fraction, b: Fraction): Fraction =>
  fraction(a.n * b.d + b.n * a.d, a.d * b.d);
export const minus = (a: Fraction, b: Fraction): Fraction => plus(a, { n: -b.n, d: b.d });
export const times = (a: Fraction, b: Fraction): Fraction => fraction(a.n * b.n, a.d * b.d);
export const over = (a: Fraction, b: Fraction): Fraction => fraction(a.n * b.d, a.d * b.n);
export const whole = (n: number): Fraction => fraction(BigInt(n));

/** Below zero, zero or above zero, as a comes before, with or after b. */
export function compare(a: Fraction, b: Fraction): number {
  const difference = a.n * b.d - b.n * a.d;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

/** The greatest whole number that is not above the fraction. */
export function floor(a: Fraction): Fraction {
  const quotient = a.n / a.d;
  return fraction(a.n % a.d < 0n ? quotient - 1n : quotient);
}

export const toNumber = (a: Fraction): number => Number(a.n) / Number(a.d);

/** Writes a fraction as a decimal without needless zeros: 9/2 is "4.5". */
export function writeDecimal(a: Fraction): string {
  for (let places = 0; places <= 12; places += 1) {
    const scaled = a.n * 10n ** BigInt(places);
    if (scaled % a.d !== 0n) continue;
    const size = scaled / a.d;
    const digits = (size < 0n ? -size : size).toString().padStart(places + 1, '0');
    const body = places ? `${digits.slice(0, -places)}.${digits.slice(-places)}` : digits;
    return size < 0n ? `-${body}` : body;
  }
  throw new Error(`no short decimal for ${a.n}/${a.d}`);
}
