// Whole sheets in words: an invented plan that grows, and the cases that a reader could take two ways.
import { describe, expect, it } from 'vitest';
import type { SheetView } from '../../src/render/sheet/sheet-view.ts';
import { sheetView } from '../../src/render/sheet/worded-sheet.ts';
import { days, type MadePlan, type MadeSession, planNumbersOf, practiceOf } from './plans.ts';
import { english, exerciseOf } from './records.ts';

const RIGHT = 'if the last step felt right';
const gate = { place: null as never, reps: 10, effortAtMost: 5, sessionsInARow: 3 };

const march = exerciseOf({
  id: 'march',
  name: 'March on the spot',
  levels: [
    {
      purposes: ['warm-up'],
      kit: [['chair', 'worktop']],
      limb: 'knee',
      setup: ['Hold the worktop'],
      steps: ['Lift one knee'],
      feel: 'The front of your hips',
    },
  ],
});
const stand = exerciseOf({
  id: 'stand',
  name: 'Stand up from a chair',
  levels: [
    {
      id: 'hands',
      name: 'With hands',
      sides: 'both',
      limb: null,
      kit: [['chair']],
      easier: 'Use a higher chair',
      avoid: ['Do not rush'],
    },
    {
      id: 'crossed',
      name: 'Arms crossed',
      sides: 'both',
      limb: null,
      kit: [['chair'], ['cushion']],
      position: 'sitting',
    },
  ],
});
const walk = exerciseOf({
  id: 'walk',
  name: 'Walk',
  levels: [{ sides: 'middle', limb: null, purposes: ['cardio'], position: 'walking' }],
});
const tandem = exerciseOf({
  id: 'tandem',
  name: 'Tandem stand',
  levels: [{ purposes: ['balance'], limb: 'foot-in-front' }],
});

function sheet(made: MadePlan, practice = practiceOf()): SheetView {
  const numbers = planNumbersOf(made);
  return sheetView({ practice, plan: numbers.plan, numbers, person: null, words: english() });
}

/** A plan of one session on Mondays. */
function one(parts: MadeSession['parts'], rest: Omit<MadePlan, 'sessions'> = {}): SheetView {
  return sheet({ ...rest, sessions: [{ id: 'a', name: 'A', schedule: () => days('mon'), parts }] });
}

function exercisesOf(view: SheetView) {
  return view.exercises.groups.flatMap((group) => group.exercises);
}

const steadier: MadePlan = {
  plan: {
    goals: ['Go to the shop alone'],
    precautions: ['Wear shoes', 'Have someone at home for the first week.'],
  },
  sessions: [
    {
      id: 'strong',
      name: 'Strong and steady',
      schedule: () => days('mon', 'wed', 'fri'),
      ms: [930_000, 990_000],
      parts: [
        { items: [{ exercise: march, at: () => ({ dose: { reps: 10 }, order: 'each-rep' }) }] },
        {
          name: 'Build it up',
          items: [
            {
              exercise: stand,
              at: (week) => {
                const reps = ['5-8', '6-9', '7-10', '8-10', '5-8', '6-9'][week - 1] as string;
                return {
                  dose: { sets: 2, reps, rest: '60 s' },
                  level: week < 5 ? 'hands' : 'crossed',
                  moveOnWhen: gate,
                };
              },
            },
            {
              exercise: tandem,
              settings: { startWhen: 'You stand with your feet together for 30 seconds' },
              at: (week) => (week < 3 ? null : { dose: { hold: '10 s' } }),
            },
          ],
        },
      ],
    },
    {
      id: 'walk',
      name: 'Walk',
      ms: [300_000, 480_000],
      schedule: (week) => ({ kind: 'days-a-week', count: week < 3 ? [3, 5] : [4, 5] }),
      parts: [{ items: [{ exercise: walk, at: () => ({ dose: { time: '5-8 min' } }) }] }],
    },
  ],
};

describe('a sheet', () => {
  const view = sheet(steadier);

  it('says who it is from, what for, and for which days', () => {
    expect(view.head).toEqual({
      practice: 'Saltmarsh Movement Clinic',
      contact: 'Front desk, 555 0142',
      practitioner: 'Your practitioner: R. Kestrel, physiotherapist',
      person: null,
      title: 'Steadier on your feet',
      dates: 'For Wednesday 25 November 2026 to Tuesday 5 January 2027.',
      nextVisit: 'Next visit: Wednesday 6 January 2027.',
    });
    expect(view.goals).toEqual({ heading: 'What it is for', sentences: ['Go to the shop alone.'] });
    expect(view.footer).toEqual({ contact: 'Front desk, 555 0142', visitDate: '23 November 2026' });
  });

  it('has the box', () => {
    expect(view.safety).toEqual({
      heading: 'Pain and stopping',
      pain: [
        '0 to 3 out of 10: carry on. It should settle by the next morning.',
        '4 or 5 out of 10: ease off. Do fewer, or do it the easier way.',
        '6 to 10 out of 10: stop for today.',
        'Effort is another scale: 0 is no work, 10 is all that you have. Effort is not pain.',
      ],
      stopIf: { lead: 'Stop if:', reasons: ['The pain is sharp, or spreads'] },
      getInTouchIf: { lead: 'Get in touch if:', reasons: ['The pain keeps you awake'] },
      contact: 'This is where to reach us: Front desk, 555 0142.',
      emergencyIf: { lead: 'Call 999 if:', reasons: ['You have chest pain, or trouble breathing'] },
    });
  });

  it('has the days by number', () => {
    expect(view.days.sessions.map(({ sentence }) => sentence)).toEqual([
      'Strong and steady: exercises 1 and 2, on Monday, Wednesday and Friday. About 15 to 17 minutes.',
      'Walk: exercise 3, on 3 to 5 days a week. You choose the days. 5 to 8 minutes.',
    ]);
  });

  it('has what to put ready, a choice only where there is one', () => {
    expect(view.putReady?.sentences).toEqual([
      'A chair.',
      'Later on: a cushion.',
      'Wear shoes.',
      'Have someone at home for the first week.',
    ]);
  });

  it('has each exercise with its dose of the week shown', () => {
    const [first, second, third] = exercisesOf(view);
    expect(first).toEqual({
      number: 1,
      name: 'March on the spot',
      position: 'Stand.',
      picture: null,
      dose: 'Left knee and right knee in turn, 10 times each.',
      note: null,
      steps: ['Hold the worktop.', 'Lift one knee.'],
      feel: 'You should feel it: the front of your hips.',
      avoid: [],
      easier: null,
      harder: null,
    });
    expect(second).toMatchObject({
      number: 2,
      name: 'Stand up from a chair: with hands',
      easier: 'Too hard? Use a higher chair.',
      avoid: ['Do not rush.'],
      dose: '5 to 8 times. That is one round. Do 2 rounds, with 1 minute of rest in between.',
    });
    expect(third).toMatchObject({ number: 3, dose: 'Keep going for 5 to 8 minutes.' });
    expect(view.exercises.groups.map(({ heading }) => heading)).toEqual([
      null,
      'Build it up',
      null,
    ]);
  });

  it('grows by dated steps, a level only by its rule', () => {
    expect(view.growth?.changes).toEqual([
      {
        heading: 'Exercise 2: Stand up from a chair: with hands',
        lines: [
          `From Wednesday 2 December, ${RIGHT}: 6 to 9 times. All else stays the same.`,
          `From Wednesday 9 December, ${RIGHT}: 7 to 10 times. All else stays the same.`,
          `From Wednesday 16 December, ${RIGHT}: 8 to 10 times. All else stays the same.`,
          'From Wednesday 23 December: exercise 5 may take its place: see there.',
        ],
      },
    ]);
    expect(view.growth?.later).toMatchObject([
      {
        number: 4,
        name: 'Tandem stand',
        dose: 'Hold for 10 seconds with the left foot in front. Then the same with the right foot in front.',
        lines: [],
        when: 'From Wednesday 9 December, only if this is so: You stand with your feet together for 30 seconds. In Strong and steady: it comes after exercise 2.',
      },
      {
        number: 5,
        name: 'Stand up from a chair: arms crossed',
        position: 'Sit.',
        ready: 'Put ready: a cushion.',
        steps: ['Do it.'],
        when: 'From Wednesday 23 December, only if you did 10 times, with an effort of 5 or less out of 10, in 3 sessions in a row. It takes the place of exercise 2.',
        lines: [`From Wednesday 30 December, ${RIGHT}: 6 to 9 times. All else stays the same.`],
      },
    ]);
    expect(view.growth?.days).toEqual([
      {
        heading: 'Walk',
        lines: [`From Wednesday 9 December, ${RIGHT}: on 4 or 5 days a week. You choose the days.`],
      },
    ]);
  });

  it('has a line a day to tick, to the day before the next visit', () => {
    expect([view.tick.rows.length, view.tick.rows[0], view.tick.rows.at(-1)]).toEqual([
      42,
      'Wednesday 25 November',
      'Tuesday 5 January 2027',
    ]);
    expect(view.tick.columns).toEqual(['Date', 'Done', 'Pain 0 to 10', 'Effort 0 to 10']);
  });
});

describe('the week shown', () => {
  const visits = (...dates: string[]) => dates.map((date) => ({ date, found: null, why: null }));

  it('is that of the last visit, and earlier weeks stand nowhere', () => {
    const view = sheet({
      ...steadier,
      plan: { ...steadier.plan, visits: visits('2026-11-23', '2026-12-10') },
    });
    expect(exercisesOf(view)[1]?.dose).toMatch(/^7 to 10 times/);
    expect(view.head.dates).toBe('For Thursday 10 December 2026 to Tuesday 5 January 2027.');
    const all = JSON.stringify(view);
    expect(all).not.toMatch(/25 November/);
    expect(all).not.toMatch(/(?<!\d)[29] December/);
    // What came in week 3 is numbered as shown, with no condition left.
    expect(exercisesOf(view).map(({ number, name }) => `${number} ${name}`)).toContain(
      '3 Tandem stand',
    );
    expect(view.tick.rows[0]).toBe('Thursday 10 December');
  });

  it('has nothing to grow in the last week', () => {
    const view = sheet({
      ...steadier,
      plan: { ...steadier.plan, visits: visits('2026-11-23', '2027-01-02'), nextVisit: null },
    });
    expect(view.growth).toBeNull();
    expect(view.tick.rows.at(-1)).toBe('Tuesday 5 January');
  });
});

describe('numbers', () => {
  const same = () => ({ dose: { reps: 8 } });
  const sessions = (a: MadeSession['parts'][number]['items'], b: typeof a): MadePlan => ({
    sessions: [
      { id: 'a', name: 'Morning', schedule: () => days('mon'), parts: [{ items: a }] },
      { id: 'b', name: 'Evening', schedule: () => days('tue'), parts: [{ items: b }] },
    ],
  });

  it('are shared by the same exercise in two sessions', () => {
    const view = sheet(
      sessions(
        [
          { exercise: walk, at: same },
          { exercise: stand, at: same },
        ],
        [
          { exercise: stand, at: same },
          { exercise: tandem, at: same },
        ],
      ),
    );
    expect(view.days.sessions.map(({ text }) => text.split(',')[0])).toEqual([
      'exercises 1 and 2',
      'exercises 2 and 3',
    ]);
    expect(exercisesOf(view).map(({ number }) => number)).toEqual([1, 2, 3]);
  });

  it.each([
    ['dose', () => ({ dose: { reps: 9 } })],
    ['side', () => ({ dose: { reps: 8 }, only: 'left' as const })],
    ['note', () => ({ dose: { reps: 8 }, note: 'Slowly' })],
  ])('are not shared where the %s differs', (_, other) => {
    const view = sheet(
      sessions([{ exercise: tandem, at: same }], [{ exercise: tandem, at: other }]),
    );
    expect(exercisesOf(view).map(({ number }) => number)).toEqual([1, 2]);
  });

  it('say in which session a step holds where they part', () => {
    const view = sheet(
      sessions(
        [{ exercise: walk, at: same }],
        [{ exercise: walk, at: (week) => ({ dose: { reps: week < 2 ? 8 : 10 } }) }],
      ),
    );
    expect(view.growth?.changes[0]?.lines).toEqual([
      `In Evening: from Wednesday 2 December, ${RIGHT}: 10 times.`,
    ]);
  });

  it('are not shared inside a session where later weeks differ', () => {
    const twice = (id: string, to: number) => ({
      exercise: walk,
      settings: { id },
      at: (week: number) => ({ dose: { reps: week < 2 ? 8 : to } }),
    });
    const view = one([{ items: [twice('x', 10), twice('y', 12)] }]);
    expect(exercisesOf(view).map(({ number }) => number)).toEqual([1, 2]);
    const alike = one([{ items: [twice('x', 10), twice('y', 10)] }]);
    expect(alike.days.sessions[0]?.text).toMatch(/^exercises 1 and 1, /);
  });
});

describe('growth', () => {
  const eased = (week: number, easy: number[]) => ({
    dose: { sets: 2, reps: easy.includes(week) ? 5 : 10, rest: '30 s' },
  });

  it('tells easy weeks once, and what comes after', () => {
    const view = one([{ items: [{ exercise: walk, at: (week) => eased(week, [3, 4]) }] }], {
      easy: [3, 4],
    });
    expect(view.growth?.changes[0]?.lines).toEqual([
      'Easy week, Wednesday 9 December to Tuesday 22 December: 5 times. All else stays the same. Then go on as before.',
    ]);
  });

  it('goes on after an easy week only by the rule of the next level', () => {
    const view = one(
      [
        {
          items: [
            {
              exercise: stand,
              at: (week) => ({
                ...eased(week, [3]),
                level: week < 4 ? 'hands' : 'crossed',
                moveOnWhen: gate,
              }),
            },
          ],
        },
      ],
      { easy: [3] },
    );
    expect(view.growth?.changes[0]?.lines[0]).toMatch(/^Easy week, .* Then go on as before\.$/);
    expect(view.growth?.changes[0]?.lines[1]).toBe(
      'From Wednesday 16 December: exercise 2 may take its place: see there.',
    );
  });

  it('says nothing of an easy week that eases nothing', () => {
    expect(
      one([{ items: [{ exercise: walk, at: () => ({ dose: { reps: 8 } }) }] }], { easy: [2] })
        .growth,
    ).toBeNull();
  });

  it('asks no condition for less, and one for less rest or another band', () => {
    const lines = (first: Record<string, string | number>, then: Record<string, string | number>) =>
      one([{ items: [{ exercise: walk, at: (week) => ({ dose: week < 2 ? first : then }) }] }])
        .growth?.changes[0]?.lines[0] ?? '';
    expect(lines({ reps: 8, sets: 2, rest: '1 min' }, { reps: 6, sets: 2, rest: '1 min' })).toMatch(
      /^From Wednesday 2 December: 6 times/,
    );
    expect(
      lines({ reps: 8, sets: 2, rest: '1 min' }, { reps: 8, sets: 2, rest: '30 s' }),
    ).toContain(RIGHT);
    expect(lines({ reps: 8, load: 'medium band' }, { reps: 8, load: 'light band' })).toContain(
      RIGHT,
    );
    expect(lines({ reps: 8, load: '4 kg' }, { reps: 6, load: '6 kg' })).toContain(RIGHT);
    expect(lines({ reps: 8, load: '4 kg' }, { reps: 8, load: '3 kg' })).not.toContain(RIGHT);
  });

  it('lifts the rule of a level where the plan goes by week, and asks none for an easier one', () => {
    const view = (advance: 'by-week' | 'when-ready', from: string, to: string) =>
      one([
        {
          items: [
            {
              exercise: stand,
              settings: { level: stand.levels.find(({ id }) => id === from) as never },
              at: (week) => ({
                dose: { reps: 8 },
                level: week < 2 ? from : to,
                advance,
                moveOnWhen: gate,
              }),
            },
          ],
        },
      ]).growth?.later[0]?.when;
    expect(view('by-week', 'hands', 'crossed')).toBe(
      `From Wednesday 2 December, ${RIGHT}. It takes the place of exercise 1.`,
    );
    expect(view('when-ready', 'crossed', 'hands')).toBe(
      'From Wednesday 2 December. It takes the place of exercise 1.',
    );
  });

  it('writes a whole rule out, on each side', () => {
    const whole = {
      place: null as never,
      sets: 3,
      reps: 12,
      hold: { unit: 'ms', range: [5000, 5000] } as const,
      painAtMost: 3,
      effortAtMost: 6,
      sessionsInARow: 2,
    };
    const heel = exerciseOf({ levels: [{ id: 'one' }, { id: 'two', name: 'Two' }] });
    const view = one([
      {
        items: [
          {
            exercise: heel,
            at: (week) => ({
              dose: { reps: 8 },
              level: week < 2 ? 'one' : 'two',
              moveOnWhen: whole,
            }),
          },
        ],
      },
    ]);
    expect(view.growth?.later[0]?.when).toBe(
      'From Wednesday 2 December, only if you did 3 rounds of 12 times on each side, holding for 5 seconds each time, with pain of 3 or less out of 10 and an effort of 6 or less out of 10, in 2 sessions in a row. It takes the place of exercise 1.',
    );
  });

  it('goes back to a level that has a number', () => {
    const view = one([
      {
        items: [
          {
            exercise: stand,
            at: (week) => ({
              dose: { reps: week === 3 ? 6 : 8 },
              level: week === 2 ? 'crossed' : 'hands',
            }),
          },
        ],
      },
    ]);
    expect(view.growth?.changes[0]?.lines.slice(0, 2)).toEqual([
      'From Wednesday 2 December: exercise 2 may take its place: see there.',
      'From Wednesday 9 December: do this again, in place of exercise 2. 6 times.',
    ]);
  });

  it('tells what is left out, what comes again, and a session that begins or ends', () => {
    const view = sheet({
      sessions: [
        {
          id: 'a',
          name: 'Morning',
          schedule: () => days('mon'),
          parts: [
            {
              items: [
                { exercise: walk, at: () => ({ dose: { reps: 8 } }) },
                { exercise: stand, at: (week) => (week === 2 ? null : { dose: { reps: 5 } }) },
              ],
            },
          ],
        },
        {
          id: 'b',
          name: 'Evening',
          schedule: () => ({ kind: 'every', days: 2 }),
          isThere: (week) => week === 3 || week === 4,
          parts: [
            {
              items: [
                { exercise: walk, at: () => ({ dose: { reps: 8 } }) },
                { exercise: tandem, at: () => ({ dose: { reps: 3 } }) },
              ],
            },
          ],
        },
      ],
    });
    expect(view.growth?.changes).toEqual([
      {
        heading: 'Exercise 2: Stand up from a chair: with hands',
        lines: [
          'From Wednesday 2 December: leave it out.',
          `From Wednesday 9 December, ${RIGHT}. Take it up again. 5 times.`,
        ],
      },
    ]);
    expect(view.growth?.later).toMatchObject([
      { number: 3, name: 'Tandem stand', when: `From Wednesday 9 December, ${RIGHT}.` },
    ]);
    expect(view.growth?.days).toEqual([
      {
        heading: 'Evening',
        lines: [
          `From Wednesday 9 December, ${RIGHT}: exercises 1 and 3, every other day, from Wednesday 9 December. About 15 to 17 minutes.`,
          'From Wednesday 23 December: no longer.',
        ],
      },
    ]);
  });

  it('tells an exercise that another session takes up', () => {
    const view = sheet({
      sessions: [
        {
          id: 'a',
          name: 'Morning',
          schedule: () => days('mon'),
          parts: [{ items: [{ exercise: walk, at: () => ({ dose: { reps: 8 } }) }] }],
        },
        {
          id: 'b',
          name: 'Evening',
          schedule: () => days('tue'),
          parts: [
            {
              items: [
                { exercise: stand, at: () => ({ dose: { reps: 5 } }) },
                { exercise: walk, at: (week) => (week < 3 ? null : { dose: { reps: 8 } }) },
              ],
            },
          ],
        },
      ],
    });
    expect(view.growth?.later).toEqual([]);
    expect(view.growth?.changes[0]?.lines).toEqual([
      `From Wednesday 9 December, ${RIGHT}: do it in Evening too.`,
    ]);
  });

  it('tells the rounds of a circuit', () => {
    const rounds = (week: number) => (week === 3 ? 1 : week < 5 ? 2 : 3);
    const view = one(
      [
        {
          rounds,
          items: [
            { exercise: walk, at: () => ({ dose: { reps: 8 } }) },
            { exercise: stand, at: () => ({ dose: { reps: 5 } }) },
          ],
        },
      ],
      { easy: [3] },
    );
    expect(view.exercises.groups[0]?.together).toBe(
      'Exercises 1 and 2 go together: do 1, then 2. That is one round. Do 2 rounds, with 1 minute of rest in between.',
    );
    expect(exercisesOf(view)[0]?.dose).toBe('In each round: 8 times.');
    expect(view.growth?.days).toEqual([
      {
        heading: 'Exercises 1 and 2 together',
        lines: [
          'Easy week, Wednesday 9 December to Tuesday 15 December: Exercises 1 and 2 go together: do 1, then 2. That is one round. Do 1 round. Then go on as before.',
          `From Wednesday 23 December, ${RIGHT}: Exercises 1 and 2 go together: do 1, then 2. That is one round. Do 3 rounds, with 1 minute of rest in between.`,
        ],
      },
    ]);
  });
});

describe('what to put ready', () => {
  const lift = exerciseOf({
    id: 'lift',
    name: 'Lift',
    levels: [{ sides: 'middle', limb: null, kit: [['weight']] }],
  });
  it('names bands and weights, and of a choice what she has', () => {
    const items = [
      { exercise: march, at: () => ({ dose: { reps: 5 } }) },
      { exercise: lift, at: () => ({ dose: { reps: 5, load: '2 x 4 kg' } }) },
      { exercise: walk, at: () => ({ dose: { reps: 5, load: 'medium band' } }) },
    ];
    expect(one([{ items }]).putReady?.sentences).toEqual([
      'A chair or a worktop, 2 weights of 4 kg, the medium band.',
    ]);
    const limits = {
      timeMs: null,
      kit: ['worktop', 'weight', 'medium band'],
      positionsToAvoid: [],
      concerns: [],
    };
    expect(one([{ items }], { plan: { limits } }).putReady?.sentences).toEqual([
      'A worktop, 2 weights of 4 kg, the medium band.',
    ]);
  });
});
