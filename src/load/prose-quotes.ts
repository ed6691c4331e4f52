// Sentences in quotes: one that ends before its line does, and one that never ends.
import { blank, type Owner, type Scanning, trap } from './prose-scanning.ts';

export function isQuote(sign: string | undefined): sign is '"' | "'" {
  return sign === '"' || sign === "'";
}

export function openQuote(
  scanning: Scanning,
  line: string,
  start: number,
  valueColumn: number,
  owner: Owner,
  isProse: boolean,
): void {
  scanning.quote = {
    sign: line[valueColumn] as '"' | "'",
    start: start + valueColumn,
    column: owner.column,
    isProse,
  };
  closeQuote(scanning, line, start, valueColumn + 1);
}

/** A quote that is still open where its key or entry ends: its first line is taken for the sentence, what follows is left out. */
export function leaveOpen(scanning: Scanning, end: number): void {
  const { start: opened, isProse } = scanning.quote as { start: number; isProse: boolean };
  scanning.quote = null;
  const lineEnd = scanning.source.text.indexOf('\n', opened);
  const value = scanning.source.text.slice(opened, lineEnd === -1 ? undefined : lineEnd);
  trap(scanning, value, opened, 'opens a quote that never closes', isProse);
  blank(scanning, opened + value.length, Math.max(end, opened + value.length));
}

/** Looks for the end of a quoted sentence on this line; what follows the quote is text that would break. */
export function closeQuote(scanning: Scanning, line: string, start: number, from = 0): void {
  const {
    sign,
    start: opened,
    isProse,
  } = scanning.quote as { sign: '"' | "'"; start: number; isProse: boolean };
  for (let i = from; i < line.length; i += 1) {
    if (sign === '"' && line[i] === '\\') i += 1;
    else if (line[i] === sign && sign === "'" && line[i + 1] === "'") i += 1;
    else if (line[i] === sign) {
      scanning.quote = null;
      const after = line.slice(i + 1);
      if (/^\s*$|^\s+#/.test(after)) return;
      const value = scanning.source.text.slice(opened, start + line.length);
      trap(scanning, value, opened, 'would end at its second quote', isProse);
      return;
    }
  }
}
