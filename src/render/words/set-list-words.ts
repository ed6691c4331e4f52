// A number of its own for each set: "Do 3 rounds: 12 times in the first, 10 in the second, 8 in the
// third." Where one such line cannot say it all (sides that differ, holds, time), round by round.
import { exactly, type Interval, isExact } from '../../units/interval.ts';
import { commaText, counted, durationText, rangeText, timesText } from './amounts.ts';
import { restOf, setsOfLane } from './round-words.ts';
import { type Lane, onlySide } from './side-words.ts';
import { countOf, type DoseContext, extras, isClause, turnText } from './turn-words.ts';

/** Any count but one: what a list of reps is as a whole. */
const SEVERAL: Interval = exactly(2);

export function isList({ dose }: Lane): boolean {
  const { reps } = dose.values;
  return reps?.kind === 'list' && reps.counts.length > 1;
}

/** All sets of one lane that has a list. `side` as in its turns; null where it was said before. */
export function laneListSentences(
  context: DoseContext,
  lane: Lane,
  side: string | null,
): readonly string[] {
  const { words } = context;
  const head = listHead(context, lane, side);
  if (head !== null) return [head, ...restSentences(context, [lane])];
  const rounds = Array.from({ length: setsOfLane(lane)[1] }, (_, set) =>
    words.say('dose.list-round', {
      count: String(set + 1),
      turn: turnText(context, lane, countOf(lane.dose.values, set) ?? exactly(1), side),
    }),
  );
  return [...rounds, ...restSentences(context, [lane])];
}

/** Both sides set by set, equal: one line of numbers, then how the sides share a round. */
export function equalListSentences(
  context: DoseContext,
  left: Lane,
  right: Lane,
): readonly string[] {
  const head = listHead(context, left, null);
  if (head === null) return roundByRound(context, left, right, 'each-set');
  const sides = { left: left.side ?? '', right: right.side ?? '' };
  return [head, context.words.say('dose.list-each', sides), ...restSentences(context, [left])];
}

/** Round by round, each with what either side does in it. */
export function roundByRound(
  context: DoseContext,
  left: Lane,
  right: Lane,
  order: 'each-set' | 'each-rep',
): readonly string[] {
  const { words } = context;
  const rounds = Math.max(setsOfLane(left)[1], setsOfLane(right)[1]);
  const said = Array.from({ length: rounds }, (_, set) => {
    const turn = roundTurn(context, left, right, set, order);
    return words.say('dose.list-round', { count: String(set + 1), turn });
  });
  return [...said, ...restSentences(context, [left])];
}

type Doing = 'yes' | 'maybe' | 'no';

/** A range of sets leaves open whether a later round has this side. */
function doingIn(lane: Lane, set: number): Doing {
  const [low, high] = setsOfLane(lane);
  if (set < low) return 'yes';
  return set < high ? 'maybe' : 'no';
}

function roundTurn(
  context: DoseContext,
  left: Lane,
  right: Lane,
  set: number,
  order: 'each-set' | 'each-rep',
): string {
  const { words } = context;
  const doing = [doingIn(left, set), doingIn(right, set)] as const;
  const turn = (lane: Lane, side = lane.side) =>
    turnText(context, lane, countOf(lane.dose.values, set) ?? exactly(1), side);
  if (doing[0] === 'no') return turn(right, onlySide(right, words));
  if (doing[1] === 'no') return turn(left, onlySide(left, words));
  if (doing[0] !== doing[1]) {
    const [sure, other] = doing[0] === 'yes' ? [left, right] : [right, left];
    return words.say('dose.list-maybe', { turn: turn(sure), other: turn(other) });
  }
  if (order === 'each-rep') {
    const names = { left_side: left.name, right_side: right.name };
    return words.say('dose.in-turn-differ', { ...names, left: turn(left), right: turn(right) });
  }
  return turn(left, null) === turn(right, null)
    ? words.say('dose.then-same', { turn: turn(left), side: right.side ?? '' })
    : words.say('dose.then-differ', { left: turn(left), right: turn(right) });
}

/** "Do 3 rounds with the left leg only: 12 times in the first, …"; null where it does not suit. */
function listHead(context: DoseContext, lane: Lane, side: string | null): string | null {
  const { words } = context;
  const { reps } = lane.dose.values;
  if (reps?.kind !== 'list' || isClause(lane, SEVERAL, context)) return null;
  if (!words.has(`dose.ordinals.${reps.counts.length}`)) return null;
  const rounds = counted(words, 'amounts.rounds', exactly(reps.counts.length));
  const start =
    side === null
      ? words.say('dose.list-rounds', { rounds })
      : words.say('dose.list-rounds-side', { rounds, side });
  const head = commaText(words, [start, ...extras(context, lane, SEVERAL)]);
  const isPlain = reps.counts.every((count) => !(isExact(count) && count[0] === 1));
  const counts = reps.counts.map((count, set) => {
    const ordinal = words.say(`dose.ordinals.${set + 1}`);
    return set === 0 || !isPlain
      ? words.say('dose.list-first', { times: timesText(words, count), ordinal })
      : words.say('dose.list-next', { count: rangeText(words, count), ordinal });
  });
  return words.say('dose.list', { head, counts: commaText(words, counts) });
}

function restSentences({ words }: DoseContext, lanes: readonly Lane[]): readonly string[] {
  const rest = restOf(lanes);
  return [
    rest === null
      ? words.say('dose.list-straight')
      : words.say('dose.list-rest', { rest: durationText(words, rest) }),
  ];
}
