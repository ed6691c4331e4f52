// Turns the dials of one item, tick by tick, each side by itself (contract, section 5.5).
// It starts from a dose as written and knows nothing of weeks; resolve.ts counts the ticks.
//
// Readings of the contract where it leaves room:
// - a dial's start is the key's value where the dials last began (the base week or a new level);
// - a key that stands twice has one value and one start;
// - a single band shows no way through the bands: it is gone to from either side;
// - rest and pause are never lacking: timing is a floor beneath every dose;
// - a load counts as moved (and is written anew) only where its value differs from its start's.

import type { Fraction } from './fraction.ts';
import { compare, floor, fraction, minus, over, plus, readDecimal, times } from './fraction.ts';
import type { Dose, Setting } from './merge.ts';
import { isList } from './merge.ts';
import type { Load, LoadKind, Range } from './quantities.ts';
import { readLoad, readPercent, readTime, writeLoad } from './quantities.ts';
import type { ClimbLine, Dial } from './written.ts';

export type Track = 'left' | 'right' | 'both' | 'middle';
export type Tracks = Partial<Record<Track, Dose>>;

/** Where an item stands within its climb. */
export interface Stand {
  readonly level: number;
  readonly now: Tracks;
  readonly start: Tracks;
}

/** What a climb needs to know of the item's exercise. */
export interface Ladder {
  readonly setting: Setting;
  readonly levelIds: readonly string[];
  /** The level's own doses, without anything the plan wrote. */
  readonly own: (level: number) => Tracks;
}

const SHARED = ['rest', 'pause', 'level'];

export function lineOf(line: ClimbLine): [string, Dial] {
  const [entry] = Object.entries(line);
  if (!entry) throw new Error('a climb line without a key');
  return entry;
}

/** All the ranges a dial moves together: one, or every entry of a list. */
function rangesOf(dose: Dose, key: string): readonly Range[] | undefined {
  if (key === 'reps') return isList(dose.reps) ? dose.reps : dose.reps && [dose.reps as Range];
  const range = dose[key as 'sets' | 'hold' | 'time' | 'rest' | 'pause' | 'effort'];
  return range && [range];
}

function withRanges(dose: Dose, key: string, ranges: readonly Range[]): Dose {
  const list = key === 'reps' && isList(dose.reps);
  return { ...dose, [key]: list ? ranges : ranges[0] };
}

/** A dial's `by` or `to` as a plain number: a count, or milliseconds. */
function readStep(key: string, written: Dial['by'], setting: Setting): number {
  if (written === undefined) throw new Error(`a ${key} dial without by or to`);
  if (key === 'sets' || key === 'reps' || key === 'effort') return Number(written);
  return readTime(String(written), setting.breath)[0];
}

/** How far the dial's next move goes; 0 where there is none. */
function plainStep(key: string, dial: Dial, dose: Dose, setting: Setting): number {
  const ranges = rangesOf(dose, key);
  if (!ranges) return 0;
  const by = readStep(key, dial.by, setting);
  const to = readStep(key, dial.to, setting);
  if (by > 0) return Math.max(0, Math.min(by, to - Math.max(...ranges.map(([, high]) => high))));
  return Math.min(0, Math.max(by, to - Math.min(...ranges.map(([low]) => low))));
}

/** The band that a dial steps to next, or nothing where it has passed them all. */
function nextBand(through: readonly string[], load: Load, setting: Setting): number | undefined {
  const places = through.map((name) => setting.bands.indexOf(name));
  const first = places[0] ?? 0;
  const last = places.at(-1) ?? 0;
  if (places.length === 1) return first === load.band ? undefined : first;
  const up = last > first;
  return places.find((place) => (up ? place > load.band : place < load.band));
}

function kindOfDial(to: string): { kind: LoadKind; to: Fraction } {
  const { kind, low } = readLoad(to, []);
  return { kind, to: low };
}

/** Where a weight's leading end goes: by points, by an amount, or by a rounded percentage. */
function loadTarget(dial: Dial, end: Fraction, kind: LoadKind): { target: Fraction; up: boolean } {
  const by = String(dial.by);
  const up = !by.startsWith('-');
  if (kind.startsWith('%')) {
    return { target: plus(end, times(readPercent(by), fraction(100n))), up };
  }
  if (!by.endsWith('%'))
    return { target: plus(end, readDecimal(by.replace(/ ?(kg|lb)$/, ''))), up };
  const round = readDecimal(String(dial.round).replace(/ ?(kg|lb)$/, ''));
  const wanted = plus(end, times(end, readPercent(by)));
  const steps = floor(plus(over(wanted, round), fraction(1n, 2n)));
  const nearest = times(steps, round);
  if (up ? compare(nearest, end) > 0 : compare(nearest, end) < 0) return { target: nearest, up };
  const below = floor(over(end, round));
  const exact = compare(times(below, round), end) === 0;
  const next = up ? plus(below, fraction(1n)) : exact ? minus(below, fraction(1n)) : below;
  return { target: times(next, round), up };
}

/** The load after the dial's next move, or nothing where it has none. */
function movedLoad(dial: Dial, load: Load | undefined, setting: Setting): Load | undefined {
  if (!load) return undefined;
  if (dial.through) {
    if (load.kind !== 'band') return undefined;
    const band = nextBand(dial.through, load, setting);
    return band === undefined ? undefined : { ...load, band, text: setting.bands[band] ?? '' };
  }
  const { kind, to } = kindOfDial(String(dial.to));
  if (load.kind !== kind) return undefined;
  const up = !String(dial.by).startsWith('-');
  const end = up ? load.high : load.low;
  if (up ? compare(end, to) >= 0 : compare(end, to) <= 0) return undefined;
  const { target } = loadTarget(dial, end, kind);
  const past = up ? compare(target, to) > 0 : compare(target, to) < 0;
  const step = minus(past ? to : target, end);
  const moved = { ...load, low: plus(load.low, step), high: plus(load.high, step) };
  return { ...moved, text: writeLoad(moved, setting.bands) };
}

/** Whether a dial still has somewhere to go, for one side. */
export function isOpen(line: ClimbLine, dose: Dose, level: number, ladder: Ladder): boolean {
  const [key, dial] = lineOf(line);
  if (key === 'level') {
    return (dial.through ?? []).some((id) => ladder.levelIds.indexOf(id) > level);
  }
  if (key === 'load') return movedLoad(dial, dose.load, ladder.setting) !== undefined;
  return plainStep(key, dial, dose, ladder.setting) !== 0;
}

function turned(line: ClimbLine, dose: Dose, setting: Setting): Dose {
  const [key, dial] = lineOf(line);
  if (key === 'load') {
    const load = movedLoad(dial, dose.load, setting);
    return load ? { ...dose, load } : dose;
  }
  const step = plainStep(key, dial, dose, setting);
  const ranges = rangesOf(dose, key) ?? [];
  return withRanges(
    dose,
    key,
    ranges.map(([low, high]): Range => [low + step, high + step]),
  );
}

function restarted(key: string, dose: Dose, start: Dose): Dose {
  const next: Record<string, unknown> = { ...dose };
  const value = start[key as keyof Dose];
  if (value === undefined) delete next[key];
  else next[key] = value;
  return next as Dose;
}

/** The stand after one more tick. */
export function ticked(climb: readonly ClimbLine[], stand: Stand, ladder: Ladder): Stand {
  const tracks = Object.keys(stand.now) as Track[];
  const next = tracks.map((track) =>
    climb.findIndex((line) => isOpen(line, stand.now[track] as Dose, stand.level, ladder)),
  );
  const now: Tracks = { ...stand.now };
  for (const [at, line] of climb.entries()) {
    const there = tracks.filter((_, place) => next[place] === at);
    const [key, dial] = lineOf(line);
    const shared = SHARED.includes(key);
    if (!there.length || (shared && there.length < tracks.length)) continue;
    if (key === 'level') {
      const level = ladder.levelIds.findIndex(
        (id, place) => place > stand.level && dial.through?.includes(id),
      );
      return { level, now: ladder.own(level), start: ladder.own(level) };
    }
    for (const track of there) now[track] = turned(line, now[track] as Dose, ladder.setting);
    for (const back of dial.restart ?? []) {
      for (const track of SHARED.includes(back) ? tracks : there) {
        now[track] = restarted(back, now[track] as Dose, stand.start[track] as Dose);
      }
    }
  }
  return { level: stand.level, now, start: stand.start };
}

/** A dial's reach, for the generator: the key's greatest and least value on a side. */
export function reach(dose: Dose, key: string): Range | undefined {
  const ranges = rangesOf(dose, key);
  if (!ranges) return undefined;
  return [Math.min(...ranges.map(([low]) => low)), Math.max(...ranges.map(([, high]) => high))];
}
