// Bounds, time, gates and easy weeks: what a dose comes to against what is sensible, possible or meant.
import { describe, expect, it } from 'vitest';
import { easyWeekEmpty } from '../../src/check/easy-week-empty.ts';
import { gateOutOfReach } from '../../src/check/gate-out-of-reach.ts';
import { longSession } from '../../src/check/long-session.ts';
import { outsideBounds } from '../../src/check/outside-bounds.ts';
import type { Bounds, DoseValues, MoveOnWhen } from '../../src/model/dose.ts';
import { exactly } from '../../src/units/interval.ts';
import {
  dose,
  easyWeeks,
  entry,
  exercise,
  type ItemParts,
  item,
  kg,
  type LevelParts,
  messages,
  override,
  PLAN_SOURCE,
  type PlanParts,
  part,
  partEntry,
  placeIn,
  plan,
  repsDial,
  seconds,
  session,
  subject,
} from './records.ts';

function bounds(parts: Omit<Bounds, 'place'>): Bounds {
  return { place: placeIn(PLAN_SOURCE), ...parts };
}

function gate(parts: Omit<MoveOnWhen, 'place'>): MoveOnWhen {
  return { place: placeIn(PLAN_SOURCE), ...parts };
}

describe('outside-bounds', () => {
  const told = (
    level: LevelParts,
    parts: ItemParts = {},
    more: PlanParts = {},
    rounds?: number,
  ) => {
    const strength = part('strength', [item(exercise('heel-raise', level), parts)], { rounds });
    return messages(outsideBounds(subject(plan([session([strength])], more))));
  };
  const says = (dosed: DoseValues, sensible: Omit<Bounds, 'place'>) =>
    told({ dose: dosed, bounds: bounds(sensible) });

  it('holds either end to the bounds; the bounds themselves are inside', () => {
    expect(says(dose(2, [5, 20]), { reps: [5, 20] })).toEqual([]);
    expect(says(dose(2, [4, 20]), { reps: [5, 20] })).toEqual([
      'heel-raise has 4-20 reps in week 1; its "bounds" say 5-20.',
    ]);
    expect(says(dose(2, [5, 21]), { reps: [5, 20] })).toHaveLength(1);
    expect(says(dose(5, 10), { sets: [1, 4] })).toEqual([
      'heel-raise has 5 sets in week 1; its "bounds" say 1-4.',
    ]);
  });

  it('holds each entry of a list of reps to them', () => {
    const list: DoseValues = {
      reps: {
        kind: 'list',
        counts: [
          [12, 12],
          [10, 10],
          [3, 3],
        ],
      },
    };
    expect(says(list, { reps: [5, 20] })).toEqual([
      'heel-raise has 3 reps in week 1; its "bounds" say 5-20.',
    ]);
  });

  it('holds lengths and loads to them in any unit', () => {
    expect(says(dose(2, 10, { hold: seconds(10) }), { hold: seconds(0, 10) })).toEqual([]);
    expect(
      says(dose(2, 10, { hold: { unit: 'breaths', range: [3, 3] } }), { hold: seconds(0, 10) }),
    ).toEqual(['heel-raise has a hold of 3 breaths in week 1; its "bounds" say 0 s to 10 s.']);
    expect(says({ time: seconds(150) }, { time: seconds(30, 120) })).toEqual([
      'heel-raise has a time of 2 min 30 s in week 1; its "bounds" say 30 s to 2 min.',
    ]);
    expect(says(dose(2, 10, { load: kg(4, 4, 2) }), { load: kg(4, 8) })).toEqual([]);
    // 20 lb is 9.07 kg
    const pounds = { kind: 'mass', unit: 'lb', pieces: 1, amount: exactly(20_000) } as const;
    expect(says(dose(2, 10, { load: pounds }), { load: kg(4, 8) })).toHaveLength(1);
    expect(
      says(dose(2, 10, { load: { kind: 'body-weight', percent: null } }), { load: kg(4, 8) }),
    ).toEqual([]);
  });

  it('does not hold to them what nobody wrote: a bout of time is no rep', () => {
    expect(says({ time: seconds(60) }, { reps: [5, 20] })).toEqual([]);
  });

  it('names the first week only, and the side overrides as much as the rest', () => {
    const climb = [repsDial(4, 30)];
    const level = { dose: dose(2, 10), bounds: bounds({ reps: [5, 20] }) };
    // 10 14 18 22: week 4 is the first beyond 20
    expect(told(level, { climb }, { weeks: 6 })).toEqual([
      'heel-raise has 22 reps in week 4; its "bounds" say 5-20.',
    ]);
    const sides = override(null, { sets: exactly(6) });
    expect(told({ sides: 'each', bounds: bounds({ sets: [1, 4] }) }, { sides })).toEqual([
      'heel-raise has 6 sets in week 1; its "bounds" say 1-4.',
    ]);
  });

  it('lets an easy week go below them, which is what it is for', () => {
    const more = { weeks: 3, easyWeeks: easyWeeks([2], { reps: 70_000 }) };
    expect(told({ dose: dose(2, 5), bounds: bounds({ reps: [5, 20] }) }, {}, more)).toEqual([]);
  });

  it('takes the rounds of a circuit for its sets', () => {
    const level = {
      dose: { reps: { kind: 'same', count: exactly(10) } },
      bounds: bounds({ sets: [1, 4] }),
    } as const;
    expect(told(level, {}, {}, 4)).toEqual([]);
    expect(told(level, {}, {}, 5)).toEqual([
      'heel-raise has 5 rounds in week 1; its "bounds" say 1-4.',
    ]);
  });
});

describe('long-session', () => {
  // One set of one bout of 10 to 12 minutes.
  const long = exercise('walk', { dose: { time: seconds(600, 720) } });
  const day = session([part('cardio', [item(long)])], { id: 'walks' });
  const told = (timeMs: number | null, more: PlanParts = {}) =>
    longSession(subject(plan([day], { limits: { timeMs }, ...more })));

  it('holds the high end to the time the person has', () => {
    expect(told(12 * 60_000)).toEqual([]);
    expect(told(null)).toEqual([]);
    const [one, ...more] = told(12 * 60_000 - 1, { weeks: 4 });
    expect(more).toEqual([]);
    expect(one).toMatchObject({ check: 'long-session', severity: 'warning', place: day.place });
    expect(messages(told(600_000))).toEqual([
      '"walks" can take 12 minutes in week 1, and the person has 10 min.',
    ]);
  });

  it('names the first week in which it happens', () => {
    const fromWeek = [entry(3, { dose: { time: seconds(725) } })];
    const growing = session([part('cardio', [item(long, { fromWeek })])], { id: 'walks' });
    const found = longSession(subject(plan([growing], { weeks: 5, limits: { timeMs: 720_000 } })));
    expect(messages(found)).toEqual([
      '"walks" can take 13 minutes in week 3, and the person has 12 min.',
    ]);
  });
});

describe('gate-out-of-reach', () => {
  const told = (levels: readonly LevelParts[], parts: ItemParts = {}, more: PlanParts = {}) => {
    // The plan means to move on: the gate is the item's own.
    const own = levels[0]?.moveOnWhen ?? undefined;
    const one = item(exercise('heel-raise', ...levels), { moveOnWhen: own, ...parts });
    return messages(gateOutOfReach(subject(plan([session([part('strength', [one])])], more))));
  };

  it('lets a gate be that only came along with the library', () => {
    const of = exercise('heel-raise', {
      dose: dose(2, 8),
      moveOnWhen: gate({ reps: 12, sets: 3 }),
    });
    const found = (parts: ItemParts) =>
      messages(gateOutOfReach(subject(plan([session([part('strength', [item(of, parts)])])]))));
    expect(found({})).toEqual([]);
    // A climb in reps means to move on by reps, not by sets.
    expect(found({ climb: [repsDial(1, 10)] })).toEqual([
      'heel-raise moves on at 12 reps, but its dose and climb reach 8 reps at the most.',
    ]);
  });

  it('holds each gate to the high end of the dose', () => {
    const level = (asks: Omit<MoveOnWhen, 'place'>) => [
      { dose: dose(2, [8, 12]), moveOnWhen: gate(asks) },
    ];
    expect(told(level({ reps: 12 }))).toEqual([]);
    expect(told(level({ reps: 13 }))).toEqual([
      'heel-raise moves on at 13 reps, but its dose and climb reach 12 reps at the most.',
    ]);
    expect(told(level({ sets: 2 }))).toEqual([]);
    expect(told(level({ sets: 3, hold: seconds(5) }))).toEqual([
      'heel-raise moves on at 3 sets and a hold of 5 s, but its dose and climb reach 2 sets and no hold at the most.',
    ]);
    expect(told(level({ painAtMost: 3, effortAtMost: 6, sessionsInARow: 2 }))).toEqual([]);
  });

  it('follows the climb over the weeks of the plan', () => {
    const level = [{ dose: dose(2, 8), moveOnWhen: gate({ reps: 12 }) }];
    const parts = { climb: [repsDial(2, 12)] };
    expect(told(level, parts, { weeks: 3 })).toEqual([]);
    expect(told(level, parts, { weeks: 2 })).toEqual([
      'heel-raise moves on at 12 reps, but its dose and climb reach 10 reps at the most.',
    ]);
  });

  it('does not count what an easy week takes off, even where all weeks of the level are easy', () => {
    const level = [{ dose: dose(2, 12), moveOnWhen: gate({ reps: 12 }) }];
    expect(told(level, {}, { weeks: 2, easyWeeks: easyWeeks([1], { reps: 50_000 }) })).toEqual([]);
    expect(told(level, {}, { weeks: 1, easyWeeks: easyWeeks([1], { reps: 50_000 }) })).toEqual([]);
  });

  it('cannot tell where reps go on until tired', () => {
    expect(
      told([{ dose: dose(2, 8, { until: 'tired' }), moveOnWhen: gate({ reps: 20 }) }]),
    ).toEqual([]);
  });

  it('tells of the side that gets least far', () => {
    const level = [{ sides: 'each', dose: dose(2, 12), moveOnWhen: gate({ reps: 12 }) } as const];
    const left: DoseValues = { reps: { kind: 'same', count: exactly(6) } };
    expect(told(level, { sides: override(left, null) })).toEqual([
      'heel-raise moves on at 12 reps, but its dose and climb reach 6 reps at the most.',
    ]);
  });

  it('holds each level to its own gate, in the weeks at that level', () => {
    const of = exercise(
      'heel-raise',
      { dose: dose(2, 8), moveOnWhen: gate({ reps: 10 }) },
      { dose: dose(2, 8), moveOnWhen: gate({ reps: 8 }) },
    );
    const one = item(of, { fromWeek: [entry(3, { level: of.levels[1] })] });
    const found = gateOutOfReach(subject(plan([session([part('strength', [one])])], { weeks: 4 })));
    expect(found).toMatchObject([
      { place: one.place, related: [{ place: of.levels[0]?.moveOnWhen?.place }] },
    ]);
    expect(messages(found)).toEqual([
      'heel-raise (level-1) moves on at 10 reps, but its dose and climb reach 8 reps at the most.',
    ]);
  });

  it('lets the gate of an item be once the item has come to the last level', () => {
    const of = exercise('heel-raise', { dose: dose(2, 12) }, { dose: dose(2, 5) });
    const own = { moveOnWhen: gate({ reps: 12 }), fromWeek: [entry(3, { level: of.levels[1] })] };
    const found = (parts: ItemParts) =>
      gateOutOfReach(subject(plan([session([part('strength', [item(of, parts)])])], { weeks: 4 })));
    expect(found(own)).toEqual([]);
    expect(found({ ...own, moveOnWhen: gate({ reps: 13 }) })).toHaveLength(1);
  });

  it('weighs loads of one kind, and lets others be', () => {
    const level = (load: DoseValues['load'], asked: DoseValues['load']) =>
      told([
        { dose: dose(2, 8, load ? { load } : {}), moveOnWhen: gate(asked ? { load: asked } : {}) },
      ]);
    const band = (name: string) => ({ kind: 'band', band: name }) as const;
    expect(level(kg(4), kg(4))).toEqual([]);
    expect(level(kg(4), kg(5))).toEqual([
      'heel-raise moves on at a load of 5 kg, but its dose and climb reach 4 kg at the most.',
    ]);
    expect(level(band('light band'), band('heavy band'))).toHaveLength(1);
    expect(level(band('heavy band'), band('light band'))).toEqual([]);
    expect(level(band('light band'), kg(5))).toEqual([]);
    // fewer repetitions to the limit is heavier
    expect(level({ kind: 'rm', reps: [10, 10] }, { kind: 'rm', reps: [8, 8] })).toHaveLength(1);
    expect(level({ kind: 'rm', reps: [8, 8] }, { kind: 'rm', reps: [10, 10] })).toEqual([]);
    expect(level(undefined, kg(5))).toHaveLength(1);
  });

  it('follows a band that helps downwards', () => {
    const band = (name: string) => ({ load: { kind: 'band', band: name } }) as const;
    const asks = (name: string) =>
      told(
        [{ dose: dose(2, 8, band('heavy band')), moveOnWhen: gate(band(name)) }],
        {
          fromWeek: [entry(2, { dose: band('medium band') })],
        },
        { weeks: 3 },
      );
    expect(asks('medium band')).toEqual([]);
    expect(asks('light band')).toHaveLength(1);
  });
});

describe('easy-week-empty', () => {
  const told = (
    shares: Parameters<typeof easyWeeks>[1],
    level: LevelParts,
    rounds?: number,
    weeks = [2],
  ) => {
    const strength = part('strength', [item(exercise('heel-raise', level))], { rounds });
    const easy = easyWeeks(weeks, shares);
    return easyWeekEmpty(subject(plan([session([strength])], { weeks: 4, easyWeeks: easy })));
  };

  it('is silent where anything is eased', () => {
    expect(told({ sets: 50_000 }, { dose: dose(2, 10) })).toEqual([]);
    expect(told({ hold: 50_000 }, { dose: dose(1, 10, { hold: seconds(4) }) })).toEqual([]);
    expect(
      told({ sets: 50_000 }, { dose: { reps: { kind: 'same', count: exactly(10) } } }, 2),
    ).toEqual([]);
  });

  it('tells of a week whose shares change no dose: half of one set is one set', () => {
    const [one, ...more] = told({ sets: 50_000 }, { dose: dose(1, 10) });
    expect(more).toEqual([]);
    expect(one).toMatchObject({
      check: 'easy-week-empty',
      severity: 'note',
      message: 'Week 2 is an easy week, and nothing that is done in it is eased.',
      hints: ['It eases "sets", which changes no dose here.'],
    });
    expect(told({ hold: 50_000 }, { dose: dose(3, 10) })).toHaveLength(1);
  });

  it('tells of shares that were never given, once for all such weeks', () => {
    expect(messages(told({}, {}, undefined, [2, 3, 4]))).toEqual([
      'Week 2 is an easy week, and nothing that is done in it is eased, nor is anything in 2 other easy weeks.',
    ]);
  });

  it('does not take more rounds from a later week for easing', () => {
    const circuit = part(
      'strength',
      [item(exercise('x', { dose: { reps: { kind: 'same', count: [10, 10] } } }))],
      {
        rounds: 1,
        fromWeek: [partEntry(2, 3)],
      },
    );
    const easy = easyWeeks([2], { hold: 50_000 });
    expect(
      easyWeekEmpty(subject(plan([session([circuit])], { weeks: 3, easyWeeks: easy }))),
    ).toHaveLength(1);
  });
});
