// The places that exercises have in a plan's sessions, week by week, each with its dose in words.
// A slot is known by session and item; what stands in it may change from week to week.
import type { ItemWeek, PartWeek, SessionWeek, WeekNumbers } from '../../compute/numbers.ts';
import type { Plan } from '../../model/plan.ts';
import { closed, sentencesText } from '../words/amounts.ts';
import { dosePieces, isOnceThrough } from '../words/dose-sentence.ts';
import type { Words } from '../words/words.ts';

export interface Slot {
  /** The same in every week. */
  readonly id: string;
  readonly session: SessionWeek;
  readonly part: PartWeek;
  readonly item: ItemWeek;
  readonly dose: string;
  /** The dose piece by piece: see `dosePieces`. */
  readonly pieces: readonly string[];
  /** Whether it is done once, and not in rounds; a circuit tells its rounds itself. */
  readonly isOneRound: boolean;
  readonly note: string | null;
  /** Equal for two slots that are to have one number: exercise, level, dose, side, note, circuit. */
  readonly identity: string;
}

/** All slots of a week in the order done. */
export function slotsOf(week: WeekNumbers, plan: Plan, words: Words): readonly Slot[] {
  return week.sessions.flatMap((session) =>
    session.parts.flatMap((part) => slotsOfPart(session, part, plan, words)),
  );
}

function slotsOfPart(
  session: SessionWeek,
  part: PartWeek,
  plan: Plan,
  words: Words,
): readonly Slot[] {
  const slots = part.items.map((item) => {
    const note = item.note === null ? null : closed(words, item.note);
    const id = `${session.session.id}/${item.item.id}`;
    const worded = wordedDose(words, plan, part, item);
    const identity = JSON.stringify([item.item.exercise.id, item.level.id, worded.dose, note]);
    return { id, session, part, item, note, identity, ...worded };
  });
  if (part.rounds === null) return slots;
  // "Exercises 1 and 2 go together" is one circuit's: its numbers are not lent to another.
  const circuit = JSON.stringify([
    part.rounds,
    part.restBetweenRoundsMs,
    slots.map((slot) => slot.identity),
  ]);
  return slots.map((slot) => ({ ...slot, identity: slot.identity + circuit }));
}

/** The dose of an item in words, whole and in pieces. */
export function wordedDose(
  words: Words,
  plan: Plan,
  part: PartWeek,
  item: ItemWeek,
): Pick<Slot, 'dose' | 'pieces' | 'isOneRound'> {
  const oneRepMax = plan.oneRepMax.get(item.item.exercise.id) ?? null;
  const isCircuit = part.rounds !== null;
  const pieces = dosePieces({ item, isCircuit, words, oneRepMax });
  const isOneRound = !isCircuit && isOnceThrough(item, words);
  return { pieces, dose: sentencesText(words, pieces), isOneRound };
}

/** Numbers by slot: the same exercise in two sessions has one. */
export interface Numbering {
  readonly bySlot: ReadonlyMap<string, number>;
  readonly last: number;
}

/**
 * The numbers of the week shown. Two slots of one session share a number only where they stay
 * equal in every later week (`future`), since a later line could not tell them apart.
 */
export function numbered(slots: readonly Slot[], future: (slot: Slot) => string): Numbering {
  const bySlot = new Map<string, number>();
  const given: { slot: Slot; number: number }[] = [];
  let last = 0;
  for (const slot of slots) {
    const alike = given.filter((one) => one.slot.identity === slot.identity);
    const shared = alike.find(({ number }) =>
      given.every(
        (one) =>
          one.number !== number ||
          one.slot.session.session.id !== slot.session.session.id ||
          future(one.slot) === future(slot),
      ),
    );
    const number = shared?.number ?? last + 1;
    last = Math.max(last, number);
    given.push({ slot, number });
    bySlot.set(slot.id, number);
  }
  return { bySlot, last };
}
