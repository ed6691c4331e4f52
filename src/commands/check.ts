// `carryover check`: reads, validates, says what it found.
import { type Finding, inOrder } from '../finding/finding.ts';
import { auditHandouts } from '../handouts/audit.ts';
import { pagesOf } from '../handouts/pages.ts';
import { readHandouts, readPage } from '../handouts/disk.ts';
import { fateOf } from '../handouts/changes.ts';
import { compileWork, countsOf, filesRead, findingsReport, isFailing, shownFindings, summaryLine, type Work } from './compiled.ts';
import { type CommandResult, namedFiles, openFolder, type Session } from './session.ts';

export interface CheckOptions {
  readonly handouts?: boolean;
}

export function check(session: Session, what: readonly string[], { handouts }: CheckOptions): CommandResult {
  const open = openFolder(session);
  const named = namedFiles(what, open, session);
  const work = compileWork(open, named, session);
  const setting = { compiled: work.compiled, isNamed: named !== null, isStrict: session.isStrict };
  const found: Finding[] = [...work.compiled.findings];
  if (handouts) {
    const { pages } = readHandouts(open.root);
    found.push(...auditHandouts({ pages, read: (path) => readPage(open.root, path) }, work, setting));
  } else found.push(...ownTemplateFindings(work, setting));
  const findings = inOrder(found);
  const counts = countsOf(findings, filesRead(work));
  const report = findingsReport(findings, session);
  const summary = session.isQuiet ? '' : `${summaryLine(counts)}\n`;
  const { errors, warnings, notes, accepted, files } = counts;
  return {
    status: isFailing(findings, session) ? 1 : 0,
    findings: shownFindings(findings, session),
    data: { files, plans: work.compiled.plans.map(({ id }) => id), errors, warnings, notes, accepted },
    out: report === '' ? summary : `${report}\n${summary}`,
    log: '',
  };
}

/** A template of the practice is tried on every plan; the shipped ones have tests. */
export function ownTemplateFindings(work: Work, setting: Parameters<typeof fateOf>[1]): readonly Finding[] {
  if (work.templates.own.size === 0) return [];
  for (const plan of work.compiled.plans) {
    if (fateOf(plan, setting).kind !== 'sheet') continue;
    const outcome = pagesOf(plan, work);
    // One mistake in a template shows on every plan; the first is enough.
    if (!outcome.ok) return [outcome.finding];
  }
  return [];
}
