// The list of all sheets as a page: from what a build made of each plan. What stands on it is the
// render floor's; writing it is the command's.

import type { Finding } from '../finding/finding.ts';
import { sealed } from '../render/pages/fingerprint.ts';
import { renderIndex } from '../render/pages/pages.ts';
import { type IndexedPlan, indexView, type PlanWithoutSheet } from '../render/record/index-view.ts';
import type { Day } from '../units/day.ts';
import { type Printing, sha256, templateFinding } from './pages.ts';

/** What a build made of the plans, and the day that it was asked on. */
export interface Indexed {
  readonly plans: readonly IndexedPlan[];
  readonly without: readonly PlanWithoutSheet[];
  readonly today: Day;
}

export type IndexOutcome =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly finding: Finding };

/** The index, sealed; a template of the practice that cannot be filled in is a finding. */
export function indexPage(
  { plans, without, today }: Indexed,
  { compiled, wording, templates }: Printing,
): IndexOutcome {
  const { practice } = compiled;
  const words = wording.get(practice.language);
  if (!words) throw new Error('a practice without words has an error of its own');
  const page = renderIndex(indexView({ practice, plans, without, today, words }), templates.texts);
  if (!page.ok) return { ok: false, finding: templateFinding(page.problem, templates) };
  return { ok: true, text: sealed(page.text, sha256) };
}
