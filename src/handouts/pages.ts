// The pages of one plan: the sheet as HTML and Markdown, and the clinic copy, each sealed with a
// fingerprint. The same plan, library, settings and words give the same bytes.
import { createHash } from 'node:crypto';
import type { Compiled, CompiledPlan } from '../build.ts';
import type { PlanNumbers } from '../compute/numbers.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { TemplateFiles } from '../load/templates.ts';
import type { Plan } from '../model/plan.ts';
import { sealed } from '../render/pages/fingerprint.ts';
import { renderClinic, renderSheetHtml, renderSheetMarkdown } from '../render/pages/pages.ts';
import type { Page, TemplateProblem } from '../render/pages/template.ts';
import { clinicView } from '../render/record/clinic-view.ts';
import type { LastTime } from '../render/sheet/news-input.ts';
import { sheetGrade } from '../render/sheet/sheet-grade.ts';
import { sheetNumber } from '../render/sheet/sheet-number.ts';
import type { SheetView } from '../render/sheet/sheet-view.ts';
import { sheetView } from '../render/sheet/worded-sheet.ts';
import type { Words } from '../render/words/words.ts';
import type { LastTimes } from './last-time.ts';
import type { Wording } from './wording.ts';

export const HANDOUTS = 'handouts';
export const OUTDATED = `${HANDOUTS}/outdated`;
export const INDEX_FILE = `${HANDOUTS}/index.html`;

export interface Pages {
  readonly plan: string;
  readonly sheetNumber: string;
  /** Path in the folder to text, the sheet first. */
  readonly files: ReadonlyMap<string, string>;
}

export type PagesOutcome =
  | { readonly ok: true; readonly pages: Pages }
  | { readonly ok: false; readonly finding: Finding };

export interface Printing {
  readonly compiled: Compiled;
  readonly templates: TemplateFiles;
  readonly wording: Wording;
  /** What a plan's sheet before was made from. */
  readonly lastTimes: LastTimes;
}

export function sha256(text: string): Uint8Array {
  return createHash('sha256').update(text).digest();
}

/** The paths of a plan's pages: sheet, Markdown, clinic copy. */
export function pathsOf(plan: string): readonly [string, string, string] {
  return [`${HANDOUTS}/${plan}.html`, `${HANDOUTS}/${plan}.md`, `${HANDOUTS}/${plan}.clinic.html`];
}

/** The pages of a plan that has numbers; a template of the practice that cannot be filled in is a finding. */
export function pagesOf(one: CompiledPlan, printing: Printing): PagesOutcome {
  const { compiled, templates } = printing;
  const { practice } = compiled;
  const { plan, numbers } = one;
  const words = printing.wording.get(one.language);
  const clinicWords = printing.wording.get(practice.language);
  if (!plan || !numbers || !words || !clinicWords)
    throw new Error(`plan ${one.id} has nothing to print`);
  const shown = { plan, numbers, last: printing.lastTimes.of(one) };
  const { view, number } = numberedSheet(shown, compiled, words);
  // The record is in the practice's language, whatever the sheet is in.
  const inOwnLanguage =
    clinicWords === words ? view : numberedSheet(shown, compiled, clinicWords).view;
  const sheetLine = words.say('footer.sheet', { number, date: view.footer.visitDate });
  const sheet = { view, shortDay: null, sheetLine, paper: practice.paper, print: plan.print };
  const findings = one.findings;
  const clinic = clinicView({
    practice,
    plan,
    numbers,
    findings,
    sheet: inOwnLanguage,
    sheetWords: words,
    shortDay: null,
    sheetNumber: number,
    reading: sheetGrade(view, practice),
    words: clinicWords,
  });
  const pages: readonly Page[] = [
    renderSheetHtml(sheet, templates.texts),
    renderSheetMarkdown(sheet, templates.texts),
    renderClinic(clinic, templates.texts),
  ];
  const paths = pathsOf(one.id);
  const files = new Map<string, string>();
  for (const [i, page] of pages.entries()) {
    if (!page.ok) return { ok: false, finding: templateFinding(page.problem, templates) };
    files.set(paths[i] as string, sealed(page.text, sha256));
  }
  return { ok: true, pages: { plan: one.id, sheetNumber: number, files } };
}

/** What a plan's sheet shows in the words of a language, and the number that it has by that. */
export function numberedSheet(
  { plan, numbers, last }: { plan: Plan; numbers: PlanNumbers; last: LastTime | null },
  { practice, people }: Compiled,
  words: Words,
): { readonly view: SheetView; readonly number: string } {
  const person = people.get(plan.person) ?? null;
  const view = sheetView({ practice, plan, numbers, person, words, last });
  return { view, number: sheetNumber({ view, alsoShown: [] }, sha256) };
}

/** A template that cannot be filled in, at its line. A shipped one is a bug, not a finding. */
export function templateFinding(problem: TemplateProblem, templates: TemplateFiles): Finding {
  const source = templates.own.get(problem.template);
  if (!source)
    throw new Error(
      `the shipped template ${problem.template} is broken at line ${problem.line}: ${problem.message}`,
    );
  const lines = source.text.split('\n');
  const before = lines.slice(0, problem.line - 1).reduce((sum, line) => sum + line.length + 1, 0);
  const start = Math.min(before + problem.column - 1, source.text.length);
  return finding({
    check: 'template-broken',
    severity: 'error',
    message: problem.message,
    place: { source, start, end: start },
  });
}
