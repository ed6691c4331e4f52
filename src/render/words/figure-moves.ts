// Which joints of a figure are told of, from where to where: those that its end gives; where it gives
// none that moves, those that follow most.
import { angleIn, type Hand, leanIn, type SettledFigure } from '../../figure/figure.ts';
import type { Level } from '../../model/exercise.ts';
import {
  type AngleName,
  type Figure,
  LIMB_ANGLES,
  type LimbAngle,
  MIDDLE_ANGLES,
} from '../../model/figure.ts';

export interface FigureSubject {
  readonly level: Level;
  readonly name: string;
  readonly figure: Figure;
  readonly settled: SettledFigure;
  /** Sides in the order done; none where no side is named. */
  readonly sides: readonly ('left' | 'right')[];
  readonly isHeld: boolean;
}

export interface FigureMove {
  readonly angle: AngleName | 'lean';
  /** Whose joint; of the trunk and the head, the side that turns and bends above zero are to. */
  readonly side: 'left' | 'right' | 'both';
  /** Whole degrees. */
  readonly from: number;
  readonly to: number;
}

/** By how many degrees a joint has to follow to be told of. Common practice, no source. */
const FOLLOWS = 15;

export function figureMoves(subject: FigureSubject): readonly FigureMove[] {
  const { end } = subject.figure;
  if (!end) return [];
  const given = [
    ...limbMoves(subject, (hand, angle) => isGiven(subject, hand, angle)),
    ...MIDDLE_ANGLES.filter((angle) => end.middle[angle] !== undefined).map((angle) =>
      moveOf(subject, angle, 'right', middleSide(subject)),
    ),
    ...(end.lean === null ? [] : [leanMove(subject)]),
  ].filter(({ from, to }) => from !== to);
  if (given.length > 0) return given;
  return limbMoves(subject, () => true).filter(({ from, to }) => Math.abs(to - from) >= FOLLOWS);
}

function isGiven({ figure, level }: FigureSubject, hand: Hand, angle: LimbAngle): boolean {
  const { limb, other } = figure.end ?? figure.start;
  const isWorked = hand === 'right' || level.sides !== 'each';
  return (
    (isWorked && limb.angles[angle] !== undefined) ||
    (hand === 'left' && other.angles[angle] !== undefined)
  );
}

/** The moves of both limbs; where both do the same, as one. */
function limbMoves(
  subject: FigureSubject,
  isTold: (hand: Hand, angle: LimbAngle) => boolean,
): readonly FigureMove[] {
  return LIMB_ANGLES.flatMap((angle) => {
    const [right, left] = (['right', 'left'] as const).map((hand) =>
      isTold(hand, angle) ? moveOf(subject, angle, hand, sideOf(subject, hand)) : null,
    );
    if (right && left && right.from === left.from && right.to === left.to)
      return [{ ...right, side: 'both' as const }];
    return [right, left].flatMap((one) => one ?? []);
  });
}

function moveOf(
  { settled }: FigureSubject,
  angle: AngleName,
  hand: Hand,
  side: FigureMove['side'],
): FigureMove {
  const { start, end } = settled;
  const from = angleIn(start, angle, hand);
  return { angle, side, from, to: end ? angleIn(end, angle, hand) : from };
}

function leanMove({ settled: { start, end } }: FigureSubject): FigureMove {
  const from = leanIn(start);
  return { angle: 'lean', side: 'both', from, to: end ? leanIn(end) : from };
}

/** The worked limb is the right one of the figure's own frame; shown on the left, all is mirrored. */
function sideOf({ level, sides }: FigureSubject, hand: Hand): 'left' | 'right' {
  if (level.sides !== 'each' || sides[0] !== 'left') return hand;
  return hand === 'right' ? 'left' : 'right';
}

function middleSide(subject: FigureSubject): 'left' | 'right' {
  return sideOf(subject, 'right');
}
