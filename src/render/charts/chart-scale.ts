// The upright scale of a chart: from 0 to a round number at or above the most, so that bars are in
// proportion. Marks at round numbers. Nothing here knows minutes from sets.
import type { Pen } from './chart.ts';

export interface Scale {
  /** The y of an amount. */
  readonly at: (amount: number) => number;
  /** The amounts marked, 0 first. */
  readonly marks: readonly number[];
  readonly foot: number;
}

const MOST_STEPS = 5;

/** A scale between two heights of the drawing, its foot below its head. */
export function scaleTo(most: number, foot: number, head: number): Scale {
  const step = roundStep(most / MOST_STEPS);
  const steps = Math.max(1, Math.ceil(most / step));
  const at = (amount: number) => foot - ((foot - head) * amount) / (steps * step);
  return { at, foot, marks: Array.from({ length: steps + 1 }, (_, i) => i * step) };
}

/** Finer than any number beside a scale is written. */
const LEAST_STEP = 0.01;

/** 1, 2 or 5 times a power of ten, at least as large. */
function roundStep(step: number): number {
  const least = Math.max(step, LEAST_STEP);
  const power = 10 ** Math.floor(Math.log10(least));
  const factor = [1, 2, 5].find((one) => one * power >= least * (1 - 1e-9)) ?? 10;
  return factor * power;
}

/** A number and a faint line across at each mark. */
export function scaleMarks(
  pen: Pen,
  scale: Scale,
  [start, end]: readonly [start: number, end: number],
  numberText: (amount: number) => string,
): string[] {
  return scale.marks.flatMap((amount) => {
    const y = scale.at(amount);
    return [
      pen.line([start, y], [end, y], amount === 0 ? { line: 1.2 } : { line: 0.5, dashes: '1 3' }),
      pen.text([start - 6, y + 4], numberText(amount), 'end'),
    ];
  });
}
