// The finished drawing: things, the start as a dashed outline, the end solid, an arrow between
// them, or two bars where a position is held. No words are in it; they stand beside it.
import type { Figure, Shown } from '../model/figure.ts';
import type { Sides } from '../units/side.ts';
import { arrowOf } from './arrow.ts';
import { bodyParts, marksOf, type Part, type Piece } from './body-shapes.ts';
import { type Camera, cameraOf } from './camera.ts';
import { type Dot, linePath, polygonPath, UNIT } from './outline.ts';
import { type PropPiece, propShapes } from './prop-shapes.ts';
import type { SettledFigure } from './settle.ts';
import { HANDS, type Hand, type Skeleton } from './skeleton.ts';
import { lengthOf, minus, type Point } from './space.ts';

export interface DrawingInput {
  readonly figure: Figure;
  readonly settled: SettledFigure;
  readonly sides: Sides;
  /** The whole picture the other way round: a left limb for a right one. */
  readonly isMirrored: boolean;
  /** Whether a figure without an end is a position that is held. */
  readonly isHeld: boolean;
  readonly title: string;
  readonly description: string;
}

interface Box {
  low: { x: number; y: number };
  high: { x: number; y: number };
}

const MOVED = 0.012;
const MARGIN = 0.035;
/** The size of an arrow in a close-up. */
const CLOSE_UP = 0.6;

/** The figure as an SVG of a few kilobytes. */
export function figureSvg(input: DrawingInput): string {
  const { figure, settled, sides } = input;
  const camera = cameraOf(figure.view, figure.tilt);
  const { start, end } = settled;
  const solidBody = (end ?? start).body;
  const solid = bodyParts(solidBody, camera);
  const ghost = end ? movedParts(start.body, end.body, bodyParts(start.body, camera)) : [];
  const props = propShapes(figure, settled, camera);
  const bodies = end ? [start.body, end.body] : [start.body];
  const shownDots = bodies.flatMap((body) =>
    shownPoints(body, figure.shown).map((at) => camera(at)),
  );
  const crop = figure.shown === 'whole' ? null : boxAround(shownDots, 0.09);
  const isSeen = (dot: Dot) => crop === null || isInside(dot, crop);
  const arrow = end ? arrowOf(settled.way, camera, isSeen, crop ? CLOSE_UP : 1) : null;
  const all = crop ?? boxAround([...shownDots, ...props.dots], 0.07);
  const frame = boxAround([all.low, all.high, ...(arrow?.spots ?? [])], arrow ? MARGIN : 0.01);
  const floor = floorPath(
    frame,
    figure,
    props.dots.some(({ y }) => y > 0.1),
  );
  const layers = [
    floor,
    ...props.behind.map(propPath),
    ghost.length === 0 ? '' : ghostLayer(ghost),
    ...solid.map((part) => partPaths(part, toneOf(part, figure, sides, solidBody, camera))),
    ...props.before.map(propPath),
    arrow ? arrowPaths(arrow.line, arrow.head) : '',
    !end && input.isHeld ? holdMark(frame) : '',
  ];
  return page(input, frame, layers.join(''));
}

function movedParts(from: Skeleton, to: Skeleton, parts: readonly Part[]): readonly Part[] {
  return parts.filter(({ name }) => {
    const [a, b] = [marksOf(from, name), marksOf(to, name)];
    return a.some((one, i) => lengthOf(minus(one, b[i] as Point)) > MOVED);
  });
}

/** Near limbs are dark and far ones light; seen from the front, the worked one is dark. */
function toneOf(
  { name, near }: Part,
  figure: Figure,
  sides: Sides,
  body: Skeleton,
  camera: Camera,
): 'near' | 'far' {
  if (!name.endsWith('arm') && !name.endsWith('leg')) return 'near';
  const hand: Hand = name.startsWith('right') ? 'right' : 'left';
  if (figure.view === 'side') return hand === 'right' ? 'near' : 'far';
  void near;
  void body;
  void camera;
  return sides === 'each' && hand === 'left' ? 'far' : 'near';
}

const FILLS: Readonly<Record<Piece['tone'], Readonly<Record<'near' | 'far', string>>>> = {
  limb: { near: 'n', far: 'f' },
  trunk: { near: 't', far: 't' },
  skin: { near: 's', far: 's' },
  hair: { near: 'h', far: 'h' },
  mark: { near: 'm', far: 'm' },
};

function partPaths(part: Part, tone: 'near' | 'far'): string {
  const pieces = part.pieces.filter(({ path }) => path !== '');
  return pieces
    .map(({ tone: own, path }) => `<path class="${FILLS[own][tone]}" d="${path}"/>`)
    .join('');
}

/** The start: every outline dashed, then all of it blank again, so that only the rim is left. */
function ghostLayer(parts: readonly Part[]): string {
  const paths = parts
    .flatMap(({ pieces }) => pieces)
    .filter(({ tone }) => tone !== 'mark')
    .map(({ path }) => path)
    .join('');
  return `<g class="g"><path id="s" d="${paths}"/></g><use class="w" href="#s"/>`;
}

function propPath({ look, path }: PropPiece): string {
  return `<path class="${LOOKS[look]}" d="${path}"/>`;
}

const LOOKS: Readonly<Record<PropPiece['look'], string>> = {
  solid: 'p',
  pale: 'q',
  heavy: 'k',
  line: 'l',
  'thick-line': 'b',
  'fine-line': 'l',
};

function arrowPaths(line: string, head: string): string {
  return `<path class="u" d="${line}"/><path class="v" d="${head}"/><path class="a" d="${line}"/><path class="i" d="${head}"/>`;
}

function holdMark({ high, low }: Box): string {
  const x = high.x - 0.075;
  const bar = (at: number) =>
    polygonPath([
      { x: at, y: low.y + 0.02 },
      { x: at + 0.02, y: low.y + 0.02 },
      { x: at + 0.02, y: low.y + 0.095 },
      { x: at, y: low.y + 0.095 },
    ]);
  return `<path class="i" d="${bar(x)}${bar(x + 0.038)}"/>`;
}

function floorPath({ low, high }: Box, { view, tilt, props }: Figure, _isLow: boolean): string {
  if (view === 'above' || props.some(({ name }) => name === 'bed')) return '';
  void tilt;
  return `<path class="o" d="${linePath([
    { x: low.x, y: 0.004 },
    { x: high.x, y: 0.004 },
  ])}"/>`;
}

const PARTS: Readonly<Record<Exclude<Shown, 'whole'>, (body: Skeleton) => readonly Point[]>> = {
  'upper-body': (body) => [
    body.vertex,
    body.spine[1],
    body.spine[3],
    ...HANDS.flatMap((hand) => [
      body[hand].shoulder,
      body[hand].elbow,
      body[hand].wrist,
      body[hand].fingertip,
    ]),
  ],
  head: (body) => [body.vertex, body.spine[2], body.right.shoulder, body.left.shoulder],
  arm: (body) => [body.right.shoulder, body.right.elbow, body.right.wrist, body.right.fingertip],
  legs: (body) => [
    body.spine[1],
    ...HANDS.flatMap((hand) => [
      body[hand].hip,
      body[hand].knee,
      body[hand].ankle,
      body[hand].toe,
      body[hand].heel,
    ]),
  ],
  'lower-leg': (body) => [body.right.knee, body.right.ankle, body.right.toe, body.right.heel],
};

function shownPoints(body: Skeleton, shown: Shown): readonly Point[] {
  if (shown !== 'whole') return PARTS[shown](body);
  return [...PARTS['upper-body'](body), ...PARTS.legs(body)];
}

function boxAround(dots: readonly Dot[], margin: number): Box {
  const xs = dots.map(({ x }) => x);
  const ys = dots.map(({ y }) => y);
  return {
    low: { x: Math.min(...xs) - margin, y: Math.min(...ys) - margin },
    high: { x: Math.max(...xs) + margin, y: Math.max(...ys) + margin },
  };
}

function isInside({ x, y }: Dot, { low, high }: Box): boolean {
  return x >= low.x && x <= high.x && y >= low.y && y <= high.y;
}

/** The look of what is drawn; a close-up has finer lines, so that they come out as wide on paper. */
function styleOf({ low, high }: Box, drawing: string): string {
  const size = Math.max(high.x - low.x, high.y - low.y);
  const w = (width: number) => Math.round(width * Math.max(0.4, Math.min(1, size)) * 10) / 10;
  const rim = (fill: string, stroke: string, width: number) =>
    `{fill:${fill};stroke:${stroke};stroke-width:${w(width)};paint-order:stroke}`;
  const line = (stroke: string, width: number) =>
    `{fill:none;stroke:${stroke};stroke-width:${w(width)}}`;
  return [
    'path{stroke-linejoin:round;stroke-linecap:round}',
    `.n${rim('#3d3d3d', '#fff', 13)}`,
    `.f${rim('#c9c9c9', '#444', 6)}`,
    `.t${rim('#6e6e6e', '#fff', 13)}`,
    `.s${rim('#f4f4f4', '#333', 10)}`,
    `.h${rim('#333', '#fff', 13)}`,
    '.m{fill:#222}',
    `.g{fill:none;stroke:#333;stroke-width:${w(10)};stroke-dasharray:${w(16)} ${w(12)}}`,
    '.w{fill:#fff}',
    `.p{fill:#fff;stroke:#666;stroke-width:${w(5)}}`,
    `.q{fill:#eee;stroke:#666;stroke-width:${w(5)}}`,
    `.k${rim('#111', '#fff', 9)}`,
    `.l${line('#444', 6)}`,
    `.b${line('#111', 13)}`,
    `.o${line('#666', 7)}`,
    `.u${line('#fff', 28)}`,
    `.v{fill:#fff;stroke:#fff;stroke-width:${w(16)}}`,
    `.a${line('#111', 13)}`,
    '.i{fill:#111}',
  ]
    .filter((rule) => !rule.startsWith('.') || drawing.includes(`class="${rule[1]}"`))
    .join('');
}

function page(
  { isMirrored, title, description }: DrawingInput,
  { low, high }: Box,
  drawing: string,
): string {
  const n = (value: number) => String(Math.round(value * UNIT));
  const [x, y] = [isMirrored ? -high.x : low.x, low.y];
  const view = `${n(x)} ${n(y)} ${n(high.x - low.x)} ${n(high.y - low.y)}`;
  const inside = isMirrored ? `<g transform="scale(-1 1)">${drawing}</g>` : drawing;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${view}" role="img"><title>${escaped(title)}</title><desc>${escaped(description)}</desc><style>${styleOf({ low, high }, drawing)}</style>${inside}</svg>\n`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
