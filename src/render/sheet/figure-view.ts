// The figure of a level as a picture of the sheet: drawn, with its words, for the side done first.
// A wrong side is the worst that a figure can say, so the side comes from the dose and nothing else.
import { figureSvg, restingFigure } from '../../figure/figure.ts';
import type { Level, Picture } from '../../model/exercise.ts';
import { figureText } from '../words/figure-words.ts';
import type { Words } from '../words/words.ts';
import type { PictureView } from './sheet-view.ts';

const HELD_PURPOSES: ReadonlySet<string> = new Set(['stretch', 'isometric', 'balance']);

/** `sides`: those that are done, in their order; none where the level has no left and right of its own. */
export function figureView(
  words: Words,
  level: Level,
  name: string,
  sides: readonly ('left' | 'right')[],
): PictureView | null {
  const { figure } = level;
  const settled = figure && restingFigure(figure, level);
  if (!figure || !settled) return null;
  const isHeld = figure.end === null && isHeldStill(level);
  const { alt, caption } = figureText(words, { level, name, figure, settled, sides, isHeld });
  // A figure is drawn with the worked limb on the right: on the left it is its mirror image. Nothing
  // else turns it round, not even a page that reads from right to left: the words tell of its sides.
  const isMirrored = level.sides === 'each' && sides[0] === 'left';
  const picture = drawnOnce(level, JSON.stringify([isMirrored, isHeld, name, alt]), () =>
    figureSvg({
      figure,
      settled,
      sides: level.sides,
      isMirrored,
      isHeld,
      title: name,
      description: alt,
    }),
  );
  return { picture, alt, caption };
}

const drawn = new WeakMap<Level, Map<string, Picture>>();

/** Many sheets, and weeks of one, show the same drawing: it is made once, for all that it shows and says. */
function drawnOnce(level: Level, content: string, draw: () => string): Picture {
  const known = drawn.get(level) ?? new Map<string, Picture>();
  drawn.set(level, known);
  const there = known.get(content);
  if (there) return there;
  const bytes = new TextEncoder().encode(draw());
  const picture = { file: null, mediaType: 'image/svg+xml', bytes };
  known.set(content, picture);
  return picture;
}

/** Whether a position without movement is one to hold: walking is none. */
function isHeldStill({ purposes, exerciseDose, levelDose }: Level): boolean {
  const [main = ''] = purposes;
  const hasHold = [exerciseDose, levelDose].some((dose) => dose?.values.hold !== undefined);
  return hasHold || HELD_PURPOSES.has(main);
}
