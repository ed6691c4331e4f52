// The program in a real terminal, where reading the keyboard does not wait by itself.
import { spawn } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { type BuiltProgram, builtProgram } from './support/built-program.ts';
import { freshFolder } from './support/cases.ts';

vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

/** Makes a terminal for a command; part of every Linux, and other systems have one of another kind. */
const SCRIPT = '/usr/bin/script';

describe.skipIf(process.platform !== 'linux' || !existsSync(SCRIPT))('in a terminal', () => {
  let program: BuiltProgram;
  let root = '';
  beforeAll(() => {
    program = builtProgram();
    root = freshFolder();
  });
  afterAll(() => {
    program.remove();
    rmSync(root, { recursive: true, force: true });
  });

  it('"new" waits for each answer, and asks again where one does not fit', async () => {
    const answers = ['Neck', 'rk', '25.11.2026', '2026-11-25', '', '', 'four', '4', 'left', 'Turn'];
    const { status, out } = await answered(['new', 'plan', 'N-1'], answers);
    expect(status, out).toBe(0);
    expect(out).toContain('write 2026-11-25');
    expect(out).not.toContain('EAGAIN');
    const text = readFileSync(join(root, 'plans', 'N-1.yaml'), 'utf8');
    expect(text).toMatch(/title: Neck\nby: rk\nvisits:\n {2}- date: 2026-11-25\n/);
    expect(text).toMatch(/weeks: 4\naffected: left/);
  });

  /** Types an answer a while after each question, as a person does: until then there is nothing to read. */
  function answered(args: readonly string[], answers: readonly string[]) {
    return new Promise<{ status: number | null; out: string }>((resolve, reject) => {
      const command = [process.execPath, program.path, ...args].join(' ');
      const child = spawn(SCRIPT, ['-qec', command, '/dev/null'], { cwd: root });
      let out = '';
      let next = 0;
      child.stdout.setEncoding('utf8').on('data', (text: string) => {
        out += text;
        const answer = answers[next];
        if (!out.endsWith(': ') || answer === undefined) return;
        next += 1;
        setTimeout(() => child.stdin.write(`${answer}\n`), 100);
      });
      child.on('error', reject);
      child.on('close', (status) => resolve({ status, out }));
    });
  }
});
