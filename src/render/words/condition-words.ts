// When a step may be taken: a step within a level if the last one felt right, a change of level only
// by its own rule, a later exercise by what the plan says. Going easier has no condition.
import type { ItemWeek, SideWork } from '../../compute/numbers.ts';
import type { MoveOnWhen } from '../../model/dose.ts';
import type { Duration } from '../../units/duration.ts';
import { exactly, type Interval } from '../../units/interval.ts';
import { commaText, counted, durationText, listText, numberText, timesText } from './amounts.ts';
import { loadText } from './load-words.ts';
import type { Words } from './words.ts';

export function ifLastStep(words: Words): string {
  return words.say('growth.if-last-step');
}

/** The condition of a step within a level; null where the step asks for no more than before. */
export function stepCondition(words: Words, before: ItemWeek, after: ItemWeek): string | null {
  return isNoMore(before, after) ? null : ifLastStep(words);
}

/** The condition of a change of level; null where it goes back to an easier one. */
export function levelCondition(
  words: Words,
  before: ItemWeek,
  after: ItemWeek,
  number: number,
): string | null {
  const { levels } = after.item.exercise;
  const at = (item: ItemWeek) => levels.findIndex(({ id }) => id === item.level.id);
  if (at(after) < at(before)) return null;
  const gate = after.advance === 'by-week' ? null : before.moveOnWhen;
  return (gate && gateText(words, gate, before, number)) ?? ifLastStep(words);
}

/** The condition of an exercise that comes later: its own, or that the last step felt right. */
export function startCondition(words: Words, { item }: ItemWeek): string {
  return item.startWhen === null
    ? ifLastStep(words)
    : words.say('growth.only-if', { condition: item.startWhen.trim().replace(/[.。]$/u, '') });
}

/** "only if you did 10 times, with an effort of 5 or less out of 10, in 3 sessions in a row". */
function gateText(words: Words, gate: MoveOnWhen, item: ItemWeek, number: number): string | null {
  const isTwoSided = item.sides === 'each' && item.left !== null && item.right !== null;
  const it = words.say('growth.did-it', { number: numberText(words, number) });
  const did = didText(words, gate, isTwoSided, it);
  const felt = [
    ...(gate.painAtMost === undefined
      ? []
      : [words.say('growth.with-pain', { pain: numberText(words, gate.painAtMost) })]),
    ...(gate.effortAtMost === undefined
      ? []
      : [words.say('growth.with-effort', { effort: numberText(words, gate.effortAtMost) })]),
  ];
  if (did === null && felt.length === 0 && gate.sessionsInARow === undefined) return null;
  const done = did ?? onEachSide(words, it, isTwoSided);
  const what =
    felt.length === 0
      ? done
      : words.say('growth.with', { what: done, felt: listText(words, felt, 'and') });
  const row = gate.sessionsInARow ?? 1;
  if (row === 1) return words.say('growth.only-if-did', { what });
  return words.say('growth.only-if-did-in-a-row', {
    what,
    sessions: counted(words, 'growth.sessions', exactly(row)),
  });
}

/** What was to be done: "3 rounds of 12 times, holding for 5 seconds each time". */
function didText(words: Words, gate: MoveOnWhen, isTwoSided: boolean, it: string): string | null {
  const { sets, reps, time, hold, load } = gate;
  const rounds = sets === undefined ? null : counted(words, 'amounts.rounds', exactly(sets));
  const times = reps === undefined ? null : timesText(words, exactly(reps));
  const counts =
    rounds !== null && times !== null
      ? words.say('growth.did-rounds-of', { rounds, times })
      : (rounds ?? times);
  const extras = [
    ...(load ? [loadText(words, load, null)] : []),
    ...(hold ? [words.say('dose.holding', { hold: durationText(words, hold) })] : []),
  ];
  if (counts === null && !time && extras.length === 0) return null;
  const what = counts ?? it;
  const main = time ? words.say('growth.did-for', { what, time: durationText(words, time) }) : what;
  return commaText(words, [onEachSide(words, main, isTwoSided), ...extras]);
}

/** What counts for one side counts for both, where both do it. */
function onEachSide(words: Words, what: string, isTwoSided: boolean): string {
  return isTwoSided ? words.say('growth.did-each-side', { what }) : what;
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
