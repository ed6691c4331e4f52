// What is known while the weeks after the one shown go by: which number stands in which slot, and the
// lines said so far. The steps themselves are in growth-steps.
import type { PlanNumbers, WeekNumbers } from '../../compute/numbers.ts';
import { sentencesText } from '../words/amounts.ts';
import { dayText } from '../words/date-words.ts';
import type { Words } from '../words/words.ts';
import type { Numbering, Slot } from './exercise-slots.ts';
import { firstDayOf } from './shown-week.ts';

/** A line under an exercise's number, and the slots that it is for. */
export interface StepLine {
  readonly week: number;
  readonly text: string;
  readonly slots: Slot[];
}

/** An exercise, or a level of one, that the week shown does not have yet. */
export interface LaterExercise {
  readonly number: number;
  readonly week: number;
  readonly slot: Slot;
  readonly condition: string | null;
  /** The number whose place it takes; null for one that is added. */
  readonly replaces: number | null;
  /** Where it stands: every slot that it fills, each with the number before it. */
  readonly places: {
    readonly slot: Slot;
    readonly after: number | null;
    readonly isNewSession: boolean;
  }[];
}

export interface GrowthSteps {
  readonly lines: ReadonlyMap<number, readonly StepLine[]>;
  readonly later: readonly LaterExercise[];
  /** The slots that ever stood under a number. */
  readonly carriers: ReadonlyMap<number, readonly Slot[]>;
  /** Number of a slot in a week; what stood there last where it is absent. */
  readonly numberIn: (slotId: string, week: number) => number | undefined;
}

export interface GrowthInput {
  readonly words: Words;
  readonly numbers: PlanNumbers;
  readonly shown: WeekNumbers;
  readonly later: readonly WeekNumbers[];
  readonly slotsByWeek: ReadonlyMap<number, readonly Slot[]>;
  readonly numbering: Numbering;
  /** The year that goes without saying. */
  readonly year: string;
}

/** What is known of a slot while the weeks go by. */
export interface Track {
  number: number;
  numberByLevel: Map<string, number>;
  /** As it last was outside an easy week. */
  last: Slot;
  isThere: boolean;
  easyUntil: number;
}

export interface Walk extends GrowthInput {
  readonly tracks: Map<string, Track>;
  readonly lines: Map<number, StepLine[]>;
  readonly laterByKey: Map<string, LaterExercise>;
  readonly carriers: Map<number, Slot[]>;
  readonly numberAt: Map<string, number>;
  lastNumber: number;
}

/** A session that was not there the week before tells its own exercises, with the days. */
export function isNewSession(walk: Walk, slot: Slot, week: number): boolean {
  return !slotsIn(walk, week - 1).some((one) => one.session.session.id === slot.session.session.id);
}

export function track(walk: Walk, slot: Slot, number: number, week: number): void {
  const known = walk.tracks.get(slot.id);
  const numberByLevel = known?.numberByLevel ?? new Map<string, number>();
  numberByLevel.set(slot.item.level.id, number);
  walk.tracks.set(slot.id, { number, numberByLevel, last: slot, isThere: true, easyUntil: 0 });
  walk.numberAt.set(`${slot.id} ${week}`, number);
  const carriers = walk.carriers.get(number) ?? [];
  if (!carriers.some(({ id }) => id === slot.id)) carriers.push(slot);
  walk.carriers.set(number, carriers);
}

export function say(walk: Walk, number: number, week: number, slot: Slot, text: string): void {
  const lines = walk.lines.get(number) ?? [];
  walk.lines.set(number, lines);
  const same = lines.find((line) => line.week === week && line.text === text);
  if (same) same.slots.push(slot);
  else lines.push({ week, text, slots: [slot] });
}

/** The dose, and the note where it is a new one; in full where there is no dose before it to go by. */
export function said(words: Words, slot: Slot, before: Slot | null): string {
  const dose = before ? changedDose(words, before, slot) : slot.dose;
  if (slot.note === null || slot.note === before?.note) return dose;
  return slot.dose === before?.dose ? slot.note : `${dose} ${slot.note}`;
}

/** The turns of all sides, and what else differs; a tired person reads no sentence twice. */
function changedDose(words: Words, before: Slot, { pieces, dose }: Slot): string {
  // No word of rounds could pass for the rounds of before.
  const isOneRound = before.pieces.at(-1) !== '' && pieces.at(-1) === '';
  if (isOneRound) return sentencesText(words, [dose, words.say('growth.one-round')]);
  // Where something is not said any more, only the whole dose tells.
  if (before.pieces.some((one, at) => one !== '' && pieces[at] === '')) return dose;
  const changed = pieces.filter((one, at) => at === 0 || one !== before.pieces[at]);
  if (changed.length === pieces.filter((one) => one !== '').length) return dose;
  return sentencesText(words, [...changed, words.say('growth.rest-same')]);
}

export function dated(walk: Walk, week: number, condition: string | null, text: string): string {
  const from = walk.words.say('growth.from', { date: day(walk, week) });
  return condition === null
    ? walk.words.say('growth.dated', { from, text })
    : walk.words.say('growth.dated-if', { from, condition, text });
}

export function whenText(walk: Walk, week: number, condition: string): string {
  const from = walk.words.say('growth.from', { date: day(walk, week) });
  return walk.words.say('growth.when', { from, condition });
}

export function day(walk: Walk, week: number): string {
  return dayText(walk.words, firstDayOf(walk.numbers.plan, week), walk.year);
}

export function slotsIn(walk: Walk, week: number): readonly Slot[] {
  return walk.slotsByWeek.get(week) ?? [];
}

export function slotOf(walk: Walk, week: number, id: string): Slot | undefined {
  return slotsIn(walk, week).find((slot) => slot.id === id);
}
