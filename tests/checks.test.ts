// The closed list of checks, held from both sides: each is provoked by a case, each that a case prints is
// in the list, and each has a page that says what it means, where it comes from and how to settle it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CHECK_NAMES, CHECKS } from '../src/finding/checks.ts';
import { caseNames, expectedOf, freshFolder, runIn } from './support/cases.ts';

/** Provoked by what can't lie in a repository; tests/hostile.test.ts has each by name. */
const HOSTILE_ONLY: readonly string[] = [
  'file-linked',
  'file-too-big',
  'file-too-deep',
  'file-too-long',
  'file-unreadable',
  'private-file-tracked',
  'words-missing',
];

/** Check to the cases that print it, as a finding in text or in JSON. */
function printedBy(): ReadonlyMap<string, readonly string[]> {
  const byCheck = new Map<string, string[]>();
  for (const name of caseNames()) {
    const text = expectedOf(name) ?? '';
    const inText = text.matchAll(/^\S.*:\d+:\d+ {2}(?:error|warning|note) {2}(\S+)$/gm);
    const inJson = text.matchAll(/^ *"check": "([^"]+)",$/gm);
    for (const [, check = ''] of [...inText, ...inJson])
      byCheck.set(check, [...(byCheck.get(check) ?? []), name]);
  }
  return byCheck;
}

describe('the list of checks', () => {
  const printed = printedBy();

  it('has no check that nothing provokes', () => {
    const silent = CHECK_NAMES.filter((name) => !printed.has(name) && !HOSTILE_ONLY.includes(name));
    expect(silent).toEqual([]);
  });

  it('has each that is only made hostile in the hostile test, and no case prints it', () => {
    const hostile = readFileSync(join(import.meta.dirname, 'hostile.test.ts'), 'utf8');
    expect(HOSTILE_ONLY.filter((name) => !hostile.includes(`'${name}'`))).toEqual([]);
    expect(HOSTILE_ONLY.filter((name) => printed.has(name))).toEqual([]);
  });

  it('has each that a case prints', () => {
    expect([...printed.keys()].filter((name) => !Object.hasOwn(CHECKS, name))).toEqual([]);
  });

  it('has a case for each that a practitioner can settle, and one where it is accepted', () => {
    // What the editor offers, and what was left to be replaced, are the folder's; no plan can accept them.
    const ofFolder = ['editor-ids-old', 'placeholder-left'];
    const settled = CHECK_NAMES.filter(
      (name) => CHECKS[name].severity !== 'error' && !ofFolder.includes(name),
    );
    const cases = caseNames().filter((name) => name.startsWith('checks/'));
    const accepted = cases.filter((name) =>
      /No findings \(\d+ accepted\)/.test(expectedOf(name) ?? ''),
    );
    const lacking = settled.filter(
      (check) => !(printed.get(check) ?? []).some((name) => accepted.includes(name)),
    );
    expect(lacking).toEqual([]);
  });
});

describe('the page of a check', () => {
  it.each(CHECK_NAMES)('%s', (name) => {
    const { meaning, source, remedy } = CHECKS[name];
    for (const text of [meaning, source, remedy]) expect(text).toMatch(/^\S.{8,}\S$/);
    // Whole sentences, so that a page can be read aloud.
    for (const text of [meaning, remedy]) expect(text).toMatch(/[.]$/);
  });

  it.each(CHECK_NAMES)('is what "carryover explain %s" prints', (name) => {
    const root = freshFolder();
    const { status, out } = runIn(root, ['explain', name]);
    const { meaning, source, remedy } = CHECKS[name];
    expect(status).toBe(0);
    for (const text of [name, meaning, source, remedy])
      expect(out.replace(/\s+/g, ' ')).toContain(text);
  });
});
