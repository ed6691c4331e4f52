// The facts of a plan's head: dates, aims, limits, precautions, what goes for all its sessions.
import type { EasyWeeks, Plan, Window } from '../../model/plan.ts';
import type { PainRanges } from '../../model/practice.ts';
import { formatLoad } from '../../units/load.ts';
import { THOUSANDTHS } from '../../units/number.ts';
import { minutesOf, plainNumber, plainRange, secondsOf } from '../words/plain-number.ts';
import type { Words } from '../words/words.ts';
import { type Fact, type Section, whole } from './fact.ts';

/** What hangs on the days: which week is shown, its doses, every date. */
export const DATED: readonly Section[] = [
  'head',
  'days',
  'putReady',
  'exercises',
  'growth',
  'tick',
  'normal',
];

/** `pain` are the ranges that hold for it: its own, or the practice's. */
export function planFacts(plan: Plan, pain: PainRanges | null, words: Words): readonly Fact[] {
  const { limits, profile, visits } = plan;
  const list = (kind: 'kit' | 'positions' | 'concerns', ids: readonly string[]) =>
    ids.map((id) => words.look(kind, id) ?? id);
  return [
    whole('code', plan.id, []),
    whole('title', plan.title, ['head']),
    whole('handout-language', plan.handoutLanguage, ['language']),
    whole('by', plan.by, ['head']),
    whole('person', plan.person, ['head']),
    whole('last-visit', visits.at(-1)?.date, [...DATED, 'footer']),
    whole(
      'visits',
      visits.map((visit) => visitText(visit, words)),
      [],
    ),
    whole('starts', plan.starts, DATED),
    whole('next-visit', plan.nextVisit, ['head', 'tick']),
    whole('weeks', plainNumber(plan.weeks, 0, words), DATED),
    whole('affected', words.say(`clinic.affected.${plan.affected}`), ['exercises', 'growth']),
    whole('print', plan.print === 'large' ? words.say('changes.large-print') : null, []),
    whole('goals', plan.goals, ['goals']),
    whole(
      'profile',
      [profile.ageBand, profile.training].filter((one) => one !== null),
      [],
    ),
    whole('time', limits.timeMs === null ? null : minutesText(limits.timeMs, words), []),
    whole('kit', limits.kit === null ? words.say('changes.any-kit') : list('kit', limits.kit), [
      'putReady',
      'growth',
    ]),
    whole('positions-to-avoid', list('positions', limits.positionsToAvoid), []),
    whole('concerns', list('concerns', limits.concerns), []),
    whole('precautions', plan.precautions, ['putReady']),
    whole('pain', pain && painText(pain, words), ['safety', 'growth', 'exercises']),
    whole('stop-if', plan.stopIfAlso, ['safety']),
    whole('easy-weeks', plan.easyWeeks && easyText(plan.easyWeeks, words), [
      'exercises',
      'growth',
      'days',
    ]),
    whole('short-day', plan.shortDayMs === null ? null : minutesText(plan.shortDayMs, words), []),
    whole(
      'between-items',
      plan.betweenItemsMs &&
        words.say('clinic.seconds', {
          number: plainRange(secondsOf(plan.betweenItemsMs), 3, words),
        }),
      ['days', 'growth'],
    ),
    whole(
      'one-rep-max',
      [...plan.oneRepMax].map(([exercise, load]) => `${exercise}: ${formatLoad(load)}`),
      ['exercises', 'growth', 'putReady'],
    ),
    whole('accepted', acceptedTexts(plan, words), []),
    whole(
      'report',
      [...plan.report].map(([key, answer]) => `${key}: ${answer}`),
      [],
    ),
    whole(
      'closed',
      plan.closed && words.say('changes.closed', { date: plan.closed.date, why: plan.closed.why }),
      [],
    ),
  ];
}

export function painText({ carryOn, easeOff, stop }: PainRanges, words: Words): string {
  return words.say('changes.pain', {
    carry_on: plainRange(carryOn, 0, words),
    ease_off: plainRange(easeOff, 0, words),
    stop: plainRange(stop, 0, words),
  });
}

/** "weeks 1 to 3, week 5". */
export function windowsText(windows: readonly Window[], words: Words): string {
  return windows.map(([first, last]) => weeksText(first, last, words)).join(', ');
}

export function weeksText(first: number, last: number, words: Words): string {
  return first === last
    ? words.say('changes.week', { week: String(first) })
    : words.say('changes.weeks', { first: String(first), last: String(last) });
}

function visitText({ date, found, why }: Plan['visits'][number], words: Words): string {
  const said = [
    ...(found === null ? [] : [words.say('changes.found', { found })]),
    ...(why === null ? [] : [words.say('changes.why', { why })]),
  ];
  return [date, ...said].join(' ');
}

function easyText({ weeks, sets, reps, hold, time }: EasyWeeks, words: Words): string {
  const eased = Object.entries({ sets, reps, hold, time }).flatMap(([aspect, share]) =>
    share === null
      ? []
      : [
          words.say('changes.eased', {
            aspect: words.say(`changes.aspects.${aspect}`),
            share: words.say('clinic.percent', {
              number: plainNumber(share / THOUSANDTHS, 3, words),
            }),
          }),
        ],
  );
  const runs = weeks.map((week) => words.say('changes.week', { week: String(week) }));
  return [...runs, ...eased].join(', ');
}

function minutesText(ms: number, words: Words): string {
  return words.say('changes.minutes', { minutes: plainRange(minutesOf([ms, ms]), 1, words) });
}

/** Of the plan, its sessions, parts and items alike. */
function acceptedTexts(plan: Plan, words: Words): readonly string[] {
  const scopes = [
    { at: '', accepts: plan.accepts },
    ...plan.sessions.flatMap((session) => [
      { at: session.id, accepts: session.accepts },
      ...session.parts.flatMap((part) => [
        { at: `${session.id}, ${part.name ?? part.kind}`, accepts: part.accepts },
        ...part.items.map((item) => ({ at: `${session.id}, ${item.id}`, accepts: item.accepts })),
      ]),
    ]),
  ];
  return scopes.flatMap(({ at, accepts }) =>
    accepts.map(({ check, why, until }) => {
      const text = words.say('changes.accept', { check, why });
      return [at, text, until ?? ''].filter((one) => one !== '').join(', ');
    }),
  );
}
