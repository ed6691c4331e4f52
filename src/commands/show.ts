// `carryover show`: the numbers of one plan.

import { errorsOf } from '../build.ts';
import { numbersJson } from '../render/json/numbers-json.ts';
import { showText } from '../render/terminal/show-text.ts';
import { compileWork, findingsReport, isFailing, shownFindings } from './compiled.ts';
import { type CommandResult, namedPlans, openFolder, type Session } from './session.ts';

export function show(session: Session, plan: string): CommandResult {
  const open = openFolder(session);
  const { compiled } = compileWork(open, namedPlans([plan], open, session), session);
  const { findings, practice } = compiled;
  const [one] = compiled.plans;
  const log = findingsReport(findings, session, 'err');
  const shown = shownFindings(findings, session);
  if (!one?.plan || !one.numbers || errorsOf(one, findings).length > 0) {
    return { status: 1, findings: shown, data: null, out: '', log };
  }
  return {
    status: isFailing(findings, session) ? 1 : 0,
    findings: shown,
    data: numbersJson(one.numbers, practice.timing.breath),
    out: `${showText({ practice, plan: one.plan, numbers: one.numbers, width: session.width, paint: session.paint, isPlain: !session.outside.out.isTerminal })}\n`,
    log,
  };
}
