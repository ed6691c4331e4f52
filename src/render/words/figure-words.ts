// A figure in words, for a person who cannot see it and for the line beneath it: the position, the
// joints that move with from and to, and which side is shown.
import type { Level } from '../../model/exercise.ts';
import { closed } from './amounts.ts';
import { type FigureMove, type FigureSubject, figureMoves } from './figure-moves.ts';
import { raised, type Words } from './words.ts';

export interface FigureText {
  /** "Heel raise. Stand. Both ankles, pointing the foot down: from 2 degrees up to 35 degrees." */
  readonly alt: string;
  /** "Shown with the left leg. Then the same with the right leg." Null where nothing is to be said. */
  readonly caption: string | null;
}

export function figureText(words: Words, subject: FigureSubject): FigureText {
  const { level, name, sides, isHeld } = subject;
  const position = words.look('positions', level.position);
  const moves = figureMoves(subject).map((move) => moveText(words, move));
  const told = {
    name: name.replace(/[.:]$/, ''),
    position: position === null ? level.position : raised(position),
  };
  const alt =
    moves.length === 0
      ? words.say('figure.alt-still', told)
      : words.say('figure.alt', { ...told, moves: moves.join(' ') });
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

const JOINTS: Readonly<Record<FigureMove['angle'], string>> = {
  hip_flexion: 'hip',
  hip_abduction: 'hip',
  hip_rotation: 'hip',
  knee_flexion: 'knee',
  ankle_dorsiflexion: 'ankle',
  foot_eversion: 'foot',
  shoulder_flexion: 'shoulder',
  shoulder_abduction: 'shoulder',
  shoulder_rotation: 'shoulder',
  elbow_flexion: 'elbow',
  wrist_flexion: 'wrist',
  shrug: 'shoulder-blade',
  shoulder_forward: 'shoulder-blade',
  trunk_flexion: 'back',
  trunk_side_bend: 'back',
  trunk_rotation: 'back',
  neck_flexion: 'neck',
  neck_side_bend: 'neck',
  neck_rotation: 'neck',
  chin_back: 'chin',
  lean: 'body',
};

/** "Left knee, straightening: from 90 to 5 degrees bent." An angle below zero has words of its own, and no sign. */
function moveText(words: Words, { angle, side, from, to }: FigureMove): string {
  const word = (half: number, what: 'out' | 'home' | 'at') =>
    words.say(`figure.motions.${angle}.${half < 0 ? 'below' : 'above'}.${what}`, { side });
  const joint = words.say(`figure.joints.${JOINTS[angle]}`, { side });
  const amounts = { joint, from: Math.abs(from), to: Math.abs(to) };
  if (from * to < 0)
    return words.say('figure.move-through', {
      ...amounts,
      motion: word(to, 'out'),
      at: word(from, 'at'),
    });
  if (Math.abs(to) > Math.abs(from))
    return words.say('figure.move-out', { ...amounts, motion: word(to, 'out') });
  return words.say('figure.move-home', {
    ...amounts,
    motion: word(from, 'home'),
    at: word(from, 'at'),
  });
}
