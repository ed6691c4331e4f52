// A practice folder in one version, compiled with its own library, settings, words and templates, so that
// two versions can be compared. What differs is told elsewhere.
import { type Compiled, type CompiledPlan, compile, errorsOf, type Named } from '../build.ts';
import type { Finding } from '../finding/finding.ts';
import type { Folder } from '../load/folder.ts';
import { loadTemplates, type TemplateFiles } from '../load/templates.ts';
import type { PlanVersion } from '../render/changes/plan-changes.ts';
import { sheetView } from '../render/sheet/worded-sheet.ts';
import { loadWording, type Wording } from './wording.ts';

export interface FolderVersion {
  readonly compiled: Compiled;
  readonly templates: TemplateFiles;
  readonly wording: Wording;
  /** Of templates and words packs. */
  readonly findings: readonly Finding[];
}

/** Compiles the named plans of a version. Throws FolderUnusable where it is no practice folder. */
export function openVersion(folder: Folder, plans: readonly string[]): FolderVersion {
  const named: Named = { plans, exercises: [] };
  const compiled = compile(folder, named);
  const templates = loadTemplates(folder);
  const wording = loadWording(folder, compiled);
  return {
    compiled,
    templates: templates.value,
    wording: wording.value,
    findings: [...templates.findings, ...wording.findings],
  };
}

/** An old version has no names and languages of its people: they are never under version control. */
export function withPeopleOf(folder: Folder, own: Folder): Folder {
  const PEOPLE = 'people.yaml';
  return {
    list: folder.list,
    entry: (path) => (path === PEOPLE ? own.entry(path) : folder.entry(path)),
    read: (path) => (path === PEOPLE ? own.read(path) : folder.read(path)),
  };
}

export interface VersionedPlan {
  readonly version: PlanVersion;
  /** What keeps it from being read as a whole. */
  readonly errors: readonly Finding[];
}

/** A plan of a version, as far as it can be read; null where nothing can be told of it. */
export function planIn(version: FolderVersion, one: CompiledPlan): VersionedPlan | null {
  const { compiled, wording } = version;
  const errors = errorsOf(one, [...compiled.findings, ...version.findings]);
  const { plan } = one;
  if (!plan) return null;
  const isSound = errors.length === 0;
  const numbers = isSound ? one.numbers : null;
  const words = wording.get(one.language);
  const person = compiled.people.get(plan.person) ?? null;
  const { practice } = compiled;
  const sheet = numbers && words ? sheetView({ practice, plan, numbers, person, words }) : null;
  return {
    version: { practice, plan, numbers, sheet },
    errors,
  };
}
