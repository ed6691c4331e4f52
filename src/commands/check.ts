// `carryover check`: reads, validates, says what it found.

import { asSet } from '../check/plan-checks.ts';
import { type Finding, inOrder } from '../finding/finding.ts';
import { auditHandouts } from '../handouts/audit.ts';
import { type FateSetting, fateOf } from '../handouts/changes.ts';
import { readHandouts, readPage, readPdf } from '../handouts/disk.ts';
import { indexPage } from '../handouts/index-page.ts';
import { lostVersions } from '../handouts/last-time.ts';
import { pagesOf } from '../handouts/pages.ts';
import { changedSinceHandover } from '../handouts/since-handover.ts';
import { loadRegister } from '../load/register.ts';
import type { IndexedPlan, PlanWithoutSheet } from '../render/record/index-view.ts';
import {
  compileWork,
  countsOf,
  filesRead,
  findingsReport,
  isFailing,
  shownFindings,
  summaryLine,
  type Work,
} from './compiled.ts';
import { oldEditorIds } from './editor-ids.ts';
import { type CommandResult, namedFiles, openFolder, type Session } from './session.ts';

export interface CheckOptions {
  readonly handouts?: boolean;
}

export function check(
  session: Session,
  what: readonly string[],
  { handouts }: CheckOptions,
): CommandResult {
  const open = openFolder(session);
  const named = namedFiles(what, open, session);
  const work = compileWork(open, named, session);
  const setting = { compiled: work.compiled, isNamed: named !== null, isStrict: session.isStrict };
  const found: Finding[] = [...work.compiled.findings];
  if (handouts) {
    const { pages } = readHandouts(open.root);
    found.push(
      ...auditHandouts(
        {
          pages,
          read: (path) => readPage(open.root, path),
          readPdf: (path) => readPdf(open.root, path),
        },
        work,
        setting,
      ),
    );
  } else found.push(...ownTemplateFindings(work, setting, session));
  const register = loadRegister(open.folder);
  found.push(
    ...changedSinceHandover(register.rows, work, open.folder),
    ...asSet(lostVersions(work.compiled.plans, work.lastTimes), work.compiled.practice),
  );
  if (named === null) {
    const ofFolder = [...oldEditorIds(open.folder, work.compiled), ...register.findings];
    found.push(...asSet(ofFolder, work.compiled.practice));
  }
  const findings = inOrder(found);
  const counts = countsOf(findings, filesRead(work));
  const report = findingsReport(findings, session, 'out');
  const summary = session.isQuiet ? '' : `${summaryLine(counts)}\n`;
  const { errors, warnings, notes, accepted, files } = counts;
  return {
    status: isFailing(findings, session) ? 1 : 0,
    findings: shownFindings(findings, session),
    data: {
      files,
      plans: work.compiled.plans.map(({ id }) => id),
      errors,
      warnings,
      notes,
      accepted,
    },
    out: report === '' ? summary : `${report}\n${summary}`,
    log: '',
  };
}

/** A template of the practice is tried on every plan, and on the index; the shipped ones have tests. */
export function ownTemplateFindings(
  work: Work,
  setting: FateSetting,
  { today }: Session,
): readonly Finding[] {
  if (work.templates.own.size === 0 || !work.wording.has(work.compiled.practice.language))
    return [];
  const plans: IndexedPlan[] = [];
  const without: PlanWithoutSheet[] = [];
  for (const one of work.compiled.plans) {
    const fate = fateOf(one, setting);
    if (fate.kind === 'no-sheet')
      without.push({
        plan: one.id,
        title: one.plan?.title ?? null,
        why: fate.because[0]?.message ?? '',
      });
    if (fate.kind !== 'sheet' || !one.plan || !one.numbers) continue;
    const outcome = pagesOf(one, work);
    // One mistake in a template shows on every plan; the first is enough.
    if (!outcome.ok) return [outcome.finding];
    plans.push({
      plan: one.plan,
      numbers: one.numbers,
      findings: one.findings,
      sheetNumber: outcome.pages.sheetNumber,
    });
  }
  const index = indexPage({ plans, without, today }, work);
  return index.ok ? [] : [index.finding];
}
