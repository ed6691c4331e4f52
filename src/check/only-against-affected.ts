// Is `only: right` written where the left side is the affected one? Nothing but the plan can tell whether
// that is meant, so it is asked for in a word that can't be a slip: `affected` or `other`.
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import { otherSide } from '../units/side.ts';
import type { PlanUnderCheck } from './plan-check.ts';

/** One finding an item, where it first says so: at the item itself, else in an entry. */
export function onlyAgainstAffected({ plan }: PlanUnderCheck): readonly Finding[] {
  const { affected } = plan;
  if (affected !== 'left' && affected !== 'right') return [];
  const against = otherSide(affected);
  const found: Finding[] = [];
  for (const session of plan.sessions) {
    for (const part of session.parts) {
      for (const item of part.items) {
        const says = [item, ...item.fromWeek].find(({ only }) => only === against);
        if (!says) continue;
        const affectedPlace = plan.valuePlaces.get('affected');
        found.push(
          finding({
            check: 'only-against-affected',
            severity: severityOf('only-against-affected'),
            message: againstAffected(against),
            place: says.keyPlaces.get('only') ?? says.place,
            scope: [plan, session, part, item],
            related: affectedPlace
              ? [{ message: 'The affected side stands here.', place: affectedPlace }]
              : [],
          }),
        );
      }
    }
  }
  return found;
}

/** What is at odds, and both ways out. */
export function againstAffected(only: 'left' | 'right'): string {
  const affected = otherSide(only);
  return `"only: ${only}" leaves out the ${affected}, which is the affected side; write "only: affected" for the ${affected}, or "only: other" if you mean the ${only}.`;
}
