// The facts of an item: what it asks of each side in each week, and the rules written for it. Told by
// what comes of all layers, so a change of a climb or of the library shows in the weeks that it reaches.
import type { ItemWeek, PlanNumbers, SideWork } from '../../compute/numbers.ts';
import type { ItemPlace } from '../../diff/match.ts';
import type { Dial, DoseKey, DoseLayer } from '../../model/dose.ts';
import type { Item, ItemEntry, ItemSettings } from '../../model/plan.ts';
import { THOUSANDTHS } from '../../units/number.ts';
import { DOSE_KEYS, durationShown, valueShown } from '../record/clinic-dose.ts';
import { plainNumber } from '../words/plain-number.ts';
import type { Words } from '../words/words.ts';
import { aspectLine } from './aspect-line.ts';
import { byWeek, type Fact, type Section, whole } from './fact.ts';
import { gateText } from './gate-text.ts';
import { DATED, windowsText } from './plan-facts.ts';
import type { FactSetting } from './session-facts.ts';

const SHOWN: readonly Section[] = ['exercises', 'growth', 'days', 'putReady'];
const LANES = ['left', 'right'] as const;

export function itemFacts(place: ItemPlace, setting: FactSetting): readonly Fact[] {
  const { item } = place;
  const { numbers, words, idNow } = setting;
  const { session, part } = setting.placeNow(place);
  const rules = [
    whole(
      'place',
      words.say('changes.place', {
        session: session.name ?? session.id,
        part: part.name ?? words.say(`changes.parts.${part.kind}`),
      }),
      SHOWN,
    ),
    whole('in-weeks', item.windows && windowsText(item.windows, words), DATED),
    whole('start-when', item.startWhen, ['growth']),
    whole('climb', item.climb?.map((dial) => dialText(dial, words)) ?? [], ['growth']),
    whole(
      'climb-every',
      item.climb && item.climb.length > 0 ? everyText(item.climbEvery ?? 1, words) : null,
      ['growth'],
    ),
  ];
  const { id, name } = item.exercise;
  return [
    ...rules,
    whole('exercise', `${name} (${idNow(id)})`, SHOWN),
    ...(numbers ? weekFacts(item, numbers, words) : writtenFacts(place, words)),
  ];
}

/** "every 2 weeks". */
function everyText(weeks: number, words: Words): string {
  return words.say('changes.every-weeks', { n: weeks, count: plainNumber(weeks, 0, words) });
}

function weekFacts(item: Item, numbers: PlanNumbers, words: Words): readonly Fact[] {
  const weeks = weeksOf(item, numbers);
  const inWeeks = (text: (week: ItemWeek) => string) =>
    new Map([...weeks].map(([week, one]) => [week, text(one)] as const));
  return [
    byWeek(
      'level',
      inWeeks(({ level }) => level.name ?? level.id),
      SHOWN,
    ),
    byWeek(
      'side',
      inWeeks((week) => words.say(`changes.sides.${sidesDone(week)}`)),
      SHOWN,
    ),
    byWeek(
      'order',
      inWeeks((week) => orderText(week, words)),
      SHOWN,
    ),
    ...LANES.flatMap((side) =>
      DOSE_KEYS.map((key) => byWeek(key, laneWeeks(weeks, side, key, words), showsOf(key), side)),
    ),
    byWeek(
      'note',
      inWeeks(({ note }) => note ?? ''),
      SHOWN,
    ),
    byWeek(
      'sides-why',
      inWeeks(({ overrides }) => overrides?.why ?? ''),
      [],
    ),
    byWeek(
      'priority',
      inWeeks(({ priority }) => words.say(`changes.priorities.${priority}`)),
      [],
    ),
    byWeek(
      'gate',
      inWeeks(({ moveOnWhen }) => (moveOnWhen ? gateText(moveOnWhen, words) : '')),
      ['growth'],
    ),
    byWeek(
      'advance',
      inWeeks(({ advance }) => words.say(`changes.advances.${advance}`)),
      ['growth'],
    ),
  ];
}

/** How long a movement takes is never said; it only lengthens the session. */
function showsOf(key: DoseKey): readonly Section[] {
  return key === 'move' ? ['days', 'growth'] : SHOWN;
}

export function weeksOf(item: Item, { weeks }: PlanNumbers): ReadonlyMap<number, ItemWeek> {
  return new Map(
    weeks.flatMap(({ week, sessions }) => {
      const there = sessions
        .flatMap(({ parts }) => parts.flatMap(({ items }) => items))
        .find((one) => one.item === item);
      return there ? [[week, there] as const] : [];
    }),
  );
}

/** `each`, `both`, `middle`, or the only side of an `each`. */
function sidesDone({
  sides,
  left,
  right,
}: ItemWeek): 'each' | 'both' | 'middle' | 'left' | 'right' {
  if (sides !== 'each' || (left && right)) return sides;
  return left ? 'left' : 'right';
}

function orderText({ sides, left, right, order }: ItemWeek, words: Words): string {
  return sides === 'each' && left && right ? words.say(`changes.orders.${order}`) : '';
}

/** What has no sides is told as of both: then the two lines are one. */
function laneWeeks(
  weeks: ReadonlyMap<number, ItemWeek>,
  side: 'left' | 'right',
  key: DoseKey,
  words: Words,
): ReadonlyMap<number, string> {
  return new Map(
    [...weeks].flatMap(([week, item]) => {
      const work: SideWork | null = item[side] ?? item.middle;
      if (!work) return [];
      const { values } = work.dose;
      return [[week, values[key] === undefined ? '' : valueShown(key, values, words)] as const];
    }),
  );
}

/** Without numbers: what the plan's own lines say, layer by layer. */
function writtenFacts({ item }: ItemPlace, words: Words): readonly Fact[] {
  return [
    whole('level', item.level.name ?? item.level.id, SHOWN),
    whole('side', item.only ?? item.level.sides, SHOWN),
    whole('order', item.order && words.say(`changes.orders.${item.order}`), SHOWN),
    ...layersOf(item).flatMap(([side, layer]) =>
      DOSE_KEYS.map((key) => ({ ...whole(key, writtenValue(layer, key, words), SHOWN), side })),
    ),
    whole('sides-why', item.sides?.why, []),
    whole('note', item.note, SHOWN),
    whole('priority', item.priority && words.say(`changes.priorities.${item.priority}`), []),
    whole('gate', item.moveOnWhen && gateText(item.moveOnWhen, words), ['growth']),
    whole('advance', item.advance && words.say(`changes.advances.${item.advance}`), ['growth']),
    whole(
      'from-week',
      item.fromWeek.map((entry) => entryText(entry, words)),
      SHOWN,
    ),
  ];
}

type Layers = readonly (readonly [Fact['side'], DoseLayer | null | undefined])[];

function layersOf({ dose, sides }: ItemSettings): Layers {
  return [
    [null, dose],
    ['left', sides?.left],
    ['right', sides?.right],
  ];
}

function writtenValue(layer: DoseLayer | null | undefined, key: DoseKey, words: Words) {
  if (layer?.unset.includes(key)) return words.say('changes.unset');
  return layer?.values[key] === undefined ? null : valueShown(key, layer.values, words);
}

/** "week 4: level one leg, sets 2". */
function entryText(entry: ItemEntry, words: Words): string {
  const named = (aspect: string, value: string | null | undefined, side: Fact['side'] = null) =>
    value === null || value === undefined ? [] : [aspectLine(aspect, side, value, words)];
  const said = [
    ...named('level', entry.level && (entry.level.name ?? entry.level.id)),
    ...named('side', entry.only),
    ...named('order', entry.order && words.say(`changes.orders.${entry.order}`)),
    ...layersOf(entry).flatMap(([side, layer]) =>
      DOSE_KEYS.flatMap((key) => named(key, writtenValue(layer, key, words), side)),
    ),
    ...named('note', entry.note),
    ...named('priority', entry.priority && words.say(`changes.priorities.${entry.priority}`)),
    ...named('gate', entry.moveOnWhen && gateText(entry.moveOnWhen, words)),
    ...named('advance', entry.advance && words.say(`changes.advances.${entry.advance}`)),
    ...named(
      'climb',
      entry.climb &&
        (entry.climb.map((dial) => dialText(dial, words)).join('; ') || words.say('changes.unset')),
    ),
    ...named(
      'climb-every',
      entry.climbEvery === undefined ? null : everyText(entry.climbEvery, words),
    ),
  ];
  const week = words.say('changes.week', { week: String(entry.week) });
  return [week, ...said].join('; ');
}

/** "reps by 2 to 14, then sets start again". */
function dialText(dial: Dial, words: Words): string {
  const aspect = words.say(`changes.aspects.${dial.key}`);
  const text = words.say('changes.dial', { aspect, rule: dialRule(dial, words) });
  if (dial.restart.length === 0) return text;
  const again = dial.restart.map((key) => words.say(`changes.aspects.${key}`)).join(', ');
  return words.say('changes.dial-restart', { text, again });
}

function dialRule(dial: Dial, words: Words): string {
  const by = (step: string, to: string) => words.say('changes.dial-by', { by: step, to });
  const thousandths = (n: number) => plainNumber(n / THOUSANDTHS, 3, words);
  switch (dial.kind) {
    case 'number':
      return by(plainNumber(dial.by, 1, words), plainNumber(dial.to, 1, words));
    case 'duration':
      return by(durationShown(dial.by, words), durationShown(dial.to, words));
    case 'mass': {
      const step =
        'by' in dial.step
          ? `${thousandths(dial.step.by)} ${dial.unit}`
          : `${words.say('clinic.percent', { number: thousandths(dial.step.byPercent) })} (${thousandths(dial.step.round)} ${dial.unit})`;
      return by(step, `${thousandths(dial.to)} ${dial.unit}`);
    }
    case 'percent':
      return by(
        words.say('clinic.percent', { number: thousandths(dial.by) }),
        words.say('clinic.percent', { number: thousandths(dial.to) }),
      );
    case 'band':
    case 'level':
      return words.say('changes.dial-through', { through: dial.through.join(', ') });
  }
}
