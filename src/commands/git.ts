// What git says of a practice folder. Without git, or outside a repository, it says nothing.
import { execFileSync } from 'node:child_process';
import { type Finding, finding } from '../finding/finding.ts';
import { fileOnly } from '../finding/place.ts';

/** people.yaml and handouts/ hold names; they are never under version control. */
export function trackedPrivateFiles(
  root: string,
  env: Readonly<Record<string, string | undefined>>,
): readonly Finding[] {
  const tracked = trackedFiles(root, env);
  const people = tracked.filter((path) => path === 'people.yaml');
  const handouts = tracked.filter((path) => path.startsWith('handouts/')).slice(0, 1);
  return [...people, ...handouts].map((path) => {
    const what = path === 'people.yaml' ? 'people.yaml' : 'handouts/';
    return finding({
      check: 'private-file-tracked',
      severity: 'error',
      place: fileOnly(path),
      message: `git tracks ${what}, so what it says of people would go wherever the folder goes; run "git rm -r --cached ${what}".`,
    });
  });
}

function trackedFiles(
  root: string,
  env: Readonly<Record<string, string | undefined>>,
): readonly string[] {
  // Variables such as GIT_DIR would point git at another repository.
  const own = Object.fromEntries(Object.entries(env).filter(([name]) => !name.startsWith('GIT_')));
  try {
    const listed = execFileSync('git', ['ls-files', '-z', '--', 'people.yaml', 'handouts'], {
      cwd: root,
      env: own,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
      maxBuffer: 64 * 1024 * 1024,
    });
    return listed.split('\0').filter((path) => path !== '');
  } catch {
    return [];
  }
}
