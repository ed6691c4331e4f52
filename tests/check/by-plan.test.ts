// What a plan says of sides, dates and entries, held against itself; and plans against each other.
import { describe, expect, it } from 'vitest';
import { datesUnlikely } from '../../src/check/dates-unlikely.ts';
import { entryChangesNothing } from '../../src/check/entry-changes-nothing.ts';
import { gateAboveStop } from '../../src/check/gate-above-stop.ts';
import { looksCopied } from '../../src/check/looks-copied.ts';
import { onlyAgainstAffected } from '../../src/check/only-against-affected.ts';
import { sheetRunsOut } from '../../src/check/sheet-runs-out.ts';
import { sideWord } from '../../src/check/side-word.ts';
import { startBeforeVisit } from '../../src/check/start-before-visit.ts';
import type { MoveOnWhen } from '../../src/model/dose.ts';
import type { Exercise } from '../../src/model/exercise.ts';
import type { Part, Session } from '../../src/model/plan.ts';
import { exactly } from '../../src/units/interval.ts';
import type { Affected, Only } from '../../src/units/side.ts';
import {
  checked,
  checkSetting,
  dose,
  entry,
  exercise,
  type ItemParts,
  item,
  messages,
  override,
  PLAN_SOURCE,
  type PlanParts,
  part,
  partEntry,
  placeIn,
  plan,
  practice,
  repsDial,
  session,
  sessionEntry,
  subject,
} from './records.ts';

const EACH = exercise('heel-raise', { sides: 'each', muscles: { prime: [], assist: [] } });

function planOf(of: Exercise, parts: ItemParts = {}, more: PlanParts = {}) {
  return plan([session([part('strength', [item(of, parts)])])], more);
}

describe('only-against-affected', () => {
  const told = (only: Only, affected: Affected, fromWeek: Only[] = []) =>
    messages(
      onlyAgainstAffected(
        subject(
          planOf(
            EACH,
            { only, fromWeek: fromWeek.map((one, i) => entry(i + 2, { only: one })) },
            { affected, weeks: 6 },
          ),
        ),
      ),
    );

  it('names both ways out', () => {
    expect(told('right', 'left')).toEqual([
      '"only: right" leaves out the left, which is the affected side; write "only: affected" for the left, or "only: other" if you mean the right.',
    ]);
    expect(told('left', 'right')).toHaveLength(1);
  });

  it('is silent where the side is the affected one, or "other" says that it is meant, or no one side is affected', () => {
    expect(told('left', 'left')).toEqual([]);
    expect(told('other', 'left')).toEqual([]);
    expect(told('affected', 'left')).toEqual([]);
    expect(told('right', 'both')).toEqual([]);
    expect(told('right', 'none')).toEqual([]);
  });

  it('reads the entries too, and tells of an item once', () => {
    expect(told('left', 'left', ['left', 'right'])).toHaveLength(1);
    expect(told('right', 'left', ['left', 'right'])).toHaveLength(1);
  });

  it('stands at "only", and leaves the item to side-balance where that tells of it', () => {
    const at = placeIn(PLAN_SOURCE);
    const says = { only: 'right', keyPlaces: new Map([['only', at]]) } as const;
    const quiet = checked(planOf(EACH, says, { affected: 'left' }));
    expect(quiet).toMatchObject([{ check: 'only-against-affected', place: at }]);
    const trained = exercise('calf-raise', { sides: 'each' });
    const loud = checked(planOf(trained, says, { affected: 'left' }));
    expect(loud).toMatchObject([
      { check: 'side-balance', hints: [expect.stringContaining('write "only: affected"')] },
    ]);
    const off = practice({
      checks: new Map([['side-balance', checkSetting({ severity: 'off' })]]),
    });
    expect(checked(planOf(trained, says, { affected: 'left' }), off)).toMatchObject([
      { check: 'only-against-affected' },
    ]);
  });
});

describe('side-word', () => {
  const told = (title: string, affected: Affected, language = 'en') =>
    sideWord(subject(planOf(EACH, {}, { title, affected }), practice({ language }))).length;

  it.each([
    ['Left shoulder, back to the top shelf', 'right', 1],
    ['RIGHT knee', 'left', 1],
    ['Left shoulder, back to the top shelf', 'left', 0],
    ['Left knee, then the right', 'right', 0],
    ['Knee', 'right', 0],
    ['Upright again', 'left', 0],
    ['Leftover stiffness', 'right', 0],
    ['Left and right ankle', 'both', 0],
    ['Left ankle', 'none', 0],
  ] as const)('%s, affected %s: %i', (title, affected, count) => {
    expect(told(title, affected)).toBe(count);
  });

  it.each([
    ['Left knee', 'en-GB', 1],
    ['Left knee', 'es', 0],
    ['Tobillo izquierdo, volver a caminar', 'es', 1],
    ['Rodilla izquierda', 'es-MX', 1],
    ['Rodilla derecha', 'es', 0],
    ['الكاحل الأيسر، العودة إلى المشي', 'ar', 1],
    ['الركبة اليسرى', 'ar', 1],
    ['الكتف الأيمن', 'ar', 0],
    ['Linkes Knie', 'de', 0],
  ] as const)('%s in %s, affected right: %i', (title, language, count) => {
    expect(told(title, 'right', language)).toBe(count);
  });

  it('goes by the language of the plan', () => {
    const says = { title: 'Tobillo izquierdo', affected: 'right', handoutLanguage: 'es' } as const;
    expect(sideWord(subject(planOf(EACH, {}, says), practice({ language: 'en' })))).toHaveLength(1);
  });
});

describe('the dates of a plan', () => {
  const dated = (starts: string, nextVisit: string | null, weeks = 6) =>
    subject(planOf(EACH, {}, { starts, nextVisit, weeks }));

  it('may begin on the day of the first visit, but not the day before', () => {
    expect(startBeforeVisit(dated('2026-10-05', null))).toEqual([]);
    expect(messages(startBeforeVisit(dated('2026-10-04', null)))).toEqual([
      '"starts" says 2026-10-04, 1 day before the first visit of 2026-10-05; that visit is then in week 1.',
    ]);
    expect(messages(startBeforeVisit(dated('2026-01-05', null)))).toEqual([
      '"starts" says 2026-01-05, 273 days before the first visit of 2026-10-05; the plan is then over by that visit.',
    ]);
  });

  it('may begin on the day of the next visit, but not after it', () => {
    expect(datesUnlikely(dated('2026-11-16', '2026-11-16'))).toEqual([]);
    expect(datesUnlikely(dated('2026-11-16', null))).toEqual([]);
    expect(messages(datesUnlikely(dated('2026-11-17', '2026-11-16')))).toEqual([
      '"starts" says 2026-11-17, after the next visit of 2026-11-16; one of the two is surely a slip.',
    ]);
  });

  it('may end 7 days before the next visit, but not 8', () => {
    // Six weeks from 5 October: the last day is 15 November.
    expect(sheetRunsOut(dated('2026-10-05', '2026-11-22'))).toEqual([]);
    expect(sheetRunsOut(dated('2026-10-05', null))).toEqual([]);
    expect(messages(sheetRunsOut(dated('2026-10-05', '2026-11-23')))).toEqual([
      'The last day of the plan is 2026-11-15, and the next visit comes 8 days later, on 2026-11-23; the sheet does not say what to do in between.',
    ]);
  });

  it('take the practice’s own number of days', () => {
    const by = practice({
      checks: new Map([['sheet-runs-out', checkSetting({ numbers: { days: 8 } })]]),
    });
    const made = planOf(EACH, {}, { nextVisit: '2026-11-23', weeks: 6 });
    expect(sheetRunsOut(subject(made, by))).toEqual([]);
    expect(sheetRunsOut(subject(made))).toHaveLength(1);
  });
});

describe('gate-above-stop', () => {
  const gate = (painAtMost: number): MoveOnWhen => ({
    painAtMost,
    reps: 12,
    place: placeIn(PLAN_SOURCE),
  });
  const leaving = { fromWeek: (of: Exercise) => [entry(3, { level: of.levels[1] })] };
  const told = (painAtMost: number, more: PlanParts = {}) => {
    const two = exercise('squat', { moveOnWhen: gate(painAtMost) }, {});
    const moving = { fromWeek: leaving.fromWeek(two) };
    return gateAboveStop(subject(planOf(two, moving, { weeks: 6, ...more })));
  };

  it('lets pain up to the range to stop at be, and no more', () => {
    expect(told(5)).toEqual([]);
    const found = told(6);
    expect(found).toMatchObject([{ check: 'gate-above-stop', severity: 'error' }]);
    expect(messages(found)).toEqual([
      '"pain_at_most: 6" lets squat (level-1) move on with a pain at which this plan says to stop (6-10); write a number below 6, or give the item a "move_on_when" of its own.',
    ]);
  });

  it('holds it against the plan’s own ranges', () => {
    const pain = { carryOn: [0, 1], easeOff: [2, 3], stop: [4, 10] } as const;
    expect(told(3, { pain })).toEqual([]);
    expect(told(4, { pain })).toHaveLength(1);
  });

  it('lets a gate of the library be that this plan never comes to', () => {
    const two = exercise('squat', { moveOnWhen: gate(9) }, {});
    expect(gateAboveStop(subject(planOf(two, {}, { weeks: 6 })))).toEqual([]);
    const byWeek = { fromWeek: [entry(3, { level: two.levels[1], advance: 'by-week' })] } as const;
    expect(gateAboveStop(subject(planOf(two, byWeek, { weeks: 6 })))).toEqual([]);
    const own = planOf(exercise('squat'), { moveOnWhen: gate(6) });
    expect(gateAboveStop(subject(own))).toHaveLength(1);
  });
});

describe('entry-changes-nothing', () => {
  const two = exercise('squat', { sides: 'each' }, { sides: 'each' });
  const told = (parts: ItemParts, more: PlanParts = {}) =>
    entryChangesNothing(subject(planOf(two, parts, { weeks: 6, ...more })));

  it('tells of a level and values that hold already, at the entry', () => {
    const same = entry(3, { level: two.levels[0], dose: dose(2, 10), order: 'each-set' });
    const found = told({ fromWeek: [same] });
    expect(found).toMatchObject([{ check: 'entry-changes-nothing', place: same.place }]);
    expect(messages(found)).toEqual([
      'This entry for week 3 changes nothing: all that it says holds already.',
    ]);
  });

  it.each<[string, Parameters<typeof entry>[1]]>([
    ['a level', { level: two.levels[1] }],
    ['reps', { dose: { reps: { kind: 'same', count: exactly(11) } } }],
    ['a side alone', { only: 'left' }],
    ['an override', { sides: override({ sets: exactly(2) }, null) }],
    ['the order', { order: 'all-sets' }],
    ['a note', { note: 'Slowly' }],
    ['the priority', { priority: 'must' }],
    ['the rule', { moveOnWhen: { reps: 9, place: placeIn(PLAN_SOURCE) } }],
    ['how it moves on', { advance: 'by-week' }],
    ['a climb', { climb: [repsDial(1, 14)] }],
  ])('is silent where %s changes', (_, parts) => {
    expect(told({ fromWeek: [entry(3, parts)] })).toEqual([]);
  });

  it('is silent where an entry starts a climb anew, and tells where the last week makes that nothing', () => {
    const climb = [repsDial(1, 14)];
    expect(told({ climb, fromWeek: [entry(3)] })).toEqual([]);
    expect(told({ fromWeek: [entry(3)] })).toHaveLength(1);
  });

  it('holds each entry against what the ones before it left', () => {
    const reps = (n: number) => ({ dose: { reps: { kind: 'same', count: exactly(n) } } }) as const;
    expect(told({ fromWeek: [entry(2, reps(8)), entry(3, reps(10))] })).toEqual([]);
    const twice = [entry(2, reps(8)), entry(3, reps(8))];
    // Either could go; both are at the same value, and the first is what brings it.
    expect(told({ fromWeek: twice })).toMatchObject([{ place: twice[1]?.place }]);
  });

  it('tells of sessions and parts too', () => {
    const walk = item(exercise('walk'));
    const circuit = part('strength', [walk], { rounds: 2 });
    const of = (one: Part, more: Partial<Session> = {}) =>
      entryChangesNothing(subject(plan([session([one], more)], { weeks: 6 }))).length;
    expect(of({ ...circuit, fromWeek: [partEntry(3, 2)] })).toBe(1);
    expect(of({ ...circuit, fromWeek: [partEntry(3, 3)] })).toBe(0);
    expect(of({ ...circuit, fromWeek: [partEntry(3, 3), partEntry(4, 2)] })).toBe(0);
    const monday = { kind: 'days', days: ['mon'] } as const;
    const daily = { kind: 'every', days: 1 } as const;
    expect(of(circuit, { fromWeek: [sessionEntry(2, { schedule: monday })] })).toBe(1);
    expect(of(circuit, { fromWeek: [sessionEntry(2, { schedule: daily })] })).toBe(0);
    expect(of(circuit, { fromWeek: [sessionEntry(2, { timesADay: exactly(1) })] })).toBe(1);
    expect(of(circuit, { fromWeek: [sessionEntry(2, { timesADay: exactly(2) })] })).toBe(0);
  });
});

describe('looks-copied', () => {
  const visits = [{ date: '2026-10-05', found: 'Limps', why: null }];
  const goals = ['Walk to the shop'];
  const one = (id: string, parts: PlanParts = {}) =>
    plan([], { id, person: id, visits, goals, ...parts });

  it('tells of each plan after the first, in order of code', () => {
    const found = looksCopied([one('A-1'), one('A-2'), one('A-3')]);
    expect(messages(found)).toEqual([
      'The visits and goals are those of "A-1", word for word; what was found in one person may stand in the record of another.',
      'The visits and goals are those of "A-1", word for word; what was found in one person may stand in the record of another.',
    ]);
  });

  it('is silent where a date, a word or a goal differs, and for two plans of one person', () => {
    const [visit] = visits;
    const other = (parts: PlanParts) => looksCopied([one('A-1'), one('A-2', parts)]);
    expect(other({ visits: [{ ...visit, date: '2026-10-06' } as (typeof visits)[0]] })).toEqual([]);
    expect(
      other({ visits: [{ ...visit, found: 'Limps a little' } as (typeof visits)[0]] }),
    ).toEqual([]);
    expect(other({ goals: ['Walk to the pier'] })).toEqual([]);
    expect(other({ person: 'A-1' })).toEqual([]);
  });

  it('is silent where there is too little to tell', () => {
    const bare = { visits: [{ date: '2026-10-05', found: null, why: null }] };
    expect(looksCopied([one('A-1', bare), one('A-2', bare)])).toEqual([]);
    expect(looksCopied([one('A-1', { goals: [] }), one('A-2', { goals: [] })])).toEqual([]);
  });
});
