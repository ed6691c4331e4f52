// `carryover init --git`: lets git show plans in words. Settings of this copy of the repository alone, in
// git's own files and marked as ours, so that "init --git off" takes away just what was added.
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, relative } from 'node:path';
import { openRepository } from '../load/git.ts';
import { GitTrouble } from '../load/run-git.ts';
import { type CommandResult, openFolder, type Session, UsageError } from './session.ts';
import { inShell } from './shell-words.ts';

export type OnOff = 'on' | 'off';

export function gitWords(session: Session, where: string | undefined, to: OnOff): CommandResult {
  const { outside } = session;
  const { root } = openFolder({ ...session, folderOption: where ?? session.folderOption });
  try {
    const repository = openRepository(root, outside.env);
    const { prefix } = repository;
    const driver = driverOf(prefix);
    const attributes = repository.ownFile('info/attributes');
    const line = `"${inPattern(prefix)}plans/**/*.yaml" diff=${driver}`;
    if (to === 'on') {
      if (outside.self === undefined)
        throw new UsageError('it is not known how this program was started');
      repository.set(
        `diff.${driver}.textconv`,
        `${outside.self} textconv --folder ${inShell(prefix === '' ? '.' : prefix)}`,
      );
      editLines(attributes, (lines) => [...lines.filter((one) => one !== line), line]);
    } else {
      repository.set(`diff.${driver}.textconv`, null);
      editLines(attributes, (lines) => lines.filter((one) => one !== line));
    }
  } catch (cause) {
    if (!(cause instanceof GitTrouble)) throw cause;
    throw new UsageError(`${cause.message}; "git init" starts a history here`);
  }
  const folder = relative(outside.cwd, root) || '.';
  return {
    status: 0,
    findings: [],
    data: { folder, written: [] },
    out:
      to === 'on'
        ? 'From now on "git diff" and "git log -p" show plans in words, in this copy of the repository. "carryover init --git off" takes it back.\n'
        : 'From now on "git diff" and "git log -p" show plans as the files have them.\n',
    log: '',
  };
}

/** One for each practice folder of a repository. */
function driverOf(prefix: string): string {
  const slug = prefix.replace(/[^A-Za-z0-9]+/g, '-').replace(/-$/, '');
  return slug === '' ? 'carryover' : `carryover-${slug}`;
}

function inPattern(path: string): string {
  return path.replace(/["\\*?[]/g, '\\$&');
}

function editLines(path: string, edit: (lines: readonly string[]) => readonly string[]): void {
  const text = existsSync(path) ? readFileSync(path, 'utf8') : '';
  const lines = edit(
    text.split('\n').filter((line, at, all) => line !== '' || at < all.length - 1),
  );
  if (lines.length === 0) {
    rmSync(path, { force: true });
    return;
  }
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, `${lines.join('\n')}\n`);
}
