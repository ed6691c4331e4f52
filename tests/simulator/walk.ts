// Walks through a session as a person would, event by event, with every range at its low or at its
// high end. Every total of the simulator is a sum over these events; no formula stands anywhere.

import type { Track } from './climb.ts';
import type { Dose } from './merge.ts';
import { isList, repetition } from './merge.ts';
import type { ItemNow, Level } from './resolve.ts';
import type { Order } from './written.ts';

export type End = 0 | 1;

export interface Event {
  readonly kind:
    | 'set'
    | 'repetition'
    | 'pause'
    | 'change sides'
    | 'rest'
    | 'between items'
    | 'between rounds'
    | 'between parts';
  readonly ms: number;
  readonly track?: Track;
  /** The part of a repetition that counts as held. */
  readonly holdMs?: number;
  /** The item's place in its part; none for what lies between items. */
  readonly item?: number;
  /** The part's place in the session; none for what lies between parts. */
  readonly part?: number;
}

export interface PartNow {
  readonly items: readonly ItemNow[];
  /** How often the circuit is done; none where the part is no circuit. */
  readonly rounds: number | undefined;
  readonly betweenRounds: number;
  readonly betweenItems: number;
}

/** One side's sets with everything decided: so many repetitions in each, so long. */
interface SideNow {
  readonly track: Track;
  readonly sets: readonly number[];
  readonly repetition: number;
  readonly hold: number;
}

const STILL = ['stretch', 'isometric', 'balance'];

function heldMs(dose: Dose, level: Level, end: End): number {
  if (dose.time) return STILL.includes(level.purpose) ? dose.time[end] : 0;
  return dose.hold?.[end] ?? 0;
}

function decide(track: Track, dose: Dose, level: Level, end: End, circuit: boolean): SideNow {
  const { reps } = dose;
  const count = circuit ? 1 : (dose.sets?.[end] ?? 1);
  const sets = isList(reps)
    ? reps.map((range) => range[end])
    : Array.from({ length: count }, () => (reps as readonly number[] | undefined)?.[end] ?? 1);
  return { track, sets, repetition: repetition(dose)[end], hold: heldMs(dose, level, end) };
}

interface Doing {
  readonly sides: readonly SideNow[];
  readonly order: Order;
  readonly pause: number;
  readonly rest: number;
  readonly change: number;
}

function doing(item: ItemNow, end: End, change: number, circuit: boolean): Doing {
  const tracks = Object.entries(item.doses) as [Track, Dose][];
  const any = tracks[0]?.[1];
  return {
    sides: tracks.map(([track, dose]) => decide(track, dose, item.level, end, circuit)),
    order: item.order,
    pause: any?.pause?.[end] ?? 0,
    rest: any?.rest?.[end] ?? 0,
    change,
  };
}

const once = (side: SideNow): Event => ({
  kind: 'repetition',
  ms: side.repetition,
  holdMs: side.hold,
  track: side.track,
});

function* turn(side: SideNow, set: number, pause: number): Generator<Event> {
  yield { kind: 'set', ms: 0, track: side.track };
  for (let rep = 0; rep < (side.sets[set] ?? 0); rep += 1) {
    if (rep > 0) yield { kind: 'pause', ms: pause };
    yield once(side);
  }
}

/** Left, right, left, right …, and what one side has more of at the end. */
function* alternating(sides: readonly SideNow[], set: number, pause: number): Generator<Event> {
  for (const side of sides) yield { kind: 'set', ms: 0, track: side.track };
  const longest = Math.max(...sides.map((side) => side.sets[set] ?? 0));
  let first = true;
  for (let rep = 0; rep < longest; rep += 1) {
    for (const side of sides) {
      if (rep >= (side.sets[set] ?? 0)) continue;
      if (!first) yield { kind: 'pause', ms: pause };
      first = false;
      yield once(side);
    }
  }
}

/** The set of that place, of every side that has one; alone, as in a circuit, all-sets is each-set. */
function* oneSet(item: Doing, set: number): Generator<Event> {
  const sides = item.sides.filter((side) => set < side.sets.length);
  if (item.order === 'each-rep') {
    yield* alternating(sides, set, item.pause);
    return;
  }
  for (const [place, side] of sides.entries()) {
    if (place > 0) yield { kind: 'change sides', ms: item.change };
    yield* turn(side, set, item.pause);
  }
}

function* allSetsOf(item: Doing): Generator<Event> {
  const longest = Math.max(...item.sides.map((side) => side.sets.length));
  for (let set = 0; set < longest; set += 1) {
    if (set > 0) yield { kind: 'rest', ms: item.rest };
    yield* oneSet(item, set);
  }
}

function* wholeItem(item: Doing): Generator<Event> {
  if (item.order !== 'all-sets') {
    yield* allSetsOf(item);
    return;
  }
  for (const [place, side] of item.sides.entries()) {
    if (place > 0) yield { kind: 'change sides', ms: item.change };
    yield* allSetsOf({ ...item, sides: [side] });
  }
}

function* tagged(events: Generator<Event>, tag: Partial<Event>): Generator<Event> {
  for (const event of events) yield { ...event, ...tag };
}

/** One stretch of a session: its items one after the other, or round after round of a circuit. */
function* walkPart(part: PartNow, end: End, change: number): Generator<Event> {
  const circuit = part.rounds !== undefined;
  for (let round = 0; round < (part.rounds ?? 1); round += 1) {
    if (round > 0) yield { kind: 'between rounds', ms: part.betweenRounds };
    for (const [at, item] of part.items.entries()) {
      if (at > 0) yield { kind: 'between items', ms: part.betweenItems };
      const now = doing(item, end, change, circuit);
      yield* tagged(circuit ? oneSet(now, 0) : wholeItem(now), { item: at });
    }
  }
}

/** A whole session, from the first repetition to the last. */
export function* walkSession(
  parts: readonly PartNow[],
  betweenParts: number,
  end: End,
  change: number,
): Generator<Event> {
  for (const [at, part] of parts.entries()) {
    if (at > 0) yield { kind: 'between parts', ms: betweenParts };
    yield* tagged(walkPart(part, end, change), { part: at });
  }
}
