// How outlines are written as SVG paths: in whole units and in steps from dot to dot, so that they are
// short, and the same everywhere.

/** A point on the paper in statures, y downwards. */
export interface Dot {
  readonly x: number;
  readonly y: number;
}

/** Units of the drawing in one stature: on a picture of 6 cm about a tenth of a millimetre each. */
export const UNIT = 600;

function area(dots: readonly Dot[]): number {
  return dots.reduce((sum, { x, y }, i) => {
    const next = dots[(i + 1) % dots.length] as Dot;
    return sum + x * next.y - next.x * y;
  }, 0);
}

interface Pen {
  /** A command to the last of its dots, the others being its handles. */
  readonly to: (command: string, dots: readonly Dot[]) => void;
  readonly open: () => string;
  readonly closed: () => string;
}

/** Writes a path in whole thousandths and in steps from dot to dot: short, and everywhere the same. */
function penAt(dot: Dot): Pen {
  let at = { x: round(dot.x), y: round(dot.y) };
  let path = `M${at.x} ${at.y}`;
  return {
    to: (command, dots) => {
      if (dots.every(({ x, y }) => round(x) === at.x && round(y) === at.y)) return;
      const steps = dots.map(({ x, y }) => `${round(x) - at.x} ${round(y) - at.y}`);
      path += command + steps.join(' ');
      const { x, y } = dots.at(-1) as Dot;
      at = { x: round(x), y: round(y) };
    },
    open: () => path.replaceAll(' -', '-'),
    closed: () => `${path}z`.replaceAll(' -', '-'),
  };
}

/** In whole units, and never -0. */
function round(value: number): number {
  return Math.round(value * UNIT) + 0;
}

/** Always the same way round, so that overlapping pieces of one path make one shape. */
function wayRound(dots: readonly Dot[]): readonly Dot[] {
  return area(dots) < 0 ? [...dots].reverse() : dots;
}

/** A closed smooth curve through points (Catmull and Rom 1974). */
export function smoothPath(dots: readonly Dot[]): string {
  const row = wayRound(dots);
  const n = row.length;
  return curve((i) => row[(i + n) % n] as Dot, n, true);
}

/** An open smooth curve through points. */
export function smoothLine(dots: readonly Dot[]): string {
  const last = dots.length - 1;
  return curve((i) => dots[Math.max(0, Math.min(last, i))] as Dot, last, false);
}

function curve(at: (i: number) => Dot, pieces: number, isClosed: boolean): string {
  const pen = penAt(at(0));
  for (let i = 0; i < pieces; i += 1) {
    const [a, b, c, d] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    const one = { x: b.x + (c.x - a.x) / 6, y: b.y + (c.y - a.y) / 6 };
    const two = { x: c.x - (d.x - b.x) / 6, y: c.y - (d.y - b.y) / 6 };
    // Where one piece follows another, SVG mirrors the first handle itself.
    if (i === 0) pen.to('c', [one, two, c]);
    else pen.to('s', [two, c]);
  }
  return isClosed ? pen.closed() : pen.open();
}

/** How far the handles of a quarter of a circle reach, of its radius. */
const QUARTER = 0.5523;

/** An ellipse by its middle and two conjugate radii, in four curves; the first radius before the second. */
export function ovalPath(middle: Dot, one: Dot, two: Dot): string {
  const at = (cos: number, sin: number): Dot => ({
    x: middle.x + one.x * cos + two.x * sin,
    y: middle.y + one.y * cos + two.y * sin,
  });
  const pen = penAt(at(1, 0));
  pen.to('c', [at(1, QUARTER), at(QUARTER, 1), at(0, 1)]);
  pen.to('s', [at(-1, QUARTER), at(-1, 0)]);
  pen.to('s', [at(-QUARTER, -1), at(0, -1)]);
  pen.to('s', [at(1, -QUARTER), at(1, 0)]);
  return pen.closed();
}

export function polygonPath(dots: readonly Dot[]): string {
  return lines(wayRound(dots)).closed();
}

export function linePath(dots: readonly Dot[]): string {
  return lines(dots).open();
}

function lines([first, ...rest]: readonly Dot[]): Pen {
  const pen = penAt(first as Dot);
  for (const dot of rest) pen.to('l', [dot]);
  return pen;
}

/** A polygon with its corners rounded off by up to a length. */
export function roundedPath(dots: readonly Dot[], by: number): string {
  const row = wayRound(dots);
  const n = row.length;
  const toward = (from: Dot, to: Dot) => {
    const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
    const share = Math.min(by, length / 2) / length;
    return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
  };
  const corner = (i: number) => {
    const [before, dot, next] = [row[(i + n - 1) % n], row[i % n], row[(i + 1) % n]] as [
      Dot,
      Dot,
      Dot,
    ];
    return [toward(dot, before), dot, toward(dot, next)] as const;
  };
  const pen = penAt(corner(0)[0]);
  for (let i = 0; i < n; i += 1) {
    const [from, dot, to] = corner(i);
    if (i > 0) pen.to('l', [from]);
    pen.to('q', [dot, to]);
  }
  return pen.closed();
}
