// What is known while the weeks after the one shown go by: which number stands in which slot, and the
// lines said so far. The steps themselves are in growth-steps.
import type { PlanNumbers, WeekNumbers } from '../../compute/numbers.ts';
import type { Practice } from '../../model/practice.ts';
import { sentencesText } from '../words/amounts.ts';
import type { Condition } from '../words/condition-words.ts';
import { dayText } from '../words/date-words.ts';
import type { Words } from '../words/words.ts';
import { changedDose } from './changed-dose.ts';
import type { Numbering, Slot } from './exercise-slots.ts';
import type { LineView } from './sheet-view.ts';
import { firstDayOf } from './shown-week.ts';

/** A line under an exercise's number, and the slots that it is for. */
export interface StepLine extends LineView {
  readonly week: number;
  readonly slots: Slot[];
  /** Whether where it stands in its session is to be told. */
  readonly isPlaced: boolean;
}

/** An exercise, or a level of one, that the week shown does not have yet. */
export interface LaterExercise {
  readonly number: number;
  readonly week: number;
  readonly slot: Slot;
  readonly condition: Condition;
  /** The number whose place it takes; null for one that is added. */
  readonly replaces: number | null;
  /** Where it stands: every slot that it fills. */
  readonly places: { readonly slot: Slot; readonly isNewSession: boolean }[];
}

export interface GrowthSteps {
  readonly lines: ReadonlyMap<number, readonly StepLine[]>;
  /** Lines of easy weeks, by number. */
  readonly easy: ReadonlyMap<number, readonly StepLine[]>;
  readonly later: readonly LaterExercise[];
  /** The slots that ever stood under a number. */
  readonly carriers: ReadonlyMap<number, readonly Slot[]>;
  /** Number of a slot in a week; what stood there last where it is absent. */
  readonly numberIn: (slotId: string, week: number) => number | undefined;
  /** The places of a session in a week in the order done, each with the numbers that she may be at. */
  readonly orderIn: (session: string, week: number) => readonly (readonly number[])[];
}

export interface GrowthInput {
  readonly words: Words;
  readonly practice: Practice;
  readonly numbers: PlanNumbers;
  readonly shown: WeekNumbers;
  readonly later: readonly WeekNumbers[];
  readonly slotsByWeek: ReadonlyMap<number, readonly Slot[]>;
  readonly numbering: Numbering;
}

/** A level of a slot that she may be at: the next one may have to wait for its rule. */
export interface Stage {
  readonly number: number;
  /** As it last was outside an easy week; as in the easy week where it began in one. */
  last: Slot;
  isFromEasyWeek: boolean;
}

/** What is known of a slot while the weeks go by. */
export interface Track {
  /** The furthest that the plan has come, and those before it that she may still be at. */
  readonly now: Stage;
  readonly behind: readonly Stage[];
  readonly numberByLevel: Map<string, number>;
  isThere: boolean;
}

export interface Walk extends GrowthInput {
  readonly tracks: Map<string, Track>;
  readonly lines: Map<number, StepLine[]>;
  readonly easy: Map<number, StepLine[]>;
  readonly laterByKey: Map<string, LaterExercise>;
  readonly carriers: Map<number, Slot[]>;
  readonly numberAt: Map<string, number>;
  readonly orderAt: Map<string, readonly (readonly number[])[]>;
  lastNumber: number;
}

/** A session that was not there the week before tells its own exercises, with the days. */
export function isNewSession(walk: Walk, slot: Slot, week: number): boolean {
  return !slotsIn(walk, week - 1).some((one) => one.session.session.id === slot.session.session.id);
}

export function track(
  walk: Walk,
  slot: Slot,
  number: number,
  week: WeekNumbers,
  behind: readonly Stage[] = [],
): void {
  const numberByLevel = walk.tracks.get(slot.id)?.numberByLevel ?? new Map<string, number>();
  numberByLevel.set(slot.item.level.id, number);
  const now = { number, last: slot, isFromEasyWeek: week.isEasy };
  walk.tracks.set(slot.id, { now, behind, numberByLevel, isThere: true });
  walk.numberAt.set(`${slot.id} ${week.week}`, number);
  const carriers = walk.carriers.get(number) ?? [];
  if (!carriers.some(({ id }) => id === slot.id)) carriers.push(slot);
  walk.carriers.set(number, carriers);
}

export interface Said {
  readonly lead: string;
  readonly text: string;
  readonly isPlaced?: boolean;
}

/** Puts a line under a number, once for all slots of which it is said. */
export function say(
  lines: Map<number, StepLine[]>,
  number: number,
  week: number,
  slot: Slot,
  { lead, text, isPlaced = false }: Said,
): void {
  const known = lines.get(number) ?? [];
  lines.set(number, known);
  const same = known.find((one) => one.week === week && one.lead === lead && one.text === text);
  if (same) same.slots.push(slot);
  else known.push({ week, lead, text, isPlaced, slots: [slot] });
}

/** The dose, and the note where it is a new one; in full where there is no dose before it to go by. */
export function said({ words, numbers }: Walk, slot: Slot, before: Slot | null): string {
  const dose = before ? changedDose(words, numbers.plan, before, slot) : slot.dose;
  if (slot.note === null || slot.note === before?.note) return dose;
  return slot.dose === before?.dose ? slot.note : sentencesText(words, [dose, slot.note]);
}

/** "From Wednesday 2 December:", with what more must be so than the section's lead says. */
export function lineLead(walk: Walk, week: number, condition: Condition, less: string): string {
  const lead = walk.words.say('growth.from', { date: day(walk, week) });
  if (condition.kind === 'went-well') return walk.words.say('growth.line', { lead });
  const text = condition.kind === 'always' ? walk.words.say(less) : condition.text;
  return walk.words.say('growth.line-if', { lead, condition: text });
}

function day(walk: Walk, week: number): string {
  return dayText(walk.words, firstDayOf(walk.numbers.plan, week));
}

export function slotsIn(walk: Walk, week: number): readonly Slot[] {
  return walk.slotsByWeek.get(week) ?? [];
}
