// What is new at the exercises since the sheet before: new ones, sides, how much, where they are done.
import type { MatchedPlan } from '../../diff/match.ts';
import type { Level } from '../../model/exercise.ts';
import type { Item } from '../../model/plan.ts';
import { closed, numberText } from '../words/amounts.ts';
import { doseSentence } from '../words/dose-sentence.ts';
import { scheduleText } from '../words/schedule-words.ts';
import { lanesOf } from '../words/side-words.ts';
import { sessionName } from './days-view.ts';
import type { Slot } from './exercise-slots.ts';
import { exerciseName } from './exercise-view.ts';
import type { NewsInput } from './news-input.ts';

export interface ExerciseNews {
  readonly kind: 'new' | 'changed';
  readonly number: number;
  readonly text: string;
}

/** What an item goes on from: an item of the old version, or one side of it. */
export interface Forebear {
  readonly item: Item;
  readonly side: 'left' | 'right' | null;
}

export function forebears({ items, splits }: MatchedPlan): (item: Item) => readonly Forebear[] {
  const pairs: (readonly [Item, Forebear])[] = [
    ...items.pairs.map(
      ({ before, after }) => [after.item, { item: before.item, side: null }] as const,
    ),
    ...splits.flatMap(({ whole, left, right, isJoined }) =>
      (['left', 'right'] as const).map((side) => {
        const half = side === 'left' ? left : right;
        return isJoined
          ? ([whole.item, { item: half.item, side: null }] as const)
          : ([half.item, { item: whole.item, side }] as const);
      }),
    ),
  ];
  return (item) => pairs.flatMap(([now, old]) => (now === item ? [old] : []));
}

/** One line for each thing that is new at an exercise. */
export function exerciseNews(
  input: NewsInput,
  before: readonly Slot[],
  matched: MatchedPlan,
): readonly ExerciseNews[] {
  const from = forebears(matched);
  return input.slots.flatMap((slot) => {
    const number = input.numbering.bySlot.get(slot.id);
    if (number === undefined) return [];
    const found = from(slot.item.item).flatMap(({ item, side }) => {
      const old = before.find((one) => one.item.item === item);
      return old ? [{ old, side }] : [];
    });
    return linesOf(input, { slot, number, ...found[0] }, matched);
  });
}

interface Compared {
  readonly slot: Slot;
  readonly number: number;
  readonly old?: Slot;
  /** The side of the old one that this one goes on from; null or left out for all of it. */
  readonly side?: 'left' | 'right' | null;
}

function linesOf(
  { words, numbers, shown, last }: NewsInput,
  { slot, number, old, side = null }: Compared,
  { sessions }: MatchedPlan,
): readonly ExerciseNews[] {
  const name = exerciseName(words, slot.item.level);
  const say = (kind: ExerciseNews['kind'], key: string, values: Record<string, string> = {}) => ({
    kind,
    number,
    text: words.say(`news.${key}`, { number: numberText(words, number), name, ...values }),
  });
  if (!old) return [say('new', 'new')];
  if (old.item.item.exercise.id !== slot.item.item.exercise.id)
    return [say('new', 'swapped', { old: exerciseName(words, old.item.level) })];
  const isHere = sessions.pairs.some(
    ({ before, after }) => before === old.session.session && after === slot.session.session,
  );
  const { schedule, timesADay } = slot.session;
  const { starts } = numbers.plan;
  const days = scheduleText(words, { schedule, timesADay, starts, from: shown.from });
  const moved = isHere
    ? []
    : [
        say('changed', 'moved', {
          session: sessionName(words, numbers.plan, slot.session),
          days: closed(words, days),
        }),
      ];
  if (old.item.level.id !== slot.item.level.id) return [say('changed', 'level'), ...moved];
  const sides = (one: Slot) =>
    lanesOf(one.item, words)
      .map((lane) => lane.side)
      .join();
  const isOtherSide = sides(old) !== sides(slot);
  const oldDose = side === null ? old.dose : doseOfSide(old, side, words, last);
  const key = side === null ? 'side' : 'half';
  return [
    // A side comes first, and always in a sentence of its own.
    ...(isOtherSide ? [say('changed', key, { dose: slot.dose })] : []),
    ...(oldDose === slot.dose || (isOtherSide && side === null)
      ? []
      : [say('changed', 'dose', { before: oldDose })]),
    ...moved,
    ...(old.note === slot.note && isSameWay(old.item.level, slot.item.level)
      ? []
      : [say('changed', 'how')]),
  ];
}

/** How much the old one asked of one side. */
function doseOfSide(
  { item, part }: Slot,
  side: 'left' | 'right',
  words: NewsInput['words'],
  { numbers }: NewsInput['last'],
): string {
  const other = side === 'left' ? 'right' : 'left';
  return doseSentence({
    item: { ...item, [other]: null },
    isCircuit: part.rounds !== null,
    words,
    oneRepMax: numbers.plan.oneRepMax.get(item.item.exercise.id) ?? null,
  });
}

/** Whether a level is done and shown as it was. */
function isSameWay(before: Level, after: Level): boolean {
  const shown = ({ setup, steps, feel, avoid, easier, harder, picture, link }: Level) =>
    JSON.stringify([setup, steps, feel, avoid, easier, harder, picture?.file, link]);
  return shown(before) === shown(after);
}
