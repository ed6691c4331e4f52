// The weeks of a plan for the terminal: minutes, with a bar to look at, work by side, and the change.
// Where a line has no room for all, minutes and bar stand in a table of their own, before the rest.
import type { PlanNumbers, WeekNumbers } from '../../compute/numbers.ts';
import type { Plan } from '../../model/plan.ts';
import { addDays } from '../../units/day.ts';
import type { Interval } from '../../units/interval.ts';
import { SIDES } from '../../units/side.ts';
import { minutesOf } from '../words/plain-number.ts';
import { rounded, roundedRange } from './dose-in-short.ts';
import { displayWidth, type Screen } from './terminal-text.ts';
import { BLOCK_SIGNS, PLAIN_SIGNS, textBar } from './text-bar.ts';
import { type TextCell, type TextColumn, tableText } from './text-table.ts';

const WIDEST_BAR = 40;
const NARROWEST_BAR = 12;
const NOTHING = '-';

type Column = TextColumn & { readonly cell: (week: WeekNumbers) => TextCell };

/** The table of weeks; a bar is as wide as there is room for. */
export function weeksText(
  plan: Plan,
  { weeks }: PlanNumbers,
  screen: Screen & { readonly isPlain: boolean },
): string {
  const heads: Column[] = [
    {
      heading: 'Week',
      align: 'left',
      cell: ({ week, isEasy }) => `${week}${isEasy ? ' easy' : ''}`,
    },
    { heading: 'From', align: 'left', cell: ({ week }) => addDays(plan.starts, 7 * (week - 1)) },
  ];
  const minutes: Column = { heading: 'Minutes', align: 'right', cell: ({ ms }) => minutesText(ms) };
  const rest = restOf(weeks);
  const table = (columns: readonly Column[], width = screen.width) =>
    tableText(
      { columns, rows: weeks.map((week) => columns.map(({ cell }) => cell(week))), heads: 2 },
      { ...screen, width },
    );
  const most = Math.max(...weeks.map(({ ms }) => ms[1]));
  const bar = (width: number): Column => ({
    heading: '',
    align: 'left',
    cell: ({ ms }) => textBar(ms, most, width, screen.isPlain ? PLAIN_SIGNS : BLOCK_SIGNS),
  });
  if (most === 0) return table([...heads, minutes, ...rest]);
  const besides = screen.width - widthOf(table([...heads, minutes, ...rest], UNBOUNDED)) - GAP;
  // The headers may wrap for a bar that is still long enough to compare.
  for (const width of besides < NARROWEST_BAR ? [20, 16, NARROWEST_BAR] : [besides]) {
    const text = table([...heads, minutes, bar(Math.min(width, WIDEST_BAR)), ...rest]);
    if (!isParted(text)) return text;
  }
  const alone = screen.width - widthOf(table([...heads, minutes], UNBOUNDED)) - GAP;
  const first = table([...heads, minutes, bar(Math.max(1, Math.min(alone, WIDEST_BAR)))]);
  return `${first}\n\n${table([...heads, ...rest])}`;
}

/** For how wide a table would be with no screen to fit. */
const UNBOUNDED = 1000;
const GAP = 2;

function widthOf(text: string): number {
  return Math.max(...text.split('\n').map(displayWidth));
}

/** Whether a table went on in a further block. */
function isParted(text: string): boolean {
  return text.includes('\n\n');
}

function restOf(weeks: readonly WeekNumbers[]): Column[] {
  const hasMiddle = weeks.some(({ middle }) => middle.workMs[1] > 0 || middle.sets[1] > 0);
  const sides = SIDES.filter((side) => side !== 'middle' || hasMiddle);
  return [
    ...sides.map(
      (side): Column => ({
        heading: `Work ${side}`,
        align: 'right',
        cell: (week) => minutesText(week[side].workMs),
      }),
    ),
    { heading: 'Change all', align: 'right', cell: ({ change }) => changeText(change.all) },
    {
      heading: 'Change strength',
      align: 'right',
      cell: ({ change }) => changeText(change.strength),
    },
  ];
}

/** `20.3-22.8`, in minutes. */
export function minutesText(ms: Interval): string {
  return roundedRange(minutesOf(ms), 1);
}

function changeText(share: number | null): string {
  if (share === null) return NOTHING;
  const percent = rounded(share * 100, 0);
  return `${Number(percent) > 0 ? '+' : ''}${percent} %`;
}
