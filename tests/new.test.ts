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

  it('asks in a terminal for what is not given', () => {
    const asked: string[] = [];
    const answers = ['Neck', '', '2026-11-25', '', '', '4', 'none', ''];
    const stream = { write: () => {}, isTerminal: true, columns: 80 };
    const ask = (question: string) => {
      asked.push(question);
      return answers[asked.length - 1] ?? '';
    };
    const status = main(['new', 'plan', 'N-1'], {
      cwd: root,
      env: {},
      today: '2026-11-25',
      out: stream,
      err: stream,
      ask,
    });
    expect(status).toBe(0);
    expect(asked).toHaveLength(8);
    expect(read('plans/N-1.yaml')).toMatch(
      /title: Neck\nby:\n[\s\S]*date: 2026-11-25\n[\s\S]*weeks: 4\naffected: none/,
    );
  });
});

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
    [['new', 'exercise', 'Heel'], /small letters/],
    [['new', 'exercise', 'x', '--in', '../plans'], /below exercises/],
    [['new', 'plan', 'K-3', '--from', 'M-0413'], /did you mean "M-0412"/],
    [['new', 'plan', 'K-3', '--date', '2026-11-31'], /is no day/],
    [['new', 'sheet', 'K-3'], /Allowed choices|exercise, plan/],
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
  it('offers commands, options, codes and checks', () => {
    expect(runIn(root, ['complete', '--', 'bu']).out).toBe('build\n');
    expect(runIn(root, ['complete', '--', 'build', 'M']).out).toBe('M-0412\n');
    expect(runIn(root, ['complete', '--', 'check', '--hand']).out).toBe('--handouts\n');
    expect(runIn(root, ['complete', '--', 'explain', 'side-b']).out).toBe('side-balance\n');
    for (const shell of ['bash', 'zsh', 'fish'])
      expect(runIn(root, ['completion', shell]).out).toContain('carryover complete');
  });
});
