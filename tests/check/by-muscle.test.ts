// Sides, rises, warm-ups and stretches: what a muscle gets in a week or a session.
import { describe, expect, it } from 'vitest';
import { sharpRise } from '../../src/check/sharp-rise.ts';
import { sideBalance } from '../../src/check/side-balance.ts';
import { stretchBeforeStrength } from '../../src/check/stretch-before-strength.ts';
import { warmUpFirst } from '../../src/check/warm-up-first.ts';
import type { Purpose } from '../../src/model/exercise.ts';
import type { Item } from '../../src/model/plan.ts';
import { exactly } from '../../src/units/interval.ts';
import type { Sides } from '../../src/units/side.ts';
import {
  checkSetting,
  dose,
  easyWeeks,
  entry,
  exercise,
  type ItemParts,
  item,
  type LevelParts,
  messages,
  override,
  type PlanParts,
  part,
  partEntry,
  plan,
  practice,
  seconds,
  session,
  sessionEntry,
  subject,
} from './records.ts';

function each(sets: number, parts: ItemParts = {}, level: LevelParts = {}): Item {
  return item(exercise('heel-raise', { sides: 'each', dose: dose(sets, 10), ...level }), parts);
}

function weekOf(items: readonly Item[], more: PlanParts = {}) {
  return plan([session([part('strength', items)])], more);
}

describe('side-balance', () => {
  const told = (items: readonly Item[], more: PlanParts = {}) =>
    sideBalance(subject(weekOf(items, more)));

  it('lets exactly 25 % be, and tells of more', () => {
    // left 3 + 3, right 3 + 5 is 6 against 8: 25 %
    const both = each(3);
    expect(
      told([
        both,
        each(3, { only: 'right' }),
        each(3, { only: 'left' }),
        each(2, { only: 'right' }),
      ]),
    ).toEqual([]);
    // 6 against 9: 33 %
    const right = each(3, { only: 'right' });
    const found = told([each(6), right]);
    expect(found).toMatchObject([
      { check: 'side-balance', severity: 'warning', place: right.place },
    ]);
    expect(messages(found)).toEqual([
      '"calf" gets 9 sets on the right and 6 on the left in week 1, most of the difference from heel-raise.',
    ]);
  });

  it('lets the affected side have more, but not the other one', () => {
    expect(told([each(3, { only: 'left' })], { affected: 'left' })).toEqual([]);
    expect(told([each(3, { only: 'affected' })], { affected: 'left' })).toEqual([]);
    expect(told([each(3, { only: 'right' })], { affected: 'left' })).toHaveLength(1);
    expect(told([each(3, { only: 'left' })], { affected: 'both' })).toHaveLength(1);
  });

  it('takes "only: other" and the why of a side override for a reason', () => {
    expect(told([each(3, { only: 'other' })], { affected: 'left' })).toEqual([]);
    expect(told([each(3, { sides: override({ sets: exactly(1) }, null) })])).toEqual([]);
  });

  it('does not take the why of an override for why a side is left out', () => {
    expect(
      told([each(3, { only: 'right', sides: override(null, { effort: exactly(5) }) })]),
    ).toHaveLength(1);
  });

  it('lets a reason explain its own item and no other', () => {
    const other = each(3, { only: 'other' });
    const right = each(4, { only: 'right' });
    const found = told([other, right], { affected: 'left' });
    expect(found).toMatchObject([{ place: right.place }]);
    // the override explains 2 of the 4 sets; 9 against 11 is 18 %
    const explained = each(9, { sides: override(null, { sets: exactly(11) }) });
    expect(told([explained, each(2, { only: 'right' })])).toEqual([]);
  });

  it('follows an "only" that a later week brings', () => {
    const late = each(3, { fromWeek: [entry(3, { only: 'right' })] });
    expect(messages(told([late], { weeks: 5 }))).toEqual([
      '"calf" gets 3 sets on the right and 0 on the left in week 3, most of the difference from heel-raise.',
    ]);
    const other = each(3, { only: 'right', fromWeek: [entry(2, { only: 'other' })] });
    expect(told([other], { weeks: 3, affected: 'left' })).toHaveLength(1);
  });

  it('makes one finding of all muscles that one item puts off balance', () => {
    const muscles = { prime: ['calf', 'quad'], assist: ['glute'] };
    const found = told(
      [each(3, { only: 'right' }, { muscles }), item(exercise('walk', { muscles }))],
      {},
    );
    // calf and quad 5 against 2; glute 2.5 against 1, as much off
    expect(messages(found)).toEqual([
      '"calf" gets 5 sets on the right and 2 on the left in week 1, most of the difference from heel-raise, and 2 other muscles likewise.',
    ]);
  });

  it('takes the practice’s own number', () => {
    const by = practice({
      checks: new Map([['side-balance', checkSetting({ numbers: { off_by: 40_000 } })]]),
    });
    expect(sideBalance(subject(weekOf([each(6), each(3, { only: 'right' })]), by))).toEqual([]);
  });
});

describe('sharp-rise', () => {
  const rising = (before: number, now: number, more: PlanParts = {}, week = 2) => {
    const one = item(exercise('squat', { dose: dose(before, 10) }), {
      fromWeek: [entry(week, { dose: { sets: exactly(now) } })],
    });
    return { one, found: sharpRise(subject(weekOf([one], { weeks: week, ...more }))) };
  };

  it.each([
    [6, 9, 0, 'exactly half again'],
    [6, 10, 1, 'more than half again'],
    [3, 5, 0, 'more than half again, but exactly 2 sets'],
    [3, 6, 1, 'more than half again and more than 2 sets'],
    [10, 14, 0, 'more than 2 sets, but less than half again'],
  ])('from %i to %i sets: %i finding, %s', (before, now, count) => {
    expect(rising(before, now).found).toHaveLength(count);
  });

  it('names the muscle and side, the weeks, the item, and how many others', () => {
    const { one, found } = rising(4, 8);
    expect(found).toMatchObject([{ check: 'sharp-rise', severity: 'warning', place: one.place }]);
    expect(messages(found)).toEqual([
      '"calf" on the left goes from 4 to 8 sets from week 1 to week 2, most of it from squat; 1 more muscle or side rises as sharply.',
    ]);
  });

  it('is no rise from nothing', () => {
    const late = item(exercise('squat', { dose: dose(6, 10) }), { windows: [[2, 3]] });
    const other = item(exercise('press', { muscles: { prime: ['chest'], assist: [] } }));
    expect(sharpRise(subject(weekOf([late, other], { weeks: 3 })))).toEqual([]);
  });

  it('compares with the last week that was not easy', () => {
    // week 2 is eased to 3 sets; week 3 has 6 again, as week 1 had
    const easy = { weeks: 3, easyWeeks: easyWeeks([2], { sets: 50_000 }) };
    expect(
      sharpRise(subject(weekOf([item(exercise('squat', { dose: dose(6, 10) }))], easy))),
    ).toEqual([]);
    const { found } = rising(4, 8, easy, 3);
    expect(messages(found)[0]).toContain('from week 1 to week 3');
  });

  it('tells of the session where its days changed', () => {
    const days = session([part('strength', [item(exercise('squat', { dose: dose(3, 10) }))])], {
      id: 'legs',
      fromWeek: [sessionEntry(2, { schedule: { kind: 'days', days: ['mon', 'wed', 'fri'] } })],
    });
    const made = plan([days], { weeks: 2 });
    const found = sharpRise(subject(made));
    expect(found).toMatchObject([{ place: days.place }]);
    expect(found[0]?.scope).toEqual([made, days]);
    expect(messages(found)[0]).toBe(
      '"calf" on the left goes from 3 to 9 sets from week 1 to week 2, most of it because "legs" comes more often; 1 more muscle or side rises as sharply.',
    );
  });

  it('tells of the item where it adds more than the days do', () => {
    // 2 sets once a week to 6 sets twice: 4 - 2 = 2 by days, 12 - 4 = 8 by sets
    const one = item(exercise('squat', { dose: dose(2, 10) }), {
      fromWeek: [entry(2, { dose: { sets: exactly(6) } })],
    });
    const days = session([part('strength', [one])], {
      fromWeek: [sessionEntry(2, { schedule: { kind: 'days', days: ['mon', 'fri'] } })],
    });
    expect(sharpRise(subject(plan([days], { weeks: 2 })))).toMatchObject([{ place: one.place }]);
  });

  it('sees the rounds of a circuit', () => {
    const one = item(exercise('squat', { dose: { reps: { kind: 'same', count: exactly(10) } } }));
    const circuit = part('strength', [one], { rounds: 2, fromWeek: [partEntry(2, 5)] });
    expect(sharpRise(subject(plan([session([circuit])], { weeks: 2 })))).toMatchObject([
      { place: one.place },
    ]);
  });

  it('takes the practice’s own numbers', () => {
    const by = practice({
      checks: new Map([['sharp-rise', checkSetting({ numbers: { rise: 100_000, sets: 1 } })]]),
    });
    const rise = (now: number) => {
      const one = item(exercise('squat', { dose: dose(3, 10) }), {
        fromWeek: [entry(2, { dose: { sets: exactly(now) } })],
      });
      return sharpRise(subject(weekOf([one], { weeks: 2 }), by));
    };
    expect(rise(6)).toEqual([]);
    expect(rise(7)).toHaveLength(1);
  });
});

function purposed(id: string, purpose: Purpose): Item {
  return item(exercise(id, { purposes: [purpose] }));
}

describe('warm-up-first', () => {
  const told = (items: readonly Item[], kind: 'warm-up' | 'strength' = 'strength') =>
    warmUpFirst(subject(plan([session([part(kind, items)])], { weeks: 3 })));

  it('tells once of a session that trains first', () => {
    const squat = purposed('squat', 'strength');
    const found = told([squat, purposed('swing', 'mobility'), purposed('press', 'strength')]);
    expect(found).toMatchObject([
      { check: 'warm-up-first', severity: 'note', related: [{ place: squat.place }] },
    ]);
    expect(messages(found)).toEqual([
      '"daily" comes to squat in week 1 before anything that warms up or loosens.',
    ]);
  });

  it('tells where nothing warms up at all', () => {
    expect(
      told([
        purposed('hold', 'isometric'),
        purposed('squat', 'strength'),
        purposed('rest', 'relaxation'),
      ]),
    ).toHaveLength(1);
  });

  it('is silent after a warm-up or mobility, without strength, and below three items', () => {
    expect(
      told([
        purposed('swing', 'mobility'),
        purposed('squat', 'strength'),
        purposed('press', 'strength'),
      ]),
    ).toEqual([]);
    expect(
      told([
        purposed('march', 'warm-up'),
        purposed('squat', 'strength'),
        purposed('press', 'strength'),
      ]),
    ).toEqual([]);
    expect(
      told([
        purposed('walk', 'cardio'),
        purposed('reach', 'stretch'),
        purposed('lie', 'relaxation'),
      ]),
    ).toEqual([]);
    expect(told([purposed('squat', 'strength'), purposed('press', 'strength')])).toEqual([]);
  });

  it('takes a part called warm-up at its word', () => {
    expect(
      told(
        [purposed('squat', 'strength'), purposed('press', 'strength'), purposed('row', 'strength')],
        'warm-up',
      ),
    ).toEqual([]);
  });
});

describe('stretch-before-strength', () => {
  const stretch = (hold: number, parts: ItemParts = {}, sides: Sides = 'both', reps = 1) =>
    item(
      exercise('calf-stretch', {
        purposes: ['stretch'],
        sides,
        dose: dose(1, reps, { hold: seconds(hold, hold + 30) }),
      }),
      parts,
    );
  const strength = (parts: ItemParts = {}, sides: Sides = 'both', level: LevelParts = {}) =>
    item(exercise('heel-raise', { sides, ...level }), parts);
  const told = (...items: readonly Item[]) =>
    stretchBeforeStrength(subject(weekOf(items, { weeks: 2 })));

  it('warns at 60 s of the low end and not at 59 s', () => {
    expect(told(stretch(59), strength())).toEqual([]);
    const first = stretch(60);
    const found = told(first, strength());
    expect(found).toMatchObject([
      { check: 'stretch-before-strength', severity: 'warning', place: first.place },
    ]);
    expect(messages(found)).toEqual([
      '"calf" is stretched for 1 min before heel-raise trains it in week 1; move the stretch after it.',
    ]);
  });

  it('adds up repetitions and items', () => {
    expect(told(stretch(30, {}, 'both', 2), strength())).toHaveLength(1);
    expect(told(stretch(30), stretch(30), strength())).toHaveLength(1);
    expect(told(stretch(30), strength(), stretch(30))).toEqual([]);
  });

  it('counts a timed stretch', () => {
    const timed = item(
      exercise('calf-stretch', { purposes: ['stretch'], dose: { time: seconds(60) } }),
    );
    expect(told(timed, strength())).toHaveLength(1);
  });

  it('is silent after the strength work, and where the muscle only assists', () => {
    expect(told(strength(), stretch(90))).toEqual([]);
    expect(
      told(stretch(90), strength({}, 'both', { muscles: { prime: ['quad'], assist: ['calf'] } })),
    ).toEqual([]);
    expect(told(stretch(90), strength({}, 'both', { purposes: ['balance', 'strength'] }))).toEqual(
      [],
    );
  });

  it('keeps the sides apart; a stretch of the middle reaches both', () => {
    expect(
      told(stretch(90, { only: 'left' }, 'each'), strength({ only: 'right' }, 'each')),
    ).toEqual([]);
    expect(messages(told(stretch(90, { only: 'left' }, 'each'), strength({}, 'each')))).toEqual([
      '"calf" on the left is stretched for 1 min 30 s before heel-raise trains it in week 1; move the stretch after it.',
    ]);
    expect(
      told(
        stretch(30, { only: 'left' }, 'each'),
        stretch(30, { only: 'right' }, 'each'),
        strength(),
      ),
    ).toEqual([]);
    expect(told(stretch(60, {}, 'middle'), strength())).toHaveLength(1);
    // both sides for 30 s is not 60 s of the middle
    expect(told(stretch(30), strength({}, 'middle'))).toEqual([]);
    expect(told(stretch(60), strength({}, 'middle'))).toHaveLength(1);
  });

  it('does not look across sessions', () => {
    const apart = plan([
      session([part('stretch', [stretch(90)])]),
      session([part('strength', [strength()])], { id: 'later' }),
    ]);
    expect(stretchBeforeStrength(subject(apart))).toEqual([]);
  });

  it('knows that a circuit comes round again', () => {
    const circuit = (rounds: number) =>
      plan([
        session([
          part(
            'strength',
            [
              strength({}, 'both', { dose: { reps: { kind: 'same', count: [10, 10] } } }),
              stretchOnce(30),
            ],
            { rounds },
          ),
        ]),
      ]);
    const stretchOnce = (hold: number) =>
      item(exercise('calf-stretch', { purposes: ['stretch'], dose: { hold: seconds(hold) } }));
    // before the last round: 30 s, then 60 s
    expect(stretchBeforeStrength(subject(circuit(2)))).toEqual([]);
    expect(stretchBeforeStrength(subject(circuit(3)))).toHaveLength(1);
  });

  it('takes the practice’s own number', () => {
    const by = practice({
      checks: new Map([['stretch-before-strength', checkSetting({ numbers: { hold: 30_000 } })]]),
    });
    expect(stretchBeforeStrength(subject(weekOf([stretch(30), strength()]), by))).toHaveLength(1);
    expect(stretchBeforeStrength(subject(weekOf([stretch(29), strength()]), by))).toEqual([]);
  });
});
