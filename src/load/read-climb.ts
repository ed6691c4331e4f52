// The dials of a climb as written: what moves, by how much, to where, and what starts again.
import type { Place } from '../finding/place.ts';
import type { Dial, DialKey } from '../model/dose.ts';
import type { Exercise, Level } from '../model/exercise.ts';
import { type Duration, parseDuration } from '../units/duration.ts';
import { parseLoad } from '../units/load.ts';
import { parsePercent, parseScale } from '../units/measure.ts';
import { parseCounts, parseThousandths } from '../units/number.ts';
import { misread, type Reading, read } from '../units/reading.ts';
import {
  type At,
  entries,
  isGroup,
  pairs,
  placeOf,
  quantity,
  tellAt,
  textOf,
  under,
} from './at.ts';
import { wordHints } from './did-you-mean.ts';
import type { ClimbStepFile, LoadDialFile, RepsDialFile } from './written.ts';

/** What a dial is read against: the practice's bands, and the item's exercise and level. */
export interface ClimbSetting {
  readonly bands: readonly string[];
  readonly exercise: Exercise;
  readonly level: Level;
}

/** The dials of a climb in order; one that cannot be followed is told of and left out. */
export function readClimb(
  at: At<readonly ClimbStepFile[]> | undefined,
  setting: ClimbSetting,
): readonly Dial[] | undefined {
  if (!at) return undefined;
  const dials = entries(at).flatMap((step) => {
    const [one] = pairs<unknown>(step);
    const dial = one && isGroup(one) ? readDial(one, setting) : undefined;
    return dial ? [dial] : [];
  });
  tellTwoLevels(dials);
  return dials;

  function tellTwoLevels(found: readonly Dial[]): void {
    const second = found.filter(({ key }) => key === 'level')[1];
    if (second && at) {
      tellAt(
        at,
        'dial-unclear',
        '"level" stands twice in this climb; write all its levels in one "through".',
        { place: second.place },
      );
    }
  }
}

function readDial(at: At<unknown>, setting: ClimbSetting): Dial | undefined {
  const key = at.key as DialKey;
  const base = { restart: readRestart(at), place: at.keyPlace ?? placeOf(at) };
  switch (key) {
    case 'level':
      return levelDial(at, setting, base);
    case 'load':
      return loadDial(at as At<LoadDialFile>, setting, base);
    case 'reps':
    case 'sets':
    case 'effort': {
      const moves = numberMoves(at as At<RepsDialFile>, key);
      return moves && { kind: 'number', key, ...moves, ...base };
    }
    case 'hold':
    case 'time':
    case 'rest':
    case 'pause': {
      const by = quantity(under(at as At<RepsDialFile>, 'by'), signedDuration);
      const to = quantity(under(at as At<RepsDialFile>, 'to'), oneDuration);
      return by && to && { kind: 'duration', key, by, to, ...base };
    }
  }
}

type Base = { readonly restart: readonly DialKey[]; readonly place: Place };

function readRestart(at: At<unknown>): readonly DialKey[] {
  return entries(under(at as At<{ restart: string[] }>, 'restart')).map(
    (one) => textOf(one) as DialKey,
  );
}

function signed<T>(
  text: string,
  parse: (text: string) => Reading<T>,
  negated: (value: T) => T,
  isZero: (value: T) => boolean,
): Reading<T> {
  const match = /^([+-])\s*(?=[\d.])/.exec(text);
  const reading = parse(match ? text.slice(match[0].length) : text);
  if (!reading.ok) return reading;
  if (isZero(reading.value))
    return misread(
      'dial-unclear',
      `says ${text}, which never gets anywhere`,
      text.replace(/^[+-]?\s*0+(?:\.0+)?/, '1'),
    );
  return read(match?.[1] === '-' ? negated(reading.value) : reading.value);
}

function oneNumber(reading: Reading<readonly [number, number]>, text: string): Reading<number> {
  if (!reading.ok) return reading;
  const [low, high] = reading.value;
  return low === high
    ? read(low)
    : misread('not-understood', `says ${text}, but takes one number, not a range`);
}

function numberMoves(
  at: At<RepsDialFile>,
  key: 'reps' | 'sets' | 'effort',
): { by: number; to: number } | undefined {
  const isZeroCount = (text: string) => /^[+-]?\s*0+$/.test(text);
  const parseStep = (text: string): Reading<number> => {
    if (key === 'effort') return oneNumber(parseScale(text), text);
    return isZeroCount(text) ? read(0) : oneNumber(parseCounts(text), text);
  };
  const by = quantity(under(at, 'by'), (text) =>
    signed(
      text,
      parseStep,
      (n) => -n,
      (n) => n === 0,
    ),
  );
  const to = quantity(under(at, 'to'), (text) =>
    key === 'effort' ? oneNumber(parseScale(text), text) : oneNumber(parseCounts(text), text),
  );
  return by !== undefined && to !== undefined ? { by, to } : undefined;
}

function oneDuration(text: string): Reading<Duration> {
  const reading = parseDuration(text);
  if (!reading.ok) return reading;
  const [low, high] = reading.value.range;
  return low === high
    ? reading
    : misread('not-understood', `says ${text}, but takes one length, not a range`);
}

function signedDuration(text: string): Reading<Duration> {
  const negated = ({ unit, range: [low, high] }: Duration): Duration => ({
    unit,
    range: [-low, -high],
  });
  return signed(text, oneDuration, negated, ({ range }) => range[0] === 0);
}

function levelDial(
  at: At<unknown>,
  { exercise, level }: ClimbSetting,
  base: Base,
): Dial | undefined {
  const ids = exercise.levels.map(({ id }) => id);
  const through: string[] = [];
  let reached = exercise.levels.indexOf(level);
  for (const one of entries(under(at as At<{ through: string[] }>, 'through'))) {
    const id = textOf(one);
    const index = ids.indexOf(id);
    if (index === -1) {
      tellAt(one, 'unknown-level', `"${id}" is no level of "${exercise.id}".`, {
        hints: wordHints(id, ids),
      });
      return undefined;
    }
    if (index <= reached) {
      const why =
        index <= exercise.levels.indexOf(level)
          ? `does not come after "${level.id}"`
          : 'is not in order';
      tellAt(
        one,
        'dial-unclear',
        `"${id}" ${why}; "through" lists levels after the present one, easiest first.`,
      );
      return undefined;
    }
    reached = index;
    through.push(id);
  }
  return through.length > 0 ? { kind: 'level', key: 'level', through, ...base } : undefined;
}

function loadDial(at: At<LoadDialFile>, setting: ClimbSetting, base: Base): Dial | undefined {
  const through = under(at, 'through');
  const by = under(at, 'by');
  const to = under(at, 'to');
  if (through && (by || to)) {
    tellAt(
      at,
      'dial-unclear',
      '"load" has "through" and "by"; keep "through" for bands, "by" and "to" for weights.',
      { place: base.place },
    );
    return undefined;
  }
  if (through) return bandDial(through, setting, base);
  if (!by || !to) {
    if (!at.file.flagged.has(at.node) && !by && !to) {
      tellAt(
        at,
        'dial-unclear',
        '"load" does not say how it climbs; write "load: {by: 0.5 kg, to: 6 kg}" or "load: {through: [medium band]}".',
        { place: base.place },
      );
    }
    return undefined;
  }
  return weightDial(at, by, to, base);
}

function bandDial(
  at: At<readonly unknown[]>,
  { bands }: ClimbSetting,
  base: Base,
): Dial | undefined {
  const through: string[] = [];
  const directions = new Set<number>();
  for (const one of entries(at)) {
    const band = textOf(one);
    const index = bands.indexOf(band);
    if (index === -1) {
      tellAt(one, 'unknown-band', `"${band}" is not a band of practice.yaml.`, {
        hints: wordHints(band, bands),
      });
      return undefined;
    }
    const before = through.at(-1);
    if (before !== undefined) directions.add(Math.sign(index - bands.indexOf(before)));
    through.push(band);
  }
  if (directions.size > 1 || directions.has(0)) {
    tellAt(
      at,
      'dial-unclear',
      '"through" goes one way through the bands of practice.yaml, each once.',
    );
    return undefined;
  }
  const [direction] = directions;
  return {
    kind: 'band',
    key: 'load',
    through,
    direction: direction === undefined ? null : (direction as 1 | -1),
    ...base,
  };
}

function weightDial(
  at: At<LoadDialFile>,
  by: At<unknown>,
  to: At<unknown>,
  base: Base,
): Dial | undefined {
  const end = quantity(to, (text) => parseLoad(text, []));
  if (!end) return undefined;
  if (end.kind === 'mass') {
    if (end.pieces !== 1) {
      tellAt(to, 'dial-unclear', `"to" is of one piece, written without "${end.pieces} x".`);
      return undefined;
    }
    return massDial(at, by, to, end.unit, end.amount, base);
  }
  if (end.kind === 'percent-1rm' || (end.kind === 'body-weight' && end.percent)) {
    const range = end.percent as readonly [number, number];
    const points = quantity(by, (text) =>
      signed(
        text,
        (one) => parsePercent(one, 0, 100),
        (n) => -n,
        (n) => n === 0,
      ),
    );
    if (points === undefined) return undefined;
    return { kind: 'percent', key: 'load', of: end.kind, by: points, to: range[1], ...base };
  }
  tellAt(
    to,
    'dial-unclear',
    '"load" climbs in kg, lb, % 1rm, % body weight, or through bands; this kind of load does not climb.',
  );
  return undefined;
}

function massDial(
  at: At<LoadDialFile>,
  by: At<unknown>,
  to: At<unknown>,
  unit: 'kg' | 'lb',
  [low, high]: readonly [number, number],
  base: Base,
): Dial | undefined {
  if (low !== high) {
    tellAt(to, 'dial-unclear', '"to" takes one weight, not a range.');
    return undefined;
  }
  const round = under(at, 'round');
  if (/%\s*$/.test(textOf(by))) {
    const byPercent = quantity(by, (text) =>
      signed(
        text,
        (one) => parsePercent(one, 0, 100),
        (n) => -n,
        (n) => n === 0,
      ),
    );
    if (!round) {
      tellAt(
        by,
        'dial-unclear',
        `"by" is a percentage, so it needs "round" beside it, the smallest step that the weights allow; write "round: 0.5 ${unit}".`,
      );
      return undefined;
    }
    const step = quantity(round, (text) => aboveZero(massOf(text, unit), text));
    if (byPercent === undefined || step === undefined) return undefined;
    return { kind: 'mass', key: 'load', unit, step: { byPercent, round: step }, to: high, ...base };
  }
  if (round) {
    tellAt(
      round,
      'dial-unclear',
      '"round" goes with a percentage; leave it out where "by" is a weight.',
    );
    return undefined;
  }
  const amount = quantity(by, (text) =>
    signed(
      text,
      (one) => massOf(one, unit),
      (n) => -n,
      (n) => n === 0,
    ),
  );
  return amount === undefined
    ? undefined
    : { kind: 'mass', key: 'load', unit, step: { by: amount }, to: high, ...base };
}

/** One weight of one piece, in thousandths, in the unit of the dial's end. */
function massOf(text: string, unit: 'kg' | 'lb'): Reading<number> {
  const match = /^(?:(\d+)\s*x\s*)?(.*?)\s*(kg|lb)$/.exec(text);
  if (match?.[1])
    return misread('dial-unclear', `says ${text}, but is of one piece`, `${match[2]} ${match[3]}`);
  if (match && match[3] !== unit)
    return misread('dial-unclear', `is in ${match[3]}, but "to" is in ${unit}; use one unit`);
  if (!match) {
    const load = parseLoad(text, []);
    return load.ok ? misread('dial-unclear', `says "${text}", but "to" is in ${unit}`) : load;
  }
  return parseThousandths(match[2] as string, 1_000);
}

function aboveZero(reading: Reading<number>, text: string): Reading<number> {
  return reading.ok && reading.value <= 0
    ? misread('out-of-range', `says ${text}, but is above 0`, text.replace(/^0+(?:\.0+)?/, '0.5'))
    : reading;
}
