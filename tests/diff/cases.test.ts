// What is told of an edit, case by case: a file below cases/ has the plan, the edits as text for text, and
// either all the changes (`changes`) or some that must be among them (`contains`).
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { parse } from 'yaml';
import { shippedWords } from '../../src/handouts/wording.ts';
import { changesView } from '../../src/render/changes/changes-view.ts';
import { diffOf, exampleFiles, type Files } from './versions.ts';

interface Case {
  readonly plan: string;
  readonly edits: readonly { file: string; from: string; to: string }[];
  /** How many of the edits are made to the earlier version too. */
  readonly before_too?: number;
  readonly changes?: readonly string[];
  readonly contains?: readonly string[];
  readonly sheet: 'differs' | 'same';
}

const folder = join(import.meta.dirname, 'cases');
const files = exampleFiles();

it.each(readdirSync(folder))('%s', (name) => {
  const one = parse(readFileSync(join(folder, name), 'utf8')) as Case;
  const before = withEdits(files, one.edits.slice(0, one.before_too ?? 0));
  const diff = diffOf(before, withEdits(files, one.edits), one.plan);
  expect(diff.troubles).toEqual([]);
  const { groups } = changesView(
    {
      plan: diff,
      from: '',
      to: '',
      changes: diff.changes,
      hasSheet: diff.hasSheet,
      troubles: [],
      presence: 'both',
    },
    shippedWords(),
  );
  const lines = groups.flatMap(({ heading, lines: all }) =>
    all.map(
      ({ text, details, remark }) =>
        [`${heading} | ${text}`, ...details].join(' ') + (remark === null ? '' : ` (${remark})`),
    ),
  );
  if (one.changes) expect(lines).toEqual(one.changes);
  for (const part of one.contains ?? []) expect(lines.join('\n')).toContain(part);
  expect(diff.differs).toBe(one.sheet === 'differs');
});

function withEdits(all: Files, edits: Case['edits']): Files {
  const made: Record<string, string | Uint8Array> = { ...all };
  for (const { file, from, to } of edits) {
    const text = made[file] as string;
    expect(text.split(from).length, `"${from}" stands once in ${file}`).toBe(2);
    made[file] = text.replace(from, () => to);
  }
  return made;
}
