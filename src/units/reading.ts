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

/**
 * `says` follows the key in a sentence ("needs a unit"); `write` is what was typed in a right form,
 * never an example of another's. `orWrite` is a second one, where it could be read in two ways.
 */
export interface Misread {
  readonly check: MisreadCheck;
  readonly says: string;
  readonly write?: string;
  readonly orWrite?: string;
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
  if (reading.ok) return reading;
  const { check, says, write, orWrite } = reading.misread;
  const sound = [write, orWrite].filter((form) => form !== undefined && parse(form).ok);
  return misread(check, says, ...sound);
}

/** The same misread, with each form that it shows completed: by its unit, or what stands before or after it. */
export function withForms(
  { check, says, write, orWrite }: Misread,
  complete: (form: string) => string,
): Reading<never> {
  const form = (one: string | undefined) => (one === undefined ? undefined : complete(one));
  return misread(check, says, form(write), form(orWrite));
}

export function misread(
  check: MisreadCheck,
  says: string,
  write?: string,
  orWrite?: string,
): Reading<never> {
  const second = orWrite === undefined || orWrite === write ? {} : { orWrite };
  return {
    ok: false,
    misread: { check, says, ...(write === undefined ? {} : { write, ...second }) },
  };
}
