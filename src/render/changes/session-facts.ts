// The facts of a session and of a part: when, how often, rounds and gaps, week by week.
import type { PartWeek, PlanNumbers, SessionWeek } from '../../compute/numbers.ts';
import type { Part, Plan, Session } from '../../model/plan.ts';
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
  if (!numbers) return [window, whole('name', part.name, ['exercises'])];
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
    byWeek(
      'between-items',
      inWeeks(({ betweenItemsMs }) => secondsText(betweenItemsMs, words)),
      ['days', 'growth'],
    ),
  ];
}

function secondsText(ms: Interval, words: Words): string {
  return words.say('clinic.seconds', { number: plainRange(secondsOf(ms), 3, words) });
}
