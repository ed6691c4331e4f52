// What can't lie in a repository as a file: other encodings, links, pipes, huge and deep files, files
// without permission, a repository inside the repository. Each ends with one clear finding, in time,
// and never with the status of a bug.
import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { freshFolder, type Ran, runIn } from './support/cases.ts';

const PLAN = 'plans/M-0412.yaml';
const EXERCISE = 'exercises/heel-raise.yaml';
const PRACTICE = 'practice.yaml';

interface Told {
  readonly check: string;
  readonly file: string;
  readonly line: number;
  readonly message: string;
}

/** What `check` finds in the base folder after it was made hostile. */
function found(makeHostile: (root: string) => void): { status: number; findings: readonly Told[] } {
  const root = freshFolder();
  try {
    makeHostile(root);
    const { status, out, err } = runIn(root, ['check', '--format', 'json']);
    expect(err).toBe('');
    const { findings } = JSON.parse(out) as { findings: readonly Told[] };
    return {
      status,
      findings: findings.map(({ check, file, line, message }) => ({ check, file, line, message })),
    };
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
}

/** What one command says in the base folder after it was made hostile. */
function ran(command: string, makeHostile: (root: string) => void): Ran {
  const root = freshFolder();
  try {
    makeHostile(root);
    return runIn(root, [command]);
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
}

/** Exit 1 and this one finding. */
function expectOne(
  makeHostile: (root: string) => void,
  check: string,
  file: string,
  says: RegExp,
): void {
  const { status, findings } = found(makeHostile);
  expect(findings).toEqual([
    { check, file, line: expect.any(Number), message: expect.stringMatching(says) },
  ]);
  expect(status).toBe(1);
}

const write = (path: string, content: string | Uint8Array) => (root: string) =>
  writeFileSync(join(root, path), content);
const original = (path: string) =>
  readFileSync(join(import.meta.dirname, 'cases', 'base', path), 'utf8');
/** A file of the base folder with more text at its end. */
const appended = (path: string, text: string) => write(path, original(path) + text);

function utf16(text: string): Uint8Array {
  return Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(text, 'utf16le')]);
}

describe('the bytes of a file', () => {
  it.each([PLAN, EXERCISE, PRACTICE])('UTF-16: %s', (path) => {
    expectOne(
      write(path, utf16(original(path))),
      'file-not-utf8',
      path,
      /UTF-16; save it as UTF-8/,
    );
  });

  it('Latin-1', () => {
    const latin = Buffer.from(original(PLAN).replace('coast path', 'c\u00f4te'), 'latin1');
    expectOne(write(PLAN, latin), 'file-not-utf8', PLAN, /not saved as UTF-8/);
  });

  it('a mark of byte order and line ends of another system are fine', () => {
    const text = `\ufeff${original(PLAN).replaceAll('\n', '\r\n')}`;
    expect(found(write(PLAN, text))).toEqual({ status: 0, findings: [] });
  });

  it.each([PLAN, EXERCISE, PRACTICE])('nothing in it: %s', (path) => {
    expectOne(write(path, ''), 'file-empty', path, /empty/);
  });

  it.each([
    ['NUL', '\u0000'],
    ['a bell', '\u0007'],
    ['an escape of the terminal', '\u001b[2J'],
    ['a direction override', '\u202e'],
    ['an isolate', '\u2066'],
  ])('a character that does not show: %s', (_, character) => {
    const text = original(PLAN).replace('back to hill', `back ${character}to hill`);
    expectOne(write(PLAN, text), 'hidden-character', PLAN, /does not show \(U\+[0-9A-F]{4}\)/);
  });

  it('a direction override written as an escape', () => {
    const text = original(PLAN).replace(
      'title: Ankle, back to hill walking',
      'title: "Ankle \\u202e back"',
    );
    expectOne(write(PLAN, text), 'hidden-character', PLAN, /U\+202E/);
  });

  it('line ends of an old kind', () => {
    expectOne(
      write(PLAN, original(PLAN).replaceAll('\n', '\r')),
      'hidden-character',
      PLAN,
      /end with CR alone/,
    );
  });

  it('marks and joiners of other scripts are fine', () => {
    const text = original(PLAN).replace(
      'hill walking',
      '\u05d4\u05dc\u05d9\u05db\u05d4\u200f \u200d\u200c',
    );
    expect(found(write(PLAN, text))).toEqual({ status: 0, findings: [] });
  });
});

describe('the size of a file', () => {
  it('50 MB', () => {
    expectOne(
      write(PLAN, Buffer.alloc(50_000_000, 'a')),
      'file-too-big',
      PLAN,
      /larger than 1 MiB/,
    );
  });

  it('100,000 brackets', () => {
    expectOne(
      appended(PLAN, `report: ${'['.repeat(100_000)}`),
      'file-too-deep',
      PLAN,
      /more than 32 deep/,
    );
  });

  it('100,000 brackets that close', () => {
    expectOne(
      write(EXERCISE, `exercise: ${'['.repeat(100_000)}${']'.repeat(100_000)}\n`),
      'file-too-deep',
      EXERCISE,
      /more than 32 deep/,
    );
  });

  it('indents', () => {
    const deep = Array.from({ length: 400 }, (_, i) => `${' '.repeat(i)}a:`).join('\n');
    expectOne(write(PLAN, `${deep}\n`), 'file-too-deep', PLAN, /more than 32 deep/);
  });

  it('60,000 words and signs', () => {
    expectOne(
      appended(PLAN, `report:\n  answers: [${'a, '.repeat(30_000)}a]\n`),
      'file-too-long',
      PLAN,
      /more than 50,000/,
    );
  });

  it.each([
    ['in block style', '  ', '\n'],
    ['in brackets', '', ', '],
  ])('2,500 keys %s', (_, before, after) => {
    const keys = Array.from({ length: 2_500 }, (__, i) => `${before}key-${i}: a${after}`).join('');
    const report = before === '' ? `report: {${keys}}\n` : `report:\n${keys}`;
    expectOne(appended(PLAN, report), 'file-too-long', PLAN, /more than 2,000 keys/i);
  });

  it('names that multiply', () => {
    const bomb = [
      'a: &a [x, x, x, x, x, x, x, x, x]',
      ...'bcdefghi'.split('').map((name, i) => {
        const before = 'abcdefgh'[i];
        return `${name}: &${name} [${Array.from({ length: 9 }, () => `*${before}`).join(', ')}]`;
      }),
    ].join('\n');
    const { status, findings } = found(write(EXERCISE, `${original(EXERCISE)}${bomb}\n`));
    expect(status).toBe(1);
    expect(new Set(findings.map(({ file }) => file))).toEqual(new Set([EXERCISE]));
    expect(findings.map(({ check }) => check)).toContain('yaml-feature');
  });

  it.each([
    ['double quotes', '"'],
    ['single quotes', "'"],
    ['hashes', '#'],
    ['exclamation marks', '! '],
    ['stars', '* '],
    ['dashes', '- '],
    ['colons', ': '],
    ['spaces', ' '],
    ['line ends', '\n'],
    ['commas and digits', '1,'],
    ['ampersands', '&a '],
    ['backslashes', '\\'],
    ['carets', '>\n'],
  ])('a megabyte of %s', (_, sign) => {
    const { status, findings } = found(
      appended(PLAN, `report:\n  a: ${sign.repeat(Math.floor(1_000_000 / sign.length))}`),
    );
    expect([0, 1]).toContain(status);
    expect(findings.length).toBeLessThan(10);
  });
});

describe('what is no file of the folder', () => {
  const elsewhere = (root: string) => join(root, 'elsewhere');

  it.each([PLAN, EXERCISE, PRACTICE])('a link: %s', (path) => {
    expectOne(
      (root) => {
        renameSync(join(root, path), elsewhere(root));
        symlinkSync(elsewhere(root), join(root, path));
      },
      'file-linked',
      path,
      /is a link/,
    );
  });

  it.each(['plans', 'exercises'])('a link to a folder: %s', (path) => {
    expectOne(
      (root) => {
        renameSync(join(root, path), elsewhere(root));
        symlinkSync(elsewhere(root), join(root, path));
      },
      'file-linked',
      path,
      /is a link/,
    );
  });

  it('a linked folder of plans moves no sheet away', () => {
    const root = freshFolder();
    runIn(root, ['build']);
    renameSync(join(root, 'plans'), elsewhere(root));
    symlinkSync(elsewhere(root), join(root, 'plans'));
    const { status, out } = runIn(root, ['build']);
    const isThere = existsSync(join(root, 'handouts/M-0412.html'));
    rmSync(root, { recursive: true, force: true });
    expect({ status, out, isThere }).toEqual({
      status: 1,
      out: 'Nothing was written or moved.\n',
      isThere: true,
    });
  });

  it('a link for the templates', () => {
    expectOne(
      (root) => {
        mkdirSync(elsewhere(root));
        symlinkSync(elsewhere(root), join(root, 'templates'));
      },
      'file-linked',
      'templates',
      /is a link/,
    );
  });

  it('a link to a folder among the plans', () => {
    expectOne(
      (root) => {
        mkdirSync(elsewhere(root));
        symlinkSync(elsewhere(root), join(root, 'plans', 'mine'));
      },
      'file-linked',
      'plans/mine',
      /is a link/,
    );
  });

  const withPicture = (root: string) => {
    mkdirSync(join(root, 'pictures'));
    writeFileSync(
      join(root, EXERCISE),
      original(EXERCISE).replace('feel:', 'picture: pictures/heel.png\nfeel:'),
    );
  };
  const png = (size: number) =>
    Buffer.concat([
      Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
      Buffer.alloc(size),
    ]);

  it('a linked picture', () => {
    expectOne(
      (root) => {
        withPicture(root);
        writeFileSync(elsewhere(root), png(100));
        symlinkSync(elsewhere(root), join(root, 'pictures/heel.png'));
      },
      'picture-unusable',
      EXERCISE,
      /it is a link/,
    );
  });

  it('a picture of 6 MiB', () => {
    expectOne(
      (root) => {
        withPicture(root);
        writeFileSync(join(root, 'pictures/heel.png'), png(6 * 1024 * 1024));
      },
      'picture-unusable',
      EXERCISE,
      /larger than 5 MiB/,
    );
  });

  it('a pipe', () => {
    expectOne(
      (root) => {
        execFileSync('mkfifo', [join(root, 'plans/plan.yaml')]);
      },
      'file-unreadable',
      'plans/plan.yaml',
      /not a file/,
    );
  });

  it('a pipe for a picture', () => {
    expectOne(
      (root) => {
        withPicture(root);
        execFileSync('mkfifo', [join(root, 'pictures/heel.png')]);
      },
      'picture-unusable',
      EXERCISE,
      /it is not a file/,
    );
  });

  it.each(['plans/x.yaml', 'exercises/x.yaml'])('a folder called %s', (path) => {
    expectOne((root) => mkdirSync(join(root, path)), 'file-unreadable', path, /not a file/);
  });

  it('a folder called practice.yaml', () => {
    const { status, err } = ran('check', (root) => {
      rmSync(join(root, PRACTICE));
      mkdirSync(join(root, PRACTICE));
    });
    expect(status).toBe(2);
    expect(err).toBe('carryover: practice.yaml: This is not a file that can be read.\n');
  });

  it('a folder where a page belongs', () => {
    const { status, err } = ran('build', (root) => {
      mkdirSync(join(root, 'handouts/M-0412.html'), { recursive: true });
    });
    expect(status).toBe(2);
    expect(err).toBe(
      'carryover: handouts/ cannot be written to: a folder lies where a page belongs.\n',
    );
  });

  it.each(['a file', 'a link'])('%s called handouts', (what) => {
    const { status, err } = ran('build', (root) => {
      if (what === 'a file') return writeFileSync(join(root, 'handouts'), '');
      mkdirSync(elsewhere(root));
      symlinkSync(elsewhere(root), join(root, 'handouts'));
    });
    expect(status).toBe(2);
    expect(err).toMatch(/^carryover: handouts\/? is (not a folder|a link; make it a folder)\.\n$/);
  });

  const isRoot = process.getuid?.() === 0;
  it.skipIf(isRoot).each([PLAN, EXERCISE])(
    'a file without permission (skipped for root, who may read everything): %s',
    (path) => {
      expectOne((root) => chmodSync(join(root, path), 0), 'file-unreadable', path, /no permission/);
    },
  );

  it.skipIf(isRoot)('practice.yaml without permission (skipped for root)', () => {
    const { status, err } = ran('check', (root) => chmodSync(join(root, PRACTICE), 0));
    expect(status).toBe(2);
    expect(err).toBe('carryover: practice.yaml: This file cannot be read (no permission).\n');
  });

  it.skipIf(isRoot)('a folder that takes no page (skipped for root)', () => {
    const { status, err } = ran('build', (root) => {
      mkdirSync(join(root, 'handouts'));
      chmodSync(join(root, 'handouts'), 0o555);
    });
    expect(status).toBe(2);
    expect(err).toBe('carryover: handouts/ cannot be written to: no permission.\n');
  });
});

describe('names that mean something to a program', () => {
  it.each(['__proto__', 'constructor', 'toString', 'hasOwnProperty'])('%s as a key', (key) => {
    expectOne(
      appended(PLAN, `${key}: {weeks: 1}\n`),
      'unknown-key',
      PLAN,
      new RegExp(`"${key}" is not a key`),
    );
  });

  it.each(['__proto__', 'constructor'])('%s as an exercise', (name) => {
    const text = original(PLAN).replace('do: walk', `do: ${name}`);
    const { status, findings } = found(write(PLAN, text));
    expect(status).toBe(1);
    expect(findings.map(({ file }) => file)).toEqual([PLAN]);
  });
});

describe('what would age in a repository', () => {
  const isGitThere = (() => {
    try {
      execFileSync('git', ['--version'], { stdio: 'ignore' });
      return true;
    } catch {
      return false;
    }
  })();

  it.skipIf(!isGitThere)('names under version control', () => {
    expectOne(
      (root) => {
        writeFileSync(join(root, 'people.yaml'), 'M-0412: {name: "Rowan Vale"}\n');
        const git = (...args: string[]) =>
          execFileSync('git', args, { cwd: root, stdio: 'ignore' });
        git('init', '-q');
        git('add', 'people.yaml');
      },
      'private-file-tracked',
      'people.yaml',
      /git tracks people.yaml/,
    );
  });

  const pack = readFileSync(join(import.meta.dirname, '..', 'templates/words/en.yaml'), 'utf8');

  it('a words pack without one of the sentences', () => {
    const withoutOne = pack.replace(/^ {2}outdated-stamp: .*\n/m, '');
    expect(withoutOne.length).toBeLessThan(pack.length);
    const makeHostile = (root: string) => {
      mkdirSync(join(root, 'templates/words'), { recursive: true });
      writeFileSync(join(root, 'templates/words/en.yaml'), withoutOne);
    };
    const says = /^"index.outdated-stamp" is missing; in English it is "/;
    expectOne(makeHostile, 'words-missing', 'templates/words/en.yaml', says);
    expect(ran('build', makeHostile)).toMatchObject({
      status: 1,
      out: 'Nothing was written or moved.\n',
    });
  });

  it('a sheet of a plan that broke is stamped where it was moved to', () => {
    const stamp = /^ {2}outdated-stamp: "(.*)"$/m.exec(pack)?.[1] ?? '(no stamp in the pack)';
    const root = freshFolder();
    runIn(root, ['build']);
    writeFileSync(join(root, PLAN), original(PLAN).replace('affected: left', 'affected: lft'));
    const { status } = runIn(root, ['build']);
    const moved = ['M-0412.html', 'M-0412.md', 'M-0412.clinic.html'].map((name) => ({
      isLeft: existsSync(join(root, 'handouts', name)),
      isStamped: readFileSync(join(root, 'handouts/outdated', name), 'utf8').includes(stamp),
    }));
    rmSync(root, { recursive: true, force: true });
    expect(status).toBe(1);
    expect(moved).toEqual(Array.from({ length: 3 }, () => ({ isLeft: false, isStamped: true })));
  });
});
