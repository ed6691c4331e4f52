// The smaller measures of a dose and a plan: tempo, effort, percentages, angles, pain, intervals of days.
import { formatRange, type Interval, mapEnds } from './interval.ts';
import {
  isTooLarge,
  LARGEST,
  parseCounts,
  parseThousandths,
  parseThousandthsRange,
  THOUSANDTHS,
  whyNoNumber,
} from './number.ts';
import { misread, type Reading, read, withForms } from './reading.ts';

/** Seconds of the four phases in the order done, in milliseconds: first move, pause, second move, pause. */
export type Tempo = readonly [number, number, number, number];

/** Degrees of a joint; the first may be below 0. */
export type AngleRange = readonly [from: number, to: number];

const WORST = 10;

/** What each number of a tempo is, where it lowers first; tempo_words of an exercise can say otherwise. */
const TEMPO_ORDER = 'four numbers of seconds, for lowering, pause, lifting and pause';

export function parseTempo(text: string): Reading<Tempo> {
  const parts = text.split('-').map((part) => part.trim());
  if (parts.length !== 4)
    return misread('not-understood', `says "${text}", but is ${TEMPO_ORDER}`, tempoMeant(text));
  const phases: number[] = [];
  for (const part of parts) {
    const reading = parseThousandths(part, 60);
    if (!reading.ok) {
      const { check, says } = reading.misread;
      const why = check === 'not-understood' ? `says "${text}", but is ${TEMPO_ORDER}` : says;
      return misread(check, why, tempoMeant(text));
    }
    phases.push(reading.value);
  }
  return read(phases as unknown as Tempo);
}

/** The four numbers that a tempo has, parted otherwise or with units; three lack the pause at the end. */
function tempoMeant(text: string): string | undefined {
  const digits = /^\d{4}$/.test(text) ? [...text] : text.match(/\d+(?:\.\d+)?/g);
  if (!digits || /[a-z]{4}/i.test(text.replace(/\b(seconds?|secs?)\b/gi, ''))) return undefined;
  if (/\d\s*[-–]\s*[a-z]/i.test(text)) return undefined;
  if (digits.length === 3) return [...digits, '0'].join('-');
  return digits.length === 4 ? digits.join('-') : undefined;
}

/** Effort or pain on a scale of 0 to 10: one number or a range, as numbers. */
export function parseScale(text: string): Reading<Interval> {
  const outOf = /^(\d+)\s*(?:\/|of|out of)\s*10$/.exec(text);
  if (outOf)
    return misread(
      'not-understood',
      `says "${text}"; that it goes to 10 is understood`,
      outOf[1] as string,
    );
  const reading = parseThousandthsRange(text, WORST, '');
  if (!reading.ok) {
    return reading.misread.check === 'out-of-range'
      ? misread('out-of-range', `says ${text}, but goes from 0 to 10`)
      : reading;
  }
  return read(mapEnds(reading.value, (end) => end / THOUSANDTHS));
}

/** Whole points of the pain scale, 0 to 10. */
export function parsePainRange(text: string): Reading<Interval> {
  const reading = parseScale(text);
  if (!reading.ok) return reading;
  return Number.isInteger(reading.value[0]) && Number.isInteger(reading.value[1])
    ? reading
    : misread(
        'not-a-count',
        `says ${text}, but is in whole points`,
        formatRange(mapEnds(reading.value, Math.floor)),
        formatRange(mapEnds(reading.value, Math.ceil)),
      );
}

/** A percentage in thousandths of a percent: `25 %` is 25000. */
export function parsePercent(text: string, least: number, most: number): Reading<number> {
  const match = /^([^%]*[^%\s])\s*%$/.exec(text);
  if (!match) {
    const of = /^([\d.]+)\s*%\s*(?:of\s+)?[a-z0-9 ]+$/i.exec(text);
    if (of)
      return misread('unit-unknown', `says "${text}", but is a plain percentage`, `${of[1]} %`);
    const worded = /^([\d.]+)\s*([a-z]+)$/i.exec(text);
    if (worded)
      return misread(
        'unit-unknown',
        `says "${text}", but is a percentage`,
        /^per/i.test(worded[2] as string) ? `${worded[1]} %` : undefined,
      );
    const bare = whyNoNumber(text);
    if (bare && !bare.ok)
      return misread(
        bare.misread.check,
        bare.misread.says,
        bare.misread.write === undefined ? undefined : `${bare.misread.write} %`,
      );
    const share = Number(text);
    const percent = share > 0 && share < 1 ? Math.round(share * 1_000) / 10 : share;
    return misread('unit-missing', 'needs a % after the number', `${percent} %`);
  }
  const reading = parseThousandths(match[1] as string, LARGEST);
  const outside = misread('out-of-range', `says ${text}, but goes from ${least} % to ${most} %`);
  if (!reading.ok) {
    const { check, says, write } = reading.misread;
    if (isTooLarge(reading, text)) return outside;
    return misread(check, says, write === undefined ? undefined : `${write} %`);
  }
  if (reading.value < least * THOUSANDTHS || reading.value > most * THOUSANDTHS) return outside;
  return reading;
}

export function parseAngleRange(text: string): Reading<AngleRange> {
  const match = /^(-?\d+)\s*(?:-|–|to)\s*(-?\d+)\s*(.*)$/.exec(text);
  if (!match) return misread('not-understood', `says "${text}", which is no range of a joint`);
  const [, first = '', second = '', unit] = match;
  const unclear = [first, second]
    .map((end) => whyNoNumber(end.replace(/^-/, '')))
    .find((problem) => problem?.ok === false);
  if (unclear) return misread(unclear.misread.check, unclear.misread.says);
  if (unit !== 'degrees') {
    return misread('unit-missing', 'needs the word degrees', `${first}-${second} degrees`);
  }
  const range = [Number(first), Number(second)] as const;
  if (range[0] > range[1]) {
    return misread(
      'range-reversed',
      'has its range the wrong way round',
      `${second}-${first} degrees`,
    );
  }
  if (range[0] < -180 || range[1] > 360) {
    return misread('out-of-range', `says ${text}, further than a joint goes`);
  }
  return read(range);
}

/** The number of days that words for it mean. */
function daysMeant(text: string): string | undefined {
  if (/^(?:other|second|2nd) days?$/i.test(text)) return '2 days';
  return /^(?:third|3rd) days?$/i.test(text) ? '3 days' : undefined;
}

/** `90`, `-20` or `90 degrees`: a joint angle from neutral zero. */
export function parseAngle(text: string): Reading<number> {
  const match = /^(-?)\s*(.*?)\s*(degrees?|°)?$/i.exec(text.trim());
  const [, sign = '', size = ''] = match ?? [];
  const problem = whyNoNumber(size);
  if (problem?.ok === false) return misread(problem.misread.check, problem.misread.says, '90');
  if (!/^\d+$/.test(size))
    return misread('not-a-count', 'takes whole degrees', String(Math.round(Number(size))));
  if (Number(size) > 360) {
    return misread('out-of-range', `says ${text}, further than a joint goes`, '90');
  }
  return read(sign === '-' && Number(size) !== 0 ? -Number(size) : Number(size));
}

/** `20`: by how many degrees an eye looks down, at most from straight above. */
export function parseTilt(text: string): Reading<number> {
  const angle = parseAngle(text);
  if (!angle.ok) return misread(angle.misread.check, angle.misread.says, '20');
  if (angle.value < 0 || angle.value > 90)
    return misread('out-of-range', `says ${text}, but is from 0 to 90 degrees`, '20');
  return angle;
}

/** `2 days`: every other day is 2. */
export function parseEvery(text: string): Reading<number> {
  const match = /^([^a-z]*[^a-z\s])\s*days?$/i.exec(text);
  if (!match) {
    return /^\d+$/.test(text)
      ? misread('unit-missing', 'needs the word days', `${text} days`)
      : misread('not-understood', `says "${text}"`, daysMeant(text));
  }
  const reading = parseCounts(match[1] as string, 60);
  if (!reading.ok) {
    return withForms(reading.misread, (form) => `${form} ${form === '1' ? 'day' : 'days'}`);
  }
  return reading.value[0] === reading.value[1]
    ? read(reading.value[0])
    : misread('not-understood', 'takes one number of days', `${reading.value[0]} days`);
}
