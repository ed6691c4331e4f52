// Writes the lines of a climb for a dose: every kind of dial, up and down, by and to in a unit of
// the dose's kind, so that the dial has somewhere to go. legal.ts has the last word on them.

import fc from 'fast-check';
import type { Stand } from './climb.ts';
import { lineOf, reach } from './climb.ts';
import { compare, fraction, minus, plus, times, whole, writeDecimal, ZERO } from './fraction.ts';
import type { Dose } from './merge.ts';
import type { Load, Range } from './quantities.ts';
import { readTime } from './quantities.ts';
import type { Frame } from './resolve.ts';
import type { ClimbLine, Count, Dial, WrittenExercise } from './written.ts';

/** The chances behind one line, before it meets a dose. */
export interface RawDial {
  readonly key: number;
  readonly by: number;
  readonly steps: number;
  readonly short: boolean;
  readonly down: boolean;
  readonly restart: number;
  readonly form: number;
}

export const rawDial: fc.Arbitrary<RawDial> = fc.record({
  key: fc.nat({ max: 40 }),
  by: fc.integer({ min: 1, max: 3 }),
  steps: fc.integer({ min: 1, max: 3 }),
  short: fc.boolean(),
  down: fc.oneof({ arbitrary: fc.constant(false), weight: 3 }, fc.constant(true)),
  restart: fc.nat({ max: 15 }),
  form: fc.nat({ max: 3 }),
});

const KEYS = ['reps', 'sets', 'hold', 'time', 'rest', 'pause', 'effort'] as const;
const TIMES: readonly string[] = ['hold', 'time', 'rest', 'pause'];

function writeTime(ms: number, form: number): string {
  const minutes = Math.floor(Math.abs(ms) / 60_000);
  const left = Math.abs(ms) % 60_000;
  if (ms > 0 && minutes > 0 && form > 1) {
    return left === 0 ? `${minutes} min` : `${minutes} min ${left / 1000} s`;
  }
  return `${ms / 1000} s`;
}

/** Where a second dial for a key begins: at the end of the first, going the same way. */
function earlierOf(key: string, earlier: readonly ClimbLine[]): Dial | undefined {
  return earlier.map(lineOf).findLast(([other]) => other === key)?.[1];
}

const isDown = (dial: Dial): boolean => String(dial.by).startsWith('-');

function readEnd(key: string, written: Count | undefined, frame: Frame): number | undefined {
  if (written === undefined) return undefined;
  return TIMES.includes(key) ? readTime(String(written), frame.breath)[0] : Number(written);
}

const LEAST: Record<string, number> = {
  reps: 1,
  sets: 1,
  effort: 0,
  hold: 1000,
  time: 5000,
  rest: 0,
  pause: 0,
};

function plainDial(
  raw: RawDial,
  key: string,
  range: Range,
  earlier: Dial | undefined,
  frame: Frame,
): Dial | undefined {
  const timed = TIMES.includes(key);
  const down = earlier ? isDown(earlier) : raw.down;
  const breaths = timed && raw.form === 3 && !down;
  const unit = breaths ? frame.breath : timed ? [1000, 5000, 2500, 5000][raw.form] : 1;
  const by = raw.by * (unit ?? 1);
  const start = readEnd(key, earlier?.to, frame) ?? (down ? range[0] : range[1]);
  const short = raw.short ? Math.floor(by / 2) : 0;
  const size = by * raw.steps - (by * raw.steps > short ? short : 0);
  const most = key === 'effort' ? 10 : Number.POSITIVE_INFINITY;
  const to = down ? Math.max(LEAST[key] ?? 0, start - size) : Math.min(most, start + size);
  if (down ? to >= start : to <= start) return undefined;
  if (!timed) return { by: down ? -by : by, to };
  const step = breaths ? `${raw.by} ${raw.by === 1 ? 'breath' : 'breaths'}` : undefined;
  return { by: step ?? writeTime(down ? -by : by, 0), to: writeTime(to, raw.form) };
}

function bandDial(raw: RawDial, load: Load, frame: Frame): Dial | undefined {
  const up = frame.bands.filter(
    (_, place) => place > load.band || (raw.short && place === load.band),
  );
  const down = frame.bands.filter((_, place) => place < load.band).reverse();
  const through = raw.down ? down : up;
  // A single band is left out: where the sides differ it leaves open which way through the bands.
  return through.length > 1 ? { through: through.slice(-raw.by - 1) } : undefined;
}

function weightDial(raw: RawDial, load: Load, frame: Frame): Dial | undefined {
  if (load.kind === 'band') return bandDial(raw, load, frame);
  if (load.kind === 'rm' || load.kind === 'body weight') return undefined;
  const sign = raw.down ? '-' : '';
  const end = raw.down ? load.low : load.high;
  const points = load.kind.startsWith('%');
  const by = points ? whole(5 * raw.by) : fraction(BigInt(raw.by), 2n);
  const size = minus(times(by, whole(raw.steps)), fraction(raw.short ? 1n : 0n, 5n));
  const to = raw.down ? minus(end, size) : plus(end, size);
  const ends = points && compare(to, whole(95)) > 0;
  if (compare(to, ZERO) <= 0 || ends) return undefined;
  const dial: Dial = { by: `${sign}${writeDecimal(by)}`, to: `${writeDecimal(to)} ${load.kind}` };
  if (points) return { ...dial, by: `${dial.by} %` };
  if (raw.form < 2) return { ...dial, by: `${dial.by} ${load.kind}` };
  const share = ['2.5', '5', '10'][raw.by - 1];
  const round = raw.form === 2 ? '0.5' : '0.2';
  return { by: `${sign}${share} %`, to: dial.to as string, round: `${round} ${load.kind}` };
}

function levelDial(raw: RawDial, exercise: WrittenExercise, level: number): Dial | undefined {
  const later = exercise.levels.slice(level + 1).map((entry) => entry.level);
  const chosen = later.filter((_, at) => (raw.restart >> at) % 2 === 0);
  return chosen.length ? { through: chosen } : undefined;
}

function restartOf(raw: RawDial, key: string, earlier: readonly ClimbLine[]): string[] {
  const keys = [...new Set(earlier.map((line) => lineOf(line)[0]))];
  return keys.filter(
    (other, at) => other !== key && other !== 'level' && (raw.restart >> at) % 2 === 1,
  );
}

function keysOf(dose: Dose): string[] {
  const keys: string[] = KEYS.filter((key) => dose[key] !== undefined);
  // Weights and levels have the most rules: let them come often.
  return [...keys, ...(dose.load ? ['load', 'load'] : []), 'level', 'level'];
}

/** One more line for a climb over this dose, or nothing where the dose gives it nowhere to go. */
export function writeLine(
  raw: RawDial,
  stand: Stand,
  exercise: WrittenExercise,
  earlier: readonly ClimbLine[],
  frame: Frame,
): ClimbLine | undefined {
  const doses = Object.values(stand.now);
  const dose = doses[raw.key % doses.length];
  if (!dose) return undefined;
  const keys = keysOf(dose);
  const key = keys[Math.floor(raw.key / 2) % keys.length] ?? 'reps';
  const before = earlierOf(key, earlier);
  if (before && (key === 'level' || key === 'load')) return undefined;
  if (key === 'level') {
    const dial = levelDial(raw, exercise, stand.level);
    return dial && { level: dial };
  }
  const range = key === 'load' ? undefined : reach(dose, key);
  const dial =
    key === 'load'
      ? dose.load && weightDial(raw, dose.load, frame)
      : range && plainDial(raw, key, range, before, frame);
  if (!dial) return undefined;
  const restart = restartOf(raw, key, earlier);
  return { [key]: restart.length ? { ...dial, restart } : dial };
}
