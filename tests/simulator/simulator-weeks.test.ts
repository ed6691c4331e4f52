// The simulator's sums from week to week, worked by hand: climbs, easy weeks, entries, schedules,
// muscles and change.

import { describe, expect, it } from 'vitest';
import { caseOf, first, firstIn, weekOf } from './cases.ts';
import type { ClimbLine, WrittenExercise, WrittenItem, WrittenPlan } from './written.ts';

type SideShown = { dose: Record<string, unknown> } | null;

/** What one key of a side's dose is in every week. */
function through(
  key: string,
  exercise: Partial<WrittenExercise>,
  item: Partial<WrittenItem>,
  plan: Partial<WrittenPlan>,
  side: 'left' | 'right' | 'middle' = 'middle',
): unknown[] {
  const all = caseOf(exercise, item, plan);
  return Array.from({ length: all.plan.weeks }, (_, at) => {
    const shown = firstIn(all, at + 1)[side] as SideShown;
    return shown?.dose[key];
  });
}

describe('climbs', () => {
  const dose = { reps: '8-10', sets: 2 };
  const climb: ClimbLine[] = [
    { reps: { by: 2, to: 13 } },
    { sets: { by: 1, to: 3, restart: ['reps'] } },
  ];

  it('turns the first dial to its end, then the next, with its restart', () => {
    // 8-10, 10-12, then only 1 more fits: 11-13; then 3 sets and 8-10 again, 10-12.
    const reps = through('reps', { sides: 'middle', dose }, { climb }, { weeks: 5 });
    expect(reps).toEqual([
      [8, 10],
      [10, 12],
      [11, 13],
      [8, 10],
      [10, 12],
    ]);
    const sets = through('sets', { sides: 'middle', dose }, { climb }, { weeks: 5 });
    expect(sets).toEqual([
      [2, 2],
      [2, 2],
      [2, 2],
      [3, 3],
      [3, 3],
    ]);
  });

  it('does not count easy weeks, and eases what the climb has reached', () => {
    // Week 3 is easy: still one tick, 10-12 at 50 % is 5-6; week 4 has two ticks.
    const easy_weeks = { weeks: [3], reps: '50 %', sets: '70 %' };
    const reps = through('reps', { sides: 'middle', dose }, { climb }, { weeks: 4, easy_weeks });
    expect(reps).toEqual([
      [8, 10],
      [10, 12],
      [5, 6],
      [11, 13],
    ]);
  });

  it('starts anew from an entry that says nothing, every second week', () => {
    // Base 3: weeks 3 and 4 as written, 5 and 6 one tick.
    const item = { climb, climb_every: 2, from_week: [{ week: 3 }] };
    const reps = through('reps', { sides: 'middle', dose }, item, { weeks: 6 });
    expect(reps).toEqual([
      [8, 10],
      [8, 10],
      [8, 10],
      [8, 10],
      [10, 12],
      [10, 12],
    ]);
  });

  it('moves each side by itself, and a shared dial once all have come to it', () => {
    // Left 6 → 8 → 10 takes two ticks, right 8 → 10 one; rest waits for left.
    const item: Partial<WrittenItem> = {
      sides: { left: { reps: 6 }, why: 'weaker' },
      climb: [{ reps: { by: 2, to: 10 } }, { rest: { by: '-10 s', to: '45 s' } }],
    };
    const exercise = { sides: 'each' as const, dose: { reps: 8, rest: '1 min' } };
    const plan = { weeks: 5 };
    const left = through('reps', exercise, item, plan, 'left');
    expect(left).toEqual([
      [6, 6],
      [8, 8],
      [10, 10],
      [10, 10],
      [10, 10],
    ]);
    const right = through('reps', exercise, item, plan, 'right');
    expect(right).toEqual([
      [8, 8],
      [10, 10],
      [10, 10],
      [10, 10],
      [10, 10],
    ]);
    const rest = through('rest', exercise, item, plan, 'right');
    expect(rest).toEqual([
      [60, 60],
      [60, 60],
      [60, 60],
      [50, 50],
      [45, 45],
    ]);
  });

  it('rounds percentages of a load exactly, and never stays where it is', () => {
    // 4 → 4.2, nearest 4.0, no step: 4.5; 4.725 → 4.5, no step: 5; 5.25 → half up 5.5; to: 5.6.
    const item = { climb: [{ load: { by: '5 %', to: '5.6 kg', round: '0.5 kg' } }] };
    const exercise = { sides: 'middle' as const, dose: { reps: 5, load: '3-4 kg' } };
    const loads = through('load', exercise, item, { weeks: 6 });
    const firsts = ['3-4 kg', '3.5-4.5 kg', '4-5 kg', '4.5-5.5 kg', '4.6-5.6 kg', '4.6-5.6 kg'];
    expect(loads).toEqual(firsts);
    const pieces = { climb: [{ load: { by: '-0.5 kg', to: '3 kg' } }] };
    const lighter = { sides: 'middle' as const, dose: { reps: 5, load: '2 x 4 kg' } };
    const fewer = ['2 x 4 kg', '2 x 3.5 kg', '2 x 3 kg'];
    expect(through('load', lighter, pieces, { weeks: 3 })).toEqual(fewer);
  });

  it('steps through bands, passing those already behind', () => {
    const item = { climb: [{ load: { through: ['medium band', 'heavy band'] } }] };
    const exercise = { sides: 'middle' as const, dose: { reps: 5, load: 'medium band' } };
    const loads = through('load', exercise, item, { weeks: 3 });
    expect(loads).toEqual(['medium band', 'heavy band', 'heavy band']);
  });

  it('goes to a single band from either side', () => {
    const item = { climb: [{ load: { through: ['light band'] } }] };
    const exercise = { sides: 'middle' as const, dose: { reps: 5, load: 'heavy band' } };
    const loads = through('load', exercise, item, { weeks: 3 });
    expect(loads).toEqual(['heavy band', 'light band', 'light band']);
  });

  it('begins anew at a level with that level’s own dose', () => {
    // Week 2: the level two, reps 5 of its own, one set, no override; week 3: reps 7 of 7 at most.
    const exercise: Partial<WrittenExercise> = {
      sides: 'each',
      levels: [
        { level: 'one', dose: { reps: 10, hold: '2 s' } },
        { level: 'two', dose: { reps: 5 } },
      ],
    };
    const item: Partial<WrittenItem> = {
      dose: { sets: 3 },
      sides: { left: { reps: 11 }, why: 'stronger' },
      climb: [
        { level: { through: ['two'] } },
        { hold: { by: '1 s', to: '5 s' } },
        { reps: { by: 3, to: 12 } },
      ],
    };
    const all = caseOf(exercise, item, { weeks: 4 });
    expect([1, 2, 3].map((week) => firstIn(all, week).level)).toEqual(['one', 'two', 'two']);
    const reps = through('reps', exercise, item, { weeks: 5 }, 'left');
    expect(reps).toEqual([
      [11, 11],
      [5, 5],
      [8, 8],
      [11, 11],
      [12, 12],
    ]);
    expect(firstIn(all, 2).left?.dose).toMatchObject({ sets: [1, 1] });
    expect(firstIn(all, 2).left?.dose).not.toHaveProperty('hold');
  });
});

describe('entries', () => {
  const levels = [
    { level: 'one', dose: { reps: 10 } },
    { level: 'two', sides: 'each' as const, dose: { reps: 5, sets: 2 } },
  ];

  it('merges where the level stays, and starts afresh where it changes', () => {
    const item: Partial<WrittenItem> = {
      dose: { sets: 3 },
      from_week: [
        { week: 2, level: 'one', dose: { reps: 12 } },
        { week: 3, level: 'two', sides: { right: { reps: 4 }, why: 'weaker' } },
        { week: 4, dose: { sets: 1 } },
      ],
    };
    const plan = { weeks: 4 };
    const sets = through('sets', { levels }, item, plan, 'right');
    expect(sets).toEqual([
      [3, 3],
      [3, 3],
      [2, 2],
      [1, 1],
    ]);
    const reps = through('reps', { levels }, item, plan, 'right');
    expect(reps).toEqual([
      [10, 10],
      [12, 12],
      [4, 4],
      [4, 4],
    ]);
  });
});

describe('easy weeks', () => {
  it('rounds halves up, keeps at least one, and the first sets of a list', () => {
    const easy_weeks = { weeks: [1], sets: '50 %', reps: '70 %', hold: '50 %' };
    const plan = { easy_weeks };
    // 3 sets at half: 1.5 → 2; 1 rep stays 1; 5 s at half: 2.5 → 3.
    const held = first({ sides: 'middle', dose: { sets: 3, reps: 1, hold: '5 s' } }, {}, plan);
    expect(held.middle?.dose).toMatchObject({ sets: [2, 2], reps: [1, 1], hold: [3, 3] });
    // Of [12, 10, 8] the first two stay: 8.4 → 8 and 7.
    const list = first({ sides: 'middle', dose: { reps: [12, 10, 8] } }, {}, plan);
    expect(list.middle?.dose).toMatchObject({
      sets: [2, 2],
      reps: [
        [8, 8],
        [7, 7],
      ],
    });
    const moving = first({ sides: 'middle', dose: { reps: 4, hold: '0 s' } }, {}, plan);
    expect(moving.middle?.dose).toMatchObject({ reps: [3, 3], hold: [0, 0] });
  });
});

describe('weeks', () => {
  it('counts every kind of schedule', () => {
    const plan = caseOf({ dose: { reps: 1 } }, {}, { weeks: 3 });
    const parts = plan.plan.sessions[0]?.parts ?? [];
    plan.plan.sessions = [
      { session: 'a', days: ['mon', 'fri'], times_a_day: 2, parts },
      { session: 'b', days_a_week: '3-5', times_a_day: 3, parts },
      // Days 0 3 6 | 9 12 | 15 18.
      { session: 'c', every: '3 days', parts },
      { session: 'd', as_needed: true, parts, from_week: [{ week: 2, days: 'daily' }] },
      { session: 'e', days: 'daily', weeks: ['1-1', '3-3'], parts },
    ];
    const often = (week: number) => weekOf(plan, week).sessions.map(({ per_week }) => per_week);
    expect(often(1)).toEqual([
      [4, 4],
      [9, 15],
      [3, 3],
      [0, 0],
      [7, 7],
    ]);
    expect(often(2)).toEqual([
      [4, 4],
      [9, 15],
      [2, 2],
      [7, 7],
    ]);
    expect(often(3)).toEqual([
      [4, 4],
      [9, 15],
      [2, 2],
      [7, 7],
      [7, 7],
    ]);
  });

  it('credits muscles by set, week and side', () => {
    // 2 sets a side, 3 days: 6 of the prime, 3 of the assisting muscle, nothing on the right.
    const plan = caseOf(
      { sides: 'each', muscles: { prime: ['p'], assist: ['q'] }, dose: { sets: 2, reps: 2 } },
      { only: 'left' },
    );
    plan.plan.sessions[0] = { ...plan.plan.sessions[0], days: ['mon', 'wed', 'sat'] } as never;
    const { muscles } = weekOf(plan, 1);
    expect(muscles).toEqual({
      p: { left: [6, 6], right: [0, 0], middle: [0, 0] },
      q: { left: [3, 3], right: [0, 0], middle: [0, 0] },
    });
  });

  it('holds a week against the last one that was not easy', () => {
    // Work 10·3 = 30, easy 15, then 12·3 = 36: −50 % and +20 % of 30.
    const item = { from_week: [{ week: 3, dose: { reps: 12 } }] };
    const easy_weeks = { weeks: [2], reps: '50 %' };
    const plan = caseOf({ purpose: ['cardio', 'strength'], dose: { reps: 10 } }, item, {
      weeks: 3,
      easy_weeks,
    });
    expect(weekOf(plan, 1).change).toEqual({ all: null, strength: null });
    expect(weekOf(plan, 2).change).toEqual({ all: -0.5, strength: null });
    expect(weekOf(plan, 3).change.all).toBeCloseTo(0.2, 12);
  });
});
