// Dashes of lists that stand in the wrong column, lack the space after them, or are not there at all.
import { entryKeyOf } from './entry-keys.ts';
import { closeTo, ENTRY, pathOf, put, type Scanning, standIn, tell } from './prose-scanning.ts';
import { nearestColumns, spaces } from './yaml-breaks.ts';

/** A dash that does not stand below the others of its list; `above` are the columns where dashes stand. */
export function tellStrayDash(
  { open, breaks }: Scanning,
  line: string,
  start: number,
  column: number,
  above: readonly number[],
): void {
  const list = open.at(-1);
  if (!list || list.step === ENTRY) return;
  const isStray = list.dashes !== undefined && list.dashes !== column;
  list.dashes ??= column;
  if (!isStray) return;
  const near = nearestColumns(column, above).join(' or ');
  const message = `This dash stands after ${spaces(column)}, and those of the lists above after ${near}; the dashes of one list stand below each other.`;
  breaks.push({ start: start + column, end: start + line.trimEnd().length, message });
}

/** Keys that stand deeper than a dash, straight under the key of its list, are an entry that lacks its own. */
export function tellEntryBefore(scanning: Scanning, column: number): void {
  const { open, source, breaks } = scanning;
  // Only the first break is told.
  if (breaks.length > 0) return;
  const list = open.findLastIndex((one) => one.column < column && one.step !== ENTRY);
  const first = open[list + 1];
  const entry = entryKeyOf(open[list]?.step ?? '');
  if (!entry || !first || first.step === ENTRY || first.column <= column) return;
  const { text } = source;
  // The stack holds the last of its keys; the entry begins at the one that leads it.
  const lead = text.lastIndexOf(`\n${' '.repeat(first.column)}${entry.key}:`, first.at);
  const start = lead < (open[list]?.at ?? 0) ? first.at : lead + 1 + first.column;
  const line = text.slice(start).split('\n', 1)[0]?.trimEnd() ?? '';
  breaks.push({
    start,
    end: start + line.length,
    message: `Below, each ${entry.noun} begins with a dash, and this one has none; write "- ${line}".`,
  });
}

/** The first entry of a list with no space after its dash; true where it was told of. */
export function tellBareDash(
  scanning: Scanning,
  line: string,
  start: number,
  column: number,
): boolean {
  const text = line.slice(column).trimEnd();
  if (!/^-[^\s-]/.test(text)) return false;
  closeTo(scanning, column, true);
  const message = `A list entry has a space after its dash: "- ${text.slice(1)}".`;
  if (scanning.proseAt(pathOf(scanning)) !== 'sentences') {
    scanning.breaks.push({ start: start + column, end: start + column + text.length, message });
    return false;
  }
  tell(scanning, message, start + column, start + column + text.length);
  standIn(scanning, start + column, text.length);
  put(scanning, start + column, '- ');
  return true;
}
