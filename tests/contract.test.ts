// The three files that the contract shows, word for word, and its worked example.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compile } from '../src/build.ts';
import { memoryFolder } from '../src/load/folder.ts';
import { showData } from './support/show-data.ts';

const folder = join(import.meta.dirname, 'contract');
const PATHS = [
  'practice.yaml',
  'exercises/heel-raise.yaml',
  'plans/M-0412.yaml',
  'pictures/heel-raise.svg',
];

function contractFiles(): Record<string, string> {
  return Object.fromEntries(PATHS.map((path) => [path, readFileSync(join(folder, path), 'utf8')]));
}

describe("the contract's own files", () => {
  it('compile, and only the accept that settles nothing is noted', () => {
    const { findings } = compile(memoryFolder(contractFiles()), null);
    expect(findings.map(({ check, severity }) => `${severity} ${check}`)).toEqual([
      'note accept-settles-nothing',
    ]);
  });

  it('have the doses that their layers give, week by week', () => {
    const { weeks } = showData(contractFiles(), 'M-0412');
    const strength = (week: number, item: string) =>
      weeks[week - 1]?.sessions[0]?.parts
        .find(({ part }) => part === 'strength')
        ?.items.find(({ as }) => as === item);
    // Week 1 as written; week 2 one tick of reps; week 3 reps are at 14, so sets move and reps restart.
    expect(strength(1, 'heel-raise')?.left?.dose).toMatchObject({
      sets: [2, 2],
      reps: [8, 12],
      hold: [2, 2],
      move: [4, 4],
      rest: [60, 60],
    });
    expect(strength(2, 'heel-raise')?.left?.dose).toMatchObject({ sets: [2, 2], reps: [10, 14] });
    expect(strength(3, 'heel-raise')?.left?.dose).toMatchObject({ sets: [3, 3], reps: [8, 12] });
    // Week 4 is easy: no tick; sets 50 % of 3 is 2 (halves up), reps 70 % of 8-12 are 6 and 8.
    expect(strength(4, 'heel-raise')?.left?.dose).toMatchObject({ sets: [2, 2], reps: [6, 8] });
    // Week 5 names another level: that level's dose, sides as the entry says.
    expect(strength(5, 'heel-raise')).toMatchObject({ level: 'one-foot', sides: 'each' });
    expect(strength(5, 'heel-raise')?.left?.dose).toMatchObject({ sets: [3, 3], reps: [5, 8] });
    expect(strength(5, 'heel-raise')?.right?.dose).toMatchObject({ sets: [2, 2], reps: [5, 8] });
    // Week 6: one tick since the entry of week 5, on each side.
    expect(strength(6, 'heel-raise')?.left?.dose).toMatchObject({ sets: [3, 3], reps: [7, 10] });
    expect(strength(2, 'left-only')).toBeUndefined();
    expect(strength(3, 'left-only')?.left?.dose).toMatchObject({ sets: [2, 2], reps: [5, 8] });
    expect(strength(3, 'left-only')?.right).toBeNull();
    expect(weeks.map(({ easy }) => easy)).toEqual([false, false, false, true, false, false]);
    expect(weeks.map(({ sessions }) => sessions[0]?.per_week)).toEqual([
      [3, 3],
      [3, 3],
      [3, 3],
      [4, 4],
      [4, 4],
      [4, 4],
    ]);
  });

  it('agree with the worked example: t = 6, item 318 to 446 s, each side 16 to 24 reps', () => {
    const files = contractFiles();
    files['exercises/heel-raise.yaml'] = [
      'exercise: heel-raise',
      'name: Heel raise',
      'purpose: strength',
      'position: standing',
      'sides: each',
      'limb: leg',
      'steps:',
      '  - Rise onto your toes',
      'levels:',
      '  - {level: one, dose: {sets: 2, reps: 8-12, hold: 2 s, move: 4 s, rest: 60 s}}',
      '',
    ].join('\n');
    files['plans/M-0412.yaml'] = [
      'plan: M-0412',
      'title: Worked',
      'visits:',
      '  - date: 2026-10-05',
      'weeks: 1',
      'affected: none',
      'sessions:',
      '  - session: one',
      '    days: [mon]',
      '    parts:',
      '      - part: strength',
      '        items:',
      '          - do: heel-raise',
      '',
    ].join('\n');
    const item = showData(files, 'M-0412').weeks[0]?.sessions[0]?.parts[0]?.items[0];
    expect(item?.seconds).toEqual([318, 446]);
    const side = {
      sets: [2, 2],
      reps: [16, 24],
      hold_seconds: [32, 48],
      work_seconds: [96, 144],
      volume_kg: [0, 0],
    };
    expect(item?.left).toMatchObject(side);
    expect(item?.right).toMatchObject(side);
    expect(item?.middle).toBeNull();
  });
});
