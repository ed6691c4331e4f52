// What comes of reading a quantity from its source text: a value, or why not and what to write.
// The parsers know no key and no file; the loader puts both into the sentence.

/** The checks that a misread quantity can fall under; all are in the closed list of checks. */
export type MisreadCheck =
  | 'unit-missing'
  | 'unit-unknown'
  | 'decimal-comma'
  | 'range-reversed'
  | 'not-a-count'
  | 'number-unclear'
  | 'out-of-range'
  | 'not-understood'
  | 'not-a-date'
  | 'weeks-unclear'
  | 'weeks-outside'
  | 'dial-unclear';

/** `says` follows the key in a sentence ("needs a unit"); `write` is one right form of the value. */
export interface Misread {
  readonly check: MisreadCheck;
  readonly says: string;
  readonly write?: string;
}

export type Reading<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly misread: Misread };

export function read<T>(value: T): Reading<T> {
  return { ok: true, value };
}

/** The same reading, without a form to write that would itself be refused. */
export function withSoundForm<T>(
  reading: Reading<T>,
  parse: (text: string) => Reading<T>,
): Reading<T> {
  if (reading.ok || reading.misread.write === undefined || parse(reading.misread.write).ok)
    return reading;
  return misread(reading.misread.check, reading.misread.says);
}

export function misread(check: MisreadCheck, says: string, write?: string): Reading<never> {
  return { ok: false, misread: write === undefined ? { check, says } : { check, says, write } };
}
