// The page of `carryover figure`: every level's figure with its words, as large as it can be looked at
// and as small as it gets. For the practitioner at work; it is no handout.
import { gapSentences } from '../../check/pose-unreached.ts';
import { restingFigure } from '../../figure/figure.ts';
import type { Exercise, Level } from '../../model/exercise.ts';
import type { Words } from '../words/words.ts';
import { exerciseName } from './exercise-view.ts';
import { figureView } from './figure-view.ts';
import type { PictureView } from './sheet-view.ts';

export interface FiguresView {
  readonly language: string;
  readonly direction: 'ltr' | 'rtl';
  readonly title: string;
  readonly lead: string;
  readonly figures: readonly FigureOnPage[];
}

export interface FigureOnPage {
  /** `heel-raise.one-foot.left`: the file's name. */
  readonly id: string;
  readonly name: string;
  readonly drawing: PictureView;
  /** Said where the sheet shows a picture of the practice's own instead. */
  readonly note: string | null;
  /** What the body could not reach or rest on. */
  readonly lacks: readonly string[];
}

export function figuresView(words: Words, exercises: readonly Exercise[]): FiguresView {
  return {
    language: words.language,
    direction: words.direction,
    title: words.say('figure.page'),
    lead: words.say('figure.page-lead'),
    figures: exercises.flatMap(({ id, levels }) =>
      levels.flatMap((level) => figuresOf(words, id, level)),
    ),
  };
}

/** One figure, or where one side is done at a time one for each side. */
function figuresOf(words: Words, exercise: string, level: Level): readonly FigureOnPage[] {
  const ways = level.sides === 'each' ? (['left', 'right'] as const) : ([null] as const);
  return ways.flatMap((side) => {
    const name = exerciseName(words, level);
    const drawing = figureView(words, level, name, side === null ? [] : [side]);
    if (!drawing) return [];
    const id = [exercise, level.id, side].filter((one) => one !== null).join('.');
    const note = level.picture === null ? null : words.say('figure.page-picture');
    const settled = level.figure && restingFigure(level.figure, level);
    const gaps = [settled?.start, settled?.end].flatMap((pose) => pose?.shortfalls ?? []);
    const lacks = gapSentences(gaps);
    return [{ id, name, drawing, note, lacks }];
  });
}
