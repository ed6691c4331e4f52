// Amounts in words: counts, lengths of time, weights, lists. Digits always, but "once"; neighbours
// are "5 or 6", other ranges "8 to 12". Written from the words pack alone, never by the machine's locale.
import type { Duration } from '../../units/duration.ts';
import { type Interval, isExact, mapEnds } from '../../units/interval.ts';
import { THOUSANDTHS } from '../../units/number.ts';
import { raised, type Words } from './words.ts';

const SECOND_MS = 1_000;
const MINUTE_MS = 60_000;

/** A number in digits, with the language's decimal mark: `2.5`, `minus 10`. */
export function numberText(words: Words, value: number): string {
  const [whole = '', decimals] = String(
    Math.abs(Math.round(value * THOUSANDTHS) / THOUSANDTHS),
  ).split('.');
  const digits =
    decimals === undefined ? whole : `${whole}${words.say('numbers.decimal')}${decimals}`;
  return value < 0 ? words.say('numbers.minus', { number: digits }) : digits;
}

/** A count or a range of them: `8`, `5 or 6`, `8 to 12`. */
export function rangeText(words: Words, range: Interval): string {
  const low = numberText(words, range[0]);
  if (isExact(range)) return low;
  const high = numberText(words, range[1]);
  const isNext = Number.isInteger(range[0]) && range[1] - range[0] === 1;
  return words.say(isNext ? 'numbers.neighbours' : 'numbers.range', { low, high });
}

/** A counted pattern of the pack, its plural chosen by the greater end. */
export function counted(words: Words, key: string, range: Interval): string {
  return words.say(key, { n: range[1], count: rangeText(words, range) });
}

/** `once`, `8 to 12 times`. */
export function timesText(words: Words, range: Interval): string {
  return counted(words, 'amounts.times', range);
}

export function isNone(duration: Duration | undefined): boolean {
  return duration === undefined || duration.range[1] === 0;
}

/** `45 seconds`, `1 minute 30 seconds`, `20 to 30 seconds`, `2 slow breaths`. */
export function durationText(words: Words, { unit, range }: Duration): string {
  if (range[0] === 0 && range[1] > 0) {
    return words.say('numbers.up-to', {
      high: durationText(words, { unit, range: [range[1], range[1]] }),
    });
  }
  if (unit === 'breaths') return counted(words, 'amounts.breaths', range);
  if (isExact(range)) return lengthText(words, range[0]);
  if (range[1] < MINUTE_MS) return spanText(words, 'amounts.seconds', range, SECOND_MS);
  const isWholeMinutes = range.every((end) => end % MINUTE_MS === 0);
  if (isWholeMinutes) return spanText(words, 'amounts.minutes', range, MINUTE_MS);
  return words.say('numbers.range', {
    low: lengthText(words, range[0]),
    high: lengthText(words, range[1]),
  });
}

function lengthText(words: Words, ms: number): string {
  const minutes = Math.floor(ms / MINUTE_MS);
  const seconds = (ms % MINUTE_MS) / SECOND_MS;
  const inMinutes = counted(words, 'amounts.minutes', [minutes, minutes]);
  const inSeconds = counted(words, 'amounts.seconds', [seconds, seconds]);
  if (minutes === 0) return inSeconds;
  if (seconds === 0) return inMinutes;
  return words.say('amounts.minutes-seconds', { minutes: inMinutes, seconds: inSeconds });
}

/** Time runs on between two numbers, so a span is never "5 or 6 seconds". */
function spanText(words: Words, key: string, range: Interval, unitMs: number): string {
  const [low, high] = mapEnds(range, (end) => end / unitMs);
  const count = words.say('numbers.range', {
    low: numberText(words, low),
    high: numberText(words, high),
  });
  return words.say(key, { n: high, count });
}

/** How long a session takes: low end down, high end up, whole minutes; short ones "less than 1 minute". */
export function minutesText(words: Words, ms: Interval): string {
  const low = Math.floor(ms[0] / MINUTE_MS);
  const high = Math.ceil(ms[1] / MINUTE_MS);
  if (ms[1] < MINUTE_MS) return words.say('sheet.less-than-a-minute');
  const upper = lengthText(words, high * MINUTE_MS);
  if (low === high) return upper;
  if (low === 0) return words.say('numbers.up-to', { high: upper });
  return spanText(words, 'amounts.minutes', [low * MINUTE_MS, high * MINUTE_MS], MINUTE_MS);
}

/** A weight from thousandths of its unit: `4 kg`, `4 to 6 kg`. */
export function weightText(words: Words, unit: 'kg' | 'lb', thousandths: Interval): string {
  return words.say(`amounts.${unit}`, { count: betweenText(words, thousandths) });
}

export function percentText(words: Words, thousandths: Interval): string {
  return words.say('amounts.percent', { count: betweenText(words, thousandths) });
}

function betweenText(words: Words, thousandths: Interval): string {
  const [low, high] = mapEnds(thousandths, (end) => end / THOUSANDTHS);
  if (low === high) return numberText(words, low);
  return words.say('numbers.range', { low: numberText(words, low), high: numberText(words, high) });
}

/** `a, b and c`; `or` likewise. */
export function listText(words: Words, items: readonly string[], by: 'and' | 'or'): string {
  if (items.length < 2) return items[0] ?? '';
  return words.say(`lists.${by}`, {
    a: commaText(words, items.slice(0, -1)),
    b: items.at(-1) as string,
  });
}

export function commaText(words: Words, items: readonly string[]): string {
  return joined(words, 'lists.comma', items);
}

/** `do 1, then 2, then 3`. */
export function thenText(words: Words, items: readonly string[]): string {
  return joined(words, 'lists.then', items);
}

/** Sentences one after the other, each with a large first letter; empty ones fall out. */
export function sentencesText(words: Words, sentences: readonly string[]): string {
  return joined(words, 'text.sentences', sentences.filter((one) => one !== '').map(raised));
}

function joined(words: Words, key: string, items: readonly string[]): string {
  return items.slice(1).reduce((a, b) => words.say(key, { a, b }), items[0] ?? '');
}

/** Prose as written, ended as a sentence of the language. */
export function closed(words: Words, text: string): string {
  const trimmed = text.trim();
  return /[.!?…:。！？؟।]["”’')\]]?$/u.test(trimmed)
    ? trimmed
    : words.say('text.sentence', { text: trimmed });
}

/** Exercise numbers as said: `1 to 4`, `1, 2 and 5`, in the order done. */
export function numbersText(words: Words, numbers: readonly number[]): string {
  return listText(words, runs(words, numbers), 'and');
}

/** The places of a session in the order done, each with the numbers of which one stands there: `1 to 3, then 4 or 9`. */
export function orderText(words: Words, places: readonly (readonly number[])[]): string {
  const texts: string[] = [];
  let singles: number[] = [];
  for (const place of [...places, []]) {
    const [only] = place;
    if (place.length === 1 && only !== undefined) {
      singles.push(only);
      continue;
    }
    texts.push(...runs(words, singles));
    singles = [];
    // A comma would look like the next place.
    const either = joined(
      words,
      'lists.or',
      place.map((number) => numberText(words, number)),
    );
    if (either !== '') texts.push(either);
  }
  return thenText(words, texts);
}

/** Three or more numbers that follow one another as one: `1 to 4`. */
function runs(words: Words, numbers: readonly number[]): readonly string[] {
  const texts: string[] = [];
  for (let at = 0; at < numbers.length; ) {
    const first = numbers[at] as number;
    let last = at;
    while (numbers[last + 1] === (numbers[last] as number) + 1) last += 1;
    if (last - at >= 2) {
      texts.push(rangeText(words, [first, numbers[last] as number]));
      at = last + 1;
    } else {
      texts.push(numberText(words, first));
      at += 1;
    }
  }
  return texts;
}
