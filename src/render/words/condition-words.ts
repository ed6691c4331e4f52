// When a step may be taken: a step within a level if all went well, a change of level only by its own
// rule, a later exercise by what the plan says. Going easier has no condition.
import type { ItemWeek, SideWork } from '../../compute/numbers.ts';
import type { MoveOnWhen } from '../../model/dose.ts';
import type { Duration } from '../../units/duration.ts';
import { exactly, type Interval } from '../../units/interval.ts';
import { commaText, counted, durationText, listText, numberText, timesText } from './amounts.ts';
import { loadText } from './load-words.ts';
import type { Words } from './words.ts';

/** `went-well` is what the section's lead asks of every step; `always` is of what asks for less. */
export type Condition =
  | { readonly kind: 'went-well' }
  | { readonly kind: 'always' }
  | { readonly kind: 'rule'; readonly text: string };

export const WENT_WELL: Condition = { kind: 'went-well' };
const ALWAYS: Condition = { kind: 'always' };

/** A condition written out, for a place that is far from the lead. */
export function conditionText(words: Words, condition: Condition): string {
  if (condition.kind === 'rule') return condition.text;
  return words.say(condition.kind === 'always' ? 'growth.in-any-case' : 'growth.if-went-well');
}

export function stepCondition(before: ItemWeek, after: ItemWeek): Condition {
  return isNoMore(before, after) ? ALWAYS : WENT_WELL;
}

export function levelCondition(
  words: Words,
  before: ItemWeek,
  after: ItemWeek,
  number: number,
): Condition {
  const { levels } = after.item.exercise;
  const at = (item: ItemWeek) => levels.findIndex(({ id }) => id === item.level.id);
  if (at(after) < at(before)) return ALWAYS;
  const gate = after.advance === 'by-week' ? null : before.moveOnWhen;
  const text = gate && gateText(words, gate, before, number);
  return text ? { kind: 'rule', text } : WENT_WELL;
}

/** The condition of an exercise that comes later: its own, or that all went well. */
export function startCondition(words: Words, { item }: ItemWeek): Condition {
  if (item.startWhen === null) return WENT_WELL;
  const condition = item.startWhen.trim().replace(/[.。]$/u, '');
  return { kind: 'rule', text: words.say('growth.only-if', { condition }) };
}

/** "only if you did exercise 2, at least 10 times, with effort of 5 or less, in 3 sessions in a row". */
function gateText(words: Words, gate: MoveOnWhen, item: ItemWeek, number: number): string | null {
  const did = didTexts(words, gate);
  const felt = feltTexts(words, gate);
  if (did.length + felt.length === 0 && gate.sessionsInARow === undefined) return null;
  const it = words.say('growth.did-it', { number: numberText(words, number) });
  const [first, ...more] = [it, ...did];
  // What counts for one side counts for both, where both do it.
  const isTwoSided = item.sides === 'each' && item.left !== null && item.right !== null;
  const sided = (what: string) => (isTwoSided ? words.say('growth.did-each-side', { what }) : what);
  const [main, ...rest] = more;
  const done =
    main === undefined
      ? sided(first as string)
      : commaText(words, [first as string, sided(main), ...rest]);
  const what =
    felt.length === 0
      ? done
      : words.say('growth.with', { what: done, felt: listText(words, felt, 'and') });
  const row = gate.sessionsInARow ?? 1;
  if (row === 1) return words.say('growth.only-if-did', { what });
  const sessions = counted(words, 'growth.sessions', exactly(row));
  return words.say('growth.only-if-did-in-a-row', { what, sessions });
}

/** What was to be done: "at least 3 rounds of 12 times", "for at least 30 minutes". */
function didTexts(words: Words, { sets, reps, time, hold, load }: MoveOnWhen): readonly string[] {
  const least = (amount: string) => words.say('growth.at-least', { amount });
  const rounds = sets === undefined ? null : counted(words, 'amounts.rounds', exactly(sets));
  const times = reps === undefined ? null : timesText(words, exactly(reps));
  const counts =
    rounds !== null && times !== null
      ? words.say('growth.did-rounds-of', { rounds, times })
      : (rounds ?? times);
  return [
    ...(counts === null ? [] : [least(counts)]),
    ...(time ? [words.say('growth.did-for', { time: least(durationText(words, time)) })] : []),
    ...(load ? [loadText(words, load, null)] : []),
    ...(hold ? [words.say('dose.holding', { hold: least(durationText(words, hold)) })] : []),
  ];
}

function feltTexts(words: Words, { painAtMost, effortAtMost }: MoveOnWhen): readonly string[] {
  const pain = painAtMost === undefined ? null : numberText(words, painAtMost);
  const effort = effortAtMost === undefined ? null : numberText(words, effortAtMost);
  return [
    ...(pain === null ? [] : [words.say('growth.with-pain', { pain, n: painAtMost as number })]),
    ...(effort === null ? [] : [words.say('growth.with-effort', { effort })]),
  ];
}

/** Whether a week asks for no more than an earlier one, on any side, in anything that can be compared. */
function isNoMore(before: ItemWeek, after: ItemWeek): boolean {
  if (before.order !== after.order) return false;
  return (['left', 'right', 'middle'] as const).every((side) => {
    const [was, is] = [before[side], after[side]];
    if (is === null) return true;
    return was !== null && isNoMoreWork(was, is);
  });
}

function isNoMoreWork(was: SideWork, is: SideWork): boolean {
  const volumes = ['sets', 'reps', 'holdMs', 'workMs', 'volumeKg'] as const;
  if (!volumes.every((key) => isAtMost(is.volume[key], was.volume[key]))) return false;
  const [a, b] = [was.dose.values, is.dose.values];
  if (!isLoadAtMost(b.load, a.load)) return false;
  if (b.effort && !(a.effort && isAtMost(b.effort, a.effort))) return false;
  if (JSON.stringify([a.tempo, a.range, a.until]) !== JSON.stringify([b.tempo, b.range, b.until]))
    return false;
  if (!isShorter(b.hold, a.hold) || !isShorter(b.time, a.time)) return false;
  // Less rest is more to ask for.
  return isShorter(a.rest, b.rest) && isShorter(a.pause, b.pause);
}

function isAtMost(a: Interval, b: Interval): boolean {
  return a[0] <= b[0] && a[1] <= b[1];
}

function isShorter(a: Duration | undefined, b: Duration | undefined): boolean {
  if (!a) return true;
  return b !== undefined && a.unit === b.unit && isAtMost(a.range, b.range);
}

/** Only weights can be compared; another band, or another kind of load, may be more. */
function isLoadAtMost(is: SideWork['dose']['values']['load'], was: typeof is): boolean {
  if (!is || JSON.stringify(is) === JSON.stringify(was)) return true;
  if (is.kind !== 'mass' || was?.kind !== 'mass') return false;
  return is.unit === was.unit && is.pieces <= was.pieces && isAtMost(is.amount, was.amount);
}
