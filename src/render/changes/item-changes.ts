// The changes of items: what came, went, moved, was swapped or parted by side, and what each week now asks.
import { type ItemPlace, type MatchedPlan, placesOf, type Split } from '../../diff/match.ts';
import { exerciseName } from '../sheet/exercise-view.ts';
import { closed } from '../words/amounts.ts';
import { doseSentence } from '../words/dose-sentence.ts';
import type { Change, Named, Subject } from './change.ts';
import { compareFacts } from './compare-facts.ts';
import { type Fact, type Section, whole } from './fact.ts';
import { itemFacts, weeksOf } from './item-facts.ts';
import { windowsText } from './plan-facts.ts';
import { type FactSetting, firstSchedule } from './session-facts.ts';

const SHOWN: readonly Section[] = ['exercises', 'growth', 'days', 'putReady'];

export function itemChanges(
  matched: MatchedPlan,
  then: FactSetting,
  now: FactSetting,
): readonly Change[] {
  const { items, splits } = matched;
  return [
    ...items.removed.map((one) => presence(one, then, 'before')),
    ...items.added.map((one) => presence(one, now, 'after')),
    ...items.pairs.flatMap(({ before, after }) => {
      const isMoved = then.placeNow(before).session !== after.session;
      return compareFacts(
        { kind: 'item', before: named(before, then), after: named(after, now) },
        [...itemFacts(before, then), ...(isMoved ? [howOften(before, then)] : [])],
        [...itemFacts(after, now), ...(isMoved ? [howOften(after, now)] : [])],
      );
    }),
    ...splits.flatMap((split) => splitChanges(split, then, now)),
    ...orderChanges(matched, then, now),
  ];
}

/** An item that moved to another session is done as often as that one is. */
function howOften({ session }: ItemPlace, setting: FactSetting): Fact {
  return whole('days', firstSchedule(session, setting), SHOWN);
}

function named({ session, item }: ItemPlace, { words }: FactSetting): Named {
  const name = exerciseName(words, item.level);
  return {
    id: `${session.id}/${item.id}`,
    name:
      item.id === item.exercise.id ? name : words.say('changes.named-as', { name, id: item.id }),
  };
}

function presence(place: ItemPlace, setting: FactSetting, when: 'before' | 'after'): Change {
  const name = named(place, setting);
  const lines = [inFull(place, setting)];
  const isBefore = when === 'before';
  return {
    subject: { kind: 'item', before: isBefore ? name : null, after: isBefore ? null : name },
    aspect: 'presence',
    side: null,
    steps: [{ weeks: null, before: isBefore ? lines : [], after: isBefore ? [] : lines }],
    shows: SHOWN,
  };
}

/** "Strength. 8 to 12 times with the left leg, … Hold the chair." as in the first week that it is there. */
function inFull(place: ItemPlace, { plan, numbers, words }: FactSetting): string {
  const { session, part, item } = place;
  const where = words.say('changes.place', {
    session: session.name ?? session.id,
    part: part.name ?? words.say(`changes.parts.${part.kind}`),
  });
  const first = numbers && [...weeksOf(item, numbers).values()][0];
  const dose = first
    ? doseSentence({
        item: first,
        isCircuit: part.rounds !== undefined,
        words,
        oneRepMax: plan.oneRepMax.get(item.exercise.id) ?? null,
      })
    : '';
  const weeks = item.windows ? windowsText(item.windows, words) : '';
  return [where, weeks, dose, item.note === undefined ? '' : item.note]
    .filter((text) => text !== '')
    .map((text) => closed(words, text))
    .join(' ');
}

/** One item for both sides against two of a side each: the halves are compared with their side of the whole. */
function splitChanges(split: Split, then: FactSetting, now: FactSetting): readonly Change[] {
  const { whole, left, right, isJoined } = split;
  const [wholeSetting, halfSetting] = isJoined ? [now, then] : [then, now];
  const wholeFacts = itemFacts(whole, wholeSetting);
  return [
    splitChange(split, wholeSetting),
    ...(
      [
        ['left', left],
        ['right', right],
      ] as const
    ).flatMap(([side, half]) => {
      const halfFacts = itemFacts(half, halfSetting);
      const own = (facts: readonly Fact[]) =>
        facts.filter(
          (fact) =>
            fact.side === side || (fact.side === null && !OF_THE_WHOLE.includes(fact.aspect)),
        );
      const names = { whole: named(whole, wholeSetting), half: named(half, halfSetting) };
      const subject: Subject = isJoined
        ? { kind: 'item', before: names.half, after: names.whole }
        : { kind: 'item', before: names.whole, after: names.half };
      return isJoined
        ? compareFacts(subject, own(halfFacts), own(wholeFacts))
        : compareFacts(subject, own(wholeFacts), own(halfFacts));
    }),
  ];
}

/** What a split changes in any case. */
const OF_THE_WHOLE = ['side', 'order', 'sides-why'];

function splitChange({ whole, isJoined }: Split, setting: FactSetting): Change {
  const { words } = setting;
  const [one, two] = [words.say('changes.one-item'), words.say('changes.two-items')];
  const name = named(whole, setting);
  return {
    subject: { kind: 'item', before: name, after: name },
    aspect: 'split',
    side: null,
    steps: [{ weeks: null, before: [isJoined ? two : one], after: [isJoined ? one : two] }],
    shows: SHOWN,
  };
}

/** What stands in both versions of a part, in another order. */
function orderChanges(
  { parts, items }: MatchedPlan,
  then: FactSetting,
  now: FactSetting,
): readonly Change[] {
  const [before, after] = [placesOf(then.plan), placesOf(now.plan)];
  return parts.pairs.flatMap((pair) => {
    const inPart = items.pairs.filter(
      ({ before: one, after: two }) =>
        one.part === pair.before.part && two.part === pair.after.part,
    );
    const rank = (all: readonly ItemPlace[], one: ItemPlace) =>
      all.findIndex(({ item }) => item === one.item);
    const old = [...inPart].sort((a, b) => rank(before, a.before) - rank(before, b.before));
    const fresh = [...inPart].sort((a, b) => rank(after, a.after) - rank(after, b.after));
    if (old.every((one, at) => one === fresh[at])) return [];
    const partNamed = ({ session, part }: typeof pair.before): Named => ({
      id: `${session.id}/${part.kind}`,
      name: `${session.name ?? session.id}, ${part.name ?? part.kind}`,
    });
    const list = (names: readonly Named[]) => names.map(({ name }) => name).join(', ');
    return [
      {
        subject: { kind: 'part', before: partNamed(pair.before), after: partNamed(pair.after) },
        aspect: 'sequence',
        side: null,
        steps: [
          {
            weeks: null,
            before: [list(old.map((one) => named(one.before, then)))],
            after: [list(fresh.map((one) => named(one.after, now)))],
          },
        ],
        shows: SHOWN,
      } satisfies Change,
    ];
  });
}
