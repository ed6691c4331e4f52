// What the readers of dials share: what a dial is read against, what every dial has, and steps that
// go up or down.
import type { Place } from '../finding/place.ts';
import type { DialKey } from '../model/dose.ts';
import type { Exercise, Level } from '../model/exercise.ts';
import { misread, type Reading, read } from '../units/reading.ts';

/** What a dial is read against: the practice's bands, and the item's exercise and level. */
export interface DialSetting {
  readonly bands: readonly string[];
  readonly exercise: Exercise;
  readonly level: Level;
}

/** What every dial has. */
export type DialBase = { readonly restart: readonly DialKey[]; readonly place: Place };

/** A step with its sign; one of nothing never gets anywhere. */
export function signed<T>(
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
      `says ${text}, which never gets anywhere; write a step above 0, or one below 0 to climb down`,
    );
  return read(match?.[1] === '-' ? negated(reading.value) : reading.value);
}
