// Words that a reader is taken to know however long they are. They count as a figure does.

/** On every sheet, and known to whoever has one: the thing itself, and the days and months of its dates. */
const ON_EVERY_SHEET = [
  'exercise',
  'Saturday',
  'January',
  'February',
  'September',
  'October',
  'November',
  'December',
] as const;

/** A text with the plain words as figures of the same length, so that places in it stay. */
export type Masking = (text: string) => string;

/** `plain` are further words or phrases, in any case; plurals and "'s" go with them. */
export function maskingOf(plain: readonly string[]): Masking {
  const said = [...ON_EVERY_SHEET, ...plain.map((one) => one.trim())].filter((one) => one !== '');
  const any = said.map((one) => literal(one).replace(/\s+/g, '\\s+')).join('|');
  const pattern = new RegExp(
    `(?<![\\p{L}\\p{N}])(?:${any})(?:['’]?s|es)?(?![\\p{L}\\p{N}])`,
    'giu',
  );
  return (text) => text.replace(pattern, (found) => found.replace(/[^\s-]/gu, '0'));
}

function literal(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\/-]/g, '\\$&');
}
