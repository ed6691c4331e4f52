// One git command at a time, in a folder, with nothing of the machine's own variables.
import { execFileSync } from 'node:child_process';

export type Environment = Readonly<Record<string, string | undefined>>;

/** Git could not answer; the message says why in a sentence without its full stop. */
export class GitTrouble extends Error {}

const MEGABYTES = 1024 * 1024;

export type Run = (args: readonly string[], input?: string) => Buffer;

export function gitIn(root: string, env: Environment): Run {
  // Variables such as GIT_DIR would point git at another repository.
  const own = Object.fromEntries(Object.entries(env).filter(([name]) => !name.startsWith('GIT_')));
  return (args, input) => {
    try {
      return execFileSync('git', [...args], {
        cwd: root,
        // Asking must not write: without this, `status` refreshes the index.
        env: { ...own, LC_ALL: 'C', GIT_OPTIONAL_LOCKS: '0' },
        stdio: ['pipe', 'pipe', 'pipe'],
        maxBuffer: 1024 * MEGABYTES,
        ...(input === undefined ? {} : { input }),
      });
    } catch (cause) {
      throw new GitTrouble(whyOf(cause));
    }
  };
}

function whyOf(cause: unknown): string {
  const { code, stderr } = cause as { code?: string; stderr?: Buffer };
  if (code === 'ENOENT') return 'git is not installed here, or not on the PATH';
  const said = stderr?.toString().trim() ?? '';
  if (said.includes('not a git repository'))
    return 'this folder is under no version control by git';
  if (said.includes('dubious ownership'))
    return 'git takes this folder to belong to somebody else, and reads nothing there; its "safe.directory" setting allows it';
  return `git says: ${(said.split('\n')[0] ?? '').replace(/^fatal: /, '').replace(/\.$/, '')}`;
}

/** What is told with `-z`. */
export function entries(answer: Buffer): readonly string[] {
  return answer
    .toString()
    .split('\0')
    .filter((one) => one !== '');
}
