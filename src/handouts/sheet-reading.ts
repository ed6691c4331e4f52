// What is found about how the sheets of plans read as they are printed. It needs the words of the
// sheet, which no check of a plan has.

import { type Compiled, type CompiledPlan, errorsOf } from '../build.ts';
import { idleAccepts, settled } from '../check/accept.ts';
import { isEnglish } from '../check/english.ts';
import { asSet, settingOf } from '../check/plan-checks.ts';
import { readingGradeOfSheet } from '../check/reading-grade.ts';
import { type Finding, inOrder } from '../finding/finding.ts';
import { sheetSentences } from '../render/sheet/sheet-sentences.ts';
import { sheetView } from '../render/sheet/worded-sheet.ts';
import type { Wording } from './wording.ts';

/** What was compiled, with what is found about the sheets of its plans; of a closed one only where it is named. */
export function withSheetReading(compiled: Compiled, wording: Wording, isNamed: boolean): Compiled {
  const { practice } = compiled;
  if (practice.checks.get('reading-grade')?.severity === 'off') return compiled;
  const found = new Map(compiled.plans.map((one) => [one, sheetFindings(one, compiled, wording)]));
  const kept = compiled.plans.filter(({ plan }) => isNamed || !plan?.closed);
  return {
    ...compiled,
    plans: compiled.plans.map((one) => {
      const more = found.get(one) ?? [];
      return more.length === 0 ? one : { ...one, findings: inOrder([...one.findings, ...more]) };
    }),
    findings: inOrder([...compiled.findings, ...kept.flatMap((one) => found.get(one) ?? [])]),
  };
}

function sheetFindings(
  one: CompiledPlan,
  compiled: Compiled,
  wording: Wording,
): readonly Finding[] {
  const { practice, people } = compiled;
  const { plan, numbers } = one;
  const words = wording.get(one.language);
  if (!plan || !numbers || !words || !isEnglish(words.language)) return [];
  if (errorsOf(one, compiled.findings).length > 0) return [];
  const person = people.get(plan.person) ?? null;
  const texts = sheetSentences(sheetView({ practice, plan, numbers, person, words }));
  const above = settingOf(practice)('reading-grade', 'above');
  const found = readingGradeOfSheet({ plan, texts }, practice, above);
  const idle = idleAccepts(found, plan, (check) => check === 'reading-grade');
  return settled(asSet([...found, ...idle], practice), plan);
}
