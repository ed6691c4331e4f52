// Concerns, kit, positions: what an exercise asks for against what a plan says, by item.
import { describe, expect, it } from 'vitest';
import { concernConflict } from '../../src/check/concern-conflict.ts';
import { kitMissing } from '../../src/check/kit-missing.ts';
import { positionAvoided } from '../../src/check/position-avoided.ts';
import type { Exercise } from '../../src/model/exercise.ts';
import type { Load } from '../../src/units/load.ts';
import {
  dose,
  entry,
  exercise,
  type ItemParts,
  item,
  kg,
  messages,
  type PlanParts,
  part,
  plan,
  session,
  subject,
} from './records.ts';

function onePlan(of: Exercise, more: PlanParts = {}, parts: ItemParts = {}) {
  const only = item(of, parts);
  const strength = part('strength', [only]);
  const day = session([strength]);
  return { only, strength, day, plan: plan([day], more) };
}

describe('concern-conflict', () => {
  const limits = { concerns: ['new-lens'] };

  it('tells of a demand and of a position that the concern limits, in one finding', () => {
    const both = exercise('bridge', { demands: ['head-down', 'balance'], position: 'prone' });
    const made = onePlan(both, { limits });
    const [one, ...more] = concernConflict(subject(made.plan));
    expect(more).toEqual([]);
    expect(one).toMatchObject({
      check: 'concern-conflict',
      severity: 'warning',
      message:
        'bridge asks for "head-down" (week 1) and is done in "prone" (week 1), which the concern "new-lens" limits.',
      place: made.only.place,
      related: [{ place: both.place }],
    });
    expect(one?.scope).toEqual([made.plan, made.day, made.strength, made.only]);
  });

  it('names the first week of a level that comes later', () => {
    const later = exercise('bridge', {}, { demands: ['head-down'] });
    const fromWeek = [entry(3, { level: later.levels[1] })];
    const made = onePlan(later, { limits, weeks: 6 }, { fromWeek });
    expect(messages(concernConflict(subject(made.plan)))).toEqual([
      'bridge (level-2) asks for "head-down" (week 3), which the concern "new-lens" limits.',
    ]);
  });

  it('is silent without the concern, and where nothing conflicts', () => {
    const risky = exercise('bridge', { demands: ['head-down'] });
    expect(concernConflict(subject(onePlan(risky).plan))).toEqual([]);
    expect(concernConflict(subject(onePlan(exercise('walk'), { limits }).plan))).toEqual([]);
  });
});

describe('kit-missing', () => {
  it('takes any one of an inner list', () => {
    const leaning = exercise('heel-raise', { kit: [['chair', 'worktop'], ['step']] });
    const has = (...kit: string[]) =>
      messages(kitMissing(subject(onePlan(leaning, { limits: { kit } }).plan)));
    expect(has('worktop', 'step')).toEqual([]);
    expect(has('step')).toEqual([
      'heel-raise needs "chair" or "worktop" (week 1), and the plan\'s "kit" does not list it.',
    ]);
    expect(has()).toEqual([
      'heel-raise needs "chair" or "worktop" (week 1) and "step" (week 1), and the plan\'s "kit" does not list it.',
    ]);
  });

  it('is silent where the plan leaves kit out: anything is there', () => {
    expect(kitMissing(subject(onePlan(exercise('x', { kit: [['step']] })).plan))).toEqual([]);
  });

  it.each<[string, Load, readonly string[], boolean]>([
    ['kilograms need weight', kg(4), [], true],
    ['kilograms with weight', kg(4), ['weight'], false],
    ['rm needs weight', { kind: 'rm', reps: [8, 8] }, [], true],
    ['a share of 1rm needs weight', { kind: 'percent-1rm', percent: [70_000, 70_000] }, [], true],
    ['a band needs itself', { kind: 'band', band: 'medium band' }, ['light band', 'weight'], true],
    ['a band that is there', { kind: 'band', band: 'medium band' }, ['medium band'], false],
    ['body weight needs nothing', { kind: 'body-weight', percent: null }, [], false],
  ])('%s', (_, load, kit, isTold) => {
    const loaded = exercise('row', { dose: dose(2, 10, { load }) });
    expect(kitMissing(subject(onePlan(loaded, { limits: { kit } }).plan))).toHaveLength(
      isTold ? 1 : 0,
    );
  });

  it('sees a load that only a later week brings', () => {
    const fromWeek = [entry(4, { dose: { load: { kind: 'band', band: 'heavy band' } } })];
    const made = onePlan(exercise('row'), { limits: { kit: [] }, weeks: 6 }, { fromWeek });
    const [message] = messages(kitMissing(subject(made.plan)));
    expect(message).toContain('"heavy band" (week 4)');
  });
});

describe('position-avoided', () => {
  it('tells of the item whose level takes the position, with its first week', () => {
    const kneel = exercise('reach', {}, { position: 'kneeling' });
    const fromWeek = [entry(2, { level: kneel.levels[1] })];
    const made = onePlan(
      kneel,
      { limits: { positionsToAvoid: ['kneeling'] }, weeks: 3 },
      { fromWeek },
    );
    const found = positionAvoided(subject(made.plan));
    expect(found).toMatchObject([{ check: 'position-avoided', place: made.only.place }]);
    expect(messages(found)).toEqual([
      'reach (level-2) is done in "kneeling" (week 2), which the plan says to avoid.',
    ]);
  });

  it('is silent for other positions', () => {
    const made = onePlan(exercise('reach'), { limits: { positionsToAvoid: ['kneeling'] } });
    expect(positionAvoided(subject(made.plan))).toEqual([]);
  });

  it('is silent for a level outside the weeks of its item', () => {
    const kneel = exercise('reach', {}, { position: 'kneeling' });
    const parts = { windows: [[1, 2]] as const, fromWeek: [entry(3, { level: kneel.levels[1] })] };
    const made = onePlan(kneel, { limits: { positionsToAvoid: ['kneeling'] }, weeks: 4 }, parts);
    expect(positionAvoided(subject(made.plan))).toEqual([]);
  });
});
