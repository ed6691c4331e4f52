// What git says of a practice folder. Without git, or outside a repository, it says nothing.
import { type Finding, finding } from '../finding/finding.ts';
import { fileOnly } from '../finding/place.ts';
import { openRepository } from '../load/git.ts';
import { GitTrouble } from '../load/run-git.ts';
import type { Outside } from './session.ts';

/** people.yaml and handouts/ hold names; they are never under version control. */
export function trackedPrivateFiles(root: string, env: Outside['env']): readonly Finding[] {
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

function trackedFiles(root: string, env: Outside['env']): readonly string[] {
  try {
    return openRepository(root, env).tracked(['people.yaml', 'handouts']);
  } catch (cause) {
    if (cause instanceof GitTrouble) return [];
    throw cause;
  }
}
