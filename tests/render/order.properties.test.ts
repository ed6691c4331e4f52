// Whoever follows the words of a sheet does the exercises in the plan's order, in every week: the days,
// what takes another's place, what is left out, and the order that is said where something comes in.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { SheetView } from '../../src/render/sheet/sheet-view.ts';
import { sheetView } from '../../src/render/sheet/worded-sheet.ts';
import { days, type MadePlan, planNumbersOf, practiceOf } from './plans.ts';
import { english, exerciseOf } from './records.ts';

const WEEKS = 6;
const words = english();

/** An item's level in each week, as an index; null where it is not there. */
type Course = readonly (number | null)[];

const course: fc.Arbitrary<Course> = fc
  .array(fc.constantFrom(null, 0, 0, 1, 2), { minLength: WEEKS, maxLength: WEEKS })
  // A level is passed once, and the easier ones do not come back: that has words of its own.
  .map((levels) => {
    let least = 0;
    return levels.map((level) => {
      if (level === null) return null;
      least = Math.max(least, level);
      return least;
    });
  });
const sessions = fc.array(fc.array(course, { minLength: 1, maxLength: 5 }), {
  minLength: 1,
  maxLength: 2,
});

function planOf(all: readonly (readonly Course[])[]): MadePlan {
  return {
    sessions: all.map((items, session) => ({
      id: `s${session}`,
      name: `Session ${'xy'[session]}`,
      schedule: () => days('mon'),
      parts: [
        // Something is there in every week, so that no session begins or ends.
        {
          items: [...items, Array(WEEKS).fill(0) as Course].map((one, item) =>
            made(session, item, one),
          ),
        },
      ],
    })),
  };
}

function made(session: number, item: number, one: Course) {
  const levels = [0, 1, 2].map((level) => ({
    id: `l${level}`,
    name: `Level ${level}`,
  }));
  const exercise = exerciseOf({
    id: `e${session}-${item}`,
    name: `Exercise ${'abcdef'[item]} of ${session}`,
    levels,
  });
  return {
    exercise,
    at: (week: number) => {
      const level = one[week - 1] ?? null;
      return level === null ? null : { dose: { reps: 8 }, level: `l${level}` };
    },
  };
}

/** "1 to 3, then 4 or 9" or "1, 2 and 4": the numbers in order; of a choice the last, as the plan has it. */
function numbersIn(text: string): number[] {
  return text.split(/, then |, | and /).flatMap((piece) => {
    const [low = 0, high = low] = [...piece.matchAll(/\d+/g)].map(([n]) => Number(n));
    if (/ to /.test(piece)) return Array.from({ length: high - low + 1 }, (_, at) => low + at);
    return [Number(/(\d+)$/.exec(piece.trim())?.[1])];
  });
}

/** What a person does week by week who takes every step: numbers by session. */
function followed(view: SheetView): number[][][] {
  const now = view.days.sessions.map(({ text }) =>
    numbersIn(/^exercises? (.*?), (?:on|every)/.exec(text)?.[1] ?? ''),
  );
  const names = view.days.sessions.map(({ name }) => name);
  const weekOf = (text: string) => {
    const [, day, month] = /^From \w+ (\d+) (November|December)/.exec(text) ?? [];
    const at = Date.UTC(2026, month === 'November' ? 10 : 11, Number(day));
    return (at - Date.UTC(2026, 10, 25)) / 604_800_000 + 1;
  };
  const blocks = [
    ...(view.growth?.changes ?? []).map(({ heading, lines }) => ({
      number: Number(/\d+/.exec(heading)?.[0]),
      lines: lines.map(({ lead, text }) => `${lead} ${text}`),
    })),
    ...(view.growth?.later?.exercises ?? []).map(({ number, when, lines }) => ({
      number,
      lines: [when, ...lines.map(({ lead, text }) => `${lead} ${text}`)],
    })),
  ];
  const said = blocks.flatMap(({ number, lines }) =>
    lines.map((line) => ({ number, line, week: weekOf(line) })),
  );
  return Array.from({ length: WEEKS }, (_, at) => {
    const ofWeek = said.filter(({ week }) => week === at + 1);
    for (const { number, line } of ofWeek) {
      const [, old] = /It takes the place of exercise (\d+)/.exec(line) ?? [];
      if (old)
        for (const list of now)
          list.splice(0, list.length, ...list.map((n) => (n === Number(old) ? number : n)));
      if (/: Leave it out\./.test(line))
        for (const list of now) list.splice(0, list.length, ...list.filter((n) => n !== number));
    }
    for (const { line } of ofWeek) {
      const [, session, order] =
        /(?:In (Session \w) t|T)he order is then: (.*?)\./.exec(line) ?? [];
      const list = now[session ? names.indexOf(session) : 0];
      if (order && list) list.splice(0, list.length, ...numbersIn(order));
    }
    return now.map((list) => [...list]);
  });
}

it('is followed by following the words', () => {
  let added = 0;
  fc.assert(
    fc.property(sessions, (all) => {
      const numbers = planNumbersOf(planOf(all));
      const view = sheetView({
        practice: practiceOf(),
        plan: numbers.plan,
        numbers,
        person: null,
        words,
      });
      const byNumber = new Map([
        ...view.exercises.sessions.flatMap(({ groups }) =>
          groups.flatMap(({ exercises }) =>
            exercises.map((one) => [one.number, one.name] as const),
          ),
        ),
        ...(view.growth?.later?.exercises ?? []).map((one) => [one.number, one.name] as const),
      ]);
      const planned = numbers.weeks.map((week) =>
        week.sessions.map(({ parts }) =>
          parts.flatMap(({ items }) =>
            items.map(({ level }) => `${level.exerciseName}: ${level.name?.toLowerCase()}`),
          ),
        ),
      );
      const read = followed(view).map((week) =>
        week.map((list) => list.map((number) => byNumber.get(number))),
      );
      expect(read).toEqual(planned);
      if (JSON.stringify(view).includes('order is then')) added += 1;
    }),
    { numRuns: 300, seed: 7 },
  );
  expect(added).toBeGreaterThan(100);
});
