// What a practice makes of the checks, and what a plan accepts.
import { describe, expect, it } from 'vitest';
import { PLAN_CHECKS, settingOf } from '../../src/check/plan-checks.ts';
import { settingFindings } from '../../src/check/practice-settings.ts';
import type { CheckName, Severity } from '../../src/finding/checks.ts';
import { CHECKS } from '../../src/finding/checks.ts';
import type { Accept } from '../../src/model/plan.ts';
import {
  accept,
  checked,
  checkSetting,
  exercise,
  item,
  part,
  plan,
  practice,
  session,
} from './records.ts';

type Accepts = {
  plan?: readonly Accept[];
  session?: readonly Accept[];
  part?: readonly Accept[];
  item?: readonly Accept[];
};

/** A plan in which one thing only is found: a step that the person does not have. */
function stepPlan(accepts: Accepts = {}, kit: readonly string[] = []) {
  const one = item(exercise('step-up', { kit: [['step']] }), { accepts: accepts.item ?? [] });
  const strength = part('strength', [one], { accepts: accepts.part ?? [] });
  const day = session([strength], { accepts: accepts.session ?? [] });
  return plan([day], {
    accepts: accepts.plan ?? [],
    limits: { kit },
    visits: [
      { date: '2026-10-05', found: null, why: null },
      { date: '2026-11-16', found: null, why: null },
    ],
  });
}

function told(...args: Parameters<typeof checked>) {
  return checked(...args).map(({ check, severity, accepted }) => [
    check,
    severity,
    accepted?.why ?? null,
  ]);
}

function set(check: CheckName, severity: Severity | 'off') {
  return practice({ checks: new Map([[check, checkSetting({ severity })]]) });
}

const OPEN = ['kit-missing', 'warning', null];

describe('the settings of a practice', () => {
  it('turn a check off, up or down', () => {
    expect(told(stepPlan())).toEqual([OPEN]);
    expect(told(stepPlan(), set('kit-missing', 'off'))).toEqual([]);
    expect(told(stepPlan(), set('kit-missing', 'error'))).toEqual([['kit-missing', 'error', null]]);
    expect(told(stepPlan(), set('kit-missing', 'note'))).toEqual([['kit-missing', 'note', null]]);
    expect(told(stepPlan(), set('long-session', 'off'))).toEqual([OPEN]);
  });

  it('give numbers, with defaults beneath', () => {
    const by = practice({
      checks: new Map([['sharp-rise', checkSetting({ numbers: { sets: 4 } })]]),
    });
    expect(settingOf(by)('sharp-rise', 'sets')).toBe(4);
    expect(settingOf(by)('sharp-rise', 'rise')).toBe(50_000);
    expect(settingOf(by)('side-balance', 'off_by')).toBe(25_000);
    expect(() => settingOf(by)('sharp-rise', 'speed')).toThrow();
  });

  it('with numbers of their own leave a check on', () => {
    const one = item(exercise('heel-raise', { sides: 'each' }), { only: 'right' });
    const made = plan([session([part('strength', [one])])]);
    const off = (by: number) =>
      practice({ checks: new Map([['side-balance', checkSetting({ numbers: { off_by: by } })]]) });
    expect(told(made, off(25_000))).toEqual([['side-balance', 'warning', null]]);
    expect(told(made, off(100_000))).toEqual([]);
  });

  it('that no check has, or in another unit, are an error', () => {
    const by = practice({
      checks: new Map<CheckName, ReturnType<typeof checkSetting>>([
        ['side-balance', checkSetting({ numbers: { off_bye: 25_000 } })],
        ['sharp-rise', checkSetting({ numbers: { rise: 25, sets: 2000 } })],
        ['stretch-before-strength', checkSetting({ numbers: { hold: 45_000 } })],
        ['kit-missing', checkSetting({ numbers: { kit: 1 } })],
        ['looks-personal', checkSetting({ numbers: { years: 20 } })],
      ]),
    });
    expect(
      settingFindings(by).map(({ check, severity, message }) => [check, severity, message]),
    ).toEqual([
      ['unknown-key', 'error', '"side-balance" has no setting "off_bye"; it has "off_by".'],
      ['not-understood', 'error', '"rise" of "sharp-rise" is written like "rise: 50 %".'],
      ['not-understood', 'error', '"sets" of "sharp-rise" is written like "sets: 2".'],
      ['unknown-key', 'error', '"kit-missing" has no setting "kit"; it has none.'],
    ]);
  });
});

describe('an accept', () => {
  const kit = accept('kit-missing');

  it.each(['plan', 'session', 'part', 'item'] as const)(
    'at the %s settles what is found in it',
    (where) => {
      expect(told(stepPlan({ [where]: [kit] }))).toEqual([
        ['kit-missing', 'warning', 'Talked over'],
      ]);
    },
  );

  it('settles nothing elsewhere, and says so at its place', () => {
    const step = item(exercise('step-up', { kit: [['step']] }));
    const idle = accept('kit-missing');
    const other = item(exercise('walk'), { accepts: [idle] });
    const made = plan([session([part('strength', [step, other])])], { limits: { kit: [] } });
    expect(told(made)).toEqual([OPEN, ['accept-settles-nothing', 'note', null]]);
    expect(checked(made).at(-1)?.place).toEqual(idle.place);
  });

  it('of another check settles nothing', () => {
    expect(told(stepPlan({ item: [accept('long-session')] }))).toEqual([
      OPEN,
      ['accept-settles-nothing', 'note', null],
    ]);
  });

  it('lasts until its day, held against the last visit', () => {
    expect(told(stepPlan({ item: [accept('kit-missing', '2026-11-16')] }))).toEqual([
      ['kit-missing', 'warning', 'Talked over'],
    ]);
    const lapsed = checked(stepPlan({ item: [accept('kit-missing', '2026-11-15')] }));
    expect(lapsed.map((one) => [one.check, one.accepted])).toEqual([['kit-missing', null]]);
    expect(lapsed[0]?.hints).toContain(
      'It was accepted until 2026-11-15, and the last visit is later.',
    );
  });

  it('gives way to a nearer one, and to one that still lasts', () => {
    const far = { ...kit, why: 'Far' };
    const near = { ...kit, why: 'Near' };
    expect(told(stepPlan({ plan: [far], item: [near] }))).toEqual([
      ['kit-missing', 'warning', 'Near'],
    ]);
    const lapsed = { ...near, until: '2026-10-06' };
    expect(told(stepPlan({ plan: [far], item: [lapsed] }))).toEqual([
      ['kit-missing', 'warning', 'Far'],
    ]);
  });

  it('does not settle an error', () => {
    const found = checked(stepPlan({ item: [kit] }), set('kit-missing', 'error'));
    expect(found.map(({ check, severity, accepted }) => [check, severity, accepted])).toEqual([
      ['kit-missing', 'error', null],
    ]);
    expect(found[0]?.hints.join(' ')).toContain('an error cannot be accepted');
  });

  it('of a check that did not run is let be', () => {
    expect(told(stepPlan({ item: [kit] }), set('kit-missing', 'off'))).toEqual([]);
    expect(told(stepPlan({ item: [kit] }, ['step']), set('kit-missing', 'off'))).toEqual([]);
    expect(told(stepPlan({ plan: [accept('looks-personal')] }, ['step']))).toEqual([]);
    expect(told(stepPlan({ plan: [accept('unknown-key')] }, ['step']))).toEqual([]);
  });

  it('that settles nothing can itself be accepted, set or turned off', () => {
    const idle = { item: [accept('long-session')] };
    const both = { ...idle, plan: [accept('accept-settles-nothing')] };
    const settles = ['accept-settles-nothing', 'note', 'Talked over'];
    expect(told(stepPlan(both, ['step']))).toEqual([settles]);
    expect(told(stepPlan(idle, ['step']), set('accept-settles-nothing', 'warning'))).toEqual([
      ['accept-settles-nothing', 'warning', null],
    ]);
    expect(told(stepPlan(idle, ['step']), set('accept-settles-nothing', 'off'))).toEqual([]);
    expect(told(stepPlan({ plan: [accept('accept-settles-nothing')] }, ['step']))).toEqual([]);
  });
});

describe('the list of checks', () => {
  it('has each once, and one alone that is an error: it would print two sentences at odds', () => {
    const names = PLAN_CHECKS.map(({ check }) => check);
    expect(new Set(names).size).toBe(names.length);
    expect(names.filter((name) => (CHECKS[name].severity as Severity) === 'error')).toEqual([
      'gate-above-stop',
    ]);
  });

  it('names a source for every setting', () => {
    const settings = PLAN_CHECKS.flatMap((one) => Object.values(one.settings));
    expect(settings.length).toBeGreaterThan(0);
    expect(settings.every(({ source }) => source.length > 0)).toBe(true);
  });
});
