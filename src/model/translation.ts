// The words of an exercise as its file, or a file beside it in another language, has them: which texts
// stand at the exercise itself, and which at a level. What a person reads of a level comes of both.
import type { Place, SourceText } from '../finding/place.ts';

export const TEXT_KEYS = ['name', 'setup', 'steps', 'feel', 'avoid', 'easier', 'harder'] as const;
export type TextKey = (typeof TEXT_KEYS)[number];

export interface KeyText {
  /** One, or the sentences of a list. */
  readonly lines: readonly string[];
  readonly place: Place;
}

/** The texts that stand in one group of keys. */
export interface GroupTexts {
  readonly texts: ReadonlyMap<TextKey, KeyText>;
  /** The start of the group: where what is missing in it is told of. */
  readonly start: Place;
}

export interface ExerciseTexts {
  readonly source: SourceText;
  readonly shared: GroupTexts;
  readonly levels: ReadonlyMap<string, GroupTexts>;
}

/** What a person reads of one level. */
export interface LevelTexts {
  readonly name: string | null;
  readonly exerciseName: string;
  readonly setup: readonly string[];
  readonly steps: readonly string[];
  readonly feel: string | null;
  readonly avoid: readonly string[];
  readonly easier: string | null;
  readonly harder: string | null;
}

/** A level's texts: its own, else those of the exercise; its name is added to the exercise's. */
export function levelTexts({ shared, levels }: ExerciseTexts, level: string): LevelTexts {
  const own = levels.get(level)?.texts;
  const lines = (key: TextKey) => (own?.get(key) ?? shared.texts.get(key))?.lines ?? [];
  return {
    name: own?.get('name')?.lines[0] ?? null,
    exerciseName: shared.texts.get('name')?.lines[0] ?? '',
    setup: lines('setup'),
    steps: lines('steps'),
    feel: lines('feel')[0] ?? null,
    avoid: lines('avoid'),
    easier: lines('easier')[0] ?? null,
    harder: lines('harder')[0] ?? null,
  };
}
