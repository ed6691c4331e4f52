// Where things are in a drawing, read from its paths as a viewer would show them: mirrored if it is.

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** The dots that a path runs through, its handles left out. */
function dotsOf(path: string): readonly Spot[] {
  const dots: Spot[] = [];
  let [x, y] = [0, 0];
  for (const [, command = '', text = ''] of path.matchAll(/([Mclqsz])([^Mclqsz]*)/g)) {
    const numbers = (text.match(/-?\d+/g) ?? []).map(Number);
    const size = { M: 2, l: 2, c: 6, s: 4, q: 4, z: 1 }[command] ?? 1;
    if (numbers.length % size !== 0 && command !== 'z') throw new Error(`not a path: ${path}`);
    for (let i = 0; i + size <= numbers.length; i += size) {
      const [dx = 0, dy = 0] = numbers.slice(i + size - 2, i + size);
      [x, y] = command === 'M' ? [dx, dy] : [x + dx, y + dy];
      dots.push({ x, y });
    }
  }
  return dots;
}

/** The dots of all paths of a class, in their order. */
export function spotsOf(svg: string, name: string): readonly Spot[] {
  const flip = svg.includes('<g transform="scale(-1 1)">') ? -1 : 1;
  const paths = [...svg.matchAll(/<path class="([a-z])" d="([^"]*)"/g)];
  return paths
    .filter(([, found]) => found === name)
    .flatMap(([, , path = '']) => dotsOf(path))
    .map(({ x, y }) => ({ x: x * flip, y }));
}

/** The middle of all that has a class. */
export function middleOf(svg: string, name: string): Spot {
  const spots = spotsOf(svg, name);
  if (spots.length === 0) throw new Error(`nothing has the class ${name}`);
  const mean = (axis: 'x' | 'y') => spots.reduce((sum, one) => sum + one[axis], 0) / spots.length;
  return { x: mean('x'), y: mean('y') };
}
