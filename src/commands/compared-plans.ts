// Which plans `carryover diff` compares, each in which two versions: of the last commit and the files as
// they are, of named versions, or of the last handover.
import { existsSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { PRACTICE_FILE, plansOf } from '../build.ts';
import type { DiffedPlan } from '../handouts/plan-diff.ts';
import { withPeopleOf } from '../handouts/version.ts';
import { nearest } from '../load/did-you-mean.ts';
import { diskFolder, type Folder } from '../load/folder.ts';
import { openRepository, type Repository } from '../load/git.ts';
import { loadRegister, type RegisterRow } from '../load/register.ts';
import { GitTrouble } from '../load/run-git.ts';
import { type OpenFolder, pathIn, type Session, UsageError } from './session.ts';

export interface DiffOptions {
  readonly from?: string;
  readonly to?: string;
  readonly lastHandover?: boolean;
  readonly all?: boolean;
  readonly exitCode?: boolean;
}

/** A version before it is compiled: its files, and how to know one of them again without reading it. */
export interface Source {
  readonly key: string;
  readonly title: string;
  readonly folder: Folder;
  readonly commit: string | null;
  /** Equal for equal bytes. */
  readonly fingerprint: (path: string) => string;
}

interface Sources {
  readonly open: OpenFolder;
  readonly repository: () => Repository;
  readonly source: (rev: string | undefined) => Source;
}

export function sourcesOf(
  open: OpenFolder,
  session: Session,
  { all, lastHandover }: DiffOptions,
): Sources {
  let known: Repository | null = null;
  const repository = () => {
    known ??= openRepository(open.root, session.outside.env);
    return known;
  };
  const plans = all || lastHandover ? 'at-once' : 'one-by-one';
  const bySource = new Map<string, Source>();
  const onDisk = (root: string, title: string): Source => {
    const folder = diskFolder(root);
    return {
      key: root,
      title,
      folder,
      commit: null,
      fingerprint: (path) => fingerprint(folder, path, repository),
    };
  };
  const source = (rev: string | undefined): Source => {
    if (rev === undefined) return onDisk(open.root, '');
    const root = resolve(session.outside.cwd, rev);
    if (existsSync(join(root, PRACTICE_FILE)) && statSync(root).isDirectory())
      return onDisk(root, rev);
    const commit = repository().commit(rev);
    const objects = repository().objectsAt(commit);
    if (!objects.has(PRACTICE_FILE))
      throw new UsageError(
        `in version ${repository().title(commit)} this folder has no ${PRACTICE_FILE}, so there is nothing to compare with`,
      );
    return {
      key: commit,
      title: repository().title(commit),
      folder: withPeopleOf(repository().folderAt(commit, plans), open.folder),
      commit,
      fingerprint: (path) => objects.get(path) ?? '',
    };
  };
  return {
    open,
    repository,
    source: (rev) => {
      const one = bySource.get(rev ?? '') ?? source(rev);
      bySource.set(rev ?? '', one);
      return one;
    },
  };
}

function fingerprint(folder: Folder, path: string, repository: () => Repository): string {
  if (!folder.entry(path)) return '';
  const bytes = folder.read(path);
  try {
    return repository().objectName(bytes);
  } catch (cause) {
    // Two folders are compared without any git.
    if (cause instanceof GitTrouble) return Buffer.from(bytes).toString('latin1');
    throw cause;
  }
}

export interface ComparedPlan extends DiffedPlan {
  readonly from: Source;
  readonly to: Source;
  /** The handover that the earlier version was of; left out where it was named otherwise. */
  readonly handover?: RegisterRow;
}

/** Which plans are compared, each with the version that it is held against. */
export function comparedPlans(
  sources: Sources,
  to: Source,
  words: readonly string[],
  options: DiffOptions,
  session: Session,
): readonly ComparedPlan[] {
  const pairIn = (
    from: Source,
  ): ((before: string | null, after: string | null) => ComparedPlan) => {
    const renamed = renamedIds(sources, from, to);
    return (before, after) => ({ before, after, from, to, renamed: renamed.exercises });
  };
  if (options.lastHandover) return sinceHandovers(sources, to, words, pairIn, session);
  const from = sources.source(options.from ?? 'HEAD');
  const { plans: renamed } = renamedIds(sources, from, to);
  const [old, now] = [plansOf(from.folder).byId, plansOf(to.folder).byId];
  const codeBefore = (code: string) => {
    const [was = code] = [...renamed].find(([, is]) => is === code) ?? [];
    return old.has(was) ? was : null;
  };
  const gone = [...old.keys()].filter((code) => !now.has(code) && !renamed.has(code));
  const pair = pairIn(from);
  const all = [
    ...[...now.keys()].map((code) => pair(codeBefore(code), code)),
    ...gone.map((code) => pair(code, null)),
  ];
  if (words.length > 0)
    return words.map((word) => {
      const code = codeOf(word, [...now.keys(), ...gone], sources, to, session);
      return all.find(({ before, after }) => (after ?? before) === code) as ComparedPlan;
    });
  if (options.all) return all.filter(reachedBy(from, to));
  return all.filter(({ before, after }) => {
    const [then, is] = [before && old.get(before), after && now.get(after)];
    return !then || !is || from.fingerprint(then) !== to.fingerprint(is);
  });
}

/** Whether a change of files can reach a plan: of its own, of the settings, or of an exercise that it names. */
function reachedBy(from: Source, to: Source): (plan: ComparedPlan) => boolean {
  const paths = (under: string) => [
    ...new Set([from, to].flatMap(({ folder }) => folder.list(under).map(({ path }) => path))),
  ];
  const isChanged = (path: string) => from.fingerprint(path) !== to.fingerprint(path);
  const pictures = paths('pictures').filter(isChanged);
  const textOf = ({ folder }: Source, path: string) =>
    folder.entry(path)?.kind === 'file' ? Buffer.from(folder.read(path)).toString('utf8') : '';
  const exercises = paths('exercises').filter(
    (path) =>
      isChanged(path) ||
      [from, to].some((one) => pictures.some((picture) => textOf(one, path).includes(picture))),
  );
  if ([PRACTICE_FILE, ...paths('templates')].some(isChanged)) return () => true;
  const ids = exercises.map(idOfPath);
  const files = new Map([from, to].map((one) => [one, plansOf(one.folder).byId] as const));
  return ({ before, after }) => {
    const old = before === null ? undefined : files.get(from)?.get(before);
    const now = after === null ? undefined : files.get(to)?.get(after);
    if (old === undefined || now === undefined) return true;
    if (from.fingerprint(old) !== to.fingerprint(now)) return true;
    const text = ids.length === 0 ? '' : textOf(to, now);
    return ids.some((id) => text.includes(id));
  };
}

/** The id that a file's name gives. */
function idOfPath(path: string): string {
  return path.slice(path.lastIndexOf('/') + 1).replace(/\.ya?ml$/, '');
}

/** Plans that were handed over, each against the commit of its last handover. */
function sinceHandovers(
  sources: Sources,
  to: Source,
  words: readonly string[],
  pairIn: (from: Source) => (before: string | null, after: string | null) => ComparedPlan,
  session: Session,
): readonly ComparedPlan[] {
  const now = plansOf(to.folder).byId;
  const last = new Map<string, RegisterRow>();
  const rows = loadRegister(sources.open.folder).rows;
  for (const row of [...rows].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0)))
    last.set(row.plan, row);
  const codes =
    words.length > 0
      ? words.map((word) => codeOf(word, [...now.keys()], sources, to, session))
      : [...now.keys()].filter((code) => last.has(code));
  return codes.map((code) => {
    const handover = last.get(code);
    if (handover === undefined)
      throw new UsageError(
        `plan ${code} has not been handed over yet; "carryover handover ${code}" does it`,
      );
    const from = sources.source(handover.commit);
    const before = plansOf(from.folder).byId.has(code) ? code : null;
    return { ...pairIn(from)(before, code), handover };
  });
}

function codeOf(
  word: string,
  codes: readonly string[],
  { open }: Sources,
  to: Source,
  session: Session,
): string {
  if (codes.includes(word)) return word;
  const path = pathIn(word, open, session);
  const byPath = [...plansOf(to.folder).byId].find(([, file]) => file === path);
  if (byPath) return byPath[0];
  const near = nearest(word, codes);
  throw new UsageError(
    `there is no plan "${word}" in either version${near === undefined ? '' : `; did you mean "${near}"?`}`,
  );
}

/** Ids by file name, for what git takes for a renamed file: old id to new. */
function renamedIds({ repository }: Sources, from: Source, to: Source) {
  const exercises = new Map<string, string>();
  const plans = new Map<string, string>();
  if (from.commit === null || (to.commit === null && to.title !== '')) return { exercises, plans };
  for (const [old, now] of repository().renames(from.commit, to.commit)) {
    if (idOfPath(old) === idOfPath(now)) continue;
    if (old.startsWith('exercises/') && now.startsWith('exercises/'))
      exercises.set(idOfPath(old), idOfPath(now));
    if (old.startsWith('plans/') && now.startsWith('plans/'))
      plans.set(idOfPath(old), idOfPath(now));
  }
  return { exercises, plans };
}
