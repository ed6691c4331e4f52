// The finished drawing: things, the start as a dashed outline, the end solid, an arrow between
// them, or two bars where a position is held. No words are in it; they stand beside it.
import type { Figure } from '../model/figure.ts';
import type { Sides } from '../units/side.ts';
import { arrowOf } from './arrow.ts';
import { bodyParts, marksOf, type Part } from './body-parts.ts';
import { cameraOf } from './camera.ts';
import { bodyClass, PROP_CLASSES, styleOf, type Tone } from './drawing-style.ts';
import { type Dot, linePath, polygonPath, UNIT } from './path.ts';
import { type Box, boxAround, isInside, shownPoints } from './picture-frame.ts';
import type { PropPiece } from './prop-piece.ts';
import { propShapes } from './prop-shapes.ts';
import type { SettledFigure } from './settle.ts';
import type { Skeleton } from './skeleton.ts';
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

// Lengths in statures.
/** What moves by less is drawn once. */
const MOVED = 0.012;
const MARGIN = 0.035;
const AROUND = { whole: 0.07, closeUp: 0.09 } as const;
/** The size of an arrow in a close-up. */
const CLOSE_UP = 0.6;

/** The figure as an SVG of a few kilobytes. */
export function figureSvg(input: DrawingInput): string {
  const { figure, settled, sides } = input;
  const camera = cameraOf(figure.view, figure.tilt);
  const { start, end } = settled;
  const solid = bodyParts((end ?? start).body, camera);
  const ghost = end ? movedParts(start.body, end.body, bodyParts(start.body, camera)) : [];
  const props = propShapes(figure, settled, camera);
  const shown = [start, ...(end ? [end] : [])].flatMap(({ body }) =>
    shownPoints(body, figure.shown).map((at) => camera(at)),
  );
  const crop = figure.shown === 'whole' ? null : boxAround(shown, AROUND.closeUp);
  const isSeen = (dot: Dot) => crop === null || isInside(dot, crop);
  const size = crop ? CLOSE_UP : 1;
  const part = figure.arrow;
  const arrow = end ? arrowOf(settled.way, { camera, isSeen, size, part }) : null;
  const all = crop ?? boxAround([...shown, ...props.dots], AROUND.whole);
  const frame = boxAround([all.low, all.high, ...(arrow?.spots ?? [])], arrow ? MARGIN : 0.01);
  const layers = [
    floorPath(frame, figure),
    ...props.behind.map(propPath),
    ghost.length === 0 ? '' : ghostLayer(ghost),
    ...solid.map((part) => partPaths(part, toneOf(part, figure, sides))),
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

/** From the side the farther limbs are light; from elsewhere those that are not worked. */
function toneOf({ name }: Part, { view }: Figure, sides: Sides): Tone {
  const isFar = name === 'left arm' || name === 'left leg';
  return isFar && (view === 'side' || sides === 'each') ? 'far' : 'near';
}

function partPaths({ pieces }: Part, tone: Tone): string {
  return pieces
    .filter(({ path }) => path !== '')
    .map((piece) => `<path class="${bodyClass(piece.tone, tone)}" d="${piece.path}"/>`)
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
  return `<path class="${PROP_CLASSES[look]}" d="${path}"/>`;
}

/** The arrow, with a white rim under it. */
function arrowPaths(line: string, head: string): string {
  return `<path class="u" d="${line}"/><path class="v" d="${head}"/><path class="a" d="${line}"/><path class="i" d="${head}"/>`;
}

/** Two bars in the corner. */
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

function floorPath({ low, high }: Box, { view, props }: Figure): string {
  if (view === 'above' || props.some(({ name }) => name === 'bed')) return '';
  const ends = [
    { x: low.x, y: 0.004 },
    { x: high.x, y: 0.004 },
  ];
  return `<path class="o" d="${linePath(ends)}"/>`;
}

function page(
  { isMirrored, title, description }: DrawingInput,
  { low, high }: Box,
  drawing: string,
): string {
  const n = (value: number) => String(Math.round(value * UNIT));
  const size = { x: high.x - low.x, y: high.y - low.y };
  const view = `${n(isMirrored ? -high.x : low.x)} ${n(low.y)} ${n(size.x)} ${n(size.y)}`;
  const inside = isMirrored ? `<g transform="scale(-1 1)">${drawing}</g>` : drawing;
  const style = styleOf(Math.max(size.x, size.y), drawing);
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${view}" role="img"><title>${escaped(title)}</title><desc>${escaped(description)}</desc><style>${style}</style>${inside}</svg>\n`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
