// `carryover show`: the numbers of one plan, or the account of its last visit.
import { type CompiledPlan, errorsOf } from '../build.ts';
import type { PlanNumbers } from '../compute/numbers.ts';
import { numberedSheet } from '../handouts/pages.ts';
import { languageOf } from '../handouts/wording.ts';
import { changesView } from '../render/changes/changes-view.ts';
import { planChanges } from '../render/changes/plan-changes.ts';
import { numbersJson } from '../render/json/numbers-json.ts';
import { visitNote } from '../render/record/visit-note.ts';
import { showText } from '../render/terminal/show-text.ts';
import type { Words } from '../render/words/words.ts';
import { compileWork, findingsReport, isFailing, shownFindings, type Work } from './compiled.ts';
import { type CommandResult, namedPlans, openFolder, type Session } from './session.ts';

export function show(session: Session, plan: string): CommandResult {
  const open = openFolder(session);
  const work = compileWork(open, namedPlans([plan], open, session), session);
  const { findings, practice } = work.compiled;
  const [one] = work.compiled.plans;
  const log = findingsReport(findings, session, 'err');
  const shown = shownFindings(findings, session);
  if (!one?.plan || !one.numbers || errorsOf(one, findings).length > 0) {
    return { status: 1, findings: shown, data: null, out: '', log };
  }
  const { numbers } = one;
  const text =
    session.format === 'note'
      ? noteText(one, numbers, work)
      : showText({
          practice,
          plan: one.plan,
          numbers,
          width: session.width,
          paint: session.paint,
          isPlain: !session.outside.out.isTerminal,
        });
  return {
    status: isFailing(findings, session) ? 1 : 0,
    findings: shown,
    data: numbersJson(numbers, practice.timing.breath),
    out: `${text}\n`,
    log,
  };
}

/** What the note tells elsewhere, or what concerns no person. */
const LEFT_OUT = ['last-visit', 'visits', 'next-visit', 'week-shown', 'accepted', 'report'];

function noteText(one: CompiledPlan, numbers: PlanNumbers, work: Work): string {
  const { compiled, wording } = work;
  const { practice } = compiled;
  const words = wording.get(practice.language);
  const sheetWords = wording.get(languageOf(one, compiled));
  if (!words || !sheetWords) throw new Error('a plan without words has an error of its own');
  const last = work.lastTime(one);
  const { number } = numberedSheet({ plan: numbers.plan, numbers, last }, compiled, sheetWords);
  return visitNote({
    practice,
    numbers,
    sheetNumber: number,
    changes: last && {
      since: last.numbers.plan.visits.at(-1)?.date ?? last.numbers.plan.starts,
      view: changesSince(last, { practice, numbers }, words),
    },
    words,
  });
}

type Version = NonNullable<ReturnType<Work['lastTime']>>;

function changesSince(last: Version, now: Version, words: Words) {
  const version = ({ practice, numbers }: Version) => ({
    practice,
    plan: numbers.plan,
    numbers,
    sheet: null,
  });
  const all = planChanges(version(last), version(now), { words, renamed: new Map() });
  const changes = all.changes.filter(({ aspect }) => !LEFT_OUT.includes(aspect));
  return changesView(
    {
      plan: now.numbers.plan,
      from: '',
      to: '',
      changes: { ...all, changes },
      hasSheet: { before: true, after: true },
      troubles: [],
      presence: 'both',
    },
    words,
  );
}
