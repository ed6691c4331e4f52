// `new` starts files that `check` can guide from, and carries nothing of one person over to another.
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { main } from '../src/main.ts';
import { freshFolder, runIn } from './support/cases.ts';

let root: string;
beforeEach(() => {
  root = freshFolder();
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

const read = (path: string) => readFileSync(join(root, path), 'utf8');

/** The checks that a file still has to satisfy, by name. */
function openChecks(what: string): string[] {
  const { findings } = JSON.parse(runIn(root, ['check', what, '--format', 'json']).out);
  return findings.map(({ check }: { check: string }) => check);
}

describe('new plan', () => {
  it('is complete once its blanks are filled', () => {
    const options = [
      '--title',
      'Knee: stairs',
      '--by',
      'rk',
      '--date',
      '2026-11-25',
      '--starts',
      '2026-11-26',
      '--next',
      '2026-12-16',
      '--weeks',
      '6',
      '--affected',
      'right',
      '--goal',
      'Go down stairs',
    ];
    expect(runIn(root, ['new', 'plan', 'K-1', ...options]).status).toBe(0);
    expect(read('plans/K-1.yaml')).toContain('title: "Knee: stairs"');
    expect(new Set(openChecks('K-1'))).toEqual(new Set(['empty-value']));
    const filled = read('plans/K-1.yaml')
      .replace('found:', 'found: Limps on stairs')
      .replace('why:', 'why: Ready to start')
      .replace('- do:\n', '- do: walk\n')
      .replace('- do:\n', '- do: heel-raise\n')
      .replace('- do:\n', '- do: calf-stretch\n');

    writeFileSync(join(root, 'plans/K-1.yaml'), filled);
    expect(openChecks('K-1')).toEqual([]);
  });

  it('from another has none of its codes, dates, goals, sides or reasons', () => {
    expect(runIn(root, ['new', 'plan', 'K-2', '--from', 'M-0412']).status).toBe(0);
    const text = read('plans/K-2.yaml');
    const body = text.slice(text.indexOf('\n'));
    for (const gone of [
      'M-0412',
      '2026',
      'Walks without a limp',
      'Ready for strength',
      'coast path',
      'affected: left',
    ]) {
      expect(body).not.toContain(gone);
    }
    expect(text).toContain('plan: K-2');
    expect(text).toMatch(/^title:$/m);
    expect(text).toContain('- do: heel-raise');
    expect(new Set(openChecks('K-2'))).toEqual(new Set(['empty-value']));
  });

  it('from another for one side lets the side follow the new person', () => {
    const plan = join(root, 'plans', 'M-0412.yaml');
    writeFileSync(plan, read('plans/M-0412.yaml').replace('only: affected', 'only: left'));
    expect(
      runIn(root, ['new', 'plan', 'K-4', '--from', 'M-0412', '--affected', 'right']).status,
    ).toBe(0);
    expect(read('plans/K-4.yaml')).toContain('only: affected');
    writeFileSync(plan, read('plans/M-0412.yaml').replace('affected: left', 'affected: both'));
    expect(
      runIn(root, ['new', 'plan', 'K-5', '--from', 'M-0412', '--affected', 'right']).status,
    ).toBe(0);
    expect(read('plans/K-5.yaml')).toMatch(/^ +only:$/m);
  });

  it('asks in a terminal for what is not given, and asks again until an answer fits', () => {
    const answers = [
      ['Title on the sheet: ', 'Neck'],
      ['Who signs it (rk): ', 'zz'],
      ['This says "zz", but takes one of rk.\nWho signs it (rk): ', ''],
      ['Date of the visit (year-month-day): ', '25.11.2026'],
      [
        'This says "25.11.2026", but a date is written year-month-day; write 2026-11-25.\nDate of the visit (year-month-day): ',
        '2026-11-25',
      ],
      ['First day of week 1 (year-month-day): ', ''],
      ['Next visit (year-month-day): ', ''],
      ['How many weeks (1 to 52): ', '60'],
      ['This says 60, but is 52 at the most.\nHow many weeks (1 to 52): ', ' 4 '],
      ['Affected side (left, right, both, none): ', 'lft'],
      // A side is never guessed by its spelling.
      [
        'This says "lft", but takes one of left, right, both, none.\nAffected side (left, right, both, none): ',
        'left',
      ],
      ["Goal, in the person's own words: ", ''],
    ];
    const { asked, status } = told(
      ['new', 'plan', 'N-1'],
      answers.map(([, answer]) => answer ?? ''),
    );
    expect(status).toBe(0);
    expect(asked).toEqual(answers.map(([question]) => question));
    expect(read('plans/N-1.yaml')).toMatch(
      /title: Neck\nby:\n[\s\S]*date: 2026-11-25\n[\s\S]*weeks: 4\naffected: left/,
    );
  });

  it('asks for nothing that an option gave, and lists every choice', () => {
    const { asked } = told(
      ['new', 'exercise', 'n-2', '--name', 'Nod', '--sides', 'both'],
      ['', '', ''],
    );
    expect(asked).toHaveLength(3);
    expect(asked[0]).toContain('warm-up, mobility, strength, isometric, stretch, balance, cardio');
    expect(asked[1]).toContain('supine, crook-lying, prone');
    expect(asked[2]).toContain('leg, arm, foot');
  });
});

/** A command line in a terminal, with somebody who answers. */
function told(args: readonly string[], answers: readonly string[]) {
  const asked: string[] = [];
  const stream = { write: () => {}, isTerminal: true, columns: 80 };
  const ask = (question: string) => {
    asked.push(question);
    const answer = answers[asked.length - 1];
    if (answer === undefined) throw new Error(`nobody answers "${question}"`);
    return answer;
  };
  const status = main(args, {
    cwd: root,
    env: {},
    today: '2026-11-25',
    out: stream,
    err: stream,
    ask,
  });
  return { asked, status };
}

describe('new exercise', () => {
  it('starts empty, or from another with id and name blanked', () => {
    expect(
      runIn(root, ['new', 'exercise', 'wall-slide', '--name', 'Wall slide', '--in', 'shoulder'])
        .status,
    ).toBe(0);
    expect(read('exercises/shoulder/wall-slide.yaml')).toContain('name: Wall slide');
    expect(runIn(root, ['new', 'exercise', 'toe-raise', '--from', 'heel-raise']).status).toBe(0);
    expect(read('exercises/toe-raise.yaml')).toMatch(/^exercise: toe-raise\nname:\n/);
    expect(openChecks('toe-raise')).toEqual(['empty-value']);
  });
});

describe('new', () => {
  it.each([
    [['new', 'plan', 'M-0412'], /is there already/],
    [['new', 'plan', 'm-0412'], /is there already/],
    [['new', 'exercise', 'Heel_Dip'], /small letters, digits and hyphens; take "heel-dip"/],
    [['new', 'plan', 'K 3'], /take "K-3"/],
    [['new', 'plan', 'K-3', '--weeks', 'four'], /--weeks says "four"/],
    [['new', 'plan', 'K-3', '--weeks', '53'], /52 at the most/],
    [['new', 'plan', 'K-3', '--by', 'zz'], /takes one of rk/],
    [['new', 'exercise', 'x', '--position', 'stand'], /did you mean "standing"/i],
    [['new', 'exercise', 'x', '--purpose', 'streching'], /write warm-up, mobility, strength/],
    [['new', 'plan', 'K-3', '--affected', 'lft'], /write left, right, both or none\./],
    [['new', 'exercise', 'x', '--in', '../plans'], /below exercises/],
    [['new', 'plan', 'K-3', '--from', 'M-0413'], /did you mean "M-0412"/],
    [['new', 'plan', 'K-3', '--date', '2026-11-31'], /a day that the calendar does not have/],
    [['new', 'plan', 'K-3', '--date', '25.11.2026'], /write 2026-11-25/],
    [['new', 'sheet', 'K-3'], /"sheet" cannot be used here; write exercise or plan/],
    [['new'], /has to be told what to start: carryover new <what> <id>/],
  ])('refuses %j and writes nothing', (args, why) => {
    const before = read('plans/M-0412.yaml');
    const ran = runIn(root, args);
    expect(ran.status).toBe(2);
    expect(ran.err).toMatch(why);
    expect(read('plans/M-0412.yaml')).toBe(before);
    expect(existsSync(join(root, 'plans/K-3.yaml'))).toBe(false);
  });
});

describe('completion', () => {
  const offered = (...words: readonly string[]) =>
    runIn(root, ['complete', '--', ...words])
      .out.split('\n')
      .filter((one) => one !== '');

  it('offers commands, options, codes and checks', () => {
    expect(offered('bu')).toEqual(['build']);
    expect(offered('build', 'M')).toEqual(['M-0412']);
    expect(offered('check', '--hand')).toEqual(['--handouts']);
    expect(offered('explain', 'side-b')).toEqual(['side-balance']);
    for (const shell of ['bash', 'zsh', 'fish'])
      expect(runIn(root, ['completion', shell]).out).toContain('carryover complete');
  });

  it.each<[string[], string[]]>([
    [
      ['new', ''],
      ['exercise', 'plan'],
    ],
    [
      ['list', ''],
      ['exercises', 'plans', 'words'],
    ],
    [['list', 'words', 'm'], ['muscles']],
    [['help', 'exp'], ['explain']],
    [['new', 'plan', 'K-1', '--from', ''], ['M-0412']],
    [['new', 'exercise', 'x', '--from', 'h'], ['heel-raise']],
    [['new', 'plan', 'K-1', '--by', ''], ['rk']],
    [
      ['new', 'plan', 'K-1', '--affected', ''],
      ['left', 'right', 'both', 'none'],
    ],
    [['list', 'exercises', '--mus'], ['--muscle']],
    [['list', 'exercises', '--muscle', 'sol'], ['soleus']],
    [['list', 'exercises', '--region', 'cal'], ['calf']],
    [['list', 'exercises', '--kit', 'light'], ['light band']],
    [
      ['list', 'exercises', '--purpose', 'str'],
      ['strength', 'stretch'],
    ],
    [
      ['list', 'exercises', '--side', ''],
      ['each', 'both', 'middle'],
    ],
    [['check', '--quiet', 'M'], ['M-0412']],
    // A folder's name is the shell's to complete.
    [['build', '--folder', ''], []],
  ])('after %j it offers %j', (words, wanted) => {
    expect(offered(...words)).toEqual(wanted);
  });
});
