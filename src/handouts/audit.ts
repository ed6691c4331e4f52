// Every sheet held against its inputs: missing, extra, stale, or edited by hand.
import type { CompiledPlan } from '../build.ts';
import { type Finding, finding } from '../finding/finding.ts';
import { fileOnly } from '../finding/place.ts';
import { isSealIntact } from '../render/pages/fingerprint.ts';
import { type FateSetting, fateOf, planOfPage } from './changes.ts';
import { type Pages, type Printing, pagesOf, pathsOf, sha256 } from './pages.ts';
import { pdfFault, pdfPath } from './pdf.ts';

export interface Handouts {
  /** Paths of the pages that lie there. */
  readonly pages: readonly string[];
  readonly read: (path: string) => string | undefined;
  readonly readPdf: (path: string) => string | undefined;
}

/** What is wrong with the handouts; a closed plan's are left out of it. */
export function auditHandouts(
  handouts: Handouts,
  printing: Printing,
  setting: FateSetting,
): readonly Finding[] {
  const found: Finding[] = [];
  const known = new Set<string>();
  for (const plan of printing.compiled.plans) {
    known.add(plan.id);
    found.push(...auditPlan(plan, handouts, printing, setting));
  }
  if (setting.isNamed) return found;
  const plans = new Set(handouts.pages.flatMap((path) => planOfPage(path) ?? []));
  for (const plan of plans) {
    if (known.has(plan)) continue;
    found.push(
      ...sheetFinding(
        'handout-extra',
        pagesThere(plan, handouts),
        `There is no plan ${plan} that this sheet belongs to; run "carryover build" to move it away.`,
      ),
    );
  }
  return found;
}

function auditPlan(
  plan: CompiledPlan,
  handouts: Handouts,
  printing: Printing,
  setting: FateSetting,
): readonly Finding[] {
  const fate = fateOf(plan, setting);
  if (fate.kind === 'closed') return [];
  const { id } = plan;
  if (fate.kind === 'no-sheet') {
    return sheetFinding(
      'handout-stale',
      pagesThere(id, handouts),
      `This sheet is older than the mistakes that plan ${id} or its settings have now; do not hand it out.`,
    );
  }
  const outcome = pagesOf(plan, printing);
  if (!outcome.ok) return [outcome.finding];
  const faults = [...outcome.pages.files].map(([path, page]) => ({
    path,
    fault: faultOf(handouts.read(path), page),
  }));
  const paths = (wanted: Fault) =>
    faults.filter(({ fault }) => fault === wanted).map(({ path }) => path);
  const what =
    paths('missing').length === outcome.pages.files.size
      ? `Plan ${id} has no sheet yet`
      : `This page of plan ${id} is not there`;
  return [
    ...sheetFinding('handout-missing', paths('missing'), `${what}; run "carryover build".`),
    ...sheetFinding(
      'handout-edited',
      paths('edited'),
      `This page was changed by hand after it was built; put the change into plan ${id} and build it.`,
    ),
    ...sheetFinding(
      'handout-stale',
      paths('stale'),
      `This sheet is not what plan ${id} says now; run "carryover build".`,
    ),
    ...auditPdf(outcome.pages, handouts),
  ];
}

/** A PDF need not be there; one that is has to be a print of the sheet as it is now. */
function auditPdf(pages: Pages, handouts: Handouts): readonly Finding[] {
  const path = pdfPath(pages.plan);
  if (!handouts.pages.includes(path)) return [];
  const fault = pdfFault(handouts.readPdf(path), pages);
  if (fault === null) return [];
  const what =
    fault === 'edited'
      ? 'This PDF was not made by a build, or was changed since'
      : `This PDF is not what plan ${pages.plan} says now`;
  const message = `${what}; run "carryover build" to move it away, with --pdf to make a new one.`;
  return sheetFinding(`handout-${fault}`, [path], message);
}

type Fault = 'missing' | 'edited' | 'stale' | null;

function faultOf(there: string | undefined, page: string): Fault {
  if (there === undefined) return 'missing';
  if (!isSealIntact(there, sha256)) return 'edited';
  return there === page ? null : 'stale';
}

/** The pages of a plan that lie there, the sheet first. */
function pagesThere(plan: string, { pages }: Handouts): readonly string[] {
  return [...pathsOf(plan), pdfPath(plan)].filter((path) => pages.includes(path));
}

type HandoutCheck = 'handout-missing' | 'handout-extra' | 'handout-stale' | 'handout-edited';

/** One finding for all pages of a sheet that have the same fault: at the first, the others beside it. */
function sheetFinding(
  check: HandoutCheck,
  paths: readonly string[],
  message: string,
): readonly Finding[] {
  const [first, ...others] = paths;
  if (first === undefined) return [];
  const related = others.map((path) => ({ message: 'This page too.', place: fileOnly(path) }));
  return [finding({ check, severity: 'error', message, place: fileOnly(first), related })];
}
