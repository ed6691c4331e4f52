// Does a plan have the visits and goals of another person's, word for word? Then it was copied, and only
// its code was changed.
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { Plan } from '../model/plan.ts';

/** One finding a plan after the first, in order of code. Two plans of one person may share a visit. */
export function looksCopied(plans: readonly Plan[]): readonly Finding[] {
  const firsts = new Map<string, Plan>();
  const found: Finding[] = [];
  for (const plan of plans) {
    const said = saidOf(plan);
    if (said === null) continue;
    const first = firsts.get(said);
    if (!first) firsts.set(said, plan);
    else if (first.person !== plan.person) found.push(copyFinding(plan, first));
  }
  return found;
}

/** Dates, findings, reasons and goals; null where there is too little of it to tell anything. */
function saidOf({ visits, goals }: Plan): string | null {
  const isSaid =
    goals.length > 0 && visits.some(({ found, why }) => found !== null || why !== null);
  return isSaid ? JSON.stringify([visits, goals]) : null;
}

function copyFinding(plan: Plan, first: Plan): Finding {
  return finding({
    check: 'looks-copied',
    severity: severityOf('looks-copied'),
    message: `The visits and goals are those of "${first.id}", word for word; what was found in one person may stand in the record of another.`,
    place: plan.valuePlaces.get('visits') ?? plan.place,
    related: [
      { message: 'They stand here too.', place: first.valuePlaces.get('visits') ?? first.place },
    ],
  });
}
