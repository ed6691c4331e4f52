// `carryover handover --find`: what a sheet number, as somebody reads it out over the telephone, was
// handed over as, and whether its words are still what the plan says.
import type { CompiledPlan } from '../build.ts';
import { plansOf } from '../build.ts';
import { asSet } from '../check/plan-checks.ts';
import { sheetsNow } from '../handouts/since-handover.ts';
import { loadRegister, type RegisterRow } from '../load/register.ts';
import { asSheetNumber, isOneSignAway } from '../model/sheet-signs.ts';
import { compileWork, findingsReport, isFailing, shownFindings } from './compiled.ts';
import { type CommandResult, openFolder, type Session, UsageError } from './session.ts';

interface Found extends Omit<RegisterRow, 'place'> {
  /** Null where it cannot be said. */
  readonly current: boolean | null;
  /** The plan's sheet number now; null where it has none. */
  readonly now: string | null;
  /** Where the plan stands, as a sentence. */
  readonly says: string;
}

export function findSheet(session: Session, asked: string): CommandResult {
  const number = asSheetNumber(asked);
  if (number === null)
    throw new UsageError(
      `"${asked}" is no sheet number; it has eight letters and digits, such as KP4T 7WQM, and stands at the foot of the sheet`,
    );
  const open = openFolder(session);
  const { rows, findings: damage } = loadRegister(open.folder);
  const hits = rows.filter(({ sheet }) => sheet === number);
  const there = plansOf(open.folder).byId;
  const plans = [...new Set(hits.map(({ plan }) => plan))].filter((id) => there.has(id));
  const work = compileWork(open, { plans, exercises: [] }, session);
  const now = sheetsNow(rows, work, open.folder);
  const found = hits.map((row) =>
    standing(
      row,
      work.compiled.plans.find(({ id }) => id === row.plan),
      now,
    ),
  );
  const near =
    hits.length > 0
      ? []
      : [...new Set(rows.map(({ sheet }) => sheet))].filter((one) => isOneSignAway(one, number));
  const findings = asSet(damage, work.compiled.practice);
  return {
    status: isFailing(findings, session) ? 1 : 0,
    findings: shownFindings(findings, session),
    data: { sheet: number, found: found.map(({ says: _, ...one }) => one), near },
    out: found.map((one) => `${foundText(one)}\n`).join('\n'),
    log: `${findingsReport(findings, session, 'err')}${hits.length > 0 ? '' : notFound(number, near, rows.length)}`,
  };
}

/** A row beside the plan as it is now. */
function standing(
  row: RegisterRow,
  one: CompiledPlan | undefined,
  sheetNow: ReturnType<typeof sheetsNow>,
): Found {
  const { place: _, ...said } = row;
  const { plan } = row;
  if (!one)
    return { ...said, current: false, now: null, says: `There is no plan ${plan} any more.` };
  const now = sheetNow(row, one);
  const closed = one.plan?.closed ? ` The plan was closed on ${one.plan.closed.date}.` : '';
  if (!('number' in now))
    return { ...said, current: null, now: null, says: `${untold(row, now)}${closed}` };
  const current = now.isCurrent;
  const says = current
    ? `Its words are current: plan ${plan} says the same now.`
    : `Its words are not current: plan ${plan} says something else now (sheet ${now.number}).`;
  return { ...said, current, now: now.number, says: `${says}${closed}` };
}

function untold({ plan, language }: RegisterRow, { lacks }: { readonly lacks: string }): string {
  const why =
    lacks === 'words'
      ? `there is no words pack for its language, ${language}`
      : lacks === 'history'
        ? 'this copy of the folder lacks the history that the sheet is held against'
        : `plan ${plan} has errors now ("carryover check ${plan}")`;
  return `Whether its words are current cannot be said: ${why}.`;
}

function foundText({ sheet, date, plan, commit, language, by, says }: Found): string {
  const who = by === null ? '' : ` by ${by}`;
  return [
    `Sheet ${sheet}: plan ${plan}, handed over on ${date}${who}, language ${language}.`,
    says,
    `Made from commit ${commit}.`,
  ].join('\n');
}

function notFound(number: string, near: readonly string[], rows: number): string {
  if (rows === 0) return 'No handover has been noted yet.\n';
  const meant = near.length === 0 ? '' : ` Did you mean ${near.join(' or ')}?`;
  return `No sheet ${number} has been handed over.${meant}\n`;
}
