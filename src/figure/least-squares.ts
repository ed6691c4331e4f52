// The nearest fit of a few numbers to many wishes: damped Gauss-Newton steps (Levenberg 1944,
// Marquardt 1963) with a numeric derivative. Small, exact enough, and the same on every run.

/** Writes what each wish still lacks, in a fixed order. */
export type Lacks = (values: Float64Array) => readonly number[];

const STEP = 1e-6;
const MOST_ROUNDS = 25;
const SETTLED = 1e-5;

/** The values with the numbers at `free` fitted; the others stay. */
export function fitted(start: Float64Array, free: readonly number[], lacks: Lacks): Float64Array {
  let values = start.slice();
  let now = lacks(values);
  let cost = sumOfSquares(now);
  let damping = 1e-3;
  for (let round = 0; round < MOST_ROUNDS && damping < 1e9; round += 1) {
    const slopes = free.map((index) => slopeAt(values, index, now, lacks));
    const pull = slopes.map((slope) => -product(slope, now));
    const normal = slopes.map((a) => slopes.map((b) => product(a, b)));
    let isBetter = false;
    let moved = 0;
    while (!isBetter && damping < 1e9) {
      const step = solved(normal, pull, damping);
      const next = values.slice();
      free.forEach((index, i) => {
        next[index] = (next[index] as number) + (step[i] as number);
      });
      const then = lacks(next);
      const costThen = sumOfSquares(then);
      isBetter = costThen < cost;
      if (isBetter) {
        moved = cost - costThen;
        [values, now, cost] = [next, then, costThen];
        damping = Math.max(damping / 10, 1e-9);
      } else damping *= 10;
    }
    if (moved < SETTLED * (cost + 1e-9)) break;
  }
  return values;
}

function slopeAt(
  values: Float64Array,
  index: number,
  now: readonly number[],
  lacks: Lacks,
): readonly number[] {
  const nudged = values.slice();
  nudged[index] = (nudged[index] as number) + STEP;
  return lacks(nudged).map((one, i) => (one - (now[i] as number)) / STEP);
}

function product(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

function sumOfSquares(a: readonly number[]): number {
  return product(a, a);
}

/** Solves the damped normal equations by Cholesky's method. */
function solved(
  normal: readonly (readonly number[])[],
  pull: readonly number[],
  damping: number,
): readonly number[] {
  const n = pull.length;
  const lower: number[][] = [];
  const y: number[] = [];
  for (let i = 0; i < n; i += 1) {
    const row: number[] = [];
    for (let j = 0; j <= i; j += 1) {
      const whole = (normal[i] as readonly number[])[j] as number;
      const damped = i === j ? whole * (1 + damping) + 1e-12 : whole;
      const rest =
        damped - product(row, (j === i ? row : (lower[j] as number[])).slice(0, row.length));
      row.push(
        i === j ? Math.sqrt(Math.max(rest, 1e-18)) : rest / ((lower[j] as number[])[j] as number),
      );
    }
    lower.push(row);
    y.push(((pull[i] as number) - product(y, row.slice(0, i))) / (row[i] as number));
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
