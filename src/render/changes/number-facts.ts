// What a plan comes to, week by week: minutes, work a side, sets a muscle. The effect of a change is
// the difference of two versions' numbers, each as the clinic copy shows it.
import type { PlanNumbers, WeekNumbers } from '../../compute/numbers.ts';
import type { Session } from '../../model/plan.ts';
import type { Interval } from '../../units/interval.ts';
import type { Side } from '../../units/side.ts';
import { minutesOf, NOTHING, plainRange } from '../words/plain-number.ts';
import type { Words } from '../words/words.ts';
import { byWeek, type Fact } from './fact.ts';

/** One thing that is counted, and its facts; things of the same id are compared. */
export interface Measure {
  readonly id: string;
  readonly name: string;
  readonly facts: readonly Fact[];
}

export interface NumbersSetting {
  readonly words: Words;
  /** Of the longer of two versions: a week that a version does not have has no number. */
  readonly weeks: number;
  /** The id by which both versions call a session. */
  readonly sessionId: (session: Session) => string;
}

type NumberIn = (week: WeekNumbers) => Interval | undefined;

export function measures(
  { plan, weeks }: PlanNumbers,
  setting: NumbersSetting,
): readonly Measure[] {
  const { words, sessionId } = setting;
  const say = (key: string, values: Record<string, string> = {}) =>
    words.say(`changes.measures.${key}`, values);
  const fact = (numberIn: NumberIn, side: Fact['side'] = null) =>
    byWeek(
      side === null ? 'number' : 'number-by-side',
      textsOf(weeks, numberIn, setting),
      [],
      side,
    );
  const bySide = (numberIn: (week: WeekNumbers, side: 'left' | 'right') => Interval | undefined) =>
    (['left', 'right'] as const).map((side) => fact((week) => numberIn(week, side), side));
  const minutes = (ms: Interval | undefined) => ms && minutesOf(ms);
  const setsOf = (week: WeekNumbers, muscle: string, side: Side) => {
    const sets = week.muscles.get(muscle)?.[side];
    return sets && sets[1] > 0 ? sets : undefined;
  };
  const muscles = [...new Set(weeks.flatMap(({ muscles: sets }) => [...sets.keys()]))].sort();
  return [
    ...plan.sessions.map((session) => ({
      id: `session ${sessionId(session)}`,
      name: say('session', { session: session.name ?? session.id }),
      facts: [fact(({ sessions }) => minutes(sessions.find((one) => one.session === session)?.ms))],
    })),
    { id: 'week', name: say('week'), facts: [fact(({ ms }) => minutesOf(ms))] },
    { id: 'work', name: say('work'), facts: bySide((week, side) => minutes(week[side].workMs)) },
    {
      id: 'work middle',
      name: say('work-middle'),
      facts: [fact(({ middle }) => minutes(middle.workMs))],
    },
    ...muscles.flatMap((id) => {
      const muscle = words.look('muscles', id) ?? id;
      return [
        {
          id: `sets ${id}`,
          name: say('sets', { muscle }),
          facts: bySide((week, side) => setsOf(week, id, side)),
        },
        {
          id: `sets ${id} middle`,
          name: say('sets-middle', { muscle }),
          facts: [fact((week) => setsOf(week, id, 'middle'))],
        },
      ];
    }),
  ];
}

/** The same measure of a version that does not have it. */
export function without({ id, name, facts }: Measure): Measure {
  return {
    id,
    name,
    facts: facts.map((one) => ({
      ...one,
      value:
        one.value.kind === 'by-week'
          ? {
              kind: 'by-week',
              byWeek: new Map([...one.value.byWeek.keys()].map((week) => [week, NOTHING])),
            }
          : { kind: 'whole', lines: [] },
    })),
  };
}

function textsOf(
  weeks: readonly WeekNumbers[],
  numberIn: NumberIn,
  { words, weeks: last }: NumbersSetting,
) {
  return new Map(
    Array.from({ length: last }, (_, at) => {
      const week = weeks.find((one) => one.week === at + 1);
      const number = week && numberIn(week);
      return [at + 1, number ? plainRange(number, 1, words) : NOTHING] as const;
    }),
  );
}
