// The nearest fit of a few numbers to many wishes: damped Gauss-Newton steps (Levenberg 1944,
// Marquardt 1963). Slopes are measured, and between measurements carried on from step to step
// (Broyden 1965), since measuring them is what takes the time. The same on every run.

/** What is fitted: numbers, what they come to, and what each wish still lacks, in a fixed order. */
export interface Aim<Body> {
  readonly bodyOf: (values: Float64Array) => Body;
  /** The body of values that differ from those of another body at one index. */
  readonly changedAt: (index: number, body: Body, values: Float64Array) => Body;
  readonly lacks: (values: Float64Array, body: Body) => readonly number[];
}

const STEP = 1e-6;
const MOST_ROUNDS = 80;
/** A fit is settled when a step gains less than this share of what is still lacked. */
const SETTLED = 1e-5;
const LEAST_DAMPING = 1e-9;
const MOST_DAMPING = 1e9;

/** Values with what they come to and lack. */
interface State<Body> {
  readonly values: Float64Array;
  readonly body: Body;
  readonly lacks: readonly number[];
  readonly cost: number;
}

/** The values with the numbers at `free` fitted; the others stay. */
export function fitted<Body>(
  start: Float64Array,
  free: readonly number[],
  aim: Aim<Body>,
): Float64Array {
  const stateOf = (values: Float64Array): State<Body> => {
    const body = aim.bodyOf(values);
    const lacks = aim.lacks(values, body);
    return { values, body, lacks, cost: product(lacks, lacks) };
  };
  let now = stateOf(start.slice());
  let slopes = measured(now, free, aim);
  let isFresh = true;
  let damping = 1e-3;
  const measureAgain = () => {
    slopes = measured(now, free, aim);
    isFresh = true;
  };
  for (let round = 0; round < MOST_ROUNDS && damping < MOST_DAMPING; round += 1) {
    const step = stepOf(slopes, now.lacks, damping);
    const next = stateOf(moved(now.values, free, step));
    if (next.cost >= now.cost) {
      if (isFresh) damping *= 10;
      else measureAgain();
      continue;
    }
    const gained = now.cost - next.cost;
    const isSettled = gained < SETTLED * (next.cost + 1e-9);
    if (isSettled && isFresh) return next.values;
    carryOn(slopes, step, now.lacks, next.lacks);
    now = next;
    isFresh = false;
    damping = Math.max(damping / 10, LEAST_DAMPING);
    if (isSettled) measureAgain();
  }
  return now.values;
}

function moved(
  values: Float64Array,
  free: readonly number[],
  step: readonly number[],
): Float64Array {
  const next = values.slice();
  for (const [i, index] of free.entries())
    next[index] = (next[index] as number) + (step[i] as number);
  return next;
}

/** How every lack changes with each free number. */
function measured<Body>(
  { values, body, lacks }: State<Body>,
  free: readonly number[],
  aim: Aim<Body>,
): number[][] {
  const nudged = values.slice();
  return free.map((index) => {
    const before = nudged[index] as number;
    nudged[index] = before + STEP;
    const then = aim.lacks(nudged, aim.changedAt(index, body, nudged));
    nudged[index] = before;
    return then.map((one, i) => (one - (lacks[i] as number)) / STEP);
  });
}

/** Slopes that would have foretold the step just made; the least change to them that does. */
function carryOn(
  slopes: readonly number[][],
  step: readonly number[],
  before: readonly number[],
  then: readonly number[],
): void {
  const length = product(step, step);
  if (length === 0) return;
  const foretold = new Array<number>(before.length).fill(0);
  for (const [i, slope] of slopes.entries())
    for (let k = 0; k < foretold.length; k += 1)
      foretold[k] = (foretold[k] as number) + (slope[k] as number) * (step[i] as number);
  for (const [i, slope] of slopes.entries()) {
    const share = (step[i] as number) / length;
    for (let k = 0; k < foretold.length; k += 1) {
      const off = (then[k] as number) - (before[k] as number) - (foretold[k] as number);
      slope[k] = (slope[k] as number) + off * share;
    }
  }
}

function product(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

/** Solves the damped normal equations by Cholesky's method. */
function stepOf(
  slopes: readonly (readonly number[])[],
  lacks: readonly number[],
  damping: number,
): readonly number[] {
  const n = slopes.length;
  const lower: number[][] = [];
  const y: number[] = [];
  const sumTo = (j: number, a: readonly number[], b: readonly number[]) => {
    let sum = 0;
    for (let k = 0; k < j; k += 1) sum += (a[k] as number) * (b[k] as number);
    return sum;
  };
  for (let i = 0; i < n; i += 1) {
    const row: number[] = [];
    lower.push(row);
    const slope = slopes[i] as readonly number[];
    for (let j = 0; j < i; j += 1) {
      const above = lower[j] as number[];
      const whole = product(slope, slopes[j] as readonly number[]);
      row.push((whole - sumTo(j, row, above)) / (above[j] as number));
    }
    const damped = product(slope, slope) * (1 + damping) + 1e-12;
    row.push(Math.sqrt(Math.max(damped - sumTo(i, row, row), 1e-18)));
    y.push((-product(slope, lacks) - sumTo(i, row, y)) / (row[i] as number));
  }
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i -= 1) {
    let rest = y[i] as number;
    for (let j = i + 1; j < n; j += 1)
      rest -= ((lower[j] as number[])[i] as number) * (x[j] as number);
    x[i] = rest / ((lower[i] as number[])[i] as number);
  }
  return x;
}
