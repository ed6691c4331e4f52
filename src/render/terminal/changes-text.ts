// What changed, for the terminal: heading, groups of changes, the numbers as a table. A change that the
// sheet does not show says so; taken out is red and new is green where colours are on, and both are words.
import type { ChangeLine, ChangesView } from '../changes/changes-view.ts';
import type { TableView } from '../record/table-view.ts';
import { type Paint, prose, type Screen, wrappedLines } from './terminal-text.ts';
import { tableText } from './text-table.ts';

/** A screen on which what came and what went can have a colour. */
export interface ChangesScreen extends Screen {
  readonly paint: Paint & {
    readonly added: (text: string) => string;
    readonly removed: (text: string) => string;
  };
}

/** One plan's changes; no line end after the last line. */
export function changesText(view: ChangesView, screen: ChangesScreen): string {
  const { width, paint } = screen;
  const head = [
    paint.bold(prose(view.title, width)),
    prose(view.between, width),
    prose(view.sheet, width),
    ...view.troubles.map((trouble) => paint.warn(prose(trouble, width))),
    ...(view.none === null ? [] : [view.none]),
  ].join('\n');
  const groups = view.groups.map(({ heading, kind, lines }) =>
    [
      headingPaint(kind, paint)(prose(heading, width)),
      ...lines.flatMap((line) => lineTexts(line, screen)),
    ].join('\n'),
  );
  const over = view.over === null ? [] : [paint.dim(prose(view.over, width))];
  return [head, ...groups, ...over, ...view.effects.map((table) => effectText(table, screen))].join(
    '\n\n',
  );
}

/** The words say it too. */
function headingPaint(kind: ChangesView['groups'][number]['kind'], paint: ChangesScreen['paint']) {
  if (kind === 'changed') return paint.bold;
  return kind === 'new' ? paint.added : paint.removed;
}

function lineTexts({ text, details, remark }: ChangeLine, { width, paint }: Screen): string[] {
  const whole = remark === null ? text : `${text} (${remark})`;
  const indented = (sentence: string, indent: string) =>
    wrappedLines(sentence, width - indent.length).map(
      (line) => `${indent}${remark === null ? line : paint.dim(line)}`,
    );
  return [...indented(whole, '  '), ...details.flatMap((detail) => indented(detail, '    '))];
}

function effectText({ heading, columns, rows }: TableView, screen: Screen): string {
  const table = tableText(
    {
      columns: columns.map((column) => ({ heading: column, align: 'left' })),
      rows: rows.map(({ head, cells }) => [head, ...cells]),
      heads: 1,
    },
    screen,
  );
  return `${screen.paint.bold(heading)}\n${table}`;
}

/** A few lines a plan: which it is, whether its sheet changes, how many changes there are. */
export function changedPlansText(views: readonly ChangesView[], { width, paint }: Screen): string {
  return views
    .map(({ title, between, sheet, none, count }) =>
      [
        paint.bold(prose(title, width)),
        prose(between, width),
        prose([sheet, none ?? count].join(' '), width),
      ].join('\n'),
    )
    .join('\n\n');
}
