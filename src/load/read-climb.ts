import type { Dial, DialKey } from '../model/dose.ts';
import type { Exercise } from '../model/exercise.ts';
import { type Duration, parseDuration } from '../units/duration.ts';
import { parseScale } from '../units/measure.ts';
import { parseCounts } from '../units/number.ts';
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
import { type DialBase, type DialSetting, signed } from './dial-reading.ts';
import { wordHints } from './did-you-mean.ts';
import { idMeant } from './meant-id.ts';
import { loadDial } from './read-load-dial.ts';
import type { ClimbStepFile, LoadDialFile, RepsDialFile } from './written.ts';

/** The dials of a climb in order; one that cannot be followed is told of and left out. */
export function readClimb(
  at: At<readonly ClimbStepFile[]> | undefined,
  setting: DialSetting,
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

function readDial(at: At<unknown>, setting: DialSetting): Dial | undefined {
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

function readRestart(at: At<unknown>): readonly DialKey[] {
  return entries(under(at as At<{ restart: string[] }>, 'restart')).map(
    (one) => textOf(one) as DialKey,
  );
}

/** One number; of a range one end was meant, and of a climb's end the far one. */
function oneNumber(
  reading: Reading<readonly [number, number]>,
  text: string,
  isEnd = false,
): Reading<number> {
  if (!reading.ok) return reading;
  const [low, high] = reading.value;
  if (low === high) return read(low);
  const says = `says ${text}, but takes one number, not a range`;
  return isEnd
    ? misread('not-understood', says, String(high))
    : misread('not-understood', says, String(low), String(high));
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
  const stepAt = under(at, 'by');
  const isDown = stepAt !== undefined && textOf(stepAt).startsWith('-');
  const to = quantity(under(at, 'to'), (text) =>
    oneNumber(key === 'effort' ? parseScale(text) : parseCounts(text), text, !isDown),
  );
  return by !== undefined && to !== undefined ? { by, to } : undefined;
}

function oneDuration(text: string): Reading<Duration> {
  const reading = parseDuration(text);
  if (!reading.ok) return reading;
  const { range } = reading.value;
  if (range[0] === range[1]) return reading;
  const ends = /^([\d.]+)\s*[-–]\s*([\d.]+)\s*(\w+)$/.exec(text)?.slice(1) ?? [];
  const [low, high] = [`${ends[0]} ${ends[2]}`, `${ends[1]} ${ends[2]}`];
  return misread(
    'not-understood',
    `says ${text}, but takes one length, not a range`,
    ...(ends.length < 3 ? [] : [low, high]),
  );
}

function signedDuration(text: string): Reading<Duration> {
  const negated = ({ unit, range: [low, high] }: Duration): Duration => ({
    unit,
    range: [-low, -high],
  });
  return signed(text, oneDuration, negated, ({ range }) => range[0] === 0);
}

/** A level that its exercise has not: the one of that name, or what there is. */
export function tellUnknownLevel(
  at: At<unknown>,
  { id: exercise, levels, place }: Exercise,
  write: (meant: string) => string,
): void {
  const word = textOf(at);
  const ids = levels.map(({ id }) => id);
  const named = (name: string) =>
    levels.find((level) => level.name?.toLowerCase() === name.toLowerCase())?.id;
  const meant = idMeant(word, ids, named);
  const what = `"${word}" is no level of "${exercise}"`;
  tellAt(at, 'unknown-level', meant === undefined ? `${what}.` : `${what}; ${write(meant)}.`, {
    hints: meant === undefined ? wordHints(word, ids) : [],
    related: [{ message: 'The exercise.', place }],
  });
}

function levelDial(
  at: At<unknown>,
  { exercise, level }: DialSetting,
  base: DialBase,
): Dial | undefined {
  const ids = exercise.levels.map(({ id }) => id);
  const through: string[] = [];
  let reached = exercise.levels.indexOf(level);
  for (const one of entries(under(at as At<{ through: string[] }>, 'through'))) {
    const id = textOf(one);
    const index = ids.indexOf(id);
    if (index === -1) {
      tellUnknownLevel(one, exercise, (meant) => `write "${meant}"`);
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
