// `carryover show` on the screen: the example plans at two widths, and that the numbers are the plan's.
import { describe, expect, test } from 'vitest';
import type { PlanReading } from '../../src/check/reading-grade.ts';
import { listExercisesText, listPlansText } from '../../src/render/terminal/list-text.ts';
import { showText } from '../../src/render/terminal/show-text.ts';
import { isUnsafe, plainPaint, planOf, saltmarsh, tooWide } from './saltmarsh.ts';

const reading = { sheet: null, exercises: [] };
const screen = (width: number, isPlain = true) => ({ width, paint: plainPaint, isPlain });

function show(code: string, width: number): string {
  return showText({ practice: saltmarsh.practice, ...planOf(code), reading, ...screen(width) });
}

function section(text: string, heading: string): string[] {
  const lines = text.split('\n');
  const from = lines.indexOf(heading);
  if (from < 0) throw new Error(`there is no section "${heading}"`);
  return lines.slice(from);
}

describe('every line stays within the width', () => {
  test.each([
    ['M-0412', 60],
    ['M-0412', 80],
    ['M-0412', 120],
    ['S-1178', 60],
    ['S-1178', 80],
    ['S-1178', 120],
  ])('%s at %i', (code, width) => {
    const text = show(code, width);
    expect(text.split('\n').length).toBeGreaterThan(40);
    expect(tooWide(text, width)).toEqual([]);
    expect(text).not.toMatch(/[ \n]$/);
    expect(text).not.toMatch(/ \n/);
    expect(isUnsafe(text)).toBe(false);
  });
});

test('the title says weeks, side, visit and time', () => {
  expect(show('M-0412', 120).split('\n').slice(0, 2)).toEqual([
    'M-0412: Ankle, back to hill walking',
    '8 weeks, 2026-11-24 to 2027-01-18. Affected: left. Next visit 2026-12-21, in week 4. Time for a session: 30 min.',
  ]);
});

test('a week has its minutes, work by side and changes', () => {
  const { numbers } = planOf('M-0412');
  const row =
    show('M-0412', 120)
      .split('\n')
      .find((line) => line.startsWith('4 easy')) ?? '';
  const cells = row.split(/ {2,}/);
  const week = numbers.weeks[3];
  if (!week) throw new Error('the plan has a week 4');
  const minutes = (ms: readonly number[]) =>
    [...new Set(ms.map((end) => Math.round(end / 6000) / 10))].join('-');
  const percent = (share: number | null) => `${Math.round((share ?? 0) * 100)} %`;
  expect(cells).toEqual([
    '4 easy',
    '2026-12-15',
    minutes(week.ms),
    '###########-',
    minutes(week.left.workMs),
    minutes(week.right.workMs),
    minutes(week.middle.workMs),
    percent(week.change.all),
    percent(week.change.strength),
  ]);
});

test('a session over the plan’s time is marked, and the mark explained', () => {
  const lines = section(show('M-0412', 80), 'Sessions');
  expect(lines[2]).toMatch(/^Weeks +strength-days +walk +stiff-ankle$/);
  expect(lines.find((line) => line.startsWith('5 '))).toBe(
    '5       3 x 25.2-28.3  2 x 35 !  as needed, 1.4',
  );
  expect(lines).toContain('! can take more than the 30 min that the plan allows.');
  expect(show('S-1178', 80)).not.toContain('!');
});

test('items stand by part, in stretches of weeks, each side where they differ', () => {
  const lines = section(show('M-0412', 120), 'strength-days: Strong ankle');
  const at = lines.indexOf('  foot-out-band: Turn your foot out; all-sets');
  expect(lines.slice(at + 1, at + 3).map((line) => line.trim().split(/ {2,}/))).toEqual([
    ['1', 'seated', 'left', '2 x 10-12, move 5 s, rest 45 s, light band', '227-263'],
    ['right', '1 x 10-12, move 5 s, light band'],
  ]);
  const balance = lines.indexOf('balance');
  expect(lines[balance + 2]?.trim().split(/ {2,}/)).toEqual([
    '1',
    'hands-free',
    'left only',
    '1 x 2, hold 20 s, move 3 s, pause 5 s',
    '51',
  ]);
});

test('a circuit tells its rounds by week', () => {
  expect(show('S-1178', 120)).toContain(
    'strength, Strength circuit: 2 rounds, 90 s between them (weeks 1-3, 5-6); 1 round (week 4 easy)',
  );
});

test('weekly sets by muscle stand by side, like sides in one row', () => {
  const lines = section(show('M-0412', 80), 'Sets a week by muscle').slice(2);
  expect(lines[0]).toBe('Muscle              Side         1-2    3  4 easy  5-8');
  const soleus = lines.findIndex((line) => line.startsWith('soleus'));
  expect(lines.slice(soleus, soleus + 2)).toEqual([
    'soleus              left           9   12       9   15',
    '                    right          6    9       6    6',
  ]);
  expect(lines).toContain('gluteus-maximus     left, right    6    6       3    6');
});

test('how the sheet reads is said, with its hardest exercise; of another language that it is not', () => {
  const { plan, numbers } = planOf('M-0412');
  const { practice } = saltmarsh;
  const grade = (fleschKincaid: number, smog: number, sentences: number) => ({
    fleschKincaid,
    smog,
    counts: { sentences, words: 100, syllables: 130, longWords: [] },
  });
  const of = (given: PlanReading) =>
    showText({ practice, plan, numbers, reading: given, ...screen(200) });
  const exercises = [
    { id: 'walk', grade: grade(1.02, 3.1, 8) },
    { id: 'curl', grade: grade(2.25, 4, 9) },
  ];
  expect(of({ sheet: grade(4.24, 6.06, 90), exercises })).toContain(
    'Reading grade of the sheet: 4.2 by Flesch-Kincaid and 6.1 by SMOG. Hardest exercise: curl, 2.3 by Flesch-Kincaid and 4.0 by SMOG (rough, from 9 sentences).',
  );
  expect(of({ sheet: null, exercises: [] })).toContain('worked out for English only.');
});

test('a title that means harm is shown by signs', () => {
  const { plan, numbers } = planOf('M-0412');
  const nasty = { ...plan, title: `\x1b[2J${'x'.repeat(10_000)}\u202E` };
  const text = showText({
    practice: saltmarsh.practice,
    plan: nasty,
    numbers,
    reading,
    ...screen(80),
  });
  expect(isUnsafe(text)).toBe(false);
  expect(tooWide(text, 80)).toEqual([]);
  expect(text).toContain('␛[2J');
});

describe('lists', () => {
  const exercises = saltmarsh.library.loaded().flatMap(({ exercise }) => exercise ?? []);
  const plans = ['M-0412', 'S-1178'].map((code) => ({
    plan: planOf(code).plan,
    file: `plans/${code}.yaml`,
  }));
  const list = (width: number) => listExercisesText(exercises, screen(width));
  const listPlans = (given: typeof plans, today: string, width = 80) =>
    listPlansText(given, { ...screen(width), today });

  test('exercises stay within the width, and ids stay whole', () => {
    expect(exercises.length).toBeGreaterThan(5);
    for (const width of [80, 120]) {
      const text = list(width);
      expect(tooWide(text, width)).toEqual([]);
      for (const { id } of exercises) expect(text).toMatch(new RegExp(`^${id}  `, 'm'));
    }
  });

  test('levels and kit stand beside the exercise, or beneath it', () => {
    expect(list(80)).toContain('  levels: two-feet, one-foot; kit: worktop or chair');
    expect(list(120)).toMatch(
      /^heel-raise +Heel raise +strength +standing +both, each +two-feet,/m,
    );
    expect(listExercisesText([], screen(80))).toBe('No exercises.');
  });

  test('plans tell where they stand today', () => {
    expect(listPlans(plans, '2027-01-01').split('\n')).toEqual([
      'Plan    Title                        Weeks        Next visit',
      '------------------------------------------------------------------',
      'M-0412  Ankle, back to hill walking  8, now in 6  2026-12-21, past',
      'S-1178  Steadier on your feet        6, now in 6  2027-01-06',
    ]);
    expect(listPlans([], '2027-01-01')).toBe('No plans.');
  });

  test('before the start, after the end, on the day of the visit, closed, and in another folder', () => {
    const [one] = plans;
    if (!one) throw new Error('there is a plan');
    expect(listPlans([one], '2026-11-01')).toContain('8, from 2026-11-24  2026-12-21');
    expect(listPlans([one], '2027-03-01')).toContain('8, all past  2026-12-21, past');
    expect(listPlans([one], '2026-12-21')).not.toContain('past');
    const closed = {
      plan: { ...one.plan, closed: { date: '2026-12-01', why: 'Done' } },
      file: 'plans/old/M-0412.yaml',
    };
    const [header = '', , row = ''] = listPlans([closed], '2027-03-01', 120).split('\n');
    expect(header.split(/ {2,}/)).toEqual([
      'Plan',
      'Title',
      'Weeks',
      'Next visit',
      'Closed',
      'File',
    ]);
    expect(row.split(/ {2,}/).slice(2)).toEqual([
      '8',
      '2026-12-21',
      '2026-12-01',
      'plans/old/M-0412.yaml',
    ]);
  });
});
