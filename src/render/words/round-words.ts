// Rounds in words: how often the turns of an item come, and the rest in between. One set says
// nothing of either. Sides with unequal sets: the fewer together, then the extra ones by name.
import type { Duration } from '../../units/duration.ts';
import { exactly, type Interval, isExact, isSame } from '../../units/interval.ts';
import { counted, durationText, isNone } from './amounts.ts';
import { type Lane, onlySide } from './side-words.ts';
import type { Words } from './words.ts';

const ONE = exactly(1);

export function setsOfLane({ dose }: Lane): Interval {
  const { reps, sets } = dose.values;
  if (reps?.kind === 'list') return exactly(reps.counts.length);
  return sets ?? ONE;
}

export function isOneSet(lane: Lane): boolean {
  return setsOfLane(lane)[1] === 1;
}

/** The rest of an item, which is the same for every side; null where sets follow at once. */
export function restOf(lanes: readonly Lane[]): Duration | null {
  const rest = lanes[0]?.dose.values.rest;
  return rest && !isNone(rest) ? rest : null;
}

/** A pattern with the rest filled in, or its `-straight` sister where there is none. */
export function withRest(
  words: Words,
  key: string,
  rest: Duration | null,
  values: Record<string, string | number>,
): string {
  return rest === null
    ? words.say(`${key}-straight`, values)
    : words.say(key, { ...values, rest: durationText(words, rest) });
}

/** Whether all sides do as many rounds. */
export function isEven(lanes: readonly Lane[]): boolean {
  return lanes.every((lane) => isSame(setsOfLane(lane), setsOfLane(lanes[0] as Lane)));
}

/** "Do 2 rounds, with 1 minute of rest in between": where it is known what a round is. */
export function roundsAlone(words: Words, sets: Interval, rest: Duration | null): string {
  if (sets[1] === 1) return words.say('growth.one-round');
  const rounds = counted(words, 'amounts.rounds', sets);
  return withRest(words, 'growth.rounds', rest, { rounds });
}

/** "That is one round. Do 2 rounds, with 1 minute of rest in between." */
export function roundSentences(words: Words, lanes: readonly Lane[]): readonly string[] {
  const [first, second] = lanes;
  if (!first) return [];
  const rest = restOf(lanes);
  if (!second || isEven(lanes)) return evenRounds(words, setsOfLane(first), rest);
  return unevenRounds(words, first, second, rest);
}

/** Rounds of a known number, also a circuit's. */
export function evenRounds(words: Words, sets: Interval, rest: Duration | null): readonly string[] {
  if (sets[1] === 1) return [];
  return [withRest(words, 'dose.round', rest, { rounds: counted(words, 'amounts.rounds', sets) })];
}

function unevenRounds(
  words: Words,
  left: Lane,
  right: Lane,
  rest: Duration | null,
): readonly string[] {
  const sets = [setsOfLane(left), setsOfLane(right)] as const;
  if (!isExact(sets[0]) || !isExact(sets[1])) {
    const rounds = (lane: Lane) =>
      words.say('dose.side-rounds', {
        rounds: counted(words, 'amounts.rounds', setsOfLane(lane)),
        side: lane.side ?? '',
      });
    return [withRest(words, 'dose.uneven', rest, { left: rounds(left), right: rounds(right) })];
  }
  const fewer = Math.min(sets[0][0], sets[1][0]);
  const more = sets[0][0] > sets[1][0] ? left : right;
  const extra = Math.abs(sets[0][0] - sets[1][0]);
  const shared =
    fewer === 1 ? [words.say('dose.round-one')] : evenRounds(words, exactly(fewer), rest);
  const key = extra === 1 ? 'dose.extra' : 'dose.extra-many';
  const said = {
    extra: counted(words, 'amounts.extra-rounds', exactly(extra)),
    side: onlySide(more, words),
  };
  return [...shared, withRest(words, key, rest, said)];
}
