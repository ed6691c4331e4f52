// The facts of an item: what it asks of each side in each week, and the rules written for it. Told by
// what comes of all layers, so a change of a climb or of the library shows in the weeks that it reaches.
import type { ItemWeek, PlanNumbers, SideWork } from '../../compute/numbers.ts';
import type { ItemPlace } from '../../diff/match.ts';
import type { Dial, DoseKey, DoseLayer } from '../../model/dose.ts';
import type { Item } from '../../model/plan.ts';
import { THOUSANDTHS } from '../../units/number.ts';
import { DOSE_KEYS, durationShown, valueShown } from '../record/clinic-dose.ts';
import { plainNumber } from '../words/plain-number.ts';
import type { Words } from '../words/words.ts';
import { byWeek, type Fact, type Section, whole } from './fact.ts';
import { gateText } from './gate-text.ts';
import { DATED, windowsText } from './plan-facts.ts';
import type { FactSetting } from './session-facts.ts';

const SHOWN: readonly Section[] = ['exercises', 'growth', 'days', 'putReady'];
const LANES = ['left', 'right'] as const;

export function itemFacts(place: ItemPlace, setting: FactSetting): readonly Fact[] {
  const { session, part, item } = place;
  const { numbers, words, idNow } = setting;
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
      item.climbEvery === undefined ? null : plainNumber(item.climbEvery, 0, words),
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
  const layers: readonly [Fact['side'], DoseLayer | null | undefined][] = [
    [null, item.dose],
    ['left', item.sides?.left],
    ['right', item.sides?.right],
  ];
  return [
    whole('level', item.level.name ?? item.level.id, SHOWN),
    whole('side', item.only ?? item.level.sides, SHOWN),
    ...layers.flatMap(([side, layer]) =>
      DOSE_KEYS.map((key) => ({
        ...whole(
          key,
          layer?.values[key] === undefined ? null : valueShown(key, layer.values, words),
          SHOWN,
        ),
        side,
      })),
    ),
    whole('note', item.note, SHOWN),
  ];
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
