// The signs of a sheet number, and reading one as it is told over the telephone or typed in.

// Left out are 0 O, 1 I L, 2 Z, 5 S, 6 G, 8 B, U V, and the vowels, so that no word comes about.
export const LETTERS = 'CDFHJKMNPQRTWXY';
export const SIGNS = `${LETTERS}3479`;
export const LENGTH = 8;

const NUMBER = new RegExp(`^[${LETTERS}][${SIGNS}]{3} [${SIGNS}]{4}$`);

/** Whether a text is a sheet number as sheets print it. */
export function isSheetNumber(text: string): boolean {
  return NUMBER.test(text);
}

/** Signs in two fours, as sheets print them. */
export function inTwoFours(signs: string): string {
  return `${signs.slice(0, LENGTH / 2)} ${signs.slice(LENGTH / 2)}`;
}

/** Eight letters and digits in any case, with or without spaces and hyphens, as a sheet would print them; null for anything else. */
export function asSheetNumber(text: string): string | null {
  const signs = text.replace(/[\s\p{Pd}]/gu, '').toUpperCase();
  return new RegExp(`^[A-Z0-9]{${LENGTH}}$`).test(signs) ? inTwoFours(signs) : null;
}

/** Whether two sheet numbers differ by one sign, as by a slip of hearing or typing. */
export function isOneSignAway(one: string, other: string): boolean {
  return [...one].filter((sign, i) => sign !== other[i]).length === 1;
}
