// Which findings a practitioner has accepted, with the reason. An accept at an item, part, session or
// plan settles the findings of its check that are about that record; errors cannot be accepted.
import { type CheckName, severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { Accept, Plan } from '../model/plan.ts';

/** An accept with the records around it, outermost first; it stands at the last of them. */
interface PlacedAccept {
  readonly accept: Accept;
  readonly scope: readonly object[];
}

/** The findings of a plan, those that an accept settles with its reason; their order stays. */
export function settled(findings: readonly Finding[], plan: Plan): readonly Finding[] {
  const accepts = acceptsOf(plan);
  return findings.map((one) => settledFinding(one, accepts, plan));
}

/** Notes on accepts whose check ran and found nothing there; of a check that did not run nothing is known. */
export function idleAccepts(
  findings: readonly Finding[],
  plan: Plan,
  hasRun: (check: CheckName) => boolean,
): readonly Finding[] {
  const idle = acceptsOf(plan).filter(
    (placed) => hasRun(placed.accept.check) && !findings.some((one) => isAbout(one, placed)),
  );
  return idle.map(({ accept, scope }) =>
    finding({
      check: 'accept-settles-nothing',
      severity: severityOf('accept-settles-nothing'),
      message: `"${accept.check}" is accepted here, and finds nothing here.`,
      place: accept.place,
      scope,
    }),
  );
}

function acceptsOf(plan: Plan): readonly PlacedAccept[] {
  const placed = (accepts: readonly Accept[], ...scope: readonly object[]) =>
    accepts.map((accept) => ({ accept, scope }));
  return [
    ...placed(plan.accepts, plan),
    ...plan.sessions.flatMap((session) => [
      ...placed(session.accepts, plan, session),
      ...session.parts.flatMap((part) => [
        ...placed(part.accepts, plan, session, part),
        ...part.items.flatMap((item) => placed(item.accepts, plan, session, part, item)),
      ]),
    ]),
  ];
}

function isAbout(one: Finding, { accept, scope }: PlacedAccept): boolean {
  const record = scope.at(-1);
  return one.check === accept.check && record !== undefined && one.scope.includes(record);
}

function settledFinding(one: Finding, accepts: readonly PlacedAccept[], plan: Plan): Finding {
  const about = accepts.filter((placed) => isAbout(one, placed));
  if (about.length === 0) return one;
  if (one.severity === 'error') {
    return withHint(
      one,
      'It is accepted here, but practice.yaml makes it an error, and an error cannot be accepted.',
    );
  }
  const inForce = about.filter(({ accept }) => !hasLapsed(accept, plan));
  // The nearest reason is the one that was meant.
  const nearest = inForce.toSorted((a, b) => b.scope.length - a.scope.length)[0];
  if (nearest) return { ...one, accepted: { why: nearest.accept.why } };
  return withHint(
    one,
    `It was accepted until ${about[0]?.accept.until}, and the last visit is later.`,
  );
}

function hasLapsed({ until }: Accept, { visits }: Plan): boolean {
  const lastVisit = visits.at(-1)?.date;
  return until !== null && lastVisit !== undefined && until < lastVisit;
}

function withHint(one: Finding, hint: string): Finding {
  return { ...one, hints: [...one.hints, hint] };
}
