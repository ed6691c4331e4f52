// An SVG read back: strictly, as an XML reader would, so that a mark which isn't well formed fails.

export interface Mark {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text: string;
}

const TAG = /^<(\/?)([a-z]+)((?: [a-zA-Z:-]+="[^"<]*")*)(\/?)>/;
const TEXT = /^(?:[^<&\p{Cc}\uFFFE\uFFFF]|\n|&(?:amp|lt|gt|quot);)+/u;

/** Every element in order; throws where the text is no well-formed XML of the plain kind. */
export function marksOf(svg: string): Mark[] {
  const marks: { name: string; attributes: Record<string, string>; text: string }[] = [];
  const open: (typeof marks)[number][] = [];
  let rest = svg.trimEnd();
  while (rest !== '') {
    const [text] = TEXT.exec(rest) ?? [];
    if (text !== undefined) {
      const inside = open.at(-1);
      if (!inside) throw new Error(`text outside: ${text}`);
      inside.text += text;
      rest = rest.slice(text.length);
      continue;
    }
    const [tag, isEnd, name = '', attributes = '', isEmpty] = TAG.exec(rest) ?? [];
    if (tag === undefined) throw new Error(`not well formed: ${rest.slice(0, 60)}`);
    rest = rest.slice(tag.length);
    if (isEnd) {
      if (open.pop()?.name !== name) throw new Error(`</${name}> closes another`);
      continue;
    }
    if (open.length === 0 && marks.length > 0) throw new Error('more than one root');
    const mark = { name, attributes: attributesOf(attributes), text: '' };
    marks.push(mark);
    if (!isEmpty) open.push(mark);
  }
  if (open.length > 0) throw new Error(`<${open.at(-1)?.name}> is not closed`);
  return marks;
}

function attributesOf(text: string): Record<string, string> {
  const pairs = [...text.matchAll(/ ([a-zA-Z:-]+)="([^"]*)"/g)].map(
    ([, name = '', value = '']) => [name, value] as const,
  );
  const names = pairs.map(([name]) => name);
  if (new Set(names).size < names.length) throw new Error(`an attribute twice: ${text}`);
  return Object.fromEntries(pairs);
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What a mark covers, its line not counted; a text is its point. Null for what draws nothing itself. */
export function extentOf({ name, attributes }: Mark): Box | null {
  const number = (key: string) => Number(attributes[key] ?? 0);
  if (name === 'rect') {
    return { x: number('x'), y: number('y'), width: number('width'), height: number('height') };
  }
  if (name === 'text') return { x: number('x'), y: number('y'), width: 0, height: 0 };
  if (name === 'circle') {
    const r = number('r');
    return { x: number('cx') - r, y: number('cy') - r, width: 2 * r, height: 2 * r };
  }
  if (name !== 'path') return null;
  const d = attributes.d ?? '';
  if (!/^M-?[\d.]+,-?[\d.]+(L-?[\d.]+,-?[\d.]+)+$/.test(d)) throw new Error(`no path: ${d}`);
  const points = d
    .slice(1)
    .split('L')
    .map((one) => one.split(',').map(Number));
  const [xs, ys] = [points.map(([x]) => x as number), points.map(([, y]) => y as number)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

/** No bar begins above that; the marks of the legend do. */
const LEGEND = 20;
export const textsOf = (marks: readonly Mark[]) =>
  marks.filter(({ name }) => name === 'text').map(({ text }) => text);

/** The marks of a chart that is there. */
export function drawn(chart: { readonly svg: string } | null): Mark[] {
  if (!chart) throw new Error('there is nothing to draw');
  return marksOf(chart.svg);
}

/** The bars of a chart, by what fills them; the frame and the legend are left out. */
export function bars(marks: readonly Mark[], fill: string): Box[] {
  return marks
    .filter(({ name, attributes }) => name === 'rect' && attributes.fill === fill)
    .filter(({ attributes }) => attributes.stroke === 'black' && Number(attributes.y) > LEGEND)
    .map((mark) => extentOf(mark) as Box);
}
