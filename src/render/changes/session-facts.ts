// The facts of a session and of a part: when, how often, rounds and gaps, week by week.
import type { PartWeek, PlanNumbers, SessionWeek } from '../../compute/numbers.ts';
import type { Part, Plan, Session, SessionEntry } from '../../model/plan.ts';
import type { Interval } from '../../units/interval.ts';
import { plainNumber, plainRange, secondsOf } from '../words/plain-number.ts';
import { scheduleText } from '../words/schedule-words.ts';
import type { Words } from '../words/words.ts';
import { byWeek, type Fact, whole } from './fact.ts';
import { DATED, windowsText } from './plan-facts.ts';

/** Of a plan that has numbers, by week; else what stands in the file for the first week. */
export function sessionFacts(
  session: Session,
  { plan, numbers, words }: FactSetting,
): readonly Fact[] {
  const inWeeks = (text: (week: SessionWeek) => string) =>
    new Map(
      (numbers?.weeks ?? []).flatMap(({ week, sessions }) => {
        const there = sessions.find((one) => one.session === session);
        return there ? [[week, text(there)] as const] : [];
      }),
    );
  const window = whole('in-weeks', session.windows && windowsText(session.windows, words), DATED);
  if (!numbers) {
    const { schedule, timesADay } = session;
    return [
      window,
      whole('name', session.name, ['days', 'growth']),
      whole(
        'days',
        scheduleText(words, {
          schedule,
          timesADay: timesADay ?? [1, 1],
          starts: plan.starts,
          from: plan.starts,
        }),
        DATED,
      ),
      whole(
        'from-week',
        session.fromWeek.map((entry) => entryText(entry, plan, words)),
        DATED,
      ),
    ];
  }
  return [
    window,
    byWeek(
      'name',
      inWeeks(({ name }) => name ?? ''),
      ['days', 'growth'],
    ),
    byWeek(
      'days',
      inWeeks(({ schedule, timesADay }) =>
        scheduleText(words, { schedule, timesADay, starts: plan.starts, from: plan.starts }),
      ),
      DATED,
    ),
    byWeek(
      'between-items',
      inWeeks(({ betweenItemsMs }) => secondsText(betweenItemsMs, words)),
      ['days', 'growth'],
    ),
  ];
}

export interface FactSetting {
  readonly plan: Plan;
  /** Null where the plan has an error, so that only what is written can be told. */
  readonly numbers: PlanNumbers | null;
  readonly words: Words;
  /** The id by which both versions call an exercise, whatever its file was called. */
  readonly idNow: (exercise: string) => string;
  /** The session and part by which both versions call a place. */
  readonly placeNow: (place: PartPlace) => PartPlace;
}

export interface PartPlace {
  readonly session: Session;
  readonly part: Part;
}

/** "week 4: on Monday and Thursday". */
function entryText(
  { week, name, schedule, timesADay }: SessionEntry,
  plan: Plan,
  words: Words,
): string {
  const days =
    schedule &&
    scheduleText(words, {
      schedule,
      timesADay: timesADay ?? [1, 1],
      starts: plan.starts,
      from: plan.starts,
    });
  const said = [name, days].filter((one) => one !== undefined);
  return [words.say('changes.week', { week: String(week) }), ...said].join('; ');
}

/** How often a session comes, in the first week that it is there. */
export function firstSchedule(session: Session, { plan, numbers, words }: FactSetting): string {
  const first = numbers?.weeks
    .flatMap(({ sessions }) => sessions)
    .find((one) => one.session === session);
  return scheduleText(words, {
    schedule: first?.schedule ?? session.schedule,
    timesADay: first?.timesADay ?? session.timesADay ?? [1, 1],
    starts: plan.starts,
    from: plan.starts,
  });
}

export function partFacts(part: Part, { numbers, words }: FactSetting): readonly Fact[] {
  const inWeeks = (text: (week: PartWeek) => string) =>
    new Map(
      (numbers?.weeks ?? []).flatMap(({ week, sessions }) => {
        const there = sessions.flatMap(({ parts }) => parts).find((one) => one.part === part);
        return there ? [[week, text(there)] as const] : [];
      }),
    );
  const window = whole('in-weeks', part.windows && windowsText(part.windows, words), DATED);
  if (!numbers) {
    const { name, rounds, restBetweenRoundsMs } = part;
    return [
      window,
      whole('name', name, ['exercises']),
      whole('rounds', rounds === undefined ? null : plainNumber(rounds, 0, words), ['exercises']),
      whole('rest-between-rounds', restBetweenRoundsMs && secondsText(restBetweenRoundsMs, words), [
        'exercises',
      ]),
    ];
  }
  return [
    window,
    byWeek(
      'name',
      inWeeks(({ name }) => name ?? ''),
      ['exercises', 'growth'],
    ),
    byWeek(
      'rounds',
      inWeeks(({ rounds }) => (rounds === null ? '' : plainNumber(rounds, 0, words))),
      ['exercises', 'days', 'growth'],
    ),
    byWeek(
      'rest-between-rounds',
      inWeeks(({ rounds, restBetweenRoundsMs }) =>
        rounds === null ? '' : secondsText(restBetweenRoundsMs, words),
      ),
      ['exercises', 'days', 'growth'],
    ),
    ...(hasOwnGap(part)
      ? [
          byWeek(
            'between-items',
            inWeeks(({ betweenItemsMs }) => secondsText(betweenItemsMs, words)),
            ['days', 'growth'],
          ),
        ]
      : []),
  ];
}

/** Else it is the session's, and told there. */
function hasOwnGap({ betweenItemsMs, fromWeek }: Part): boolean {
  return [betweenItemsMs, ...fromWeek.map((entry) => entry.betweenItemsMs)].some(
    (gap) => gap !== undefined,
  );
}

function secondsText(ms: Interval, words: Words): string {
  return words.say('clinic.seconds', { number: plainRange(secondsOf(ms), 3, words) });
}
