// The simulator's own sums, worked by hand beside each, so that it isn't believed unseen. Times,
// loads and merge order of one week here; climbs and calendars in simulator-weeks.test.ts.

import { describe, expect, it } from 'vitest';
import { caseOf, first, items, weekOf } from './cases.ts';

const HEEL = { reps: '8-12', hold: '2 s', move: '4 s', rest: '60 s' };

describe('one item', () => {
  it('is the worked example of the contract', () => {
    // t = 2 + 4 = 6; turn 8·6 + 7·2 = 62 … 12·6 + 11·2 = 94; set 62+5+62 = 129 … 193;
    // item 129 + 60 + 129 = 318 … 193 + 60 + 193 = 446.
    const item = first({ sides: 'each', dose: { ...HEEL, sets: 2 } });
    expect(item.seconds).toEqual([318, 446]);
    const side = {
      sets: [2, 2],
      reps: [16, 24],
      hold_seconds: [32, 48],
      work_seconds: [96, 144],
      volume_kg: [0, 0],
    };
    const dose = { sets: [2, 2], reps: [8, 12], hold: [2, 2], move: [4, 4], pause: [2, 2] };
    expect(item.left).toEqual({ ...side, dose: { ...dose, rest: [60, 60] } });
    expect(item.right).toEqual(item.left);
    expect(item.middle).toBeNull();
  });

  it('goes from side to side at every repetition in each-rep', () => {
    // left 3 of 6 s, right 2 of 4 s: 18 + 8 + (5−1)·2 = 34, and no change of sides.
    const sides = { left: { reps: 3, hold: '2 s' }, right: { reps: 2 }, why: 'weaker' };
    const item = first(
      { sides: 'each', dose: { reps: 9, move: '4 s' } },
      { order: 'each-rep', sides },
    );
    expect(item.seconds).toEqual([34, 34]);
    expect(item.right).toMatchObject({ reps: [2, 2], hold_seconds: [0, 0], work_seconds: [8, 8] });
  });

  it('rests within a side and changes once in all-sets, with unequal sets', () => {
    // turn 2·3 + 2 = 8; left 3 sets: 8+30+8+30+8 = 84; change 5; right 1 set: 8; 97 in all.
    const sides = { left: { sets: 3 }, why: 'weaker' };
    const item = first({ sides: 'each', dose: { reps: 2 } }, { order: 'all-sets', sides });
    expect(item.seconds).toEqual([97, 97]);
  });

  it('drops a side with no set left, and its change, in each-set', () => {
    // turn 8; set 1: 8+5+8 = 21; sets 2 and 3: 8 each; two rests of 30: 21+30+8+30+8 = 97.
    const sides = { left: { sets: 3 }, why: 'weaker' };
    const item = first({ sides: 'each', dose: { reps: 2 } }, { sides });
    expect(item.seconds).toEqual([97, 97]);
    expect(item.left).toMatchObject({ sets: [3, 3], reps: [6, 6], work_seconds: [18, 18] });
    expect(item.right).toMatchObject({ sets: [1, 1], reps: [2, 2], work_seconds: [6, 6] });
  });

  it('gives every set of a list its own repetitions, and ranges of sets both ends', () => {
    // reps [12, 10-11, 8] of 3 s with 2 s: 58 + (48 … 53) + 38 + two rests of 30 = 204 … 209.
    expect(first({ sides: 'both', dose: { reps: [12, '10-11', 8] } }).seconds).toEqual([204, 209]);
    // sets 1-3 of one hold (10 + 3): 13 … 39 + 60 = 99.
    expect(first({ sides: 'middle', dose: { sets: '1-3', hold: '10 s' } }).seconds).toEqual([
      13, 99,
    ]);
  });

  it('counts a tempo, a breath and a timed bout for what they are', () => {
    // 3-1-2-0 is 6 s: 5·6 + 4·2 = 38.
    expect(first({ sides: 'both', dose: { reps: 5, tempo: '3-1-2-0' } }).seconds).toEqual([38, 38]);
    // 6 breaths of 5 s and 0 s of movement, twice: 30 + 2 + 30.
    const hold = { hold: '6 breaths', move: '0 s', reps: 2 };
    expect(first({ sides: 'middle', dose: hold }).seconds).toEqual([62, 62]);
    // three bouts of 1 min 30 s: 270 + 4; held only where the purpose is to be still.
    const bouts = { time: '1 min 30 s', reps: 3 };
    const still = first({ sides: 'middle', purpose: ['balance', 'strength'], dose: bouts });
    expect(still.seconds).toEqual([274, 274]);
    expect(still.middle).toMatchObject({ hold_seconds: [270, 270], work_seconds: [270, 270] });
    const moving = first({ sides: 'middle', purpose: 'cardio', dose: bouts });
    expect(moving.middle).toMatchObject({ hold_seconds: [0, 0], work_seconds: [270, 270] });
  });

  it('does one side alone with only, and leaves the other empty', () => {
    const item = first(
      { sides: 'each', dose: { reps: 2 } },
      { only: 'other' },
      { affected: 'left' },
    );
    expect(item).toMatchObject({ sides: 'each', left: null, seconds: [8, 8] });
    expect(item.right).toMatchObject({ reps: [2, 2] });
    const both = first(
      { sides: 'each', dose: { reps: 2 } },
      { only: 'affected' },
      { affected: 'both' },
    );
    expect(both.seconds).toEqual([21, 21]);
  });
});

describe('loads', () => {
  const lifted = (load: string, sides: 'both' | 'each' | 'middle' = 'middle') =>
    first({ sides, dose: { sets: 2, reps: 5, load } }, {}, { one_rep_max: { lift: '40 kg' } });

  it('counts kilograms, pieces, pounds and shares of the one maximum', () => {
    expect(lifted('4 kg').middle?.volume_kg).toEqual([40, 40]);
    expect(lifted('2 x 4-5 kg').middle?.volume_kg).toEqual([80, 100]);
    expect(lifted('10 lb').middle?.volume_kg).toEqual([45.359237, 45.359237]);
    expect(lifted('70 % 1rm').middle?.volume_kg).toEqual([280, 280]);
    for (const load of ['light band', 'body weight', '20 % body weight', '8-12 rm']) {
      expect(lifted(load).middle?.volume_kg).toEqual([0, 0]);
    }
  });

  it('shares a load half and half where both sides work at once', () => {
    const item = lifted('4 kg', 'both');
    expect(item.left).toMatchObject({ reps: [10, 10], volume_kg: [20, 20] });
    expect(item.right).toMatchObject({ reps: [10, 10], volume_kg: [20, 20] });
    expect(lifted('4 kg', 'each').left?.volume_kg).toEqual([40, 40]);
  });
});

describe('parts, circuits and sessions', () => {
  it('puts gaps between what is there, the nearest one winning', () => {
    // Two items of 8 s with the part's 10 s between: 26. A second part of one item: 8.
    // Between the parts the session's 20 s, not the part's and not the plan's: 26 + 20 + 8 = 54.
    const plan = caseOf({ sides: 'both', dose: { reps: 2 } });
    plan.plan.between_items = '40 s';
    plan.plan.sessions = [
      {
        session: 'one',
        days: 'daily',
        between_items: '20 s',
        parts: [
          { part: 'strength', between_items: '10 s', items: items(2) },
          { part: 'stretch', items: items(1, 2) },
        ],
      },
    ];
    const week = weekOf(plan, 1);
    expect(week.sessions[0]?.parts.map((part) => part.seconds)).toEqual([
      [26, 26],
      [8, 8],
    ]);
    expect(week.sessions[0]?.seconds).toEqual([54, 54]);
    expect(week.seconds).toEqual([378, 378]);
  });

  it('does a circuit round by round, whatever sets are inherited', () => {
    // One round: 8 + 30 + 8 = 46; two with the default rest of 30: 46 + 30 + 46 = 122.
    // An item's own seconds are its two sets, 16.
    const plan = caseOf({ sides: 'both', dose: { reps: 2, sets: 5 } });
    plan.plan.sessions = [
      { session: 'one', days: ['mon'], parts: [{ part: 'strength', rounds: 2, items: items(2) }] },
    ];
    const part = weekOf(plan, 1).sessions[0]?.parts[0];
    expect(part).toMatchObject({ rounds: 2, seconds: [122, 122] });
    expect(part?.items[0]).toMatchObject({ seconds: [16, 16], left: { sets: [2, 2] } });
    expect(part?.items[0]?.left?.dose).toEqual({ reps: [2, 2], move: [3, 3], pause: [2, 2] });
  });

  it('takes all-sets as each-set in a circuit', () => {
    // One round each-set: 8 + 5 + 8 = 21; two: 21 + 30 + 21 = 72.
    const plan = caseOf({ sides: 'each', order: 'all-sets', dose: { reps: 2 } });
    plan.plan.sessions = [
      { session: 'one', days: ['mon'], parts: [{ part: 'strength', rounds: 2, items: items(1) }] },
    ];
    expect(weekOf(plan, 1).sessions[0]?.seconds).toEqual([72, 72]);
  });
});

describe('layers of a dose', () => {
  const over = (exercise: object, dose: object) =>
    first({ sides: 'middle', dose: exercise }, { dose }).middle?.dose;

  it('drops what another shape was made of', () => {
    const counted = { reps: [12, 10], hold: '2 s', move: '4 s', rest: '60 s' };
    // A dropped list leaves its number of sets.
    expect(over(counted, { time: '30 s' })).toEqual({
      sets: [2, 2],
      reps: [1, 1],
      time: [30, 30],
      pause: [2, 2],
      rest: [60, 60],
    });
    // Tempo drops hold and move, the list stays.
    expect(over(counted, { tempo: '3-1-2-0' })).toEqual({
      sets: [2, 2],
      reps: [
        [12, 12],
        [10, 10],
      ],
      tempo: '3-1-2-0',
      pause: [2, 2],
      rest: [60, 60],
    });
    // A hold over a timed dose drops time and bouts; timing gives the move.
    expect(over({ time: '1 min', reps: 3 }, { hold: '10 s' })).toEqual({
      sets: [1, 1],
      reps: [1, 1],
      hold: [10, 10],
      move: [3, 3],
      pause: [2, 2],
      rest: [30, 30],
    });
  });

  it('ends a list with plain repetitions, keeping the number of sets', () => {
    expect(over({ reps: [12, 10, 8] }, { reps: 6 })).toMatchObject({ sets: [3, 3], reps: [6, 6] });
    expect(over({ reps: 5, hold: '4 s', load: '4 kg' }, { hold: 'none', load: 'none' })).toEqual({
      sets: [1, 1],
      reps: [5, 5],
      move: [3, 3],
      pause: [2, 2],
      rest: [30, 30],
    });
  });
});
