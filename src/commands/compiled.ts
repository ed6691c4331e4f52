// What check, build, show and list share: a compiled folder with templates and words, and whether
// its findings let a command pass.
import { type Compiled, compile, FolderUnusable, type Named } from '../build.ts';
import { type Finding, inOrder } from '../finding/finding.ts';
import { type LastTimes, lastTimes } from '../handouts/last-time.ts';
import { withSheetReading } from '../handouts/sheet-reading.ts';
import { planIn } from '../handouts/version.ts';
import { loadWording, type Wording } from '../handouts/wording.ts';
import { openRepository } from '../load/git.ts';
import { loadTemplates, type TemplateFiles } from '../load/templates.ts';
import { findingsText, summaryText } from '../render/terminal/findings-text.ts';
import { trackedPrivateFiles } from './git.ts';
import { type OpenFolder, type Session, UsageError } from './session.ts';

export interface Work {
  readonly compiled: Compiled;
  readonly templates: TemplateFiles;
  readonly wording: Wording;
  readonly lastTimes: LastTimes;
}

/** Compiles what is named, or everything; a folder that cannot be used is a usage error. */
export function compileWork(
  { root, folder }: OpenFolder,
  named: Named | null,
  session: Session,
): Work {
  try {
    const read = compile(folder, named, (done, of, plan) =>
      session.progress.at(done, of, `reading ${plan}`),
    );
    session.progress.end();
    const templates = loadTemplates(folder);
    const wording = loadWording(folder, read);
    const compiled = withSheetReading(read, wording.value, named !== null);
    const tracked = trackedPrivateFiles(root, session.outside.env);
    const findings = inOrder([
      ...compiled.findings,
      ...templates.findings,
      ...wording.findings,
      ...tracked,
    ]);
    const version = {
      compiled,
      templates: templates.value,
      wording: wording.value,
      findings: [...templates.findings, ...wording.findings],
    };
    return {
      compiled: { ...compiled, findings },
      templates: templates.value,
      wording: wording.value,
      lastTimes: lastTimes(
        folder,
        () => openRepository(root, session.outside.env),
        (one) => planIn(version, one)?.version.sheet ?? null,
      ),
    };
  } catch (cause) {
    if (cause instanceof FolderUnusable) throw new UsageError(cause.message);
    if (
      cause instanceof Error &&
      'code' in cause &&
      (cause.code === 'EACCES' || cause.code === 'EPERM')
    ) {
      throw new UsageError(
        `this folder cannot be read: no permission for ${'path' in cause ? cause.path : root}`,
      );
    }
    throw cause;
  }
}

/** Whether findings make a command fail: errors, and with --strict warnings that are not accepted. */
export function isFailing(findings: readonly Finding[], { isStrict }: Session): boolean {
  return findings.some(
    ({ severity, accepted }) =>
      severity === 'error' || (isStrict && severity === 'warning' && !accepted),
  );
}

/** The findings that are shown: accepted ones are settled, and --quiet leaves only errors. */
export function shownFindings(
  findings: readonly Finding[],
  { isQuiet }: Session,
): readonly Finding[] {
  return findings.filter(
    ({ severity, accepted }) => !accepted && (!isQuiet || severity === 'error'),
  );
}

/** The findings as text for one of the two streams. */
export function findingsReport(
  findings: readonly Finding[],
  session: Session,
  to: 'out' | 'err',
): string {
  const shown = shownFindings(findings, session);
  return shown.length === 0 ? '' : `${findingsText(shown, screenOf(session, to))}\n`;
}

export interface Counts {
  readonly files: number;
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
  readonly accepted: number;
}

export function countsOf(findings: readonly Finding[], files: number): Counts {
  const open = findings.filter(({ accepted }) => !accepted);
  const count = (severity: Finding['severity']) =>
    open.filter((one) => one.severity === severity).length;
  return {
    files,
    errors: count('error'),
    warnings: count('warning'),
    notes: count('note'),
    accepted: findings.length - open.length,
  };
}

export function summaryLine(counts: Counts): string {
  return summaryText(counts);
}

/** Files that were read: settings, exercises with their translations, plans. */
export function filesRead({ compiled }: Work): number {
  const loaded = compiled.library.loaded();
  const translations = loaded.reduce((sum, one) => sum + one.translations.size, 0);
  return 1 + loaded.length + translations + compiled.plans.length;
}

function screenOf({ outside, width, paintTo }: Session, to: 'out' | 'err') {
  return { paint: paintTo(to), width, isTerminal: outside[to].isTerminal };
}
