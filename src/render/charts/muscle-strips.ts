// Where the sides of the muscles' chart stand, and how exact the numbers beside their bars can be: bars
// come first, and the table has every number in full.
import { type Interval, ZERO } from '../../units/interval.ts';
import { SIDES, type Side } from '../../units/side.ts';
import { displayWidth, oneLine, startWithin } from '../terminal/terminal-text.ts';
import { plainRange } from '../words/plain-number.ts';
import type { Words } from '../words/words.ts';
import { CHART_WIDTH, textWidth } from './chart.ts';
import { type MuscleRow, sidesShown } from './muscle-rows.ts';

/** A side's place in the chart. */
export interface Strip {
  readonly side: Side;
  readonly name: string;
  /** With the numbers on both sides. */
  readonly whole: readonly [start: number, end: number];
  readonly bars: readonly [start: number, end: number];
  /** What stands beside the bars; empty where there is no room. */
  readonly label: (sets: Interval | undefined) => string;
}

/** In letters. */
const LONGEST_NAME = 24;
const GAP = 20;
const WIDEST_STRIP = 280;
/** That much of a strip is for bars. */
const LEAST_FOR_BARS = 0.35;

/** Every side has the same width, and room on both ends for its numbers. */
export function stripsOf(rows: readonly MuscleRow[], words: Words): Strip[] {
  const start = Math.max(...rows.map((row) => textWidth(nameOf(row, words)))) + GAP / 2;
  const sides = sidesShown(rows);
  const room = (CHART_WIDTH - start - GAP * (sides.length - 1)) / sides.length;
  const width = Math.min(WIDEST_STRIP, room);
  const { label, margin } = labelsFor(rows, width, words);
  return sides.map((side, i) => {
    const from = start + i * (width + GAP);
    return {
      side: side === 'each' ? 'left' : side,
      name: words.say(`clinic.sides.${side}`),
      whole: [from, from + width],
      bars: [from + margin, from + width - margin],
      label,
    };
  });
}

/** With a decimal, or in whole sets, or none. */
function labelsFor(rows: readonly MuscleRow[], width: number, words: Words) {
  const ends = rows.flatMap(({ sets }) =>
    SIDES.flatMap((side) => [sets[side][0], sets[side].at(-1)]),
  );
  for (const decimals of [1, 0]) {
    const label = (sets: Interval | undefined) => plainRange(sets ?? ZERO, decimals, words);
    const margin = Math.max(...ends.map((one) => textWidth(label(one)))) + 5;
    if (width - 2 * margin >= LEAST_FOR_BARS * width) return { label, margin };
  }
  return { label: () => '', margin: 0 };
}

/** What the muscle is called, cut where it is very long. */
export function nameOf({ muscle }: MuscleRow, words: Words): string {
  const name = oneLine(words.look('muscles', muscle) ?? muscle);
  return displayWidth(name) <= LONGEST_NAME ? name : `${startWithin(name, LONGEST_NAME - 1)}…`;
}
