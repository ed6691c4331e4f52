// One plan in two versions of the folder: what changed, whether the sheet did, and what could not be
// compared.

import type { Finding } from '../finding/finding.ts';
import { positionOf } from '../finding/place.ts';
import type { JudgedChange } from '../render/changes/change.ts';
import { type PlanChanges, planChanges } from '../render/changes/plan-changes.ts';
import { renderSheetHtml, renderSheetMarkdown } from '../render/pages/pages.ts';
import type { Words } from '../render/words/words.ts';
import { type FolderVersion, planIn, type VersionedPlan } from './version.ts';

/** A version of the folder by the name that the practitioner knows it by. */
export interface TitledVersion {
  readonly title: string;
  readonly version: FolderVersion;
}

export interface PlanDiff {
  readonly id: string;
  readonly title: string;
  readonly from: string;
  readonly to: string;
  readonly presence: 'both' | 'new' | 'gone';
  readonly changes: PlanChanges;
  /** Whether a version gets a sheet. */
  readonly hasSheet: { readonly before: boolean; readonly after: boolean };
  /** Whether the sheet says, or shows, something else. */
  readonly differs: boolean;
  /** What kept the two from being compared as a whole. */
  readonly troubles: readonly Trouble[];
}

export interface Trouble {
  /** The version that it is in. */
  readonly version: string;
  readonly error: Finding;
}

export interface DiffedPlan {
  /** The plan's code in the earlier version; null where it is not there. */
  readonly before: string | null;
  readonly after: string | null;
  readonly renamed: ReadonlyMap<string, string>;
}

export function diffPlan(
  from: TitledVersion,
  to: TitledVersion,
  plan: DiffedPlan,
  words: Words,
): PlanDiff {
  const before = found(from.version, plan.before);
  const after = found(to.version, plan.after);
  const id = plan.after ?? plan.before ?? '';
  const troubles = [...troublesIn(from, plan.before, before), ...troublesIn(to, plan.after, after)];
  const title = after?.version.plan.title ?? before?.version.plan.title ?? id;
  const both = before && after;
  const compared = both
    ? planChanges(before.version, after.version, { words, renamed: plan.renamed })
    : { changes: [], effect: [], weeks: 0, firstWeek: 1 };
  const changes = {
    ...compared,
    changes: [...compared.changes, ...(after ? templateChanges(from, to, after) : [])],
  };
  const has = (one: VersionedPlan | null) => Boolean(one?.version.sheet);
  const hasSheet = { before: has(before), after: has(after) };
  return {
    id,
    title,
    from: from.title,
    to: to.title,
    presence: plan.before === null ? 'new' : plan.after === null ? 'gone' : 'both',
    changes,
    hasSheet,
    differs:
      hasSheet.before !== hasSheet.after || changes.changes.some(({ isOnSheet }) => isOnSheet),
    troubles,
  };
}

function found(version: FolderVersion, id: string | null): VersionedPlan | null {
  const one = version.compiled.plans.find((plan) => plan.id === id);
  return one ? planIn(version, one) : null;
}

function troublesIn(
  { title, version }: TitledVersion,
  id: string | null,
  there: VersionedPlan | null,
): readonly Trouble[] {
  const one = version.compiled.plans.find((plan) => plan.id === id);
  if (!one) return [];
  const errors = there ? there.errors : one.findings.filter(({ severity }) => severity === 'error');
  return errors.map((error) => ({ version: title, error }));
}

/** Where an error stands and what it says, in one line. */
export function troubleText({ error }: Trouble): string {
  const { line } = positionOf(error.place);
  return `${error.place.source.file}:${line}: ${error.message}`;
}

/** Templates of the practice's own that make another page of the same words. */
function templateChanges(
  from: TitledVersion,
  to: TitledVersion,
  { version: { sheet } }: VersionedPlan,
): readonly JudgedChange[] {
  const [before, after] = [from.version.templates, to.version.templates];
  const names = [...new Set([...before.own.keys(), ...after.own.keys()])].sort();
  const differing = names.filter((name) => before.texts.get(name) !== after.texts.get(name));
  if (differing.length === 0) return [];
  const page = (texts: ReadonlyMap<string, string>) => {
    if (!sheet) return '';
    const layout = { paper: 'a4', print: 'normal' } as const;
    const one = { view: sheet, shortDay: null, sheetLine: '', ...layout };
    return JSON.stringify([renderSheetHtml(one, texts), renderSheetMarkdown(one, texts)]);
  };
  const isOnSheet = page(before.texts) !== page(after.texts);
  return differing.map((name) => ({
    subject: { kind: 'practice', before: { id: name, name }, after: { id: name, name } },
    aspect: 'template',
    side: null,
    steps: [
      {
        weeks: null,
        before: before.own.has(name) ? [`templates/${name}`] : [],
        after: after.own.has(name) ? [`templates/${name}`] : [],
      },
    ],
    shows: [],
    isOnSheet,
  }));
}
