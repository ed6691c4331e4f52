// Every case prints what its expected.txt says; and every sentence is one that a practitioner reads.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CASES, caseNames, expectedOf, freshFolder, ranCase, runIn } from './support/cases.ts';

const isUpdating = process.env.UPDATE_CASES === '1' && !process.env.CI;

describe('case', () => {
  it.each(caseNames())('%s', (name) => {
    const ran = ranCase(name);
    if (isUpdating) writeFileSync(join(CASES, name, 'expected.txt'), ran);
    expect(ran).toBe(expectedOf(name));
  });

  it('stands on a base folder without findings', () => {
    const root = freshFolder();
    expect(runIn(root, ['check'])).toEqual({
      status: 0,
      out: 'No findings in 5 files.\n',
      err: '',
    });
  });
});

// A key is named as it was written, in quotes; outside quotes these are a programmer's words.
const PROGRAMMER =
  /\b(schema|propert(y|ies)|enum|null|undefined|mapping|scalar|token|regex|must match|object|array|string|boolean|parse[rd]?|node)\b/i;

describe('a message', () => {
  const sentences = caseNames().flatMap((name) =>
    sentencesIn(expectedOf(name) ?? '').map((one) => [name, one] as const),
  );

  it('is there for each case that exits with 1', () => {
    const silent = caseNames().filter(
      (name) =>
        /exit 1/.test(expectedOf(name) ?? '') && sentencesIn(expectedOf(name) ?? '').length === 0,
    );
    expect(silent).toEqual([]);
    expect(sentences.length).toBeGreaterThan(100);
  });

  it('holds no word of a programmer', () => {
    const bad = sentences.filter(([, one]) => PROGRAMMER.test(one.replace(/"[^"]*"/g, '""')));
    expect(bad).toEqual([]);
  });
});

/** What stands below each `file:line:column  severity  check`, hints too, but not the lines of the file; and each message in JSON. */
function sentencesIn(printed: string): string[] {
  const lines = printed.split('\n');
  const inText = lines.flatMap((line, i) => {
    if (!/^\S.*:\d+:\d+ {2}(error|warning|note) {2}\S+$/.test(line)) return [];
    const end = lines.indexOf('', i);
    const below = lines.slice(i + 1, end === -1 ? undefined : end);
    return [below.filter((one) => !/^ *\d* \|/.test(one)).join(' ')];
  });
  const inJson = [...printed.matchAll(/^ *"message": (".*"),$/gm)];
  return [...inText, ...inJson.map(([, message = '""']) => JSON.parse(message) as string)];
}
