// The README's tour is what the program prints, its reference is made from the schemas, and its
// commands are those that there are.
import { mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { referenceText } from './schemas/reference.mjs';
import { writtenTypes } from './schemas/written-types.mjs';
import { runIn } from './support/cases.ts';

const top = join(import.meta.dirname, '..');
const readme = readFileSync(join(top, 'README.md'), 'utf8');
const isUpdating = process.env.UPDATE_README === '1' && !process.env.CI;

const outside = realpathSync(mkdtempSync(join(tmpdir(), 'carryover-tour-')));
afterAll(() => rmSync(outside, { recursive: true, force: true }));

interface Step {
  readonly whole: string;
  readonly edit?: { readonly file: string; readonly from: string; readonly to: string };
  readonly command?: string;
  readonly printed?: string;
}

/** The tour's steps: console blocks, and edits in comments. */
function steps(): readonly Step[] {
  const pattern =
    /<!-- edit (\S+): "(.+?)" becomes "(.+?)" -->|```console\n\$ carryover (.+)\n([\s\S]*?)```/g;
  return [...readme.matchAll(pattern)].map(([whole, file, from, to, command, printed]) =>
    file && from && to
      ? { whole, edit: { file, from, to } }
      : { whole, command: command ?? '', printed: printed ?? '' },
  );
}

describe('the README', () => {
  it('has a tour that is true', () => {
    const folder = join(outside, 'my-practice');
    let updated = readme;
    for (const step of steps()) {
      if (step.edit) {
        const path = join(folder, step.edit.file);
        const text = readFileSync(path, 'utf8');
        expect(text).toContain(step.edit.from);
        writeFileSync(path, text.replace(step.edit.from, step.edit.to));
        continue;
      }
      const command = step.command ?? '';
      const { out } = runIn(
        command.startsWith('init') ? outside : folder,
        command.split(' '),
        '2026-11-25',
      );
      if (isUpdating)
        updated = updated.replace(
          step.whole,
          () => `\`\`\`console\n$ carryover ${command}\n${out}\`\`\``,
        );
      else expect(out).toBe(step.printed);
    }
    expect(steps().length).toBeGreaterThan(5);
    if (isUpdating) writeFileSync(join(top, 'README.md'), updated);
  });

  it('shows a sentence of the sheet as it is', () => {
    const sheet = readFileSync(join(outside, 'my-practice', 'handouts', 'P-0001.md'), 'utf8');
    const shown = [...readme.matchAll(/^> \*\*(.+)\*\*$/gm)].map((match) => match[1] ?? '');
    expect(shown.length).toBe(2);
    for (const one of shown) expect(sheet.replaceAll('\\', '')).toContain(one);
  });

  it('has its reference from the schemas', () => {
    expect(readme).toContain(referenceText());
  });

  it('names every command', () => {
    const help = runIn(outside, ['--help']).out;
    const commands = [...help.matchAll(/^ {2}([a-z]+)(?: \[options\]| {2,})/gm)].map(
      (match) => match[1] ?? '',
    );
    expect(commands.length).toBeGreaterThan(5);
    for (const command of commands) expect(readme).toContain(`carryover ${command}`);
  });
});

describe('the types of the files', () => {
  it('are those of the schemas', async () => {
    expect(readFileSync(join(top, 'src', 'load', 'written.ts'), 'utf8')).toBe(await writtenTypes());
  });
});
