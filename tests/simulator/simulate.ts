// Adds up the walked events into the shape of `data` of `carryover show <plan> --format json`.
// It is the second, blind reading of the contract's section 5; agreement.test.ts holds the two
// together. The short day is left null: the generated plans ask for none.

import type { Track, Tracks } from './climb.ts';
import { isEasy } from './easing.ts';
import type { Fraction } from './fraction.ts';
import { fraction, plus, times, toNumber, whole, ZERO } from './fraction.ts';
import type { ItemThere, PartThere, SessionThere } from './in-force.ts';
import { sessionsIn } from './in-force.ts';
import type { Dose } from './merge.ts';
import { isList } from './merge.ts';
import type { Range } from './quantities.ts';
import { kilograms, ONE } from './quantities.ts';
import { frameOf } from './resolve.ts';
import type { End, Event } from './walk.ts';
import { walkSession } from './walk.ts';
import type { Case, WrittenExercise, WrittenPlan, WrittenPractice } from './written.ts';

type Interval = [number, number];
type Side = 'left' | 'right' | 'middle';
const SIDES: readonly Side[] = ['left', 'right', 'middle'];

/** What one side has done, at one end of the ranges; times in milliseconds. */
interface Tally {
  sets: number;
  reps: number;
  hold: number;
  work: number;
  kg: Fraction;
}

const empty = (): Tally => ({ sets: 0, reps: 0, hold: 0, work: 0, kg: ZERO });

function addTo(sum: Tally, more: Tally, often: number): void {
  sum.sets += more.sets * often;
  sum.reps += more.reps * often;
  sum.hold += more.hold * often;
  sum.work += more.work * often;
  sum.kg = plus(sum.kg, times(more.kg, whole(often)));
}

type BySide = Partial<Record<Side, Tally>>;

/** One end of an item, part or session: how long, and what every side did. */
interface Walked {
  total: number;
  parts: { total: number; items: { total: number; sides: BySide }[] }[];
}

function creditsOf(track: Track): Side[] {
  return track === 'both' ? ['left', 'right'] : [track];
}

function tallyOf(events: readonly Event[], item: ItemThere, end: End, oneRep?: string): BySide {
  const sides: BySide = {};
  for (const [track, dose] of Object.entries(item.doses) as [Track, Dose][]) {
    const own = events.filter((event) => event.track === track);
    const done = own.filter(({ kind }) => kind === 'repetition');
    const each = dose.load ? kilograms(dose.load, end, oneRep) : ZERO;
    const share = track === 'both' ? fraction(1n, 2n) : fraction(1n);
    for (const side of creditsOf(track)) {
      sides[side] = {
        sets: own.filter(({ kind }) => kind === 'set').length,
        reps: done.length,
        hold: done.reduce((sum, { holdMs }) => sum + (holdMs ?? 0), 0),
        work: done.reduce((sum, { ms }) => sum + ms, 0),
        kg: times(times(each, share), whole(done.length)),
      };
    }
  }
  return sides;
}

const lasting = (events: readonly Event[]): number => events.reduce((sum, { ms }) => sum + ms, 0);

function walked(session: SessionThere, end: End, change: number, plan: WrittenPlan): Walked {
  const events = [...walkSession(session.parts, session.betweenParts, end, change)];
  return {
    total: lasting(events),
    parts: session.parts.map((part, at) => {
      const ofPart = events.filter((event) => event.part === at);
      return {
        total: lasting(ofPart),
        items: part.items.map((item, place) => {
          const ofItem = ofPart.filter((event) => event.item === place);
          const sides = tallyOf(ofItem, item, end, plan.one_rep_max?.[item.do]);
          return { total: lasting(ofItem), sides };
        }),
      };
    }),
  };
}

const seconds = (range: Range | Interval): Interval => [range[0] / 1000, range[1] / 1000];
const copy = (range: Range): Interval => [range[0], range[1]];

function volumes(low: Tally, high: Tally) {
  return {
    sets: [low.sets, high.sets],
    reps: [low.reps, high.reps],
    hold_seconds: seconds([low.hold, high.hold]),
    work_seconds: seconds([low.work, high.work]),
    volume_kg: [toNumber(low.kg), toNumber(high.kg)],
  };
}

function doseShown(dose: Dose, circuit: boolean): Record<string, unknown> {
  const shown: Record<string, unknown> = {
    reps: isList(dose.reps) ? dose.reps.map(copy) : copy((dose.reps as Range) ?? ONE),
  };
  if (!circuit) shown.sets = copy(dose.sets ?? ONE);
  for (const key of ['hold', 'move', 'time', 'pause', 'rest'] as const) {
    const range = dose[key];
    if (range && !(circuit && key === 'rest')) shown[key] = seconds(range);
  }
  if (dose.effort) shown.effort = copy(dose.effort);
  if (dose.tempo !== undefined) shown.tempo = dose.tempo;
  if (dose.load) shown.load = dose.load.text;
  return shown;
}

function doseOf(doses: Tracks, side: Side): Dose | undefined {
  return doses[side] ?? (side === 'middle' ? undefined : doses.both);
}

function itemShown(item: ItemThere, part: PartThere, ends: Walked[], at: number, place: number) {
  const [low, high] = ends.map((end) => end.parts[at]?.items[place]);
  const shown = (side: Side) => {
    const dose = doseOf(item.doses, side);
    const least = low?.sides[side];
    const most = high?.sides[side];
    if (!dose || !least || !most) return null;
    return { ...volumes(least, most), dose: doseShown(dose, part.rounds !== undefined) };
  };
  return {
    as: item.as,
    do: item.do,
    level: item.level.id,
    sides: item.level.sides,
    seconds: seconds([low?.total ?? 0, high?.total ?? 0]),
    left: shown('left'),
    right: shown('right'),
    middle: shown('middle'),
  };
}

/** A week's sums while they grow: for both ends, by side, by muscle, and of strength alone. */
interface WeekSums {
  total: Interval;
  sides: Record<Side, [Tally, Tally]>;
  muscles: Record<string, Record<Side, Interval>>;
  strength: Interval;
}

function addMuscles(sums: WeekSums, item: ItemThere, sides: BySide, end: End, often: number) {
  const { prime = [], assist = [] } = item.level.muscles;
  for (const muscle of [...prime, ...assist]) {
    sums.muscles[muscle] ??= { left: [0, 0], right: [0, 0], middle: [0, 0] };
    for (const side of SIDES) {
      const sets = (sides[side]?.sets ?? 0) * often;
      sums.muscles[muscle][side][end] += prime.includes(muscle) ? sets : sets / 2;
    }
  }
}

function addSession(sums: WeekSums, session: SessionThere, end: End, done: Walked): void {
  const often = session.perWeek[end];
  sums.total[end] += done.total * often;
  for (const [at, part] of session.parts.entries()) {
    for (const [place, item] of part.items.entries()) {
      const sides = done.parts[at]?.items[place]?.sides ?? {};
      for (const side of SIDES) addTo(sums.sides[side][end], sides[side] ?? empty(), often);
      addMuscles(sums, item, sides, end, often);
      if (!['strength', 'isometric'].includes(item.level.purpose)) continue;
      for (const side of SIDES) sums.strength[end] += (sides[side]?.work ?? 0) * often;
    }
  }
}

/** Now against then; nothing where there is no then, or nothing was done. */
const grown = (now: number, then: number | undefined): number | null =>
  then ? (now - then) / then : null;

function sessionShown(session: SessionThere, ends: Walked[]) {
  const [low, high] = ends as [Walked, Walked];
  return {
    session: session.session,
    per_week: copy(session.perWeek),
    seconds: seconds([low.total, high.total]),
    short_day: null,
    parts: session.parts.map((part, at) => ({
      part: part.part,
      rounds: part.rounds ?? 1,
      seconds: seconds([low.parts[at]?.total ?? 0, high.parts[at]?.total ?? 0]),
      items: part.items.map((item, place) => itemShown(item, part, ends, at, place)),
    })),
  };
}

/** The numbers of a plan, week by week, as the contract's section 5 shows them. */
export function simulate(
  practice: WrittenPractice,
  exercises: WrittenExercise[],
  plan: WrittenPlan,
) {
  const all: Case = { practice, exercises, plan };
  const frame = frameOf(practice, plan);
  let before: { all: number; strength: number } | undefined;
  const weeks = Array.from({ length: plan.weeks }, (_, index) => {
    const week = index + 1;
    const easy = isEasy(plan.easy_weeks, week);
    const both = (): [Tally, Tally] => [empty(), empty()];
    const sums: WeekSums = {
      total: [0, 0],
      sides: { left: both(), right: both(), middle: both() },
      muscles: {},
      strength: [0, 0],
    };
    const sessions = sessionsIn(all, week, frame).map((session) => {
      const ends = ([0, 1] as const).map((end) => walked(session, end, frame.changeSides, plan));
      for (const end of [0, 1] as const) addSession(sums, session, end, ends[end] as Walked);
      return sessionShown(session, ends);
    });
    // Sums of both ends stand for midpoints: the half cancels out in the quotient.
    const now = {
      all: SIDES.flatMap((side) => sums.sides[side]).reduce((sum, { work }) => sum + work, 0),
      strength: sums.strength[0] + sums.strength[1],
    };
    const change = {
      all: grown(now.all, before?.all),
      strength: grown(now.strength, before?.strength),
    };
    if (!easy) before = now;
    return {
      week,
      easy,
      sessions,
      seconds: seconds(sums.total),
      left: volumes(...sums.sides.left),
      right: volumes(...sums.sides.right),
      middle: volumes(...sums.sides.middle),
      muscles: sums.muscles,
      change,
    };
  });
  return { plan: plan.plan, weeks };
}

export type Simulated = ReturnType<typeof simulate>;
