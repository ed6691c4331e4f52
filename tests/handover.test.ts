// `carryover handover` in real git repositories: what it asks for, what it adds, and that two branches
// merge. The sheet numbers are those that the build prints; no number is written here.
import { execFileSync } from 'node:child_process';
import {
  appendFileSync,
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { main } from '../src/main.ts';
import { CASES, freshFolder, type Ran, runIn } from './support/cases.ts';
import { commitAll, edit, git, write } from './support/repository.ts';

const made: string[] = [];
afterAll(() => {
  for (const one of made) rmSync(one, { recursive: true, force: true });
});

const TODAY = '2026-10-26';
const HEADER = 'date,plan,sheet,commit,language,by';
/** What the register can be found to be; other checks may have their say. */
const OF_REGISTER = /handover-damaged|changed-since-handover/;

/** The base folder of the cases with what `init` gives every folder, committed. */
function repository(): string {
  const root = freshFolder();
  made.push(root);
  runIn(root, ['init', '.']);
  for (const path of ['plans/P-0001.yaml', 'exercises/sit-to-stand.yaml', '.schemas'])
    rmSync(join(root, path), { recursive: true });
  git(root, 'init', '-q', '-b', 'trunk');
  commitAll(root, 'Start');
  return root;
}

const handOver = (root: string, ...args: readonly string[]) =>
  runIn(root, ['handover', ...args], TODAY);
const registerOf = (root: string) => readFileSync(join(root, 'handovers.csv'), 'utf8');
const rowsOf = (root: string) => registerOf(root).trimEnd().split(/\r?\n/).slice(1);
const json = ({ out }: Ran) => JSON.parse(out);

const PLAN = 'plans/M-0412.yaml';

let root = '';
beforeEach(() => {
  root = repository();
});

describe('a handover', () => {
  it('builds, adds a row and says what to commit', () => {
    const head = git(root, 'rev-parse', 'HEAD').trim();
    const { status, out, err } = handOver(root, 'M-0412');
    const sheet = /^M-0412 {2}sheet (\w{4} \w{4}) {2}handouts\/M-0412\.html$/m.exec(out)?.[1];
    const row = `2026-10-26,M-0412,${sheet},${head},en,rk`;
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(registerOf(root)).toBe(`${HEADER}\n${row}\n`);
    expect(out).toContain(`Added to handovers.csv: ${row}\n`);
    expect(out).toContain('git add handovers.csv && git commit -m "Handed over M-0412"\n');
    expect(readFileSync(join(root, 'handouts/M-0412.html'), 'utf8')).toContain(`Sheet ${sheet}`);
    // What it says to do works.
    git(root, 'add', 'handovers.csv');
    git(root, 'commit', '-q', '-m', 'Handed over M-0412');
    expect(git(root, 'status', '--porcelain')).toBe('');
  });

  it('in JSON holds the row and the pages', () => {
    const { data, ok, command } = json(handOver(root, 'M-0412', '--format', 'json'));
    expect({ ok, command }).toEqual({ ok: true, command: 'handover' });
    expect(data).toEqual({
      plan: 'M-0412',
      sheet: expect.stringMatching(/^\w{4} \w{4}$/),
      date: TODAY,
      commit: git(root, 'rev-parse', 'HEAD').trim(),
      language: 'en',
      by: 'rk',
      files: ['handouts/M-0412.html', 'handouts/M-0412.md', 'handouts/M-0412.clinic.html'],
      added: true,
    });
    expect(rowsOf(root)).toHaveLength(1);
  });

  it('twice the same day, of the same sheet and commit, adds no second row', () => {
    handOver(root, 'M-0412');
    const before = registerOf(root);
    const { status, out } = handOver(root, 'M-0412');
    expect(status).toBe(0);
    expect(out).toMatch(/^In handovers\.csv already, and not added again: /m);
    expect(out).not.toContain('git commit');
    expect(registerOf(root)).toBe(before);
    expect(json(handOver(root, 'M-0412', '--format', 'json')).data.added).toBe(false);
    runIn(root, ['handover', 'M-0412'], '2026-10-27');
    expect(rowsOf(root)).toHaveLength(2);
  });

  it("is in the plan's language, and its row never has a name", () => {
    for (const path of ['practice.yaml', 'plans', 'exercises'])
      cpSync(join(CASES, 'languages/spanish', path), join(root, path), { recursive: true });
    commitAll(root);
    write(root, 'people.yaml', 'M-0412: {name: Rowan Vale, language: ar}\n');
    expect(handOver(root, 'M-0412').status).toBe(0);
    expect(rowsOf(root)[0]).toMatch(/,es,rk$/);
    expect(registerOf(root)).not.toMatch(/Rowan|Vale/);
    expect(runIn(root, ['check']).out).not.toMatch(OF_REGISTER);
    // A machine without people.yaml, as a colleague's.
    rmSync(join(root, 'people.yaml'));
    expect(runIn(root, ['check']).out).not.toMatch(OF_REGISTER);
  });

  it('is by the one who signs the plan, or as asked, and by nobody that practice.yaml does not name', () => {
    edit(root, 'practice.yaml', /^practitioners:\n/m, 'practitioners:\n  jt: "J. Tern"\n');
    commitAll(root);
    expect(handOver(root, 'M-0412', '--by', 'jt').status).toBe(0);
    expect(rowsOf(root)[0]).toMatch(/,jt$/);
    const refused = handOver(root, 'M-0412', '--by', 'R. Kestrel');
    expect(refused.status).toBe(2);
    expect(refused.err).toContain(
      'there is no practitioner "R. Kestrel" in practice.yaml; known are jt, rk',
    );
    edit(root, PLAN, 'by: rk\n', '');
    commitAll(root);
    const unsigned = handOver(root, 'M-0412');
    expect(unsigned.status).toBe(2);
    expect(unsigned.err).toMatch(/does not say who signs it; .*--by/);
    expect(rowsOf(root)).toHaveLength(1);
  });

  it('of a closed plan goes as its build does, when it is named', () => {
    appendFileSync(join(root, PLAN), 'closed: {date: 2026-10-19, why: Walks where she likes}\n');
    commitAll(root);
    expect(handOver(root, 'M-0412').status).toBe(0);
    expect(rowsOf(root)).toHaveLength(1);
  });
});

describe('no handover', () => {
  const REFUSED: readonly (readonly [string, (root: string) => void, readonly string[]])[] = [
    ['a changed plan', () => edit(root, PLAN, 'hill walking', 'the hills'), [PLAN]],
    [
      'a changed exercise of the plan, and the settings',
      () => {
        edit(root, 'exercises/heel-raise.yaml', 'Heel raise', 'Rise on the toes');
        edit(root, 'practice.yaml', '555 0142', '555 0143');
      },
      ['exercises/heel-raise.yaml', 'practice.yaml'],
    ],
    [
      'an own words pack that was never added',
      () =>
        write(
          root,
          'templates/words/en.yaml',
          readFileSync(join(import.meta.dirname, '..', 'templates/words/en.yaml'), 'utf8'),
        ),
      ['templates/words/en.yaml'],
    ],
    [
      'a file that git is told to ignore',
      () => {
        git(root, 'rm', '-q', '--cached', 'exercises/walk.yaml');
        appendFileSync(join(root, '.gitignore'), 'exercises/walk.yaml\n');
        commitAll(root);
      },
      ['exercises/walk.yaml'],
    ],
    [
      'what is added and not committed',
      () => {
        edit(root, PLAN, 'hill walking', 'the hills');
        git(root, 'add', PLAN);
      },
      [PLAN],
    ],
  ];

  it.each(REFUSED)('with %s', (_, change, files) => {
    change(root);
    const refused = handOver(root, 'M-0412', '--format', 'json');
    expect(refused.status).toBe(1);
    const { ok, data, findings } = json(refused);
    expect({ ok, data }).toEqual({ ok: false, data: null });
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      check: 'handover-uncommitted',
      severity: 'error',
      file: PLAN,
      line: 1,
    });
    expect(findings[0].related.map(({ file }: { file: string }) => file).sort()).toEqual(files);
    expect(findings[0].hints[0]).toMatch(
      /^Commit first: git add .+ && git commit -m "Plan M-0412"$/,
    );
    expect(existsSync(join(root, 'handovers.csv'))).toBe(false);
    expect(existsSync(join(root, 'handouts'))).toBe(false);
  });

  it('with a changed picture; what the hint says mends it', () => {
    const drawing =
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0h9"/></svg>\n';
    write(root, 'pictures/heel raise.svg', drawing);
    edit(root, 'exercises/heel-raise.yaml', /^steps:/m, 'picture: pictures/heel raise.svg\nsteps:');
    commitAll(root);
    write(root, 'pictures/heel raise.svg', drawing.replace('h9', 'v9'));
    const { status, err } = handOver(root, 'M-0412');
    expect(status).toBe(1);
    const command = /^hint: Commit first: (.+)$/m.exec(err)?.[1] ?? '';
    expect(command).toContain("git add 'pictures/heel raise.svg'");
    execFileSync(
      'sh',
      [
        '-c',
        command.replaceAll('git commit', 'git -c user.name=P -c user.email=p@example.org commit'),
      ],
      {
        cwd: root,
        stdio: 'pipe',
      },
    );
    expect(handOver(root, 'M-0412').status).toBe(0);
  });

  it('with a template that was taken away since', () => {
    const sheet = readFileSync(join(import.meta.dirname, '..', 'templates/words/en.yaml'), 'utf8');
    write(root, 'templates/words/en.yaml', sheet);
    commitAll(root);
    rmSync(join(root, 'templates'), { recursive: true });
    const { status, err } = handOver(root, 'M-0412');
    expect(status).toBe(1);
    expect(err).toContain('templates/words/en.yaml:1:1  Not committed.');
  });

  it('of a plan with errors, whose old sheet is moved away as by a build', () => {
    expect(handOver(root, 'M-0412').status).toBe(0);
    edit(root, PLAN, 'weeks: 6', 'weeks: 0');
    const { status, out, err } = handOver(root, 'M-0412');
    expect(status).toBe(1);
    expect(out).toMatch(/^M-0412 {2}no sheet: see the errors$/m);
    expect(out).toContain('moved  handouts/M-0412.html');
    // Its mistakes come first; to commit them would be bad advice.
    expect(err).not.toContain('handover-uncommitted');
    expect(rowsOf(root)).toHaveLength(1);
  });

  it('with --strict while a warning is open', () => {
    edit(root, PLAN, 'time: 25 min', 'time: 5 min');
    commitAll(root);
    expect(handOver(root, 'M-0412', '--strict').status).toBe(1);
    expect(existsSync(join(root, 'handovers.csv'))).toBe(false);
    expect(handOver(root, 'M-0412').status).toBe(0);
  });

  it('before anything is committed, with the way out', () => {
    const fresh = freshFolder();
    made.push(fresh);
    git(fresh, 'init', '-q');
    const { status, err } = handOver(fresh, 'M-0412');
    expect(status).toBe(2);
    expect(err).toMatch(/nothing has been committed here yet.*"git add -A" and "git commit/);
    expect(existsSync(join(fresh, 'handouts'))).toBe(false);
  });

  it('without git on the PATH', () => {
    let err = '';
    const silent = { isTerminal: false, columns: 100 };
    const status = main(['handover', 'M-0412'], {
      cwd: root,
      env: { PATH: '' },
      today: TODAY,
      out: { write: () => {}, ...silent },
      err: {
        write: (text) => {
          err += text;
        },
        ...silent,
      },
    });
    expect(status).toBe(2);
    expect(err).toMatch(/^carryover: git is not installed here, or not on the PATH/);
  });

  it('into a register that is a link, and what it points to stays as it is', () => {
    const elsewhere = join(realpathSync(mkdtempSync(join(tmpdir(), 'carryover-'))), 'other.csv');
    made.push(dirname(elsewhere));
    writeFileSync(elsewhere, 'theirs\n');
    symlinkSync(elsewhere, join(root, 'handovers.csv'));
    const { status, err } = handOver(root, 'M-0412');
    expect(status).toBe(2);
    expect(err).toContain('handovers.csv is a link');
    expect(readFileSync(elsewhere, 'utf8')).toBe('theirs\n');
  });

  it.skipIf(process.getuid?.() === 0)('into a register that cannot be written', () => {
    handOver(root, 'M-0412');
    chmodSync(join(root, 'handovers.csv'), 0o444);
    const { status, err } = runIn(root, ['handover', 'M-0412'], '2026-10-27');
    expect(status).toBe(2);
    expect(err).toMatch(
      /no handover was noted, for handovers\.csv cannot be written to: no permission/,
    );
  });
});

describe('what does not stop a handover', () => {
  it('another plan, another exercise and the register itself, all not committed', () => {
    const other = readFileSync(join(root, PLAN), 'utf8').replace('M-0412', 'K-2031');
    write(root, 'plans/K-2031.yaml', other.replace('weeks: 6', 'weeks: many'));
    write(root, 'exercises/new-one.yaml', 'exercise: [\n');
    write(root, 'notes.txt', 'call back\n');
    write(root, 'templates/.DS_Store', 'left by a file browser');
    for (const day of ['2026-10-26', '2026-10-27', '2026-10-28'])
      expect(runIn(root, ['handover', 'M-0412'], day)).toMatchObject({ status: 0, err: '' });
    expect(rowsOf(root)).toHaveLength(3);
  });

  it('a damaged register: the row is added after it, and the damage is told of', () => {
    const half = `${HEADER}\n2026-10-25,M-0412,KP4T 7W`;
    writeFileSync(join(root, 'handovers.csv'), half);
    const { status, err } = handOver(root, 'M-0412');
    expect(status).toBe(0);
    expect(err).toMatch(/^handovers\.csv:2:1 {2}warning {2}handover-damaged$/m);
    expect(registerOf(root).startsWith(`${half}\n2026-10-26,M-0412,`)).toBe(true);
    expect(runIn(root, ['check']).out).toContain('1 warning in 5 files.');
  });
});

describe('the register is only added to', () => {
  it.each([
    ['LF', '\n'],
    ['CRLF', '\r\n'],
  ])('with %s line ends, kept', (_, end) => {
    const before = `${HEADER}${end}2026-10-01,K-1,CDFH JKMN,${'0'.repeat(40)},en,rk${end}`;
    writeFileSync(join(root, 'handovers.csv'), before);
    expect(handOver(root, 'M-0412').status).toBe(0);
    const after = registerOf(root);
    expect(after.startsWith(`${before}2026-10-26,M-0412,`)).toBe(true);
    expect(after.endsWith(`,rk${end}`)).toBe(true);
    expect(after.slice(before.length).split('\n')).toHaveLength(2);
  });

  it('and a last line without its end gets one first', () => {
    const before = `${HEADER}\r\n2026-10-01,K-1,CDFH JKMN,${'0'.repeat(40)},en,rk`;
    writeFileSync(join(root, 'handovers.csv'), before);
    expect(handOver(root, 'M-0412').status).toBe(0);
    expect(registerOf(root).startsWith(`${before}\r\n2026-10-26,M-0412,`)).toBe(true);
    expect(runIn(root, ['check']).out).not.toMatch(OF_REGISTER);
  });

  it('and an empty one gets its first line', () => {
    writeFileSync(join(root, 'handovers.csv'), '');
    expect(handOver(root, 'M-0412').status).toBe(0);
    expect(registerOf(root)).toMatch(/^date,plan,sheet,commit,language,by\n2026-10-26,.*\n$/);
  });
});

describe('where the folder lies', () => {
  it('below the top of its repository, beside other work that is not committed', () => {
    const top = realpathSync(mkdtempSync(join(tmpdir(), 'carryover-top-')));
    made.push(top);
    const clinic = join(top, 'clinic', 'north east');
    mkdirSync(dirname(clinic), { recursive: true });
    execFileSync('cp', ['-r', root, clinic]);
    rmSync(join(clinic, '.git'), { recursive: true });
    git(top, 'init', '-q');
    commitAll(top);
    write(top, 'practice.yaml.draft', 'nothing of ours');
    edit(clinic, PLAN, 'hill walking', 'the hills');
    // From inside, from a folder of it, and from outside, the hint can be typed as it stands.
    const hint = (cwd: string, ...args: readonly string[]) =>
      /Commit first: (git.*) &&/.exec(runIn(cwd, ['handover', 'M-0412', ...args]).err)?.[1];
    expect(hint(clinic)).toBe('git add plans/M-0412.yaml');
    expect(hint(join(clinic, 'plans'))).toBe('git add ../plans/M-0412.yaml');
    expect(hint(top, '--folder', 'clinic/north east')).toBe(
      "git -C 'clinic/north east' add plans/M-0412.yaml",
    );
    commitAll(top);
    expect(handOver(clinic, 'M-0412')).toMatchObject({ status: 0, err: '' });
    expect(rowsOf(clinic)).toHaveLength(1);
    expect(existsSync(join(top, 'handovers.csv'))).toBe(false);
  });

  it('in a clone that has only the latest versions', () => {
    handOver(root, 'M-0412');
    commitAll(root, 'Handed over');
    edit(root, PLAN, 'hill walking', 'the hills');
    commitAll(root);
    const clone = `${root}-clone`;
    made.push(clone);
    git(root, 'clone', '-q', '--depth', '1', `file://${root}`, clone);
    expect(git(clone, 'rev-list', '--count', 'HEAD').trim()).toBe('1');
    // What is new since then cannot be said, so neither can whether the sheet is another one.
    expect(runIn(clone, ['check']).out).toContain('cannot say what is new since 2026-10-26');
    expect(handOver(clone, 'M-0412').status).toBe(0);
    expect(rowsOf(clone)).toHaveLength(2);
    expect(runIn(clone, ['check']).out).not.toContain('changed-since-handover');
  });
});

describe('two branches that both hand over', () => {
  function handedOverOn(branch: string, from: string, plan: string, by: string): void {
    git(root, 'checkout', '-q', '-b', branch, from);
    expect(handOver(root, plan, '--by', by).status).toBe(0);
    commitAll(root, `Handed over ${plan}`);
  }

  beforeEach(() => {
    edit(root, 'practice.yaml', /^practitioners:\n/m, 'practitioners:\n  jt: "J. Tern"\n');
    const text = readFileSync(join(root, PLAN), 'utf8');
    write(root, 'plans/K-2031.yaml', text.replace('M-0412', 'K-2031').replace('hill', 'town'));
    commitAll(root);
  });

  it.each([
    ['that has rows already', true],
    ['that both of them begin', false],
  ])('merge without conflict a register %s', (_, isBegun) => {
    if (isBegun) {
      runIn(root, ['handover', 'M-0412'], '2026-10-20');
      commitAll(root);
    }
    handedOverOn('north', 'trunk', 'M-0412', 'rk');
    handedOverOn('south', 'trunk', 'K-2031', 'jt');
    git(root, 'merge', '-q', '--no-edit', 'north');
    expect(git(root, 'status', '--porcelain')).toBe('');
    const rows = rowsOf(root).filter((row) => row !== HEADER);
    expect(rows.filter((row) => row.startsWith('2026-10-26,K-2031,'))).toHaveLength(1);
    expect(rows.filter((row) => row.startsWith('2026-10-26,M-0412,'))).toHaveLength(1);
    expect(rows).toHaveLength(isBegun ? 3 : 2);
    expect(runIn(root, ['check']).out).not.toMatch(OF_REGISTER);
  });

  it('are told so where the folder was begun without that line', () => {
    writeFileSync(join(root, '.gitattributes'), '*.csv text eol=lf\n');
    commitAll(root);
    const { status, err } = handOver(root, 'M-0412');
    expect(status).toBe(0);
    expect(err).toMatch(/put this line into \.gitattributes: handovers\.csv merge=union\n$/);
  });
});

describe('a sheet number', () => {
  it('is found however it is told, and its words are current until the plan says something else', () => {
    const { sheet, commit } = json(handOver(root, 'M-0412', '--format', 'json')).data;
    const row = { plan: 'M-0412', date: TODAY, commit, language: 'en', by: 'rk' };
    const find = (told: string) =>
      json(runIn(root, ['handover', '--find', told, '--format', 'json']));
    const current = { sheet, found: [{ ...row, sheet, current: true, now: sheet }], near: [] };
    for (const told of [
      sheet,
      sheet.toLowerCase(),
      sheet.replace(' ', ''),
      sheet.replace(' ', '-'),
      ` ${sheet.replace(' ', '\u2011')} `,
      [...sheet].join(' '),
    ])
      expect(find(told).data).toEqual(current);
    // A remark in the file is no word on the sheet.
    appendFileSync(join(root, PLAN), '# asked about stairs\n');
    expect(find(sheet).data).toEqual(current);
    edit(root, PLAN, 'hill walking', 'the hills');
    const { found } = find(sheet).data;
    expect(found[0]).toMatchObject({ current: false, now: expect.not.stringMatching(sheet) });
    expect(runIn(root, ['build']).out).toContain(`sheet ${found[0].now}`);
    rmSync(join(root, PLAN));
    expect(find(sheet).data.found[0]).toMatchObject({ current: false, now: null });
  });

  it('of a closed plan says that the plan is closed', () => {
    const { sheet } = json(handOver(root, 'M-0412', '--format', 'json')).data;
    appendFileSync(join(root, PLAN), 'closed: {date: 2026-10-29, why: Walks where she likes}\n');
    const { status, out } = runIn(root, ['handover', '--find', sheet]);
    expect(status).toBe(0);
    expect(out).toContain('says the same now. The plan was closed on 2026-10-29.');
  });
});

describe('"carryover check"', () => {
  const isNoted = () => /note {2}changed-since-handover/.test(runIn(root, ['check', 'M-0412']).out);

  it('notes a plan that changed since, and not what no person reads', () => {
    expect(isNoted()).toBe(false);
    handOver(root, 'M-0412');
    expect(isNoted()).toBe(false);
    edit(root, PLAN, 'why: Ready for strength', 'why: Strong enough now');
    appendFileSync(join(root, 'practice.yaml'), '# a remark\n');
    expect(isNoted()).toBe(false);
    edit(root, 'exercises/heel-raise.yaml', /sets: 2/, 'sets: 3');
    expect(isNoted()).toBe(true);
    commitAll(root);
    expect(handOver(root, 'M-0412').status).toBe(0);
    expect(isNoted()).toBe(false);
  });

  it('says nothing of it where the practice wants none, and never costs a sheet', () => {
    handOver(root, 'M-0412');
    edit(root, PLAN, 'hill walking', 'the hills');
    appendFileSync(join(root, 'practice.yaml'), '\nchecks: {changed-since-handover: error}\n');
    expect(runIn(root, ['check']).status).toBe(1);
    expect(runIn(root, ['build']).status).toBe(0);
  });
});

describe('completion', () => {
  it('offers plans and options', () => {
    const offered = (...words: readonly string[]) =>
      runIn(root, ['complete', '--', ...words]).out.split('\n');
    expect(offered('hand')).toContain('handover');
    expect(offered('handover', 'M')).toContain('M-0412');
    expect(offered('handover', '--')).toEqual(expect.arrayContaining(['--by', '--find']));
  });
});
