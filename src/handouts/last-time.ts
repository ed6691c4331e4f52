// The version of a plan that the sheet in the person's hands was made from: that of the last handover of
// another sheet than the present one. Known by the register and git alone, so a sheet hangs on files and never on a clock.
import { type CompiledPlan, FolderUnusable } from '../build.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { Folder } from '../load/folder.ts';
import type { Repository } from '../load/git.ts';
import { loadRegister, type RegisterRow } from '../load/register.ts';
import { GitTrouble } from '../load/run-git.ts';
import { differingSections } from '../render/changes/sheet-sections.ts';
import type { LastTime } from '../render/sheet/news-input.ts';
import type { SheetView } from '../render/sheet/sheet-view.ts';
import { openVersion, planIn, withPeopleOf } from './version.ts';

export interface LastTimes {
  /** Null where nothing else was handed over before, or a version cannot be read any more. */
  readonly of: (one: CompiledPlan) => LastTime | null;
  /** The handover whose version cannot be read, so that nothing is said of what is new. */
  readonly lost: (one: CompiledPlan) => Lost | null;
}

export interface Lost {
  readonly row: RegisterRow;
  /** Whether there is a history here at all, so that it only lacks this version. */
  readonly hasGit: boolean;
}

export const NO_LAST_TIMES: LastTimes = { of: () => null, lost: () => null };

/** `sheetOf` is a plan's sheet as it is now; the repository is opened only for a plan with a row. */
export function lastTimes(
  folder: Folder,
  repository: () => Repository,
  sheetOf: (one: CompiledPlan) => SheetView | null,
): LastTimes {
  const byPlan = new Map<string, RegisterRow[]>();
  for (const row of loadRegister(folder).rows)
    byPlan.set(row.plan, [row, ...(byPlan.get(row.plan) ?? [])]);
  for (const rows of byPlan.values())
    rows.sort((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0));
  const known = new Map<string, Found>();
  const found = (one: CompiledPlan): Found => {
    const sheet = byPlan.has(one.id) ? sheetOf(one) : null;
    if (!sheet) return NOTHING;
    for (const row of byPlan.get(one.id) ?? []) {
      const version = versionAt(row.commit, one.id, folder, repository);
      // An older version would mislead: it is not what the person has.
      if (version === null) return { last: null, lost: { row, hasGit: hasGit(repository) } };
      // The very sheet was handed over already: it stays as it was then.
      if (differingSections(version.sheet, sheet).length === 0) continue;
      // Words of two languages cannot be held against one another.
      if (version.sheet.language !== sheet.language) return NOTHING;
      return { last: { ...version, date: row.date }, lost: null };
    }
    return NOTHING;
  };
  const of = (one: CompiledPlan): Found => {
    const there = known.get(one.id) ?? found(one);
    known.set(one.id, there);
    return there;
  };
  return { of: (one) => of(one).last, lost: (one) => of(one).lost };
}

interface Found {
  readonly last: LastTime | null;
  readonly lost: Lost | null;
}

const NOTHING: Found = { last: null, lost: null };

function hasGit(repository: () => Repository): boolean {
  try {
    repository();
    return true;
  } catch (cause) {
    if (cause instanceof GitTrouble) return false;
    throw cause;
  }
}

/** A warning for each plan whose sheet lacks what is new, for a version that this copy does not have. */
export function lostVersions(
  plans: readonly CompiledPlan[],
  { lost }: LastTimes,
): readonly Finding[] {
  return plans.flatMap((one) => {
    const found = one.plan?.closed ? null : lost(one);
    if (!found?.hasGit) return [];
    const { row } = found;
    return [
      finding({
        check: 'handover-damaged',
        severity: 'warning',
        place: row.place,
        message: `The version of this handover is not in this copy of the history or cannot be read, so the sheet of plan ${one.id} cannot say what is new since ${row.date}.`,
        hints: ['"git fetch --unshallow" brings the whole history, where it was left behind.'],
      }),
    ];
  });
}

type Version = Pick<LastTime, 'practice' | 'numbers'> & { readonly sheet: SheetView };

function versionAt(
  commit: string,
  id: string,
  folder: Folder,
  repository: () => Repository,
): Version | null {
  try {
    const old = withPeopleOf(repository().folderAt(commit, 'one-by-one'), folder);
    const version = openVersion(old, [id]);
    const one = version.compiled.plans.find((plan) => plan.id === id);
    const { numbers, sheet, practice } = (one && planIn(version, one)?.version) ?? {};
    return numbers && sheet && practice ? { practice, numbers, sheet } : null;
  } catch (cause) {
    if (cause instanceof GitTrouble || cause instanceof FolderUnusable) return null;
    throw cause;
  }
}
