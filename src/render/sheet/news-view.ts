// What is new since the sheet that the person has: exercises that came, changed or went, days, and the
// rules of stopping. Held against what the old sheet asks for on the same day, so that a step which that
// sheet had announced is no news.

import type { PlanNumbers } from '../../compute/numbers.ts';
import { type MatchedPlan, matchPlans } from '../../diff/match.ts';
import type { Item } from '../../model/plan.ts';
import type { Practice } from '../../model/practice.ts';
import { weekOf } from '../../units/day.ts';
import { closed, numberText } from '../words/amounts.ts';
import { plainDayText } from '../words/date-words.ts';
import { scheduleText } from '../words/schedule-words.ts';
import { lanesOf } from '../words/side-words.ts';
import type { Words } from '../words/words.ts';
import { sessionName } from './days-view.ts';
import { type Numbering, type Slot, slotsOf } from './exercise-slots.ts';
import { exerciseName, exerciseView } from './exercise-view.ts';
import { painOf, safetyView } from './safety-view.ts';
import type { SentencesView } from './sheet-view.ts';
import type { Shown } from './shown-week.ts';

/** A version of the plan that a sheet was handed over of. */
export interface LastTime {
  readonly practice: Practice;
  readonly numbers: PlanNumbers;
}

export interface News {
  readonly view: SentencesView;
  /** By number: what stands at the exercise. */
  readonly marks: ReadonlyMap<number, 'new' | 'changed'>;
}

export interface NewsInput {
  readonly words: Words;
  readonly practice: Practice;
  readonly numbers: PlanNumbers;
  readonly shown: Shown;
  readonly slots: readonly Slot[];
  readonly numbering: Numbering;
  readonly last: LastTime;
}

type Line = { readonly kind: 'new' | 'changed'; readonly number: number; readonly text: string };

export function newsOf(input: NewsInput): News {
  const { words, numbers, slots, shown, last } = input;
  const before = oldSlots(input);
  const matched = matchPlans(last.numbers.plan, numbers.plan, new Map());
  const partner = partners(matched);
  const lines = slots.flatMap((slot) => lineOf(input, slot, before, partner));
  const gone = before.filter(
    ({ item: { item } }) =>
      !slots.some(
        (slot) =>
          partner(slot.item.item).includes(item) && slot.item.item.exercise.id === item.exercise.id,
      ),
  );
  const dropped = [...new Set(gone.map(({ item }) => exerciseName(words, item.level)))].filter(
    (name) => !slots.some(({ item }) => exerciseName(words, item.level) === name),
  );
  const sentences = [
    ...onceEach(lines),
    ...dropped.map((name) => words.say('news.gone', { name })),
    ...daySentences(input, matched),
    ...ruleSentences(input),
  ];
  const date = plainDayText(words, last.numbers.plan.visits.at(-1)?.date ?? shown.visit);
  return {
    view: {
      heading: words.say('news.heading'),
      sentences: [
        words.say('news.since', { date }),
        ...(sentences.length > 0 ? sentences : [words.say('news.nothing')]),
      ],
    },
    marks: marksOf(lines, slots, input.numbering),
  };
}

/** What the old version asks for on the first day of the new sheet; its last week, where that is over. */
function oldSlots({ words, shown, last: { numbers } }: NewsInput): readonly Slot[] {
  const { plan, weeks } = numbers;
  const at = Math.min(Math.max(weekOf(plan.starts, shown.from), 1), plan.weeks);
  const week = weeks.find((one) => one.week === at);
  return week ? slotsOf(week, plan, words) : [];
}

/** The items of the old version that an item of the new one goes on from. */
function partners({ items, splits }: MatchedPlan): (item: Item) => readonly Item[] {
  const pairs = [
    ...items.pairs.map(({ before, after }) => [before.item, after.item] as const),
    ...splits.flatMap(({ whole, left, right, isJoined }) =>
      [left, right].map((half) =>
        isJoined ? ([half.item, whole.item] as const) : ([whole.item, half.item] as const),
      ),
    ),
  ];
  return (item) => pairs.flatMap(([old, now]) => (now === item ? [old] : []));
}

function lineOf(
  { words, numbering, practice, numbers, last }: NewsInput,
  slot: Slot,
  before: readonly Slot[],
  partner: (item: Item) => readonly Item[],
): readonly Line[] {
  const number = numbering.bySlot.get(slot.id);
  if (number === undefined) return [];
  const old = before.find(({ item }) => partner(slot.item.item).includes(item.item));
  const name = exerciseName(words, slot.item.level);
  const say = (kind: Line['kind'], key: string): Line => ({
    kind,
    number,
    text: words.say(`news.${key}`, { number: numberText(words, number), name }),
  });
  if (!old || old.item.item.exercise.id !== slot.item.item.exercise.id) return [say('new', 'new')];
  if (old.item.level.id !== slot.item.level.id) return [say('changed', 'level')];
  const how = (one: Slot, { plan }: PlanNumbers, from: Practice) => {
    const { steps, avoid, picture, easier, harder, feel } = exerciseView(
      words,
      one,
      number,
      painOf(plan, from),
    );
    return JSON.stringify([
      steps,
      avoid,
      picture?.alt,
      easier,
      harder,
      feel,
      picture?.picture.file,
    ]);
  };
  const sides = (one: Slot) => JSON.stringify(lanesOf(one.item, words).map(({ side }) => side));
  return [
    // A side comes first, and always in a sentence of its own.
    ...(sides(old) === sides(slot) ? [] : [say('changed', 'side')]),
    ...(old.dose === slot.dose ? [] : [say('changed', 'dose')]),
    ...(old.note === slot.note &&
    how(old, last.numbers, last.practice) === how(slot, numbers, practice)
      ? []
      : [say('changed', 'how')]),
  ];
}

/** An exercise of two sessions is told of once. */
function onceEach(lines: readonly Line[]): readonly string[] {
  return [...new Set([...lines].sort((a, b) => a.number - b.number).map(({ text }) => text))];
}

/** New only where it is new wherever it stands. */
function marksOf(
  lines: readonly Line[],
  slots: readonly Slot[],
  { bySlot }: Numbering,
): ReadonlyMap<number, 'new' | 'changed'> {
  const marks = new Map<number, 'new' | 'changed'>();
  for (const { number } of lines) {
    const all = slots.filter(({ id }) => bySlot.get(id) === number).length;
    const fresh = lines.filter((one) => one.number === number && one.kind === 'new').length;
    marks.set(number, fresh === all ? 'new' : 'changed');
  }
  return marks;
}

function daySentences(
  { words, numbers, shown, last }: NewsInput,
  { sessions }: MatchedPlan,
): readonly string[] {
  const { plan } = numbers;
  const at = Math.min(
    Math.max(weekOf(last.numbers.plan.starts, shown.from), 1),
    last.numbers.plan.weeks,
  );
  const old = last.numbers.weeks.find((week) => week.week === at)?.sessions ?? [];
  const now = shown.week.sessions;
  const before = (id: string) => {
    const pair = sessions.pairs.find(({ after }) => after.id === id);
    return pair && old.find(({ session }) => session === pair.before);
  };
  const days = ({ schedule, timesADay }: (typeof now)[number], starts: string) =>
    scheduleText(words, { schedule, timesADay, starts, from: shown.from });
  const changed = now.flatMap((session) => {
    const was = before(session.session.id);
    const name = sessionName(words, plan, session);
    if (!was) return [words.say('news.session-new', { name })];
    const isSame = days(was, last.numbers.plan.starts) === days(session, plan.starts);
    return isSame
      ? []
      : [words.say('news.days', { name, days: closed(words, days(session, plan.starts)) })];
  });
  const gone = old.filter(
    ({ session }) => !now.some((one) => before(one.session.id)?.session === session),
  );
  return [
    ...changed,
    ...gone.map((session) =>
      words.say('news.session-gone', { name: sessionName(words, last.numbers.plan, session) }),
    ),
  ];
}

/** When to stop, whom to call, what to take care of. */
function ruleSentences({ words, practice, numbers: { plan }, last }: NewsInput): readonly string[] {
  const box = (one: NewsInput['numbers']['plan'], from: Practice) =>
    JSON.stringify(safetyView(words, one, from));
  const care = (precautions: readonly string[]) => JSON.stringify(precautions);
  const old = last.numbers.plan;
  return [
    ...(box(old, last.practice) === box(plan, practice) ? [] : [words.say('news.safety')]),
    ...(care(old.precautions) === care(plan.precautions) ? [] : [words.say('news.care')]),
  ];
}
