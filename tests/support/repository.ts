// Real git in a throw-away folder, untouched by the settings of the machine.
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect } from 'vitest';

export function git(cwd: string, ...args: readonly string[]): string {
  const who = ['-c', 'user.name=Practice', '-c', 'user.email=practice@example.org'];
  const env = { PATH: process.env.PATH, GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_NOSYSTEM: '1' };
  return execFileSync('git', [...who, ...args], { cwd, env, stdio: 'pipe' }).toString();
}

export function commitAll(root: string, message = 'A day of work'): string {
  git(root, 'add', '-A');
  git(root, 'commit', '-q', '-m', message);
  return git(root, 'rev-parse', 'HEAD').trim();
}

/** Puts one text in place of another that must be there. */
export function edit(root: string, path: string, from: string | RegExp, to: string): void {
  const text = readFileSync(join(root, path), 'utf8');
  expect(text).toMatch(from);
  writeFileSync(join(root, path), text.replace(from, to));
}

export function write(root: string, path: string, text: string): void {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), text);
}
