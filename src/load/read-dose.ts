// What one mapping of a file says of a dose, and the two measures that stand beside doses: what is
// sensible, and when a level is done with.
import type { Place } from '../finding/place.ts';
import type { Bounds, DoseKey, DoseLayer, DoseValues, MoveOnWhen, Reps } from '../model/dose.ts';
import { type Duration, durationMs, parseDuration } from '../units/duration.ts';
import type { Interval } from '../units/interval.ts';
import { type Load, parseLoad } from '../units/load.ts';
import { parseAngleRange, parseScale, parseTempo } from '../units/measure.ts';
import { parseCount, parseCounts } from '../units/number.ts';
import { misread, type Reading, read } from '../units/reading.ts';
import {
  type At,
  entries,
  isInBraces,
  isList,
  lengthOf,
  pairs,
  placeOf,
  quantity,
  tellAt,
  textOf,
  under,
} from './at.ts';
import { wordHints } from './did-you-mean.ts';
import { moreThanACount } from './own-dose.ts';
import type { BoundsFile, DoseFile, LeftDoseFile, MoveOnWhenFile } from './written.ts';

const MOST_SETS = 100;
const MOST_REPS = 1_000;
const NONE = 'none';

/** A dose of a file, or a side's; undefined where there is none. Bands are the practice's names. */
export function readDose(
  at: At<DoseFile> | At<LeftDoseFile> | undefined,
  bands: readonly string[],
): DoseLayer | undefined {
  if (!at) return undefined;
  const dose = at as At<DoseFile>;
  const unset: DoseKey[] = [];
  const orNone = <T>(
    key: 'hold' | 'load' | 'until',
    parse: (text: string) => Reading<T>,
  ): T | undefined => {
    const found = under(dose, key);
    if (found && textOf(found) === NONE) {
      unset.push(key);
      return undefined;
    }
    if (found && textOf(found).toLowerCase() === NONE) {
      tellAt(
        found,
        'unknown-word',
        `"${key}" says "${textOf(found)}"; write "${key}: none" to take it away.`,
      );
      return undefined;
    }
    if (found && key === 'load' && tellUnknownBand(found, bands)) return undefined;
    return quantity(found, parse);
  };
  const values: DoseValues = defined({
    sets: readCounts(under(dose, 'sets'), (text) => parseCounts(text, MOST_SETS)),
    reps: readReps(under(dose, 'reps')),
    hold: orNone('hold', parseDuration),
    move: quantity(under(dose, 'move'), parseDuration),
    tempo: quantity(under(dose, 'tempo'), parseTempo),
    time: quantity(under(dose, 'time'), positiveDuration),
    pause: quantity(under(dose, 'pause'), parseDuration),
    rest: quantity(under(dose, 'rest'), parseDuration),
    load: orNone('load', (text) => parseLoad(text, bands)),
    effort: quantity(under(dose, 'effort'), parseScale),
    until: orNone('until', () => read('tired' as const)),
    range: quantity(under(dose, 'range'), parseAngleRange),
  });
  const keyPlaces = new Map<DoseKey, Place>();
  for (const { key, keyPlace } of pairs(dose))
    if (keyPlace) keyPlaces.set(key as DoseKey, keyPlace);
  const layer: DoseLayer = { values, unset, place: placeOf(dose), keyPlaces };
  tellTwoShapes(dose, layer);
  tellSetsBesideList(dose, layer);
  return layer;
}

/** Whether a load is words only, and none that is known: a band that is not there, most likely. */
function tellUnknownBand(at: At<unknown>, bands: readonly string[]): boolean {
  const text = textOf(at);
  if (
    text === '' ||
    /[\d%]|^(kg|lb|rm)$/.test(text) ||
    parseLoad(text, bands).ok ||
    /^body[ -]?weight$/i.test(text)
  )
    return false;
  const known = [...bands, 'body weight'];
  tellAt(
    at,
    'unknown-band',
    `"${text}" is not a band of practice.yaml; correct it, add it under "bands" there, or write a weight such as "load: 4 kg".`,
    { hints: wordHints(text, known) },
  );
  return true;
}

/** A bout that takes no time cannot be timed, so `time` is above 0. */
function positiveDuration(text: string): Reading<Duration> {
  const reading = parseDuration(text);
  if (reading.ok && reading.value.range[0] <= 0)
    return misread('out-of-range', `says ${text}, but is above 0 s`);
  return reading;
}

/** Counts, but for what says more than one: 3 x 10, or as many as possible. */
function readCounts(
  at: At<unknown> | undefined,
  parse: (text: string) => Reading<Interval>,
): Interval | undefined {
  const more = at && moreThanACount(textOf(at), () => isInBraces(at));
  if (!at || !more) return quantity(at, parse);
  tellAt(at, 'not-understood', `"${at.key}" ${more.says}; write ${more.write}.`);
  return undefined;
}

function readReps(at: At<DoseFile['reps']> | undefined): Reps | undefined {
  if (!at) return undefined;
  const parse = (text: string) => parseCounts(text, MOST_REPS);
  if (!isList(at)) {
    const count = readCounts(at, parse);
    return count && { kind: 'same', count };
  }
  const listed = entries(at as At<readonly unknown[]>);
  if (listed.length === 0 && lengthOf(at) > 0) return undefined;
  if (listed.length === 0) {
    tellAt(
      at,
      'empty-value',
      '"reps" is an empty list; write a number for each set: "reps: [12, 10, 8]".',
    );
    return undefined;
  }
  if (listed.length > MOST_SETS) {
    tellAt(
      at,
      'out-of-range',
      `"reps" has ${listed.length} entries, but ${MOST_SETS} sets are the most.`,
    );
    return undefined;
  }
  const counts = listed.map((one) => quantity(one, parse));
  return counts.every((count) => count !== undefined)
    ? { kind: 'list', counts: counts as Interval[] }
    : undefined;
}

/** Only the keys that were read; `undefined` must not stand for "said nothing". */
function defined<T extends object>(values: { [K in keyof T]: T[K] | undefined }): T {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as T;
}

function tellTwoShapes(at: At<DoseFile>, { values, keyPlaces }: DoseLayer): void {
  const counted = (['hold', 'move'] as const).find((key) => values[key]);
  const shapes = [counted, values.tempo && 'tempo', values.time && 'time'].filter(
    (key) => key !== undefined,
  ) as DoseKey[];
  if (shapes.length < 2) return;
  const [first, second] = shapes as [DoseKey, DoseKey];
  const place = keyPlaces.get(second);
  tellAt(
    at,
    'dose-two-shapes',
    `"${first}" and "${second}" say how much in two ways; keep reps with hold and move, or reps with tempo, or time.`,
    place ? { place } : {},
  );
}

function tellSetsBesideList(at: At<DoseFile>, { values, keyPlaces }: DoseLayer): void {
  if (values.reps?.kind !== 'list' || !values.sets) return;
  const length = values.reps.counts.length;
  const [low, high] = values.sets;
  if (low === length && high === length) return;
  const place = keyPlaces.get('sets');
  tellAt(
    at,
    'dose-sets-and-list',
    `"reps" has a number for each of ${length} sets, but "sets" says otherwise; leave "sets" out.`,
    place ? { place } : {},
  );
}

/** What a level calls sensible. */
export function readBounds(
  at: At<BoundsFile> | undefined,
  bands: readonly string[],
): Bounds | null {
  if (!at) return null;
  return {
    place: placeOf(at),
    ...defined<Omit<Bounds, 'place'>>({
      sets: quantity(under(at, 'sets'), (text) => parseCounts(text)),
      reps: quantity(under(at, 'reps'), (text) => parseCounts(text)),
      hold: quantity(under(at, 'hold'), parseDuration),
      time: quantity(under(at, 'time'), parseDuration),
      load: quantity(under(at, 'load'), (text) => parseLoad(text, bands)),
    }),
  };
}

/** When a person may leave a level. */
export function readMoveOnWhen(
  at: At<MoveOnWhenFile> | undefined,
  bands: readonly string[],
): MoveOnWhen | null {
  if (!at) return null;
  const count = (key: 'reps' | 'sets' | 'sessions_in_a_row') =>
    quantity(under(at, key), (text) => parseCount(text));
  const score = (key: 'pain_at_most' | 'effort_at_most') =>
    quantity(under(at, key), parseScale)?.[0];
  return {
    place: placeOf(at),
    ...defined<Omit<MoveOnWhen, 'place'>>({
      reps: count('reps'),
      sets: count('sets'),
      hold: quantity(under(at, 'hold'), parseDuration),
      time: quantity(under(at, 'time'), parseDuration),
      load: quantity(under(at, 'load'), (text) => parseLoad(text, bands)),
      painAtMost: score('pain_at_most'),
      effortAtMost: score('effort_at_most'),
      sessionsInARow: count('sessions_in_a_row'),
    }),
  };
}

/** A gap between things done, in milliseconds; a breath of it is the practice's. */
export function gapMs(breathMs: number): (text: string) => Reading<Interval> {
  return (text) => {
    const reading = parseDuration(text);
    return reading.ok ? read(durationMs(reading.value, breathMs)) : reading;
  };
}

/** One length of time, in milliseconds, above 0 and not in breaths. */
export function oneLength(text: string): Reading<number> {
  const reading = parseDuration(text);
  if (!reading.ok) return reading;
  const {
    unit,
    range: [low, high],
  } = reading.value;
  if (unit !== 'ms') return misread('unit-unknown', 'is written in s or min here');
  if (low !== high)
    return misread(
      'not-understood',
      `says ${text}, but takes one length, not a range`,
      text.replace(/\s*[-–]\s*[\d.]+/, ''),
    );
  return low > 0 ? read(low) : misread('out-of-range', `says ${text}, but is above 0`);
}

/** The one weight of a one-repetition maximum. */
export function weight(text: string): Reading<Load> {
  const reading = parseLoad(text, []);
  if (!reading.ok)
    return reading.misread.check === 'not-understood'
      ? misread('not-understood', `says "${text}", but is a weight`)
      : reading;
  return reading.value.kind === 'mass'
    ? reading
    : misread('not-understood', `says "${text}", but is a weight`);
}
