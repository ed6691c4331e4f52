// Lengths of time as a practice writes them: `5 s`, `2 min`, `1 min 30 s`, `6 breaths`, `20-30 s`.
// Kept in whole milliseconds, or in breaths until the practice's own length of a breath is known.
import { formatRange, type Interval, mapEnds } from './interval.ts';
import { LARGEST, parseCounts, parseThousandthsRange, THOUSANDTHS, whyNoNumber } from './number.ts';
import { misread, type Reading, read, withForms } from './reading.ts';

/** `range` is in milliseconds, or counts breaths. */
export interface Duration {
  readonly unit: 'ms' | 'breaths';
  readonly range: Interval;
}

const LONGEST_S = 86_400;
const LONGEST_MIN = 1_440;
const KNOWN_UNITS = ['s', 'min', 'breath', 'breaths'];
const UNITS_MEANT: Readonly<Record<string, string>> = {
  sec: 's',
  secs: 's',
  second: 's',
  seconds: 's',
  "''": 's',
  '"': 's',
  m: 'min',
  mins: 'min',
  minute: 'min',
  minutes: 'min',
  "'": 'min',
  breathe: 'breaths',
  breathes: 'breaths',
  br: 'breaths',
};

export function milliseconds(range: Interval): Duration {
  return { unit: 'ms', range };
}

/** The length in milliseconds, given the length of one breath. */
export function durationMs(duration: Duration, breathMs: number): Interval {
  return duration.unit === 'ms' ? duration.range : mapEnds(duration.range, (n) => n * breathMs);
}

/** Reads a duration; `0 s` passes here, and the key decides whether it may. */
export function parseDuration(text: string): Reading<Duration> {
  const mixed = /^(\d+)\s*min\s+(\d[\d.]*)\s*s$/.exec(text);
  if (mixed) return minutesAndSeconds(mixed[1] as string, mixed[2] as string);
  const simple = /^([^a-z'"]*[^a-z'"\s])\s*([a-z'"]+)$/i.exec(text);
  if (!simple) return withoutUnit(text);
  const amount = simple[1] as string;
  const unit = simple[2] as string;
  if (unit === 's') return inMilliseconds(amount, LONGEST_S, 's', 1);
  if (unit === 'min') return inMilliseconds(amount, LONGEST_MIN, 'min', 60);
  if (unit === 'breath' || unit === 'breaths') return inBreaths(amount);
  if (/^h(ours?|rs?)?$/i.test(unit))
    return misread('unit-unknown', 'is written in s or min', inUnit(amount, 60, 'min'));
  const meant = unitMeant(unit.toLowerCase());
  if (/['"]/.test(unit))
    return misread(
      'unit-unknown',
      `has a mark (${unit}) for its unit`,
      `${amount} ${meant ?? 's'}`,
    );
  return meant
    ? misread('unit-unknown', `has the unit "${unit}", which is not known`, `${amount} ${meant}`)
    : misread('unit-unknown', `has "${unit}" for a unit; known are s, min and breaths`);
}

function unitMeant(unit: string): string | undefined {
  if (Object.hasOwn(UNITS_MEANT, unit)) return UNITS_MEANT[unit];
  return KNOWN_UNITS.find((one) => one === unit);
}

/** An amount of one unit in a smaller one, exactly; undefined where it is no amount. */
function inUnit(amount: string, perUnit: number, unit: string): string | undefined {
  const reading = parseThousandthsRange(amount, LARGEST, unit);
  if (!reading.ok) return undefined;
  return `${formatRange(mapEnds(reading.value, (end) => (end * perUnit) / THOUSANDTHS))} ${unit}`;
}

function inMilliseconds(amount: string, largest: number, unit: string, seconds: number) {
  const reading = parseThousandthsRange(amount, largest, unit);
  if (!reading.ok) return reading;
  return read(milliseconds(mapEnds(reading.value, (end) => end * seconds)));
}

function inBreaths(amount: string): Reading<Duration> {
  const reading = parseCounts(amount, 1_000);
  if (reading.ok) return read({ unit: 'breaths', range: reading.value });
  const { check, says } = reading.misread;
  if (/^0+$/.test(amount)) return misread(check, says, '0 s');
  return withForms(reading.misread, (form) => `${form} ${form === '1' ? 'breath' : 'breaths'}`);
}

function minutesAndSeconds(minutes: string, seconds: string): Reading<Duration> {
  const a = inMilliseconds(minutes, LONGEST_MIN, 'min', 60);
  if (!a.ok) return a;
  const b = inMilliseconds(seconds, LONGEST_S, 's', 1);
  if (!b.ok) return b;
  const total = a.value.range[0] + b.value.range[0];
  return read(milliseconds([total, total]));
}

function withoutUnit(text: string): Reading<Duration> {
  const clock = /^(\d+)(?::|\s*min\s*)(\d+)\s*s?$/.exec(text);
  if (clock)
    return misread(
      'not-understood',
      `says "${text}", which lacks a unit or a space`,
      `${clock[1]} min ${Number(clock[2])} s`,
    );
  const tail = /^(\S+)\s*(s|min|breaths?)$/.exec(text);
  const unclear = tail && whyNoNumber(tail[1] as string);
  if (unclear && !unclear.ok && unclear.misread.check === 'number-unclear') return unclear;
  const worded = /^([\d.]+)\s*(?:to|bis|or|~)\s*([\d.]+)\s*(s|min|breaths)$/.exec(text);
  if (worded)
    return misread(
      'not-understood',
      `says "${text}", but a range has a hyphen between its numbers`,
      `${worded[1]}-${worded[2]} ${worded[3]}`,
    );
  const twoUnits = /^(\d[\d.]*)\s*(s|min)\s*[-–]\s*(\d[\d.]*)\s*(s|min)$/.exec(text);
  if (twoUnits) {
    const [, low = '', lowUnit, high = '', highUnit] = twoUnits;
    const seconds = [
      inUnit(low, lowUnit === 'min' ? 60 : 1, 's'),
      inUnit(high, highUnit === 'min' ? 60 : 1, 's'),
    ];
    const right =
      lowUnit === highUnit ? `${low}-${high} ${lowUnit}` : seconds.join('-').replace(' s', '');
    return misread(
      'not-understood',
      'has a unit inside its range; a range has one unit, after it',
      right,
    );
  }
  if (/^[\d.,]+(\s*[-–]\s*[\d.,]+)?$/.test(text)) {
    const checked = parseThousandthsRange(text, LONGEST_S, 's');
    return checked.ok ? misread('unit-missing', 'needs a unit', `${text} s`) : checked;
  }
  if (/^-\s*\d/.test(text)) return misread('out-of-range', `says ${text}, which is below zero`);
  const checked = parseThousandthsRange(text, LONGEST_S, 's');
  if (!checked.ok && checked.misread.check === 'number-unclear') return checked;
  if (/^(?:none|no|nothing|zero|nil|-)$/i.test(text))
    return misread('not-understood', `says "${text}", but none at all is a length too`, '0 s');
  return misread('not-understood', `says "${text}", which is no length of time`);
}
