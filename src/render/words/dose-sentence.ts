// How much, as plain sentences that can be read in one way only: the turn, the other side, pace and
// effort, then the rounds. This file puts the sentences together; the words of a turn, of rounds and
// of a number for each set stand beside it.
import type { ItemWeek } from '../../compute/numbers.ts';
import { milliseconds } from '../../units/duration.ts';
import { exactly, type Interval } from '../../units/interval.ts';
import type { Load } from '../../units/load.ts';
import {
  commaText,
  counted,
  numbersText,
  numberText,
  sentencesText,
  thenText,
  timesText,
} from './amounts.ts';
import { afterTurn } from './effort-words.ts';
import {
  evenRounds,
  isEven,
  isOneSet,
  restOf,
  roundSentences,
  roundsAlone,
  setsOfLane,
  withRest,
} from './round-words.ts';
import { equalListSentences, isList, laneListSentences, roundByRound } from './set-list-words.ts';
import { type Lane, lanesOf } from './side-words.ts';
import {
  boutSentences,
  countOf,
  type DoseContext,
  type Extra,
  extras,
  extraTexts,
  isClause,
  isOnce,
  mainText,
  turnText,
} from './turn-words.ts';
import type { Words } from './words.ts';

export interface DoseSettings {
  readonly item: ItemWeek;
  /** Whether its part is a circuit, whose rounds the part tells. */
  readonly isCircuit: boolean;
  readonly words: Words;
  readonly oneRepMax: Load | null;
  readonly unsaid?: ReadonlySet<Extra>;
}

const ALL_SAID: ReadonlySet<Extra> = new Set();

/** The dose of an item in one week, in words. */
export function doseSentence(settings: DoseSettings): string {
  return sentencesText(settings.words, dosePieces(settings));
}

/**
 * The same in its pieces, each at a place of its own and empty where nothing is said: the turns of all
 * sides, pace, how far, effort, when to stop, rounds. What names a side is never apart from its numbers.
 */
export function dosePieces(settings: DoseSettings): readonly string[] {
  const { item, isCircuit, words } = settings;
  const context = contextOf(settings);
  const lanes = lanesOf(item, words);
  const after = afterTurn(words, lanes, item.level.tempoWords);
  const pieces = (turns: readonly string[], rounds: readonly string[]) => [
    sentencesText(words, turns),
    ...after,
    sentencesText(words, rounds),
  ];
  if (isCircuit) {
    const [first = '', ...more] = oneRound(context, lanes, item);
    return pieces([words.say('dose.in-round', { text: first }), ...more], []);
  }
  if (isBySide(item, lanes)) return pieces(sideBySide(context, lanes as Pair), []);
  if (lanes.some(isList)) return pieces(lists(context, lanes, item), []);
  return pieces(oneRound(context, lanes, item), roundSentences(words, lanes));
}

function contextOf({ item, words, oneRepMax, unsaid = ALL_SAID }: DoseSettings): DoseContext {
  return { words, purpose: item.level.purposes[0] ?? 'strength', oneRepMax, unsaid };
}

function isBySide(item: ItemWeek, lanes: readonly Lane[]): boolean {
  return item.order === 'all-sets' && lanes.length === 2 && !lanes.every(isOneSet);
}

/** What follows the turns, by side and kind: to tell what of it has changed. */
export function doseExtras(
  settings: DoseSettings,
): ReadonlyMap<string, ReadonlyMap<Extra, string>> {
  const context = contextOf(settings);
  const lanes = lanesOf(settings.item, settings.words);
  return new Map(
    lanes.map((lane) => {
      const count = countOf(lane.dose.values, 0) ?? exactly(1);
      const extras = extraTexts(context, lane, count);
      // A pause that a single time has no room for is not taken away.
      return [lane.name, isOnce(count) ? new Map([...extras, ['pause', '']]) : extras] as const;
    }),
  );
}

/** The rounds alone, for a place where the turn is known; null where they say more than one number. */
export function roundsPiece({ item, isCircuit, words }: DoseSettings): string | null {
  const lanes = lanesOf(item, words);
  const [first] = lanes;
  const isApart = !isCircuit && !isBySide(item, lanes) && !lanes.some(isList);
  if (!first || !isApart || !isEven(lanes)) return null;
  return roundsAlone(words, setsOfLane(first), restOf(lanes));
}

/** Whether every side does an item once in a session, so that no word tells of its rounds. */
export function isOnceThrough(item: ItemWeek, words: Words): boolean {
  return lanesOf(item, words).every(isOneSet);
}

/** A circuit, over its part: "Exercises 1 and 2 go together: do 1, then 2. That is one round. …" */
export function togetherSentence(
  words: Words,
  numbers: readonly number[],
  rounds: number,
  restMs: Interval,
): string {
  const texts = numbers.map((number) => numberText(words, number));
  const together =
    numbers.length === 1
      ? words.say('dose.together-one', { number: texts[0] ?? '' })
      : words.say('dose.together', {
          numbers: numbersText(words, numbers),
          order: thenText(words, texts),
        });
  const rest = restMs[1] === 0 ? null : milliseconds(restMs);
  const once = rounds === 1 ? [words.say('dose.together-once')] : [];
  return sentencesText(words, [together, ...once, ...evenRounds(words, exactly(rounds), rest)]);
}

type Pair = readonly [left: Lane, right: Lane];

/** The turns of one round, as sentences. */
function oneRound(context: DoseContext, lanes: readonly Lane[], item: ItemWeek): readonly string[] {
  const [first, second] = lanes;
  if (!first) return [];
  const { words } = context;
  const count = countOf(first.dose.values, 0) ?? exactly(1);
  if (second) return twoSides(context, [first, second], item.order === 'each-rep');
  if (first.dose.values.time) return boutSentences(context, first, count);
  return [words.say('text.sentence', { text: turnText(context, first, count) })];
}

function twoSides(
  context: DoseContext,
  [left, right]: Pair,
  isRepByRep: boolean,
): readonly string[] {
  const { words } = context;
  const counts = [countOf(left.dose.values, 0), countOf(right.dose.values, 0)].map(
    (one) => one ?? exactly(1),
  );
  const [countLeft, countRight] = counts as [Interval, Interval];
  const plain = turnText(context, left, countLeft, null);
  const isEqual = plain === turnText(context, right, countRight, null);
  const ended = (text: string) => words.say('text.sentence', { text });
  const leftTurn = turnText(context, left, countLeft);
  const rightTurn = turnText(context, right, countRight);
  if (isRepByRep) {
    if (isEqual) return [ended(inTurn(context, left, right, countLeft))];
    const names = { left_side: left.name, right_side: right.name };
    return [
      ended(words.say('dose.in-turn-differ', { ...names, left: leftTurn, right: rightTurn })),
    ];
  }
  if (isClause(left, countLeft, context) || isClause(right, countRight, context)) {
    const next = isEqual
      ? words.say('dose.clause-same', { side: right.side ?? '' })
      : words.say('dose.clause-differ', { turn: rightTurn });
    return [ended(leftTurn), next];
  }
  return [
    ended(
      isEqual
        ? words.say('dose.then-same', { turn: leftTurn, side: right.side ?? '' })
        : words.say('dose.then-differ', { left: leftTurn, right: rightTurn }),
    ),
  ];
}

/** "Left knee and right knee in turn, 10 times each, holding for 5 seconds each time". */
function inTurn(context: DoseContext, left: Lane, right: Lane, count: Interval): string {
  const { words } = context;
  const names = { left: left.name, right: right.name };
  const main = isClause(left, count, context)
    ? words.say('dose.in-turn-clause', {
        ...names,
        turn: mainText(context, left.dose.values, count, null),
      })
    : words.say('dose.in-turn', { ...names, times: timesText(words, count) });
  return commaText(words, [main, ...extras(context, left, count)]);
}

/** All sets of the left, then all of the right. */
function sideBySide(context: DoseContext, [left, right]: Pair): readonly string[] {
  const { words } = context;
  const first = allSets(context, left);
  const second = allSets(context, right);
  const isEqual = first.join(' ') === second.join(' ');
  const next = isEqual
    ? [words.say('dose.clause-same', { side: right.side ?? '' })]
    : introduced(words, 'next', right.the, second, isList(right));
  return [...introduced(words, 'first', left.name, first, isList(left)), ...next];
}

function introduced(
  words: Words,
  which: 'first' | 'next',
  side: string,
  work: readonly string[],
  isListed: boolean,
): readonly string[] {
  if (isListed) return [words.say(`dose.side-${which}-alone`, { side }), ...work];
  return [words.say(`dose.side-${which}`, { side, work: work[0] ?? '' })];
}

/** "3 rounds of 8 times, with 45 seconds of rest in between": one side's sets, the side not said. */
function allSets(context: DoseContext, lane: Lane): readonly string[] {
  if (isList(lane)) return laneListSentences(context, lane, null);
  const { words } = context;
  const count = countOf(lane.dose.values, 0) ?? exactly(1);
  const turn = turnText(context, lane, count, null);
  if (isOneSet(lane)) return [turn];
  const rounds = counted(words, 'amounts.rounds', setsOfLane(lane));
  const key = isClause(lane, count, context) || isOnce(count) ? 'dose.sets-clause' : 'dose.sets-of';
  return [withRest(words, key, restOf([lane]), { rounds, turn })];
}

function lists(context: DoseContext, lanes: readonly Lane[], item: ItemWeek): readonly string[] {
  const [left, right] = lanes;
  if (!left) return [];
  if (!right) return laneListSentences(context, left, left.side);
  if (item.order === 'each-rep') return roundByRound(context, left, right, 'each-rep');
  const isEqual =
    laneListSentences(context, left, null).join() ===
    laneListSentences(context, right, null).join();
  return isEqual
    ? equalListSentences(context, left, right)
    : roundByRound(context, left, right, 'each-set');
}
