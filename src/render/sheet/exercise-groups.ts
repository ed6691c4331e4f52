// The list of exercises of the week shown, part by part, each number once: where it first stands.
import { togetherSentence } from '../words/dose-sentence.ts';
import type { Words } from '../words/words.ts';
import type { Numbering, Slot } from './exercise-slots.ts';
import { exerciseView } from './exercise-view.ts';
import type { ExerciseGroupView } from './sheet-view.ts';

export function exerciseGroups(
  words: Words,
  slots: readonly Slot[],
  { bySlot }: Numbering,
): readonly ExerciseGroupView[] {
  const told = new Set<number>();
  const groups: ExerciseGroupView[] = [];
  for (const part of new Set(slots.map((slot) => slot.part))) {
    const own = slots.filter((slot) => slot.part === part);
    const numbers = own.map(({ id }) => bySlot.get(id) as number);
    const exercises = own.flatMap((slot, at) => {
      const number = numbers[at] as number;
      if (told.has(number)) return [];
      told.add(number);
      return [exerciseView(words, slot, number)];
    });
    if (exercises.length === 0) continue;
    const { name, rounds, restBetweenRoundsMs } = part;
    const together =
      rounds === null ? null : togetherSentence(words, numbers, rounds, restBetweenRoundsMs);
    groups.push({ heading: name, together, exercises });
  }
  return groups;
}
