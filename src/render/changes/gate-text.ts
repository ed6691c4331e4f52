// When a level is done with, in the trade's short words: "reps 12, pain at most 3, 2 sessions in a row".
import type { MoveOnWhen } from '../../model/dose.ts';
import { formatLoad } from '../../units/load.ts';
import { durationShown } from '../record/clinic-dose.ts';
import { plainNumber } from '../words/plain-number.ts';
import type { Words } from '../words/words.ts';

export function gateText(gate: MoveOnWhen, words: Words): string {
  const { reps, sets, hold, time, load, painAtMost, effortAtMost, sessionsInARow } = gate;
  const count = (aspect: string, n: number | undefined) =>
    n === undefined ? [] : [named(aspect, plainNumber(n, 1, words))];
  const named = (aspect: string, value: string) =>
    words.say('changes.named', { aspect: words.say(`changes.aspects.${aspect}`), value });
  return [
    ...count('sets', sets),
    ...count('reps', reps),
    ...(hold ? [named('hold', durationShown(hold, words))] : []),
    ...(time ? [named('time', durationShown(time, words))] : []),
    ...(load ? [named('load', formatLoad(load))] : []),
    ...count('pain-at-most', painAtMost),
    ...count('effort-at-most', effortAtMost),
    ...count('sessions-in-a-row', sessionsInARow),
  ].join(', ');
}
