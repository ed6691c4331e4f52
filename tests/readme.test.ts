// The README's tour is what the program prints, its reference is made from the schemas, and its
// commands are those that there are.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { referenceText } from './schemas/reference.mjs';
import { writtenTypes } from './schemas/written-types.mjs';
import { runIn } from './support/cases.ts';
import { makeClinic } from './visits/make-clinic.mjs';

const top = join(import.meta.dirname, '..');
const readme = readFileSync(join(top, 'README.md'), 'utf8');
const isUpdating = process.env.UPDATE_README === '1' && !process.env.CI;

const outside = realpathSync(mkdtempSync(join(tmpdir(), 'carryover-tour-')));
afterAll(() => rmSync(outside, { recursive: true, force: true }));

// It hangs on every file of the folder, so that the README shows some commit.
const COMMIT = '5d0c6f1e2b3a49788796a5b4c3d2e1f00f1e2d3c';

interface Step {
  readonly whole: string;
  readonly edit?: { readonly file: string; readonly from: string; readonly to: string };
  readonly command?: string;
  readonly printed?: string;
  /** Run in the repository of three visits, not in the tour's folder. */
  readonly isOfVisits?: boolean;
}

/** The tour's steps: console blocks; edits and commits in comments. */
function steps(): readonly Step[] {
  const pattern =
    /<!-- edit (\S+): "(.+?)" becomes "(.+?)" -->|<!-- commit everything -->|(<!-- three visits -->\n)?```console\n\$ carryover (.+)\n([\s\S]*?)```/g;
  return [...readme.matchAll(pattern)].map(([whole, file, from, to, visits, command, printed]) =>
    file && from && to
      ? { whole, edit: { file, from, to } }
      : { whole, command: command ?? '', printed: printed ?? '', isOfVisits: visits !== undefined },
  );
}

function commitAll(folder: string): void {
  const who = ['-c', 'user.name=Practice', '-c', 'user.email=practice@example.org'];
  for (const args of [
    ['init', '-q'],
    ['add', '-A'],
    [...who, 'commit', '-q', '-m', 'Start'],
  ])
    execFileSync('git', args, { cwd: folder, stdio: 'pipe' });
}

describe('the README', () => {
  it('has a tour that is true', () => {
    const folder = join(outside, 'my-practice');
    const visits = join(outside, 'three-visits');
    makeClinic(visits, (cwd: string, args: string[], today: string) => runIn(cwd, args, today));
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
      if (command === '') {
        commitAll(folder);
        continue;
      }
      const place = step.isOfVisits ? visits : command.startsWith('init') ? outside : folder;
      const out = runIn(place, command.split(' '), '2026-11-25')
        .out.replace(/\b[0-9a-f]{40}\b/g, COMMIT)
        .replace(/\b[0-9a-f]{7}(?=, \d{4}-)/g, COMMIT.slice(0, 7));
      if (isUpdating)
        updated = updated.replace(
          step.whole,
          () =>
            `${step.isOfVisits ? '<!-- three visits -->\n' : ''}\`\`\`console\n$ carryover ${command}\n${out}\`\`\``,
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
