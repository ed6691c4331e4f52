// The numbers in sentences, in whatever digits and with whatever decimal mark: they have to be the same
// in a translation.
import { compareText } from '../finding/finding.ts';

/** The first digit of each set of ten that a text in one of the written languages may use. */
const ZEROS = ['0', '\u0660', '\u06f0', '\u0966'].map((zero) => zero.charCodeAt(0));

/** "2", "2.5", in the order of the text. */
export function numbersIn(lines: readonly string[]): readonly string[] {
  const plain = lines.join('\n').replace(/\p{Nd}/gu, (digit) => {
    const code = digit.charCodeAt(0);
    const zero = ZEROS.find((one) => code >= one && code < one + 10);
    return zero === undefined ? digit : String(code - zero);
  });
  const found = plain.match(/\p{Nd}+(?:[.,\u066b]\p{Nd}+)*/gu) ?? [];
  return found.map((one) => one.replace(/[,\u066b]/g, '.'));
}

/** What numbers either has, in words; null where they are the same, in whatever order. */
export function otherNumbers(
  original: readonly string[],
  translated: readonly string[],
): { readonly there: string; readonly here: string } | null {
  const [there, here] = [numbersIn(original), numbersIn(translated)] as const;
  if (there.toSorted(compareText).join() === here.toSorted(compareText).join()) return null;
  return { there: numbersText(there), here: numbersText(here) };
}

function numbersText(numbers: readonly string[]): string {
  if (numbers.length === 0) return 'no number';
  return `${numbers.length === 1 ? 'the number' : 'the numbers'} ${numbers.join(', ')}`;
}
