// Whole sheets in words: an invented plan that grows, and the cases that a reader could take two ways.
import { describe, expect, it } from 'vitest';
import type { LineView, SheetView } from '../../src/render/sheet/sheet-view.ts';
import { sheetView } from '../../src/render/sheet/worded-sheet.ts';
import type { Interval } from '../../src/units/interval.ts';
import { days, type MadePlan, type MadeSession, planNumbersOf, practiceOf } from './plans.ts';
import { english, exerciseOf, type ItemWeekSettings, type Written } from './records.ts';

const WELL = 'if your exercises went well until then';
/** "From …: …", as it is read. */
const read = ({ lead, text }: LineView) => `${lead} ${text}`;
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
  return view.exercises.sessions.flatMap(({ groups }) =>
    groups.flatMap((group) => group.exercises),
  );
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
      unreviewed: null,
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
        'Pain from 0 to 10: 0 is none, 10 is the worst that you can think of.',
        'Pain 0 to 3: carry on. It should settle by the next morning.',
        'Pain 4 or 5: ease off. Do fewer, or do it the easier way.',
        'Pain 6 to 10: stop for today.',
        'Effort is not pain. It is how hard you work: 0 is no work, 10 is all that you have.',
      ],
      stopIf: { lead: 'Stop for today if:', reasons: ['The pain is sharp, or spreads'] },
      contact: 'Call us the same day or the next: Front desk, 555 0142',
      getInTouchIf: {
        lead: 'and do no more exercises until we have spoken, if:',
        reasons: ['The pain keeps you awake'],
      },
      emergencyIf: {
        lead: 'Call 999 at once if:',
        reasons: ['You have chest pain, or trouble breathing'],
      },
      dial: { contact: 'tel:5550142', emergency: 'tel:999' },
    });
  });

  it.each([
    ['Front desk, 555 0142 (weekdays 8 to 18)', 'tel:5550142'],
    ['+44 1632 960 001', 'tel:+441632960001'],
    ['Ring 01632-960001', 'tel:01632960001'],
    ['555 0142 or 555 0143', null],
    ['Room 12, weekdays 8 to 18', null],
    ['desk@example.org', null],
  ])('dials the one number of %j, and guesses none', (contact, dial) => {
    expect(sheet(steadier, practiceOf({ contact })).safety.dial.contact).toBe(dial);
  });

  it('only says where to reach the practice where there are no reasons to', () => {
    const { safety } = sheet(steadier, practiceOf({ getInTouch: [] }));
    expect(safety.getInTouchIf).toBeNull();
    expect(safety.contact).toBe('Call us: Front desk, 555 0142');
  });

  it('has the days by number', () => {
    expect(view.days.sessions.map(({ sentence }) => sentence)).toEqual([
      'Strong and steady: exercises 1 and 2, on Monday, Wednesday and Friday. About 15 to 17 minutes.',
      'Walk: exercise 3, on 3 to 5 days a week. You choose the days. 5 to 8 minutes.',
    ]);
  });

  it('has what to put ready, a choice only where there is one, and precautions apart', () => {
    expect(view.putReady).toEqual({
      kit: {
        heading: 'Put ready',
        things: ['A chair'],
        later: { lead: 'Later on:', reasons: ['A cushion'] },
      },
      precautions: {
        heading: 'Take care',
        sentences: ['Wear shoes.', 'Have someone at home for the first week.'],
      },
    });
  });

  it('has each exercise with its dose of the week shown', () => {
    const [first, second, third] = exercisesOf(view);
    expect(first).toEqual({
      number: 1,
      mark: null,
      name: 'March on the spot',
      position: 'Stand.',
      picture: null,
      link: null,
      dose: 'Left knee and right knee in turn, 10 times each.',
      note: null,
      steps: ['Hold the worktop.', 'Lift one knee.'],
      feel: 'You should feel it: the front of your hips.',
      avoid: [],
      easier: null,
      harder: null,
      alsoIn: null,
    });
    expect(second).toMatchObject({
      number: 2,
      name: 'Stand up from a chair: with hands',
      easier: 'Too hard? Use a higher chair.',
      avoid: ['Do not rush.'],
      dose: '5 to 8 times. That is one round. Do 2 rounds, with 1 minute of rest in between.',
    });
    expect(third).toMatchObject({ number: 3, dose: 'Keep going for 5 to 8 minutes.' });
    const { sessions } = view.exercises;
    expect(sessions.map(({ heading }) => heading)).toEqual([
      'Strong and steady: on Monday, Wednesday and Friday',
      'Walk: on 3 to 5 days a week',
    ]);
    expect(sessions.flatMap(({ groups }) => groups.map(({ heading }) => heading))).toEqual([
      null,
      'Build it up',
      null,
    ]);
  });

  it('grows by dated steps, a level only by its rule', () => {
    expect(view.growth?.lead).toEqual([
      'Go no faster than these dates. Each line is a step. It says only what changes; all else stays as it was.',
      'Take a step only if your exercises went well until then: they felt right, and pain stayed at 0 to 3. Where a line says "only if", that must be so too. A line that asks for less you take in any case.',
      'If a step is too much, stay where you are, or go back one. Do not skip a step.',
    ]);
    expect(view.growth?.changes).toEqual([
      {
        heading: 'Exercise 2: Stand up from a chair: with hands',
        lines: [
          { lead: 'From Wednesday 2 December:', text: '6 to 9 times.' },
          { lead: 'From Wednesday 9 December:', text: '7 to 10 times.' },
          { lead: 'From Wednesday 16 December:', text: '8 to 10 times.' },
          {
            lead: 'From Wednesday 23 December:',
            text: 'Exercise 5, further down, may take its place.',
          },
        ],
      },
    ]);
    expect(view.growth?.later).toMatchObject({
      heading: 'Later: not before the date',
      exercises: [
        {
          number: 4,
          name: 'Tandem stand',
          dose: 'Hold for 10 seconds with the left foot in front. Then the same with the right foot in front.',
          lines: [],
          when: 'From Wednesday 9 December, only if: you stand with your feet together for 30 seconds. In Strong and steady the order is then: 1, then 2, then 4.',
        },
        {
          number: 5,
          name: 'Stand up from a chair: arms crossed',
          position: 'Sit.',
          ready: 'Put ready: a cushion.',
          steps: ['Do it.'],
          when: 'From Wednesday 23 December, only if you did exercise 2, at least 10 times, with effort of 5 or less, in 3 sessions in a row. It takes the place of exercise 2.',
          lines: [{ lead: 'From Wednesday 30 December:', text: '6 to 9 times.' }],
        },
      ],
    });
    expect(view.growth?.days).toEqual([
      {
        heading: 'Walk',
        lines: [
          {
            lead: 'From Wednesday 9 December:',
            text: 'On 4 or 5 days a week. You choose the days.',
          },
        ],
      },
    ]);
  });

  it('has a line a day to tick, to the day before the next visit', () => {
    // The walk may be due on any day.
    expect([view.tick.rows.length, view.tick.rows.slice(0, 2), view.tick.rows.at(-1)]).toEqual([
      42,
      [
        { date: 'Wednesday 25 November', due: 'Strong and steady' },
        { date: 'Thursday 26 November', due: null },
      ],
      { date: 'Tuesday 5 January', due: null },
    ]);
    expect(view.tick.columns).toEqual(['Date', 'Done', 'Worst pain 0 to 10', 'Effort 0 to 10']);
    expect(view.tick.sentences).toEqual([
      'Tick each one you did. Write the worst pain and how hard it was. Bring this page to your next visit.',
      'Walk: write it on the days on which you do it.',
    ]);
    expect(view.tick.goesOn).toBeNull();
  });
});

describe('the page to tick', () => {
  const session = (id: string, schedule: MadeSession['schedule']): MadeSession => ({
    id,
    name: id.toUpperCase(),
    schedule,
    parts: [{ items: [{ exercise: walk, at: () => ({ dose: { reps: 8 } }) }] }],
  });
  const ticked = (sessions: MadeSession[], plan: MadePlan['plan'] = {}) =>
    sheet({ sessions, plan }).tick;

  it('has the days on which something is due, and no others', () => {
    const { rows, sentences } = ticked([session('a', () => days('mon', 'thu'))]);
    // Weeks begin on a Wednesday: Thursday 26 November is the first day.
    expect(rows.map(({ date }) => date).slice(0, 3)).toEqual([
      'Thursday 26 November',
      'Monday 30 November',
      'Thursday 3 December',
    ]);
    expect(rows).toHaveLength(12);
    expect(rows.every(({ due }) => due === null)).toBe(true);
    expect(sentences).toHaveLength(1);
  });

  it('says what is due where there are several, week by week', () => {
    const { rows } = ticked([
      session('a', (week) => days(week < 2 ? 'fri' : 'sat')),
      session('b', () => ({ kind: 'every', days: 3 })),
    ]);
    expect(rows.slice(0, 5)).toEqual([
      { date: 'Wednesday 25 November', due: 'B' },
      { date: 'Friday 27 November', due: 'A' },
      { date: 'Saturday 28 November', due: 'B' },
      { date: 'Tuesday 1 December', due: 'B' },
      { date: 'Friday 4 December', due: 'B' },
    ]);
    expect(rows[5]).toEqual({ date: 'Saturday 5 December', due: 'A' });
  });

  it('has every day where one may come at any time', () => {
    const { rows, sentences } = ticked([
      session('a', () => days('mon')),
      session('b', () => ({ kind: 'as-needed' })),
    ]);
    expect(rows).toHaveLength(42);
    expect(sentences[1]).toBe('B: write it on the days on which you do it.');
  });

  it('says so where it does not reach to the next visit', () => {
    const long = { weeks: 10, nextVisit: null };
    const { rows, goesOn } = ticked([session('a', () => ({ kind: 'every', days: 1 }))], long);
    expect(rows).toHaveLength(42);
    expect(goesOn).toBe('After Tuesday 5 January, go on in the same way on a page of your own.');
    expect(ticked([session('a', () => days('mon'))], long).goesOn).toBeNull();
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
    expect(view.tick.rows[0]?.date).toBe('Thursday 10 December');
  });

  it('has nothing to grow in the last week', () => {
    const view = sheet({
      ...steadier,
      plan: { ...steadier.plan, visits: visits('2026-11-23', '2027-01-02'), nextVisit: null },
    });
    expect(view.growth).toBeNull();
    expect(view.tick.rows.at(-1)?.date).toBe('Tuesday 5 January');
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
    expect(exercisesOf(view).map(({ number, alsoIn }) => [number, alsoIn])).toEqual([
      [1, null],
      [2, 'Also part of: Evening.'],
      [3, null],
    ]);
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
    expect(view.growth?.changes[0]?.lines.map(read)).toEqual([
      'From Wednesday 2 December: In Evening: 10 times.',
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

  it('tells easy weeks once, apart from the steps, and what comes after', () => {
    const view = one([{ items: [{ exercise: walk, at: (week) => eased(week, [3, 4]) }] }], {
      easy: [3, 4],
    });
    expect(view.growth?.changes).toEqual([]);
    expect(view.growth?.easyWeeks).toEqual([
      {
        heading: 'Easy week: Wednesday 9 December to Tuesday 22 December',
        sentences: [
          'Do less on purpose, even if you feel well. If you do less than this already, do no more.',
          'After it, go on from where you were before it. What is not named here stays as it is.',
        ],
        lines: [{ lead: 'Exercise 1:', text: '5 times.' }],
      },
    ]);
  });

  it('eases also the level at which she may still be, and ends it too', () => {
    const easyWeeks = { weeks: [4], sets: null, reps: 50_000, hold: null, time: null };
    const climbing = (level: 'hands' | 'crossed', reps: number) => ({
      dose: { reps },
      level,
      moveOnWhen: gate,
    });
    const view = one(
      [
        {
          items: [
            { exercise: walk, at: () => ({ dose: { time: '5 min' } }) },
            {
              exercise: stand,
              at: (week) => {
                if (week > 5) return null;
                if (week < 3) return climbing('hands', 12);
                return climbing('crossed', week === 4 ? 4 : 8);
              },
            },
          ],
        },
      ],
      { easy: [4], plan: { easyWeeks: easyWeeks as never } },
    );
    expect(view.growth?.easyWeeks[0]?.lines.map(read)).toEqual([
      'Exercise 2: 6 times.',
      'Exercise 3: 4 times.',
    ]);
    const ending = 'From Wednesday 30 December: Leave it out.';
    expect(view.growth?.changes[0]?.lines.map(read).at(-1)).toBe(ending);
    expect(view.growth?.later?.exercises[0]?.lines.map(read)).toEqual([ending]);
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
    expect(view.growth?.easyWeeks).toHaveLength(1);
    expect(view.growth?.changes[0]?.lines.map(read)).toEqual([
      'From Wednesday 16 December: Exercise 2, further down, may take its place.',
    ]);
  });

  it('says nothing of an easy week that eases nothing', () => {
    expect(
      one([{ items: [{ exercise: walk, at: () => ({ dose: { reps: 8 } }) }] }], { easy: [2] })
        .growth,
    ).toBeNull();
  });

  const firstLine = (first: Written, then: Written) => {
    const at = (week: number) => ({ dose: week < 2 ? first : then });
    const line = one([{ items: [{ exercise: walk, at }] }]).growth?.changes[0]?.lines[0];
    return line ? read(line) : '';
  };

  it('marks what asks for less, but not less rest or another band', () => {
    const LESS = 'From Wednesday 2 December, no more than this:';
    const sets = { reps: 8, sets: 2, rest: '1 min' };
    expect(firstLine(sets, { ...sets, reps: 6 })).toBe(`${LESS} 6 times.`);
    expect(firstLine(sets, { ...sets, rest: '30 s' })).toBe(
      'From Wednesday 2 December: Do 2 rounds, with 30 seconds of rest in between.',
    );
    expect(firstLine({ reps: 8, load: 'medium band' }, { reps: 8, load: 'light band' })).toBe(
      'From Wednesday 2 December: 8 times, using the light band.',
    );
    expect(firstLine({ reps: 8, load: '4 kg' }, { reps: 6, load: '6 kg' })).not.toContain(LESS);
    expect(firstLine({ reps: 8, load: '4 kg' }, { reps: 8, load: '3 kg' })).toContain(LESS);
  });

  it('says only what changes, and all of it where something is not said any more', () => {
    const FROM = 'From Wednesday 2 December:';
    const held = { reps: 8, hold: '2 s', sets: 2, rest: '30 s' };
    expect(firstLine(held, { ...held, reps: 10 })).toBe(`${FROM} 10 times.`);
    expect(firstLine(held, { ...held, hold: '3 s' })).toBe(
      `${FROM} 8 times, holding for 3 seconds each time.`,
    );
    expect(firstLine(held, { ...held, sets: 3 })).toBe(
      `${FROM} Do 3 rounds, with 30 seconds of rest in between.`,
    );
    expect(firstLine(held, { ...held, reps: 10, sets: 1 })).toBe(
      `${FROM.replace(':', ', no more than this:')} 10 times. Do only 1 round.`,
    );
    expect(firstLine(held, { reps: 12, sets: 2, rest: '30 s' })).toBe(
      `${FROM} The whole exercise is now: 12 times. That is one round. Do 2 rounds, with 30 seconds of rest in between.`,
    );
    expect(firstLine({ reps: 8, effort: 5 }, { reps: 10 })).toBe(
      `${FROM} The whole exercise is now: 10 times.`,
    );
    expect(firstLine({ reps: 8, effort: 5 }, { reps: 8, effort: 6 })).toBe(
      `${FROM} Effort (not pain): 6 out of 10.`,
    );
  });

  it('names the sides, and their rounds, whatever else stays unsaid', () => {
    const lines = (now: Partial<Omit<ItemWeekSettings, 'level' | 'item'>>) => {
      const dose = { reps: 8, sets: 2, rest: '30 s', load: '4 kg' };
      const at = (week: number) => (week < 2 ? { dose } : { dose, ...now });
      const line = one([{ items: [{ exercise: tandem, at }] }]).growth?.changes[0]?.lines[0];
      return line?.text;
    };
    expect(lines({ left: { reps: 10 } })).toBe(
      '10 times with the left foot in front, then 8 times with the right foot in front.',
    );
    expect(lines({ order: 'all-sets' })).toBe(
      'Left foot in front first: 2 rounds of 8 times, with 30 seconds of rest in between. Then the same with the right foot in front.',
    );
    expect(lines({ left: { sets: 3 } })).toBe(
      '8 times with the left foot in front, then the same with the right foot in front. That is one round. Do 2 rounds, with 30 seconds of rest in between. Then rest 30 seconds and do one extra round with the left foot in front only.',
    );
    expect(lines({ only: 'right' })).toBe('8 times with the right foot in front only.');
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
      ]).growth;
    expect(view('by-week', 'hands', 'crossed')?.later?.exercises[0]?.when).toBe(
      `From Wednesday 2 December, ${WELL}. It takes the place of exercise 1.`,
    );
    const easier = view('when-ready', 'crossed', 'hands');
    expect(easier?.later?.exercises[0]?.when).toBe(
      'From Wednesday 2 December, in any case. It takes the place of exercise 1.',
    );
    expect(easier?.changes[0]?.lines.map(read)).toEqual([
      'From Wednesday 2 December: Exercise 2, further down, takes its place.',
    ]);
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
    expect(view.growth?.later?.exercises[0]?.when).toBe(
      'From Wednesday 2 December, only if you did exercise 1, at least 3 rounds of 12 times on each side, holding for at least 5 seconds each time, with pain of 3 or less and effort of 6 or less, in 2 sessions in a row. It takes the place of exercise 1.',
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
    expect(view.growth?.changes[0]?.lines.map(read).slice(0, 2)).toEqual([
      'From Wednesday 2 December: Exercise 2, further down, may take its place.',
      'From Wednesday 9 December, in any case: Do this again, in place of exercise 2. 6 times.',
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
    expect(view.growth?.changes.map(({ heading, lines }) => [heading, ...lines.map(read)])).toEqual(
      [
        [
          'Exercise 2: Stand up from a chair: with hands',
          'From Wednesday 2 December: Leave it out.',
          'From Wednesday 9 December: Take it up again. 5 times. In Morning the order is then: 1, then 2.',
        ],
      ],
    );
    expect(view.growth?.later?.exercises).toMatchObject([
      { number: 3, name: 'Tandem stand', when: `From Wednesday 9 December, ${WELL}.` },
    ]);
    expect(view.growth?.days.map(({ heading, lines }) => [heading, ...lines.map(read)])).toEqual([
      [
        'Evening',
        'From Wednesday 9 December: Exercises 1 and 3, every other day, from Wednesday 9 December. About 15 to 17 minutes.',
        'From Wednesday 23 December: Stop doing it.',
      ],
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
    expect(view.growth?.later).toBeNull();
    expect(view.growth?.changes[0]?.lines.map(read)).toEqual([
      'From Wednesday 9 December: Do it in Evening too. In Evening the order is then: 2, then 1.',
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
    expect(view.exercises.sessions[0]?.groups[0]?.together).toBe(
      'Exercises 1 and 2 go together: do 1, then 2. That is one round. Do 2 rounds, with 1 minute of rest in between.',
    );
    expect(exercisesOf(view)[0]?.dose).toBe('In each round: 8 times.');
    expect(view.growth?.days.map(({ heading, lines }) => [heading, ...lines.map(read)])).toEqual([
      [
        'Exercises 1 and 2 together',
        'From Wednesday 23 December: Do 3 rounds, with 1 minute of rest in between.',
      ],
    ]);
    expect(view.growth?.easyWeeks.map(({ lines }) => lines.map(read))).toEqual([
      ['Exercises 1 and 2 together: Do only 1 round.'],
    ]);
  });

  it('tells less rest between rounds as more, and fewer rounds as less', () => {
    const lead = (rounds: [number, number], rest: [Interval, Interval]) => {
      const parts = (week: number) => ({ rounds: rounds[week < 2 ? 0 : 1] as number });
      const items = [{ exercise: walk, at: () => ({ dose: { reps: 8 } }) }];
      const made = (week: number) => ({
        rounds: () => parts(week).rounds,
        restMs: rest[week < 2 ? 0 : 1] as Interval,
        items,
      });
      const numbers = planNumbersOf({
        sessions: [{ id: 'a', schedule: () => days('mon'), parts: [made(1)] }],
      });
      const weeks = numbers.weeks.map((week) => ({
        ...week,
        sessions: week.sessions.map((session) => ({
          ...session,
          parts: session.parts.map((part) => ({
            ...part,
            rounds: parts(week.week).rounds,
            restBetweenRoundsMs: made(week.week).restMs,
          })),
        })),
      }));
      return sheetView({
        practice: practiceOf(),
        plan: numbers.plan,
        numbers: { ...numbers, weeks },
        person: null,
        words: english(),
      }).growth?.days[0]?.lines[0]?.lead;
    };
    const [minute, half]: Interval[] = [
      [60_000, 60_000],
      [30_000, 30_000],
    ];
    const NO_MORE = 'From Wednesday 2 December, no more than this:';
    expect(lead([3, 2], [minute as Interval, minute as Interval])).toBe(NO_MORE);
    expect(lead([2, 2], [half as Interval, minute as Interval])).toBe(NO_MORE);
    expect(lead([2, 2], [minute as Interval, half as Interval])).toBe('From Wednesday 2 December:');
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
    expect(one([{ items }]).putReady?.kit?.things).toEqual([
      'A chair or a worktop',
      '2 weights of 4 kg',
      'The medium band',
    ]);
    const limits = {
      timeMs: null,
      kit: ['worktop', 'weight', 'medium band'],
      positionsToAvoid: [],
      concerns: [],
    };
    expect(one([{ items }], { plan: { limits } }).putReady?.kit?.things).toEqual([
      'A worktop',
      '2 weights of 4 kg',
      'The medium band',
    ]);
  });
});
