// Does the title of a plan name the side that is not affected? A title is copied from plan to plan, and
// so is `affected`. English alone: in other languages the words are others. Only the title is
// looked at, for a goal or a note may well speak of the good side.
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import { otherSide } from '../units/side.ts';
import type { PlanUnderCheck } from './plan-check.ts';

/** A title that names both sides, or none, is let be. */
export function sideWord({ plan, practice }: PlanUnderCheck): readonly Finding[] {
  const { affected, title } = plan;
  if (!/^en\b/.test(practice.language)) return [];
  if (affected !== 'left' && affected !== 'right') return [];
  const named = new Set(
    [...title.matchAll(/(?<![\p{L}\p{N}])(left|right)(?![\p{L}\p{N}])/giu)].map(([word]) =>
      word.toLowerCase(),
    ),
  );
  const other = otherSide(affected);
  if (!named.has(other) || named.has(affected)) return [];
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
