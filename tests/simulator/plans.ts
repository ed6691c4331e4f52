// fast-check arbitraries for whole cases: a practice, its exercises and a plan that is valid by the
// contract. `cases(focus)` is what the properties draw from.

import fc from 'fast-check';
import type { Focus } from './doses.ts';
import { BANDS, gap } from './doses.ts';
import type { ItemIds, RawItem, RawWindow } from './items.ts';
import { rawItem, rawWindows, writeItem, writeWindows } from './items.ts';
import { exercises, maybe, only } from './library.ts';
import { frameOf } from './resolve.ts';
import type {
  Case,
  EasyWeeks,
  PartEntry,
  Schedule,
  SessionEntry,
  WrittenPart,
  WrittenPlan,
  WrittenSession,
} from './written.ts';

const NOTHING: Focus = {
  climbs: false,
  circuits: false,
  sides: false,
  entries: false,
  windows: false,
  easy: false,
  wholeSeconds: false,
};

/** A focus with the named things on and all others off. */
export const focusOn = (...names: (keyof Focus)[]): Focus => ({
  ...NOTHING,
  ...Object.fromEntries(names.map((name) => [name, true])),
});

export const EVERYTHING: Focus = focusOn(
  'climbs',
  'circuits',
  'sides',
  'entries',
  'windows',
  'easy',
);

const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

const schedule: fc.Arbitrary<Schedule> = fc.oneof(
  fc.subarray(WEEKDAYS, { minLength: 1 }).map((days) => ({ days })),
  fc.constant<Schedule>({ days: 'daily' }),
  fc.oneof(fc.integer({ min: 1, max: 7 }), fc.constantFrom('3-5', '2-3')).map((days_a_week) => ({
    days_a_week,
  })),
  fc.integer({ min: 2, max: 12 }).map((step) => ({ every: `${step} days` })),
  fc.constant<Schedule>({ as_needed: true }),
);

interface RawPart {
  readonly kind: string;
  readonly rounds: number | undefined;
  readonly rest_between_rounds: string | undefined;
  readonly between_items: string | undefined;
  readonly window: RawWindow[] | undefined;
  readonly items: RawItem[];
  readonly entries: PartEntry[];
}

const KINDS = ['warm-up', 'mobility', 'strength', 'balance', 'cardio', 'stretch'];

function rawPart(focus: Focus): fc.Arbitrary<RawPart> {
  const rounds = fc.integer({ min: 1, max: 4 });
  const fields = {
    rounds: focus.circuits ? maybe(rounds, 3) : fc.constant(undefined),
    rest_between_rounds: focus.circuits ? maybe(gap(60)) : fc.constant(undefined),
    between_items: maybe(gap(40), 3),
  };
  const entry = fc.record({ week: fc.nat({ max: 12 }), ...fields });
  return fc.record({
    ...fields,
    kind: fc.constantFrom(...KINDS),
    window: rawWindows(focus),
    items: fc.array(rawItem(focus), { minLength: 1, maxLength: 4 }),
    entries: focus.entries
      ? fc.array(
          entry.map((drawn) => only(drawn) as PartEntry),
          { maxLength: 2 },
        )
      : fc.constant([]),
  });
}

function rawSession(focus: Focus) {
  const fields = {
    schedule,
    times_a_day: maybe(fc.oneof(fc.integer({ min: 1, max: 3 }), fc.constant('2-3')), 3),
    between_items: maybe(gap(40), 3),
  };
  const entry = fc.record({ ...fields, week: fc.nat({ max: 12 }), schedule: maybe(schedule) });
  return fc.record({
    ...fields,
    window: rawWindows(focus),
    parts: fc.array(rawPart(focus), { minLength: 1, maxLength: 3 }),
    entries: focus.entries ? fc.array(entry, { maxLength: 2 }) : fc.constant([]),
  });
}

/** Entries of different weeks from 2 on, in order; none in a plan of one week. */
function spread<T extends { week: number }>(entries: readonly T[], weeks: number): T[] {
  if (weeks < 2) return [];
  const byWeek = new Map(
    entries.map((entry) => {
      const week = 2 + (entry.week % (weeks - 1));
      return [week, { ...entry, week }] as const;
    }),
  );
  return [...byWeek.values()].sort((one, other) => one.week - other.week);
}

const EASY = { sets: 50, reps: 70, hold: 60, time: 75 };

const easyWeeks: fc.Arbitrary<EasyWeeks> = fc
  .record({
    first: fc.integer({ min: 1, max: 8 }),
    length: fc.nat({ max: 2 }),
    keys: fc.subarray(Object.keys(EASY) as (keyof typeof EASY)[], { minLength: 1 }),
    share: fc.integer({ min: 1, max: 99 }),
  })
  .map(({ first, length, keys, share }) => ({
    weeks: [length ? `${first}-${first + length}` : first],
    ...Object.fromEntries(keys.map((key, at) => [key, `${at ? EASY[key] : share} %`])),
  }));

const timing = (focus: Focus) =>
  fc.record(
    {
      move: fc.integer({ min: 1, max: 5 }).map((n) => `${n} s`),
      pause: fc.integer({ min: 0, max: 5 }).map((n) => `${n} s`),
      rest: fc.integer({ min: 0, max: 60 }).map((n) => `${n} s`),
      change_sides: fc.integer({ min: 0, max: 9 }).map((n) => `${n} s`),
      between_items: fc.integer({ min: 0, max: 60 }).map((n) => `${n} s`),
      breath: focus.wholeSeconds ? fc.constant('4 s') : fc.constantFrom('4 s', '4.5 s', '6 s'),
    },
    { requiredKeys: [] },
  );

/** A plan within its weeks: easy weeks that lie past the end are left out. */
function easyWithin(easy: EasyWeeks | undefined, weeks: number): EasyWeeks | undefined {
  const [first, last] = String(easy?.weeks[0] ?? '')
    .split('-')
    .map(Number);
  if (!easy || !first || first > weeks) return undefined;
  const end = Math.min(last ?? first, weeks);
  return { ...easy, weeks: [end > first ? `${first}-${end}` : first] };
}

/** An exercise's first item in a session may go by its name; a second one never. */
function idsOfSession(): ItemIds {
  const taken = new Set<string>();
  return (exercise, wanted) => {
    const as = `item-${taken.size + 1}`;
    const bare = !wanted && !taken.has(exercise);
    taken.add(bare ? exercise : as);
    return bare ? {} : { as };
  };
}

/** Practices, exercises and plans that are valid, about the things in focus. */
export function cases(focus: Focus): fc.Arbitrary<Case> {
  return fc
    .record({
      timing: maybe(timing(focus)),
      exercises: exercises(focus),
      weeks: fc.integer({ min: 1, max: 8 }),
      affected: fc.constantFrom<WrittenPlan['affected'][]>('left', 'right', 'both', 'none'),
      between_items: maybe(gap(40)),
      easy: focus.easy ? maybe(easyWeeks) : fc.constant(undefined),
      sessions: fc.array(rawSession(focus), { minLength: 1, maxLength: 3 }),
    })
    .map((drawn): Case => {
      const practice = only({ timing: drawn.timing, bands: BANDS }) as Case['practice'];
      const { weeks, affected, between_items } = drawn;
      const easy_weeks = easyWithin(drawn.easy, weeks);
      const one_rep_max = Object.fromEntries(
        drawn.exercises.map(({ exercise }, at) => [exercise, `${40 + 2.5 * at} kg`]),
      );
      const head = { plan: 'P-1', weeks, affected, between_items, easy_weeks, one_rep_max };
      const plan = only({ ...head, sessions: [] as WrittenSession[] }) as WrittenPlan;
      const frame = frameOf(practice, plan);
      const writePart = (raw: RawPart, ids: ItemIds): WrittenPart => {
        const written = writePartAs(raw, ids);
        // Every exercise brings a list, which a circuit can't have: it is done as it stands then.
        return written.items.length ? written : writePartAs(withoutRounds(raw), ids);
      };
      const writePartAs = (raw: RawPart, ids: ItemIds): WrittenPart => {
        const { kind, window, items, entries, rounds, rest_between_rounds, ...rest } = raw;
        const changes = spread(entries, weeks);
        const circuit = [raw, ...changes].some((entry) => entry.rounds !== undefined);
        const around = { frame, weeks, circuit, exercises: drawn.exercises };
        return only({
          part: kind,
          rounds,
          // A rest between rounds is written only where there are rounds, now or later.
          rest_between_rounds: rounds === undefined ? undefined : rest_between_rounds,
          between_items: rest.between_items,
          weeks: writeWindows(window, weeks),
          from_week: changes.length ? withoutStrayRests(changes, rounds) : undefined,
          items: items.flatMap((item) => writeItem(item, ids, around) ?? []),
        }) as WrittenPart;
      };
      const sessions = drawn.sessions.map((raw, at): WrittenSession => {
        const ids = idsOfSession();
        const changes = spread(raw.entries, weeks).map(({ schedule: to, ...entry }) =>
          only({ ...entry, ...to }),
        );
        return only({
          session: `session-${at + 1}`,
          ...raw.schedule,
          times_a_day: raw.times_a_day,
          between_items: raw.between_items,
          weeks: writeWindows(raw.window, weeks),
          from_week: changes.length ? (changes as SessionEntry[]) : undefined,
          parts: raw.parts.map((part) => writePart(part, ids)),
        }) as WrittenSession;
      });
      return { practice, exercises: drawn.exercises, plan: { ...plan, sessions } };
    });
}

function withoutRounds(raw: RawPart): RawPart {
  const entries = raw.entries.map(({ rounds: _, ...entry }) => entry);
  return { ...raw, rounds: undefined, entries };
}

function withoutStrayRests(entries: PartEntry[], rounds: number | undefined): PartEntry[] {
  let circuit = rounds !== undefined;
  return entries.map((entry) => {
    circuit ||= entry.rounds !== undefined;
    const { rest_between_rounds, ...rest } = entry;
    return circuit && rest_between_rounds ? { ...rest, rest_between_rounds } : rest;
  });
}
