// The program as it is installed, built from the present source in a place of its own, and run as a
// process of its own: for what hangs on time zone, locale and the like.
import { execFileSync, spawn } from 'node:child_process';
import { cpSync, mkdtempSync, realpathSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const ROOT = join(import.meta.dirname, '..', '..');

export interface Ended {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

export interface BuiltProgram {
  /** What node runs. */
  readonly path: string;
  /** Runs one command line; the environment is only what is given, and PATH. */
  readonly run: (
    args: readonly string[],
    cwd: string,
    env?: Readonly<Record<string, string>>,
  ) => Promise<Ended>;
  readonly remove: () => void;
}

export function builtProgram(): BuiltProgram {
  const root = realpathSync(mkdtempSync(join(tmpdir(), 'carryover-program-')));
  const compiler = join(ROOT, 'node_modules', 'typescript', 'bin', 'tsc');
  const settings = ['-p', join(ROOT, 'tsconfig.json'), '--outDir', join(root, 'dist')];
  execFileSync(process.execPath, [compiler, ...settings], { stdio: 'pipe' });
  for (const name of ['bin', 'schemas', 'templates', 'examples', 'package.json']) {
    cpSync(join(ROOT, name), join(root, name), { recursive: true });
  }
  symlinkSync(join(ROOT, 'node_modules'), join(root, 'node_modules'), 'junction');
  const program = join(root, 'bin', 'carryover.js');
  return {
    path: program,
    run: (args, cwd, env = {}) =>
      ended(
        spawn(process.execPath, [program, ...args], {
          cwd,
          env: { PATH: process.env.PATH, ...env },
        }),
      ),
    remove: () => rmSync(root, { recursive: true, force: true }),
  };
}

function ended(child: ReturnType<typeof spawn>): Promise<Ended> {
  const texts = { out: '', err: '' };
  child.stdout?.setEncoding('utf8').on('data', (text) => {
    texts.out += text;
  });
  child.stderr?.setEncoding('utf8').on('data', (text) => {
    texts.err += text;
  });
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (status) => resolve({ status, ...texts }));
  });
}
