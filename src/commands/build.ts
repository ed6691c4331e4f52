// `carryover build`: check, compute, render; writes the handouts and moves outdated ones away.
import { relative } from 'node:path';
import { belongsToAll, type CompiledPlan } from '../build.ts';
import { asSet } from '../check/plan-checks.ts';
import { type Finding, inOrder } from '../finding/finding.ts';
import { type Browser, foundBrowser } from '../handouts/browser.ts';
import { type FateSetting, fateOf, pagesToMove } from '../handouts/changes.ts';
import {
  isThere,
  moveToOutdated,
  readHandouts,
  readPdf,
  removeUnfinished,
  whyUnusable,
  whyUnwritten,
  writePage,
} from '../handouts/disk.ts';
import { indexPage } from '../handouts/index-page.ts';
import { lostVersions } from '../handouts/last-time.ts';
import { HANDOUTS, INDEX_FILE, type Pages, pagesOf } from '../handouts/pages.ts';
import { makePdf, pdfFault, pdfPath } from '../handouts/pdf.ts';
import type { IndexedPlan, PlanWithoutSheet } from '../render/record/index-view.ts';
import { ownTemplateFindings } from './check.ts';
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
import {
  type CommandResult,
  namedPlans,
  type OpenFolder,
  openFolder,
  type Session,
  UsageError,
} from './session.ts';

export interface Built {
  readonly written: string[];
  readonly moved: { from: string; to: string }[];
  readonly sheets: { plan: string; sheet: string; files: string[] }[];
  readonly indexed: IndexedPlan[];
  readonly without: PlanWithoutSheet[];
  /** What kept the browser from making a PDF. */
  readonly unprinted: Finding[];
}

export interface BuildOptions {
  readonly pdf?: boolean;
}

/** What was compiled, and whether anything may be written from it. */
export interface Judged {
  readonly work: Work;
  readonly setting: FateSetting;
  readonly findings: readonly Finding[];
  /** An error that belongs to all plans. */
  readonly isStopped: boolean;
}

export function build(
  session: Session,
  what: readonly string[],
  { pdf = false }: BuildOptions,
): CommandResult {
  const open = openFolder(session);
  const browser = pdf ? browserOf(session) : null;
  const named = namedPlans(what, open, session);
  const judged = judgedWork(compileWork(open, named, session), named !== null, session);
  return buildResult(makePages(open, judged, session, browser), judged, open, session);
}

function browserOf({ outside: { env, cwd } }: Session): Browser {
  const found = foundBrowser(env, cwd);
  if (!found.ok) throw new UsageError(found.why);
  return found.browser;
}

export function judgedWork(work: Work, isNamed: boolean, session: Session): Judged {
  const setting = { compiled: work.compiled, isNamed, isStrict: session.isStrict };
  const findings = inOrder([
    ...work.compiled.findings,
    ...ownTemplateFindings(work, setting, session),
    ...asSet(lostVersions(work.compiled.plans, work.lastTimes), work.compiled.practice),
  ]);
  const isStopped = findings.some((one) => one.severity === 'error' && belongsToAll(one));
  return { work, setting, findings, isStopped };
}

/** Writes the pages and moves the outdated ones away; nothing where an error belongs to all. With a browser, PDFs too. */
export function makePages(
  { root }: OpenFolder,
  judged: Judged,
  session: Session,
  browser: Browser | null = null,
): Built {
  if (judged.isStopped) return emptyBuilt();
  return orUnwritten(() => writeAll(root, judged, session, browser));
}

export function buildResult(
  built: Built,
  { findings: judgedOnes, isStopped, work }: Judged,
  { root }: OpenFolder,
  session: Session,
): CommandResult {
  const findings = inOrder([...judgedOnes, ...built.unprinted]);
  const status = isFailing(findings, session) ? 1 : 0;
  return {
    status,
    findings: shownFindings(findings, session),
    data: { written: built.written, moved: built.moved, sheets: built.sheets },
    out: session.isQuiet ? '' : buildReport(built, isStopped, pathFrom(session.outside.cwd, root)),
    log: buildLog(findings, work, session),
  };
}

/** A disk that takes no page is no fault of ours; what was moved away before stays there. */
function orUnwritten(write: () => Built): Built {
  try {
    return write();
  } catch (cause) {
    const why = whyUnwritten(cause);
    if (why === null) throw cause;
    throw new UsageError(`${HANDOUTS}/ cannot be written to: ${why}`);
  }
}

function emptyBuilt(): Built {
  return { written: [], moved: [], sheets: [], indexed: [], without: [], unprinted: [] };
}

function writeAll(
  root: string,
  { work, setting }: Judged,
  session: Session,
  browser: Browser | null,
): Built {
  const unusable = whyUnusable(root);
  if (unusable) throw new UsageError(unusable);
  const { compiled, wording } = work;
  const words = wording.get(compiled.practice.language);
  if (!words) throw new Error('a practice without words has an error of its own');
  const built = emptyBuilt();
  const { pages, unfinished } = readHandouts(root);
  removeUnfinished(root, unfinished);
  // Outdated pages go first, so that a build that is killed leaves none of them looking current.
  const stamp = words.say('index.outdated-stamp');
  const move = (from: string) => built.moved.push({ from, to: moveToOutdated(root, from, stamp) });
  for (const from of pagesToMove(pages, compiled.plans, setting)) move(from);
  for (const [done, plan] of compiled.plans.entries()) {
    session.progress.at(done, compiled.plans.length, `writing ${plan.id}`);
    const fate = fateOf(plan, setting);
    if (fate.kind === 'closed') continue;
    if (fate.kind === 'no-sheet') built.without.push(withoutSheet(plan, fate.because));
    else writePlan(plan, { root, work, built, browser, move });
  }
  session.progress.end();
  if (!setting.isNamed) writeIndex(root, work, built, session);
  return built;
}

interface Writing {
  readonly root: string;
  readonly work: Work;
  readonly built: Built;
  readonly browser: Browser | null;
  /** Moves a page away that must not be handed out any more. */
  readonly move: (path: string) => void;
}

function writePlan(plan: CompiledPlan, { root, work, built, browser, move }: Writing): void {
  const outcome = pagesOf(plan, work);
  if (!outcome.ok)
    throw new Error(`a template failed that had been tried: ${outcome.finding.message}`);
  const { pages } = outcome;
  const pdf = pdfPath(plan.id);
  // A PDF of an older sheet goes before the sheet is written, so that the two never lie side by side.
  if (isThere(root, pdf) && pdfFault(readPdf(root, pdf), pages) !== null) move(pdf);
  built.written.push(...writtenPages(root, pages));
  if (browser && !isThere(root, pdf) && built.unprinted.length === 0) {
    const trouble = makePdf(root, pages, browser);
    if (trouble) built.unprinted.push(trouble);
    else built.written.push(pdf);
  }
  const files = [...pages.files.keys(), ...(isThere(root, pdf) ? [pdf] : [])];
  built.sheets.push({ plan: plan.id, sheet: pages.sheetNumber, files });
  if (plan.plan && plan.numbers) {
    built.indexed.push({
      plan: plan.plan,
      numbers: plan.numbers,
      findings: plan.findings,
      sheetNumber: pages.sheetNumber,
    });
  }
}

function writtenPages(root: string, { files }: Pages): string[] {
  return [...files].flatMap(([path, text]) => (writePage(root, path, text) ? [path] : []));
}

function withoutSheet({ id, plan }: CompiledPlan, because: readonly Finding[]): PlanWithoutSheet {
  return { plan: id, title: plan?.title ?? null, why: because[0]?.message ?? '' };
}

function writeIndex(root: string, work: Work, built: Built, session: Session): void {
  const page = indexPage(
    { plans: built.indexed, without: built.without, today: session.today },
    work,
  );
  if (!page.ok) throw new Error(`a template failed that had been tried: ${page.finding.message}`);
  if (writePage(root, INDEX_FILE, page.text)) built.written.push(INDEX_FILE);
}

/** A path of the folder as seen from where one stands. */
function pathFrom(cwd: string, root: string): (path: string) => string {
  const base = relative(cwd, root);
  return (path) => (base === '' ? path : `${base}/${path}`);
}

function buildReport(built: Built, isStopped: boolean, seen: (path: string) => string): string {
  if (isStopped) return 'Nothing was written or moved.\n';
  const lines = built.sheets.map(
    ({ plan, sheet, files }) =>
      `${plan}  sheet ${sheet}  ${[files[0] ?? '', ...files.filter(isPdf)].map(seen).join('  ')}`,
  );
  lines.push(
    ...built.moved.map(
      ({ from, to }) => `moved  ${seen(from)} -> ${seen(to)}  (outdated, do not hand out)`,
    ),
  );
  lines.push(...built.without.map(({ plan }) => `${plan}  no sheet: see the errors`));
  if (lines.length === 0) return 'There are no plans to build.\n';
  const changed = built.written.length;
  if (built.sheets.length === 0) return `${lines.join('\n')}\n`;
  const summary =
    changed === 0
      ? 'All pages were up to date.'
      : `${changed} ${changed === 1 ? 'page' : 'pages'} written.`;
  return `${lines.join('\n')}\n${summary}\n`;
}

function isPdf(path: string): boolean {
  return path.endsWith('.pdf');
}

function buildLog(findings: readonly Finding[], work: Work, session: Session): string {
  const report = findingsReport(findings, session, 'err');
  if (session.isQuiet || report === '') return report;
  return `${report}\n${summaryLine(countsOf(findings, filesRead(work)))}\n`;
}
