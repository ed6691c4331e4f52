// A figure in words, for a person who cannot see it and for the line beneath it: the position, the
// joints that move with from and to, and which side is shown.

import type { Hand, SettledFigure } from '../../figure/figure.ts';
import { angleIn } from '../../figure/figure.ts';
import type { Level } from '../../model/exercise.ts';
import type { AngleName, Figure, LimbAngle, LimbPose } from '../../model/figure.ts';
import { LIMB_ANGLES, MIDDLE_ANGLES } from '../../model/figure.ts';
import { closed } from './amounts.ts';
import { raised, type Words } from './words.ts';

export type FigureSide = 'left' | 'right' | null;

export interface FigureText {
  /** "Heel raise. Stand. Both ankles, foot up: from 0 to -30 degrees." */
  readonly alt: string;
  /** "Shown with the left leg. Then the same with the right leg." Null where nothing is to be said. */
  readonly caption: string | null;
}

interface Subject {
  readonly level: Level;
  readonly name: string;
  readonly figure: Figure;
  readonly settled: SettledFigure;
  /** Sides in the order done; none where no side is named. */
  readonly sides: readonly ('left' | 'right')[];
  readonly isHeld: boolean;
}

export function figureText(words: Words, subject: Subject): FigureText {
  const { level, name, sides, isHeld } = subject;
  const position = words.look('positions', level.position);
  const moves = movesText(words, subject);
  const told = {
    name: name.replace(/[.:]$/, ''),
    position: position === null ? level.position : raised(position),
  };
  const alt =
    moves === ''
      ? words.say('figure.alt-still', told)
      : words.say('figure.alt', { ...told, moves });
  const caption = [sideText(words, level, sides), isHeld ? words.say('figure.hold') : null]
    .filter((one) => one !== null)
    .join(' ');
  return { alt: closed(words, alt), caption: caption === '' ? null : caption };
}

function sideText(
  words: Words,
  level: Level,
  [first, second]: readonly ('left' | 'right')[],
): string | null {
  if (first === undefined) return null;
  const limb = level.limb ?? 'side';
  const side = words.say(`sides.${limb}.${first}.with`);
  if (second === undefined) return words.say('figure.shown-only', { side });
  return words.say('figure.then', { side, other: words.say(`sides.${limb}.${second}.with`) });
}

/** The joints that the figure itself moves; those that only follow are not told. */
function movesText(words: Words, { figure, level, settled, sides }: Subject): string {
  const { end } = settled;
  if (!figure.end || !end) return '';
  const shown = sides[0] ?? null;
  const sideOf = (hand: Hand) => {
    if (level.sides !== 'each') return hand === 'right' ? 'right' : 'left';
    return (hand === 'right') === (shown === 'right') ? 'right' : 'left';
  };
  const said: string[] = [];
  const tell = (angle: AngleName, hand: Hand, side: string) => {
    const [from, to] = [angleIn(settled.start, angle, hand), angleIn(end, angle, hand)];
    if (from === to) return;
    const joint = words.say(`figure.joints.${angle}`, { side });
    said.push(words.say('figure.move', { joint, from, to }));
  };
  for (const angle of LIMB_ANGLES) {
    const own = isTyped(figure.end.limb, angle);
    const far = isTyped(figure.end.other, angle);
    if (own && level.sides !== 'each' && !far) tell(angle, 'right', 'both');
    else {
      if (own) tell(angle, 'right', sideOf('right'));
      if (far) tell(angle, 'left', sideOf('left'));
    }
  }
  const way = level.sides === 'each' ? (shown ?? 'right') : 'right';
  for (const angle of MIDDLE_ANGLES)
    if (figure.end.middle[angle] !== undefined) tell(angle, 'right', way);
  return said.join(' ');
}

function isTyped(limb: LimbPose, angle: LimbAngle): boolean {
  return limb.angles[angle] !== undefined;
}
