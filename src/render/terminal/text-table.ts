// A table for the terminal: a header, a thin rule, two spaces between columns, no boxes. It never goes
// over the width: headers of numbers wrap first, then the widest column of text, and a table of many
// like columns (weeks) goes on in a further block. What stands in the cells is left to others.
import { displayWidth, oneLine, type Screen, wrappedLines } from './terminal-text.ts';

export interface TextColumn {
  readonly heading: string;
  /** Numbers stand to the right, and are not broken. */
  readonly align: 'left' | 'right';
}

export type TextCell = string | { readonly text: string; readonly paint: (text: string) => string };

/** Cells, or one line over the whole width, as a heading within the table. */
export type TextRow = readonly TextCell[] | { readonly line: TextCell; readonly indent: number };

export interface TextTable {
  readonly columns: readonly TextColumn[];
  readonly rows: readonly TextRow[];
  /** In columns of the screen, for header and cells. */
  readonly indent?: number;
  /** The first columns, repeated where the others go on in a further block; left out, columns never part. */
  readonly heads?: number;
}

const GAP = '  ';

interface Laid {
  readonly text: string;
  readonly paint: (text: string) => string;
}

/** The table as lines, none longer than the screen is wide; a blank line between blocks. */
export function tableText(table: TextTable, screen: Screen): string {
  return blocksOf(table, screen.width)
    .map((block) => blockText(block, screen))
    .join('\n\n');
}

function blockText(table: TextTable, { width, paint }: Screen): string {
  const indent = table.indent ?? 0;
  const widths = fittedWidths(table, width - indent);
  const header = table.columns.map(({ heading }) => ({ text: heading, paint: paint.bold }));
  const rule = '-'.repeat(Math.min(Math.max(width - indent, 1), totalWidth(widths)));
  return [
    ...rowLines(header, table.columns, widths, indent, 'bottom'),
    `${' '.repeat(indent)}${paint.dim(rule)}`,
    ...table.rows.flatMap((row) =>
      'line' in row
        ? spanLines(row.line, row.indent, width)
        : rowLines(row, table.columns, widths, indent),
    ),
  ].join('\n');
}

function laid(cell: TextCell | undefined): Laid {
  return typeof cell === 'object'
    ? { text: oneLine(cell.text), paint: cell.paint }
    : { text: oneLine(cell ?? ''), paint: (text) => text };
}

function spanLines(cell: TextCell, indent: number, width: number): string[] {
  const { text, paint } = laid(cell);
  return wrappedLines(text, width - indent).map((line) => `${' '.repeat(indent)}${paint(line)}`);
}

function rowLines(
  cells: readonly TextCell[],
  columns: readonly TextColumn[],
  widths: readonly number[],
  indent: number,
  standsAt: 'top' | 'bottom' = 'top',
): string[] {
  const wrapped = widths.map((width, i) => wrappedLines(laid(cells[i]).text, width));
  const height = Math.max(...wrapped.map((lines) => lines.length));
  return Array.from({ length: height }, (_, n) => {
    const pieces = widths.map((width, i) => {
      const lines = wrapped[i] ?? [];
      const text = lines[standsAt === 'top' ? n : n - (height - lines.length)] ?? '';
      const space = ' '.repeat(Math.max(0, width - displayWidth(text)));
      const shown = text === '' ? '' : laid(cells[i]).paint(text);
      return { shown, before: columns[i]?.align === 'right' ? space : '', space };
    });
    return lineOf(pieces, indent);
  });
}

/** No blanks after the last word: a copied table stays clean. */
function lineOf(
  pieces: readonly { shown: string; before: string; space: string }[],
  indent: number,
): string {
  let line = '';
  let owed = ' '.repeat(indent);
  for (const { shown, before, space } of pieces) {
    if (shown === '') {
      owed += space + GAP;
      continue;
    }
    line += owed + before + shown;
    owed = (before === '' ? space : '') + GAP;
  }
  return line;
}

function totalWidth(widths: readonly number[]): number {
  return widths.reduce((sum, one) => sum + one, 0) + GAP.length * Math.max(0, widths.length - 1);
}

/** How wide a column may be: as it comes, with its header wrapped, and with its words wrapped too. */
interface Measure {
  readonly natural: number;
  readonly compact: number;
  readonly least: number;
}

function measures({ columns, rows }: TextTable): Measure[] {
  return columns.map(({ heading, align }, i) => {
    const cells = rows.flatMap((row) => ('line' in row ? [] : [laid(row[i]).text]));
    const header = oneLine(heading);
    const widest = widestOf(cells);
    const words = widestOf([header, ...cells].flatMap((text) => text.split(' ')));
    const compact = Math.max(widest, widestOf(header.split(' ')));
    return {
      natural: Math.max(widest, displayWidth(header)),
      compact,
      least: align === 'right' ? compact : words,
    };
  });
}

function widestOf(texts: readonly string[]): number {
  return texts.reduce((most, text) => Math.max(most, displayWidth(text)), 1);
}

function fittedWidths(table: TextTable, budget: number): number[] {
  const measured = measures(table);
  const widths = measured.map(({ natural }) => natural);
  for (const floors of [
    measured.map(({ compact }) => compact),
    measured.map(({ least }) => least),
    measured.map(() => 1),
  ]) {
    shrink(widths, floors, budget);
  }
  return widths;
}

/** Takes from the widest column that may still give, a column of the screen at a time. */
function shrink(widths: number[], floors: readonly number[], budget: number): void {
  while (totalWidth(widths) > budget) {
    let widest = -1;
    for (const [i, width] of widths.entries()) {
      const gives = width > (floors[i] as number);
      if (gives && (widest === -1 || width > (widths[widest] as number))) widest = i;
    }
    if (widest === -1) return;
    widths[widest] = (widths[widest] as number) - 1;
  }
}

/** The table itself where it fits, else the columns after `heads` in as many blocks as they need. */
function blocksOf(table: TextTable, width: number): TextTable[] {
  const { heads, columns } = table;
  if (heads === undefined) return [table];
  const compact = measures(table).map((one) => one.compact);
  const budget = width - (table.indent ?? 0);
  const blocks: number[][] = [];
  for (let i = heads; i < columns.length; i += 1) {
    const block = blocks.at(-1);
    const would = [
      ...compact.slice(0, heads),
      ...[...(block ?? []), i].map((at) => compact[at] as number),
    ];
    if (block && totalWidth(would) <= budget) block.push(i);
    else blocks.push([i]);
  }
  if (blocks.length < 2) return [table];
  return blocks.map((block) => {
    const kept = [...columns.keys()].filter((i) => i < heads || block.includes(i));
    const pick = <T>(all: readonly T[]) => kept.map((i) => all[i] as T);
    return {
      ...table,
      columns: pick(columns),
      rows: table.rows.map((row) => ('line' in row ? row : pick(row))),
    };
  });
}
