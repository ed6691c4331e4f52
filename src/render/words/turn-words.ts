// A turn in words: what one side does in one set. "8 to 12 times with the left leg", "hold for 30
// seconds, 2 times, with the left arm", "keep going for 5 minutes". Load, hold and pause follow it;
// tempo and effort have sentences of their own (dose-sentence).
import type { DoseValues } from '../../model/dose.ts';
import type { Purpose } from '../../model/exercise.ts';
import { exactly, type Interval, isExact } from '../../units/interval.ts';
import type { Load } from '../../units/load.ts';
import { commaText, durationText, isNone, timesText } from './amounts.ts';
import { loadText } from './load-words.ts';
import type { Lane } from './side-words.ts';
import type { Words } from './words.ts';

/** What may follow a number of times. */
export type Extra = 'load' | 'hold' | 'pause';

/** What the sentences of one item are made with. */
export interface DoseContext {
  readonly words: Words;
  readonly purpose: Purpose;
  /** The most that the person can lift once in this exercise, where the plan gives it. */
  readonly oneRepMax: Load | null;
  /** What is left out, as it stays what it was; empty for a whole dose. */
  readonly unsaid: ReadonlySet<Extra>;
}

const STILL: ReadonlySet<Purpose> = new Set(['stretch', 'isometric', 'balance']);

/** Whether the hold is the thing to do, and not something within a movement. */
function isHoldFirst(values: DoseValues, count: Interval, purpose: Purpose): boolean {
  if (values.tempo || values.time || isNone(values.hold)) return false;
  return STILL.has(purpose) || isOnce(count);
}

/** A turn that is a whole instruction ("hold …", "keep going …"), not a number of times. */
export function isClause(lane: Lane, count: Interval, { purpose }: DoseContext): boolean {
  return lane.dose.values.time !== undefined || isHoldFirst(lane.dose.values, count, purpose);
}

/** The reps of a lane in one of its sets, counted from 0; null where it has no such set. */
export function countOf(values: DoseValues, set: number): Interval | null {
  if (!values.reps) return exactly(1);
  return values.reps.kind === 'same' ? values.reps.count : (values.reps.counts[set] ?? null);
}

/** The turn of a lane with its side; `side` may put other words in its place, or none. */
export function turnText(
  context: DoseContext,
  lane: Lane,
  count: Interval,
  side: string | null = lane.side,
): string {
  return commaText(context.words, [
    mainText(context, lane.dose.values, count, side),
    ...extras(context, lane, count),
  ]);
}

/** Load, hold and pause, as they follow a number of times. */
export function extras(context: DoseContext, lane: Lane, count: Interval): readonly string[] {
  const all = [...extraTexts(context, lane, count)];
  return all.filter(([extra]) => !context.unsaid.has(extra)).map(([, text]) => text);
}

export function extraTexts(
  context: DoseContext,
  lane: Lane,
  count: Interval,
): ReadonlyMap<Extra, string> {
  const { words } = context;
  const { values } = lane.dose;
  const said = new Map<Extra, string>();
  if (values.load) said.set('load', loadText(words, values.load, context.oneRepMax));
  if (values.hold && !isNone(values.hold) && !isHoldFirst(values, count, context.purpose)) {
    said.set('hold', words.say('dose.holding', { hold: durationText(words, values.hold) }));
  }
  const pause = pauseText(context, lane, count);
  if (pause !== null) said.set('pause', words.say('dose.pause', { pause }));
  return said;
}

/** The pause between repetitions, where a file wrote one and there is a second repetition. */
function pauseText({ words }: DoseContext, lane: Lane, count: Interval): string | null {
  const { values, origins } = lane.dose;
  const isWritten = origins.pause !== undefined && origins.pause.layer !== 'timing';
  if (!isWritten || !values.pause || isNone(values.pause) || isOnce(count)) return null;
  return durationText(words, values.pause);
}

/** A lone timed dose: "Keep going for 1 minute. Do this 3 times, with a pause of 20 seconds in between." */
export function boutSentences(
  context: DoseContext,
  lane: Lane,
  count: Interval,
): readonly string[] {
  const { words } = context;
  const load = context.unsaid.has('load') ? undefined : lane.dose.values.load;
  const turn = commaText(words, [
    mainText(context, lane.dose.values, exactly(1), lane.side),
    ...(load ? [loadText(words, load, context.oneRepMax)] : []),
  ]);
  const first = words.say('text.sentence', { text: turn });
  if (isOnce(count)) return [first];
  const times = timesText(words, count);
  const pause = context.unsaid.has('pause') ? null : pauseText(context, lane, count);
  return [
    first,
    pause === null
      ? words.say('dose.do-this', { times })
      : words.say('dose.do-this-pause', { times, pause }),
  ];
}

export function isOnce(count: Interval): boolean {
  return isExact(count) && count[0] === 1;
}

/** The turn alone, nothing following it. */
export function mainText(
  { words, purpose }: DoseContext,
  values: DoseValues,
  count: Interval,
  side: string | null,
): string {
  const say = (key: string, filled: Record<string, string>) =>
    side === null ? words.say(`${key}-plain`, filled) : words.say(key, { ...filled, side });
  const times = timesText(words, count);
  if (values.time) {
    const time = durationText(words, values.time);
    return isOnce(count) ? say('dose.time', { time }) : say('dose.bouts', { time, times });
  }
  if (values.hold && isHoldFirst(values, count, purpose)) {
    const hold = durationText(words, values.hold);
    return isOnce(count)
      ? say('dose.hold-first-once', { hold })
      : say('dose.hold-first', { hold, times });
  }
  return say('dose.count', { times });
}
