// One exercise as the sheet shows it: name, position, picture, how much, then how to do it.
import { type Level, levelIn } from '../../model/exercise.ts';
import type { PainRanges } from '../../model/practice.ts';
import { closed, commaText, rangeText } from '../words/amounts.ts';
import { raised, type Words } from '../words/words.ts';
import type { Slot } from './exercise-slots.ts';
import { figureView } from './figure-view.ts';
import type { ExerciseView, PictureView } from './sheet-view.ts';

/** "Heel raise: both feet". */
export function exerciseName(words: Words, level: Level): string {
  const { exerciseName: exercise, name } = levelIn(level, words.language);
  return name === null ? exercise : words.say('sheet.exercise-name', { exercise, level: name });
}

/** The practitioner's own picture, else the figure of the side that the dose names first, else none. */
function pictureView(words: Words, { item }: Slot, name: string): PictureView | null {
  const { level } = item;
  if (level.picture !== null) {
    return { picture: level.picture, alt: words.say('sheet.picture', { name }), caption: null };
  }
  const works = [item.left, item.right, item.middle];
  // A figure shows the whole way; one that goes further than this dose may is worse than none.
  if (works.some((work) => work?.dose.values.range)) return null;
  const sides = (['left', 'right'] as const).filter((side) => item[side] !== null);
  return figureView(words, level, name, item.sides === 'each' ? sides : []);
}

/** `alsoIn` are further sessions that have it. */
export function exerciseView(
  words: Words,
  slot: Slot,
  number: number,
  { carryOn }: PainRanges,
  alsoIn: readonly string[] = [],
): ExerciseView {
  const level = levelIn(slot.item.level, words.language);
  const name = exerciseName(words, level);
  const position = words.look('positions', level.position);
  const ended = (text: string) => closed(words, text);
  return {
    number,
    mark: null,
    name,
    position: position === null ? null : raised(ended(position)),
    picture: pictureView(words, slot, name),
    dose: slot.dose,
    note: slot.note,
    steps: [...level.setup, ...level.steps].map(ended),
    feel: level.feel === null ? null : words.say('sheet.feel', { feel: ended(level.feel) }),
    avoid: level.avoid.map(ended),
    easier: level.easier === null ? null : words.say('sheet.easier', { text: ended(level.easier) }),
    harder:
      level.harder === null
        ? null
        : words.say('sheet.harder', {
            text: ended(level.harder),
            pain: rangeText(words, carryOn),
          }),
    link:
      level.link === null
        ? null
        : {
            lead: words.say('sheet.link'),
            address: level.link,
            codeAlt: words.say('sheet.link-code'),
          },
    alsoIn:
      alsoIn.length === 0
        ? null
        : words.say('sheet.also-in', { sessions: commaText(words, alsoIn) }),
  };
}
