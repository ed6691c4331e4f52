// The list of exercises of the week shown, session by session and part by part, each number once:
// where it first stands.
import type { SessionWeek } from '../../compute/numbers.ts';
import type { Plan } from '../../model/plan.ts';
import type { PainRanges } from '../../model/practice.ts';
import type { Day } from '../../units/day.ts';
import { togetherSentence } from '../words/dose-sentence.ts';
import { scheduleText } from '../words/schedule-words.ts';
import type { Words } from '../words/words.ts';
import { sessionName } from './days-view.ts';
import type { Numbering, Slot } from './exercise-slots.ts';
import { exerciseView } from './exercise-view.ts';
import type { ExerciseGroupView, SessionExercisesView } from './sheet-view.ts';

export interface GroupsInput {
  readonly words: Words;
  readonly plan: Plan;
  readonly pain: PainRanges;
  readonly slots: readonly Slot[];
  readonly numbering: Numbering;
  readonly from: Day;
  /** What is new or changed since the sheet before, by number. */
  readonly marks: ReadonlyMap<number, 'new' | 'changed'>;
}

export function exerciseSessions(input: GroupsInput): readonly SessionExercisesView[] {
  const told = new Set<number>();
  const sessions = [...new Set(input.slots.map(({ session }) => session))];
  return sessions.flatMap((session) => {
    const own = input.slots.filter((slot) => slot.session === session);
    const groups = groupsOf(input, own, told);
    return groups.length === 0 ? [] : [{ heading: headingOf(input, session), groups }];
  });
}

/** "Strong legs: on Monday and Thursday". */
function headingOf({ words, plan, from }: GroupsInput, session: SessionWeek): string | null {
  if (plan.sessions.length === 1) return null;
  const { schedule, timesADay } = session;
  return words.say('sheet.exercises-of', {
    session: sessionName(words, plan, session),
    schedule: scheduleText(words, { schedule, timesADay, starts: plan.starts, from }),
  });
}

function groupsOf(
  input: GroupsInput,
  slots: readonly Slot[],
  told: Set<number>,
): readonly ExerciseGroupView[] {
  const { words, pain, numbering, marks } = input;
  const groups: ExerciseGroupView[] = [];
  for (const part of new Set(slots.map((slot) => slot.part))) {
    const own = slots.filter((slot) => slot.part === part);
    const numbers = own.map(({ id }) => numbering.bySlot.get(id) as number);
    const exercises = own.flatMap((slot, at) => {
      const number = numbers[at] as number;
      if (told.has(number)) return [];
      told.add(number);
      const view = exerciseView(words, slot, number, pain, otherSessions(input, slot, number));
      const mark = marks.get(number);
      return [{ ...view, mark: mark ? words.say(`news.mark-${mark}`) : null }];
    });
    if (exercises.length === 0) continue;
    const { name, rounds, restBetweenRoundsMs } = part;
    const together =
      rounds === null ? null : togetherSentence(words, numbers, rounds, restBetweenRoundsMs);
    groups.push({ heading: name, together, exercises });
  }
  return groups;
}

function otherSessions(
  { words, plan, slots, numbering }: GroupsInput,
  { session }: Slot,
  number: number,
): readonly string[] {
  const others = slots.filter(
    (slot) => slot.session !== session && numbering.bySlot.get(slot.id) === number,
  );
  return [...new Set(others.map((slot) => sessionName(words, plan, slot.session)))];
}
