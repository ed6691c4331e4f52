// The same folder comes to the same findings and pages, on the disk and in memory, with a byte order
// mark and other line ends; and a file that cannot be read still owns its id.
import { describe, expect, it } from 'vitest';
import { type Compiled, compile } from '../../src/build.ts';
import { NO_LAST_TIMES } from '../../src/handouts/last-time.ts';
import { pagesOf } from '../../src/handouts/pages.ts';
import { loadWording } from '../../src/handouts/wording.ts';
import { diskFolder, type Folder, memoryFolder } from '../../src/load/folder.ts';
import { loadTemplates } from '../../src/load/templates.ts';
import { findingJson } from '../../src/render/json/finding-json.ts';
import { EXAMPLES, type ExampleName, exampleFiles } from '../support/example-files.ts';

const names = Object.keys(EXAMPLES) as ExampleName[];

interface Made {
  readonly findings: readonly object[];
  readonly pages: readonly (readonly [string, string])[];
}

/** Everything that a folder comes to: its findings as JSON, its pages as text. */
function made(folder: Folder): Made {
  const compiled: Compiled = compile(folder, null);
  const printing = {
    compiled,
    templates: loadTemplates(folder).value,
    wording: loadWording(folder, compiled).value,
    lastTimes: NO_LAST_TIMES,
  };
  const pages = compiled.plans.flatMap((one) => {
    if (!one.numbers) return [];
    const outcome = pagesOf(one, printing);
    return outcome.ok ? [...outcome.pages.files] : [];
  });
  return { findings: compiled.findings.map(findingJson), pages };
}

describe.each(names)('%s', { timeout: 60_000 }, (name) => {
  const inMemory = made(memoryFolder(exampleFiles(name)));

  it('prints', () => {
    expect(inMemory.pages.length).toBeGreaterThanOrEqual(3);
  });

  it('is the same on the disk and in memory', () => {
    expect(made(diskFolder(EXAMPLES[name]))).toEqual(inMemory);
  });

  it.each([
    ['a byte order mark', (text: string) => `\ufeff${text}`],
    ['carriage returns', (text: string) => text.replaceAll('\n', '\r\n')],
    [
      'both, and no line end at the end',
      (text: string) => `\ufeff${text.trimEnd().replaceAll('\n', '\r\n')}`,
    ],
  ] as const)('is the same with %s', (_, change) => {
    const files = Object.entries(exampleFiles(name)).map(
      ([path, text]) => [path, path.endsWith('.yaml') ? change(text) : text] as const,
    );
    expect(made(memoryFolder(Object.fromEntries(files)))).toEqual(inMemory);
  });
});

describe('an exercise that cannot be read', { timeout: 60_000 }, () => {
  const HEEL_RAISE = 'exercises/heel-raise.yaml';
  const files = exampleFiles('contract');
  const text = files[HEEL_RAISE] as string;

  it.each<readonly [string, string | Uint8Array]>([
    ['is empty', ''],
    ['has only a comment', '# to be written\n'],
    ['is not UTF-8', Uint8Array.of(0xff, 0xfe, 0x41, 0x00)],
    ['has a hidden character', `${text}# \u202e\n`],
    ['is too big', `${text}# ${'x'.repeat(1024 * 1024)}\n`],
    ['is broken', text.replace('levels:', 'levels')],
    ['is a list', '- exercise: heel-raise\n'],
    ['nests too deep', `tags: ${'['.repeat(40)}${']'.repeat(40)}\n`],
    ['is indented with tabs', text.replaceAll('\n  ', '\n\t')],
    ['has a key that is not known', text.replace('sides: both', 'side: both')],
    ['lacks its steps', text.replace(/steps:\n(?: {2}- .*\n)+/, '')],
    ['says another id', text.replace('exercise: heel-raise', 'exercise: calf-raise')],
    ['is two documents', `${text}---\n${text}`],
    ['has a level without a dose', text.replace(/dose: \{sets: 2, reps: 5-8, hold: 2 s\}/, '')],
  ])('because it %s is not unknown to the plan', (_, content) => {
    const { findings, plans } = compile(memoryFolder({ ...files, [HEEL_RAISE]: content }), null);
    const errors = findings.filter(({ severity }) => severity === 'error');
    expect(errors.map(({ place }) => place.source.file)).toEqual(errors.map(() => HEEL_RAISE));
    expect(errors.length).toBeGreaterThan(0);
    expect(plans.map(({ numbers }) => numbers)).toEqual([null]);
  });

  it('is unknown where it is not there at all', () => {
    const { [HEEL_RAISE]: _, ...others } = files;
    expect(compile(memoryFolder(others), null).findings.map(({ check }) => check)).toContain(
      'unknown-exercise',
    );
  });
});
