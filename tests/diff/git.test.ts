// `carryover diff` in real git repositories: which versions it can be given, and what it says where one is
// not there or does not compile.
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { main } from '../../src/main.ts';
import { type Ran, runIn } from '../support/cases.ts';
import { commitAll, edit, git } from '../support/repository.ts';

const example = join(import.meta.dirname, '..', '..', 'examples', 'saltmarsh');
const PLAN = 'plans/M-0412.yaml';
const made: string[] = [];
afterAll(() => {
  for (const one of made) rmSync(one, { recursive: true, force: true });
});

function place(): string {
  const top = realpathSync(mkdtempSync(join(tmpdir(), 'carryover-diff-')));
  made.push(top);
  return top;
}

const diff = (root: string, ...args: readonly string[]): Ran => runIn(root, ['diff', ...args]);
const json = (root: string, ...args: readonly string[]) => {
  const { out, status } = diff(root, ...args, '--format', 'json');
  return { status, ...JSON.parse(out) };
};
const moreSets = (root: string) => edit(root, PLAN, '{left: {sets: 2}', '{left: {sets: 3}');

/** The example clinic in a folder below the top of a repository, committed. */
let top = '';
let root = '';
beforeEach(() => {
  top = place();
  root = join(top, 'clinics', 'north');
  mkdirSync(join(top, 'clinics'));
  cpSync(example, root, { recursive: true, filter: (path) => !path.includes('handouts') });
  git(top, 'init', '-q', '-b', 'trunk');
  commitAll(top, 'Start');
});

describe('without a version named', () => {
  it('the last commit is held against the files as they are now', () => {
    moreSets(root);
    const { status, out, err } = diff(root);
    expect([status, err]).toEqual([0, '']);
    expect(out).toContain('What changed: Ankle, back to hill walking\n');
    expect(out).toContain('sets, left only: 2 → 3 (weeks 1 to 3)');
    expect(out).not.toContain('K-2207');
  });

  it('says so where nothing changed, and changes nothing itself', () => {
    const before = git(top, 'status', '--porcelain=v2', '--branch');
    expect(diff(root)).toEqual({ status: 0, out: '', err: 'No plan changed.\n' });
    expect(diff(root, 'M-0412').out).toContain('Nothing changed.');
    expect(git(top, 'status', '--porcelain=v2', '--branch')).toBe(before);
  });

  it('a plan that is new, and one that is gone, are told of', () => {
    renameSync(join(root, PLAN), join(top, 'kept.yaml'));
    cpSync(join(root, 'plans/S-1178.yaml'), join(root, 'plans/S-9999.yaml'));
    edit(root, 'plans/S-9999.yaml', 'plan: S-1178', 'plan: S-9999');
    const { out } = diff(root);
    expect(out).toMatch(/Plan M-0412,[\s\S]*This plan is there no more\./);
    expect(out).toMatch(/Plan S-9999,[\s\S]*This plan is new\./);
  });
});

describe('a version', () => {
  it('is anything that git takes, or a folder', () => {
    moreSets(root);
    commitAll(top, 'More for the left');
    git(top, 'tag', 'visit-2');
    const copy = join(place(), 'copy');
    cpSync(root, copy, { recursive: true });
    edit(root, PLAN, '{left: {sets: 3}', '{left: {sets: 4}');
    const sets = (...args: string[]) =>
      /sets, left only: (\S+ → \S+)/.exec(diff(root, 'M-0412', ...args).out)?.[1];
    expect(sets()).toBe('3 → 4');
    expect(sets('--from', 'HEAD~1')).toBe('2 → 4');
    expect(sets('--from', 'HEAD~1', '--to', 'visit-2')).toBe('2 → 3');
    expect(sets('--from', 'visit-2', '--to', 'HEAD~1')).toBe('3 → 2');
    expect(sets('--from', copy)).toBe('3 → 4');
  });

  it('that is not there is refused', () => {
    expect(diff(root, '--from', 'no-such')).toEqual({
      status: 2,
      out: '',
      err: 'carryover: git knows no version "no-such".\n',
    });
    expect(diff(root, '--from', '--output=x').status).toBe(2);
  });

  it('may lie before the practice folder was there', () => {
    git(top, 'checkout', '-q', '--orphan', 'other');
    git(top, 'rm', '-q', '-r', '--cached', '.');
    git(top, 'commit', '-q', '--allow-empty', '-m', 'Nothing');
    const { status, err } = diff(root, '--from', 'other');
    expect(status).toBe(2);
    expect(err).toContain('has no practice.yaml');
  });

  it('in a shallow clone is there as far as the clone goes', () => {
    moreSets(root);
    commitAll(top, 'More');
    const clone = join(place(), 'clone');
    git(top, 'clone', '-q', '--depth', '1', pathToFileURL(top).href, clone);
    const there = join(clone, 'clinics', 'north');
    edit(there, PLAN, '{left: {sets: 3}', '{left: {sets: 4}');
    expect(diff(there, 'M-0412').out).toContain('sets, left only: 3 → 4');
    const { status, err } = diff(there, 'M-0412', '--from', 'HEAD~1');
    expect(status).toBe(2);
    expect(err).toContain('git fetch --unshallow');
  });

  it('has its own library, settings and words', () => {
    edit(root, 'exercises/legs/step-up.yaml', 'name: Step up', 'name: Up the step');
    edit(root, 'practice.yaml', 'contact: ', 'contact: New ');
    const { out } = diff(root, 'M-0412');
    expect(out).toMatch(/name: Step up.* → Up the step/);
    expect(out).toContain('contact: ');
    // The plan's own file stayed.
    expect(diff(root).err).toBe('No plan changed.\n');
    const listed = diff(root, '--all').out;
    expect(listed).toContain('Plan M-0412,');
    expect(listed).toContain('Plan K-2207,');
  });

  it('with a mistake is compared as far as it can be', () => {
    edit(root, PLAN, 'level: hands-free', 'level: hands-fre');
    edit(root, PLAN, 'weeks: 8', 'weeks: 7');
    const { status, out } = diff(root, 'M-0412');
    expect(status).toBe(1);
    expect(out).toContain(
      'Not everything could be compared, for there is a mistake in the files as they are now',
    );
    expect(out.replace(/\s+/g, ' ')).toMatch(/plans\/M-0412\.yaml:\d+: "hands-fre" is no level/);
    expect(out.match(/"hands-fre"/g)).toHaveLength(1);
    expect(out).not.toContain('on the sheet');
    expect(out).toContain('weeks: 8 → 7');
  });
});

describe('renames', () => {
  it('of an exercise file are no swap of exercises', () => {
    renameSync(
      join(root, 'exercises/legs/step-up.yaml'),
      join(root, 'exercises/legs/up-a-step.yaml'),
    );
    edit(root, 'exercises/legs/up-a-step.yaml', 'exercise: step-up', 'exercise: up-a-step');
    edit(root, PLAN, 'do: step-up', 'do: up-a-step');
    commitAll(top, 'Rename');
    const { out } = diff(root, 'M-0412', '--from', 'HEAD~1');
    expect(out).toContain('file: step-up → up-a-step (not on the sheet)');
    expect(out).toContain('The sheet stays as it is.');
    expect(out).not.toContain('exercise: ');
  });

  it('of a plan file are followed', () => {
    renameSync(join(root, PLAN), join(root, 'plans/M-0413.yaml'));
    edit(root, 'plans/M-0413.yaml', 'plan: M-0412', 'plan: M-0413');
    edit(root, 'plans/M-0413.yaml', '{left: {sets: 2}', '{left: {sets: 3}');
    commitAll(top, 'Another code');
    const { out } = diff(root, '--from', 'HEAD~1');
    expect(out).toContain('Plan M-0413,');
    expect(out).toContain('sets, left only: 2 → 3');
    expect(out).not.toContain('no more');
  });
});

describe('git that is not there', () => {
  it('is said, with what is wrong', () => {
    const bare = join(place(), 'bare');
    cpSync(example, bare, { recursive: true });
    expect(diff(bare)).toEqual({
      status: 2,
      out: '',
      err: 'carryover: this folder is under no version control by git.\n',
    });
    // Two folders need no git.
    const other = join(place(), 'other');
    cpSync(bare, other, { recursive: true });
    moreSets(bare);
    expect(diff(bare, 'M-0412', '--from', other).out).toContain('sets, left only: 2 → 3');
    let err = '';
    const silent = { write: () => {}, isTerminal: false, columns: 80 };
    const outside = { cwd: root, env: { PATH: '/nowhere' }, today: '2026-10-20', out: silent };
    const status = main(['diff'], {
      ...outside,
      err: {
        ...silent,
        write: (text) => {
          err += text;
        },
      },
    });
    expect([status, err]).toEqual([
      2,
      'carryover: git is not installed here, or not on the PATH.\n',
    ]);
  });

  it('and nothing committed yet', () => {
    rmSync(join(top, '.git'), { recursive: true });
    git(top, 'init', '-q');
    expect(diff(root).err).toBe('carryover: nothing has been committed here yet.\n');
  });
});

describe('--exit-code', () => {
  it('is 0 for the same, 1 for different, 2 where it cannot be said', () => {
    expect(diff(root, 'M-0412', '--exit-code').status).toBe(0);
    moreSets(root);
    expect(diff(root, 'M-0412', '--exit-code').status).toBe(1);
    expect(json(root, 'M-0412', '--exit-code')).toMatchObject({ status: 1, ok: true });
    edit(root, PLAN, 'level: hands-free', 'level: hands-fre');
    expect(json(root, 'M-0412', '--exit-code')).toMatchObject({ status: 2, ok: false });
  });
});

describe('what it prints', () => {
  it('is text, Markdown, a page or JSON', () => {
    moreSets(root);
    expect(diff(root, 'M-0412', '--format', 'markdown').out).toContain(
      '- sets, left only: 2 → 3 (weeks 1 to 3); 1 → 2 (week 4); 2 → 3 (weeks 5 to 8)',
    );
    expect(diff(root, 'M-0412', '--format', 'html').out).toMatch(
      /^<!DOCTYPE html>\n[\s\S]*<li>sets, left only: 2 → 3/,
    );
    const { data } = json(root, 'M-0412');
    expect(data.plans).toHaveLength(1);
    expect(data.plans[0].changes).toEqual([
      {
        subject: {
          kind: 'item',
          before: expect.objectContaining({ id: 'strength-days/foot-out-band' }),
          after: expect.objectContaining({ id: 'strength-days/foot-out-band' }),
        },
        aspect: 'sets',
        side: 'left',
        steps: [
          { weeks: [1, 3], before: ['2'], after: ['3'] },
          { weeks: [4, 4], before: ['1'], after: ['2'] },
          { weeks: [5, 8], before: ['2'], after: ['3'] },
        ],
        on_sheet: true,
      },
    ]);
    expect(data.plans[0].effect.map(({ number }: { number: string }) => number)).toContain('work');
  });
});

describe('init --git', () => {
  it('lets git show plans in words, and takes it back', () => {
    const attributes = join(top, '.git', 'info', 'attributes');
    rmSync(attributes, { force: true });
    const before = readFileSync(join(top, '.git', 'config'), 'utf8');
    const self = `'${process.execPath}' '${join(import.meta.dirname, '..', '..', 'bin', 'carryover.js')}'`;
    const set = (to: string) => {
      const silent = { write: () => {}, isTerminal: false, columns: 80 };
      const outside = {
        cwd: root,
        env: { PATH: process.env.PATH },
        today: '2026-10-20',
        self,
        out: silent,
        err: silent,
      };
      return main(['init', '--git', to], outside);
    };
    moreSets(root);
    expect(set('on')).toBe(0);
    const shown = git(top, 'diff');
    // Only what the plan says: the library may have been another.
    expect(shown).not.toContain('weeks 1 to');
    expect(shown).toContain('-  sets, left only: 2\n');
    expect(shown).toContain('+  sets, left only: 3\n');
    expect(set('off')).toBe(0);
    expect(git(top, 'diff')).toContain('{left: {sets: 3}');
    expect(readFileSync(join(top, '.git', 'config'), 'utf8').trim()).toBe(before.trim());
    expect(existsSync(attributes)).toBe(false);
  });
});
