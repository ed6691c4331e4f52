// The closed list of checks, held from both sides: each is provoked by a case, each that a case prints is
// in the list, and each has a page that says what it means, where it comes from and how to settle it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CHECK_NAMES, CHECKS, FOLDER_CHECKS, SETTLED_CHECKS } from '../src/finding/checks.ts';
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

/** Provoked by a repository; tests/handover.test.ts has each by name. */
const GIT_ONLY: readonly string[] = ['handover-uncommitted'];

/** Provoked by a browser; tests/pdf.test.ts has each by name. */
const BROWSER_ONLY: readonly string[] = ['pdf-not-made'];

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
    const elsewhere = [...HOSTILE_ONLY, ...GIT_ONLY, ...BROWSER_ONLY];
    const silent = CHECK_NAMES.filter((name) => !printed.has(name) && !elsewhere.includes(name));
    expect(silent).toEqual([]);
  });

  it('has each that no case can provoke in the test that does, and no case prints it', () => {
    const hostile = readFileSync(join(import.meta.dirname, 'hostile.test.ts'), 'utf8');
    expect(HOSTILE_ONLY.filter((name) => !hostile.includes(`'${name}'`))).toEqual([]);
    const withGit = readFileSync(join(import.meta.dirname, 'handover.test.ts'), 'utf8');
    expect(GIT_ONLY.filter((name) => !withGit.includes(`'${name}'`))).toEqual([]);
    const withPdf = readFileSync(join(import.meta.dirname, 'pdf.test.ts'), 'utf8');
    expect(BROWSER_ONLY.filter((name) => !withPdf.includes(name))).toEqual([]);
    expect(
      [...HOSTILE_ONLY, ...GIT_ONLY, ...BROWSER_ONLY].filter((name) => printed.has(name)),
    ).toEqual([]);
  });

  it('has each that a case prints', () => {
    expect([...printed.keys()].filter((name) => !Object.hasOwn(CHECKS, name))).toEqual([]);
  });

  it('has a case for each that a practitioner can settle, and one where it is accepted', () => {
    const settled = SETTLED_CHECKS.filter((name) => !FOLDER_CHECKS.has(name));
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

describe('carryover explain', () => {
  it('lists every check once with what it means, errors before warnings before notes', () => {
    const root = freshFolder();
    const { status, out } = runIn(root, ['explain']);
    expect(status).toBe(0);
    const groups = ['Errors: ', 'Warnings: ', 'Notes: '].map((heading) => out.indexOf(heading));
    expect(groups).toEqual([...groups].sort((a, b) => a - b));
    expect(groups[0]).toBe(0);
    const listed = [...out.matchAll(/^([a-z0-9-]+)\n {4}\S/gm)].map(([, name]) => name);
    expect(listed.toSorted()).toEqual([...CHECK_NAMES].sort());
  });

  it('says of a check of the folder how to turn it off, and of others how to accept them', () => {
    const root = freshFolder();
    expect(runIn(root, ['explain', 'limb-unlikely']).out).toContain('checks: {limb-unlikely: off}');
    expect(runIn(root, ['explain', 'limb-unlikely']).out).not.toContain('accept:');
    expect(runIn(root, ['explain', 'side-word']).out).toContain('accept: [{check: side-word,');
    expect(runIn(root, ['explain', 'gate-above-stop']).out).not.toContain('accept:');
  });
});
