// Does the title of a plan name the side that is not affected? A title is copied from plan to plan, and
// so is `affected`. Only in languages whose words are known here, and only the title is looked at, for a
// goal or a note may well speak of the good side.
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import { otherSide } from '../units/side.ts';
import type { PlanUnderCheck } from './plan-check.ts';

/** By the first subtag of a language: what the sides are called, however they agree with their noun. */
const SIDE_WORDS: ReadonlyMap<string, Readonly<Record<'left' | 'right', string>>> = new Map([
  ['en', { left: 'left', right: 'right' }],
  ['es', { left: 'izquierd[oa]s?', right: 'derech[oa]s?' }],
  [
    'ar',
    { left: '(?:[ولب]?ال|لل)?(?:يسرى|أيسر|يسار)', right: '(?:[ولب]?ال|لل)?(?:يمنى|أيمن|يمين)' },
  ],
]);

/** A title that names both sides, or none, is let be. */
export function sideWord({ plan, practice }: PlanUnderCheck): readonly Finding[] {
  const { affected, title } = plan;
  const [language = ''] = (plan.handoutLanguage ?? practice.language).toLowerCase().split('-');
  const words = SIDE_WORDS.get(language);
  if (!words || (affected !== 'left' && affected !== 'right')) return [];
  const names = (side: 'left' | 'right') =>
    new RegExp(`(?<![\\p{L}\\p{N}])${words[side]}(?![\\p{L}\\p{N}])`, 'iu').test(title);
  const other = otherSide(affected);
  if (!names(other) || names(affected)) return [];
  const affectedPlace = plan.valuePlaces.get('affected');
  return [
    finding({
      check: 'side-word',
      severity: severityOf('side-word'),
      message: `The title says ${other}, and the plan says "affected: ${affected}"; one of the two is wrong, or was left from another plan.`,
      place: plan.valuePlaces.get('title') ?? plan.place,
      scope: [plan],
      related: affectedPlace
        ? [{ message: 'The affected side stands here.', place: affectedPlace }]
        : [],
    }),
  ];
}
