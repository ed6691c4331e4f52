// Weekly sets by muscle and side for the terminal, in stretches of weeks; in a terminal with a small column
// a week to look at.
import type { PlanNumbers, WeekNumbers } from '../../compute/numbers.ts';
import { midpoint, ZERO } from '../../units/interval.ts';
import { SIDES, type Side } from '../../units/side.ts';
import { roundedRange } from './dose-in-short.ts';
import type { Screen } from './terminal-text.ts';
import { textColumns } from './text-bar.ts';
import { type TextColumn, tableText } from './text-table.ts';
import { weekStretches } from './week-stretches.ts';

const NOTHING = '-';
const left = (heading: string): TextColumn => ({ heading, align: 'left' });
const right = (heading: string): TextColumn => ({ heading, align: 'right' });

/** Rows are muscles and sides, columns stretches of weeks; sides with the same sets share a row. */
export function musclesText(
  { weeks }: PlanNumbers,
  screen: Screen & { readonly isPlain: boolean },
): string {
  const muscles = [...new Set(weeks.flatMap((week) => [...week.muscles.keys()]))].sort();
  if (muscles.length === 0) return 'No muscles are named.';
  const stretches = weekStretches(weeks, (week) =>
    muscles.map((muscle) => {
      const sets = week.muscles.get(muscle);
      return SIDES.map((side) => (sets ? roundedRange(sets[side], 1) : NOTHING));
    }),
  );
  const rows = muscles.flatMap((muscle, m) => {
    const bySide = SIDES.map((_, s) => stretches.map(({ value }) => value[m]?.[s] ?? NOTHING));
    return muscleRows(bySide).map(({ name, side, cells }, i) => ({
      cells: [i === 0 ? muscle : '', name, ...cells],
      drawn: { muscle, side },
    }));
  });
  const columns = [left('Muscle'), left('Side'), ...stretches.map(({ label }) => right(label))];
  const plain = tableText({ columns, rows: rows.map(({ cells }) => cells), heads: 2 }, screen);
  if (screen.isPlain || weeks.length < 2) return plain;
  const column = drawnWeeks(weeks);
  const drawn = tableText(
    {
      columns: [...columns, left(`Weeks 1-${weeks.length}`)],
      rows: rows.map((row) => [...row.cells, column(row.drawn)]),
      heads: 2,
    },
    screen,
  );
  // A drawing is not worth a further block, or a broken name.
  return drawn.split('\n').length > plain.split('\n').length ? plain : drawn;
}

/** A small column a week, all muscles to one scale. */
function drawnWeeks(weeks: readonly WeekNumbers[]) {
  const sets = (week: WeekNumbers, muscle: string, side: Side) =>
    midpoint(week.muscles.get(muscle)?.[side] ?? ZERO);
  const all = weeks.flatMap((week) =>
    [...week.muscles.keys()].flatMap((muscle) => SIDES.map((side) => sets(week, muscle, side))),
  );
  const most = Math.max(...all);
  return ({ muscle, side }: { readonly muscle: string; readonly side: Side }) =>
    textColumns(
      weeks.map((week) => sets(week, muscle, side)),
      most,
    );
}

interface SideCells {
  readonly name: string;
  /** The side to draw; either, where both have the same. */
  readonly side: Side;
  readonly cells: readonly string[];
}

function muscleRows([
  leftCells = [],
  rightCells = [],
  middle = [],
]: readonly string[][]): SideCells[] {
  const isNone = (cells: readonly string[]) =>
    cells.every((cell) => cell === '0' || cell === NOTHING);
  const middleRow: SideCells[] = isNone(middle)
    ? []
    : [{ name: 'middle', side: 'middle', cells: middle }];
  if (isNone(leftCells) && isNone(rightCells) && middleRow.length > 0) return middleRow;
  if (leftCells.join() === rightCells.join()) {
    return [{ name: 'left, right', side: 'left', cells: leftCells }, ...middleRow];
  }
  return [
    { name: 'left', side: 'left', cells: leftCells },
    { name: 'right', side: 'right', cells: rightCells },
    ...middleRow,
  ];
}
