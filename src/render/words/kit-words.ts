// What to put ready: the kit of the exercises and of their loads, each thing once. Of things of
// which any one will do, those that the person has; "a chair or a worktop" where that leaves a choice.
import type { Plan } from '../../model/plan.ts';
import type { Load } from '../../units/load.ts';
import type { Slot } from '../sheet/exercise-slots.ts';
import { listText, numberText, weightText } from './amounts.ts';
import { weightOfShare } from './load-words.ts';
import type { Words } from './words.ts';

/** The kit id that weights of any kind need. */
const WEIGHT = 'weight';

/** Things in words, in the order in which the exercises ask for them. */
export function kitTexts(words: Words, slots: readonly Slot[], plan: Plan): readonly string[] {
  return kitOf(words, slots, plan).map(({ text }) => text);
}

/** What later weeks need beside what is ready now; weights, which grow step by step, in one word. */
export function laterKitTexts(
  words: Words,
  now: readonly Slot[],
  later: readonly Slot[],
  plan: Plan,
): readonly string[] {
  const ready = kitTexts(words, now, plan);
  const added = kitOf(words, [...now, ...later], plan).filter(({ text }) => !ready.includes(text));
  const things = added.filter(({ isWeight }) => !isWeight).map(({ text }) => text);
  return things.length < added.length ? [...things, words.say('sheet.later-weights')] : things;
}

function kitOf(words: Words, slots: readonly Slot[], plan: Plan): readonly Thing[] {
  const groups = slots.flatMap(({ item }) => item.level.kit.map((group) => atHand(group, plan)));
  const single = new Set(groups.filter((group) => group.length === 1).map(([id]) => id as string));
  const loads = slots.flatMap((slot) => loadKit(words, slot, plan));
  // A load names its weight, so a mere "a weight" beside it would ask for one more.
  const isWeighed = loads.some(({ isWeight }) => isWeight);
  const said = groups.flatMap((group) => {
    if (group.length > 1 && group.some((id) => single.has(id))) return [];
    if (isWeighed && group.includes(WEIGHT)) return [];
    return [
      listText(
        words,
        group.map((id) => words.look('kit', id) ?? id),
        'or',
      ),
    ];
  });
  const things = [...said.map((text) => ({ text, isWeight: false })), ...loads];
  return things.filter(({ text }, at) => things.findIndex((one) => one.text === text) === at);
}

function atHand(group: readonly string[], plan: Plan): readonly string[] {
  const has = plan.limits.kit;
  const there = has === null ? [] : group.filter((id) => has.includes(id));
  return there.length > 0 ? there : group;
}

interface Thing {
  readonly text: string;
  readonly isWeight: boolean;
}

function loadKit(words: Words, { item }: Slot, plan: Plan): readonly Thing[] {
  const oneRepMax = plan.oneRepMax.get(item.item.exercise.id) ?? null;
  const things = [item.left, item.right, item.middle].flatMap((work) => {
    const load = work?.dose.values.load;
    return load ? kitOfLoad(words, load, oneRepMax) : [];
  });
  // In an order that tells nothing of the sides.
  return things.sort((a, b) => (a.text < b.text ? -1 : 1));
}

function kitOfLoad(words: Words, load: Load, oneRepMax: Load | null): readonly Thing[] {
  switch (load.kind) {
    case 'band':
      return [{ text: words.say('sheet.band', { band: words.band(load.band) }), isWeight: false }];
    case 'mass': {
      const weight = weightText(words, load.unit, load.amount);
      const count = numberText(words, load.pieces);
      const text =
        load.pieces === 1
          ? words.say('sheet.weight', { weight })
          : words.say('sheet.weights', { count, weight });
      return [{ text, isWeight: true }];
    }
    case 'percent-1rm': {
      const share = weightOfShare(load, oneRepMax);
      const weight = share && weightText(words, share.unit, share.amount);
      return [
        { text: weight ? words.say('sheet.weight', { weight }) : aWeight(words), isWeight: true },
      ];
    }
    case 'body-weight':
      return [];
    default:
      return [{ text: aWeight(words), isWeight: true }];
  }
}

function aWeight(words: Words): string {
  return words.look('kit', WEIGHT) ?? WEIGHT;
}
