// fast-check arbitraries for items: what might be written, drawn first, is then added piece by piece
// to a bare item, and each piece stays only if the item is still valid. Small draws give small plans.

import fc from 'fast-check';
import { lineOf } from './climb.ts';
import type { RawDial } from './dials.ts';
import { rawDial, writeLine } from './dials.ts';
import type { Focus } from './doses.ts';
import { layer, onceIn, sideLayer } from './doses.ts';
import { exerciseOf } from './in-force.ts';
import type { Surroundings } from './legal.ts';
import { isValidItem } from './legal.ts';
import { startOf, writtenIn } from './resolve.ts';
import type {
  ClimbLine,
  ItemEntry,
  Only,
  Order,
  SideOverrides,
  WrittenDose,
  WrittenItem,
} from './written.ts';

const often = <T>(arbitrary: fc.Arbitrary<T>, wanted: boolean, draws = 2) =>
  wanted ? onceIn(draws, arbitrary) : fc.constant(undefined);

export interface RawEntry {
  readonly week: number;
  readonly level: number | undefined;
  readonly dose: WrittenDose | undefined;
  readonly sides: SideOverrides | undefined;
  readonly only: Only | undefined;
  readonly order: Order | undefined;
  readonly climb: readonly RawDial[] | undefined;
  readonly climb_every: number | undefined;
}

export interface RawItem extends RawEntry {
  readonly exercise: number;
  readonly named: boolean;
  readonly window: readonly RawWindow[] | undefined;
  readonly entries: readonly RawEntry[];
}

export interface RawWindow {
  readonly gap: number;
  readonly length: number;
}

export const rawWindows = (focus: Focus): fc.Arbitrary<RawWindow[] | undefined> =>
  often(
    fc.array(fc.record({ gap: fc.nat({ max: 3 }), length: fc.nat({ max: 3 }) }), {
      minLength: 1,
      maxLength: 2,
    }),
    focus.windows,
    4,
  );

/** Windows one after the other within the plan's weeks, in the form they are written in. */
export function writeWindows(
  raw: readonly RawWindow[] | undefined,
  weeks: number,
): string | string[] | undefined {
  const written: string[] = [];
  let next = 1;
  for (const { gap, length } of raw ?? []) {
    const first = next + gap;
    const last = Math.min(weeks, first + length);
    if (first > weeks) break;
    written.push(`${first}-${last}`);
    next = last + 1;
  }
  if (!written.length) return undefined;
  return written.length === 1 ? written[0] : written;
}

function sidesArbitrary(focus: Focus): fc.Arbitrary<SideOverrides> {
  const side = sideLayer(focus);
  const why = fc.constant('one side is catching up');
  return fc
    .record({ left: side, right: side, why }, { requiredKeys: ['why'] })
    .filter(({ left, right }) => left !== undefined || right !== undefined);
}

function entryFields(focus: Focus, later: boolean) {
  return {
    week: fc.nat({ max: 12 }),
    level: often(fc.nat({ max: 3 }), true, later ? 3 : 2),
    dose: often(layer(focus), true, 2),
    sides: often(sidesArbitrary(focus), focus.sides),
    only: often(fc.constantFrom<Only[]>('left', 'right', 'affected', 'other'), focus.sides, 3),
    order: often(fc.constantFrom<Order[]>('each-set', 'each-rep', 'all-sets'), focus.sides),
    climb: often(fc.array(rawDial, { maxLength: 4 }), focus.climbs, 3),
    climb_every: often(fc.integer({ min: 1, max: 3 }), focus.climbs, 3),
  };
}

export function rawItem(focus: Focus): fc.Arbitrary<RawItem> {
  const entries = fc.array(fc.record(entryFields(focus, true)), { maxLength: 3 });
  return fc.record({
    ...entryFields(focus, false),
    climb: focus.climbs ? fc.array(rawDial, { maxLength: 4 }) : fc.constant(undefined),
    exercise: fc.nat({ max: 3 }),
    named: fc.boolean(),
    window: rawWindows(focus),
    entries: focus.entries ? entries : fc.constant([]),
  });
}

type Draft = (add: Partial<ItemEntry>) => boolean;

/** Adds what was drawn, one key after another, for as long as the draft stays valid. */
function addKeys(raw: RawEntry, levelId: string | undefined, tries: Draft): void {
  const { dose, sides, only, order } = raw;
  const parts: Partial<ItemEntry>[] = [];
  if (levelId !== undefined) parts.push({ level: levelId });
  if (dose) parts.push({ dose });
  if (only) parts.push({ only });
  if (sides) parts.push({ sides });
  if (sides?.left && sides.right) {
    parts.splice(-1, 1, { sides: { left: sides.left, why: sides.why } }, { sides });
  }
  if (order) parts.push({ order });
  for (const part of parts) tries(part);
}

function addClimb(
  raw: RawEntry,
  lineFor: (dial: RawDial, earlier: ClimbLine[]) => ClimbLine | undefined,
  tries: Draft,
  ends: boolean,
): void {
  let climb: ClimbLine[] = [];
  // Nothing to climb is worth writing only where it ends an earlier climb.
  if (ends && raw.climb?.length === 0) tries({ climb: [] });
  for (const dial of raw.climb ?? []) {
    const line = lineFor(dial, climb);
    if (line && tries({ climb: [...climb, line] })) climb = [...climb, line];
  }
  const [line] = climb;
  const last = climb.at(-1);
  // A restart of a dial that comes later in the list.
  if (line && last && line !== last && raw.climb?.[0]?.form === 1) {
    const [[key, dial], [later]] = [lineOf(line), lineOf(last)];
    const first = { [key]: { ...dial, restart: [later] } };
    if (later !== 'level' && key !== 'level') tries({ climb: [first, ...climb.slice(1)] });
  }
  if (raw.climb_every && climb.length) tries({ climb_every: raw.climb_every });
}

/** Gives an item its own id, where it needs or wants one. */
export type ItemIds = (exercise: string, wanted: boolean) => { as?: string };

/** The drawn exercise bare, or the next one that may stand here; nothing where none may. */
function bareItem(raw: RawItem, around: Surroundings): WrittenItem | undefined {
  const { exercises } = around;
  return exercises
    .map((_, at) => exercises[(raw.exercise + at) % exercises.length]?.exercise ?? '')
    .map((id): WrittenItem => ({ do: id }))
    .find((item) => isValidItem(item, around));
}

/** The item that the draws make, valid in its surroundings, if there is one. */
export function writeItem(
  raw: RawItem,
  ids: ItemIds,
  around: Surroundings,
): WrittenItem | undefined {
  const bare = bareItem(raw, around);
  if (!bare) return undefined;
  const exercise = exerciseOf(around.exercises, bare);
  let item: WrittenItem = { ...bare, ...ids(bare.do, raw.named) };
  const levelId = (raw: RawEntry) =>
    raw.level === undefined
      ? undefined
      : exercise.levels[raw.level % exercise.levels.length]?.level;
  const keep = (next: WrittenItem): boolean => {
    const valid = isValidItem(next, around);
    if (valid) item = next;
    return valid;
  };
  const standIn = (week: number) =>
    startOf(writtenIn(item, exercise, week, around.frame), exercise, around.frame);
  const line = (week: number) => (dial: RawDial, earlier: ClimbLine[]) =>
    writeLine(dial, standIn(week), exercise, earlier, around.frame);

  const onItem: Draft = (add) => keep({ ...item, ...add });
  addKeys(raw, levelId(raw), onItem);
  addClimb(raw, line(1), onItem, false);
  const weeks = writeWindows(raw.window, around.weeks);
  if (weeks) item = { ...item, weeks };

  for (const entry of raw.entries) {
    if (around.weeks < 2) break;
    const week = 2 + (entry.week % (around.weeks - 1));
    const others = item.from_week ?? [];
    if (others.some((other) => other.week === week)) continue;
    let draft: ItemEntry = { week };
    const onEntry: Draft = (add) => {
      const next = { ...draft, ...add };
      const from_week = [...others, next].sort((one, other) => one.week - other.week);
      const valid = keep({ ...item, from_week });
      if (valid) draft = next;
      return valid;
    };
    if (!onEntry({})) continue;
    addKeys(entry, levelId(entry), onEntry);
    addClimb(entry, line(week), onEntry, Boolean(item.climb));
  }
  return item;
}
