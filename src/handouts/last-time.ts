// The version of a plan that the person's last sheet was made from: that of the last handover before the
// present visit. Known by the register and git alone, so a sheet hangs on files and never on a clock.
import { type CompiledPlan, FolderUnusable } from '../build.ts';
import type { Folder } from '../load/folder.ts';
import { GitTrouble, type Repository } from '../load/git.ts';
import { loadRegister, type RegisterRow } from '../load/register.ts';
import type { LastTime } from '../render/sheet/news-view.ts';
import { openVersion, planIn, withPeopleOf } from './version.ts';

/** Null where nothing was handed over before, or the version cannot be read any more. */
export type LastTimeOf = (one: CompiledPlan) => LastTime | null;

export const NO_LAST_TIME: LastTimeOf = () => null;

/** Asks the register and the repository; opens the repository only for a plan with a row. */
export function lastTimes(folder: Folder, repository: () => Repository): LastTimeOf {
  const byPlan = new Map<string, RegisterRow[]>();
  for (const row of loadRegister(folder).rows)
    byPlan.set(row.plan, [row, ...(byPlan.get(row.plan) ?? [])]);
  for (const rows of byPlan.values())
    rows.sort((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0));
  const known = new Map<string, LastTime | null>();
  return ({ id, plan }) => {
    const visit = plan?.visits.at(-1)?.date;
    const rows = byPlan.get(id) ?? [];
    if (!plan || visit === undefined || rows.length === 0) return null;
    for (const { commit } of rows) {
      const key = `${commit} ${id}`;
      if (!known.has(key)) known.set(key, versionAt(commit, id, folder, repository));
      const version = known.get(key) ?? null;
      // A version that cannot be read says nothing of what the person has: an older one would mislead.
      if (version === null) return null;
      // Handed over at this visit already: the sheet stays as it was then.
      if ((version.numbers.plan.visits.at(-1)?.date ?? '') < visit) return version;
    }
    return null;
  };
}

function versionAt(
  commit: string,
  id: string,
  folder: Folder,
  repository: () => Repository,
): LastTime | null {
  try {
    const old = withPeopleOf(repository().folderAt(commit, 'one-by-one'), folder);
    const version = openVersion(old, [id]);
    const one = version.compiled.plans.find((plan) => plan.id === id);
    const found = one ? planIn(version, one) : null;
    return found?.version.numbers
      ? { practice: found.version.practice, numbers: found.version.numbers }
      : null;
  } catch (cause) {
    if (cause instanceof GitTrouble || cause instanceof FolderUnusable) return null;
    throw cause;
  }
}
