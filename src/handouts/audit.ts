// Every sheet held against its inputs: missing, extra, stale, or edited by hand.
import { type Finding, finding } from '../finding/finding.ts';
import { fileOnly } from '../finding/place.ts';
import { isSealIntact } from '../render/fingerprint.ts';
import { type FateSetting, fateOf, planOfPage } from './changes.ts';
import { pagesOf, pathsOf, type Printing, sha256 } from './pages.ts';

export interface Handouts {
  /** Paths of the pages that lie there. */
  readonly pages: readonly string[];
  readonly read: (path: string) => string | undefined;
}

/** What is wrong with the handouts; a closed plan's are left out of it. */
export function auditHandouts(handouts: Handouts, printing: Printing, setting: FateSetting): readonly Finding[] {
  const found: Finding[] = [];
  const tell = (check: 'handout-missing' | 'handout-extra' | 'handout-stale' | 'handout-edited', path: string, message: string) =>
    found.push(finding({ check, severity: 'error', message, place: fileOnly(path) }));
  const known = new Set<string>();
  for (const plan of printing.compiled.plans) {
    const fate = fateOf(plan, setting);
    known.add(plan.id);
    if (fate.kind === 'closed') continue;
    if (fate.kind === 'no-sheet') {
      for (const path of pathsOf(plan.id).filter((one) => handouts.pages.includes(one))) {
        tell('handout-stale', path, `This sheet is older than the mistakes that plan ${plan.id} has now; do not hand it out.`);
      }
      continue;
    }
    const outcome = pagesOf(plan, printing);
    if (!outcome.ok) {
      found.push(outcome.finding);
      continue;
    }
    for (const [path, page] of outcome.pages.files) {
      const there = handouts.read(path);
      if (there === undefined) tell('handout-missing', path, `Plan ${plan.id} has not been built since it was written; run "carryover build".`);
      else if (!isSealIntact(there, sha256)) tell('handout-edited', path, `This page was changed by hand after it was built; put the change into plan ${plan.id} and build it.`);
      else if (there !== page) tell('handout-stale', path, `This page is not what plan ${plan.id} says now; run "carryover build".`);
    }
  }
  if (setting.isNamed) return found;
  for (const path of handouts.pages) {
    const plan = planOfPage(path);
    if (plan !== null && !known.has(plan)) tell('handout-extra', path, `There is no plan ${plan} that this page belongs to; run "carryover build" to move it away.`);
  }
  return found;
}
