// `carryover show`: the numbers of one plan, or the account of its last visit.
import { type CompiledPlan, errorsOf } from '../build.ts';
import { planReading } from '../check/reading-grade.ts';
import type { PlanNumbers } from '../compute/numbers.ts';
import { numberedSheet } from '../handouts/pages.ts';
import { planChanges } from '../render/changes/plan-changes.ts';
import { numbersJson } from '../render/json/numbers-json.ts';
import { readingJson } from '../render/json/reading-json.ts';
import { visitNote } from '../render/record/visit-note.ts';
import type { LastTime } from '../render/sheet/news-input.ts';
import { sheetGrade } from '../render/sheet/sheet-grade.ts';
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
  const reading = readingOf(one, numbers, work);
  const text =
    session.format === 'note'
      ? noteText(one, numbers, work)
      : showText({
          practice,
          plan: one.plan,
          numbers,
          reading,
          width: session.width,
          paint: session.paint,
          isPlain: !session.outside.out.isTerminal,
        });
  return {
    status: isFailing(findings, session) ? 1 : 0,
    findings: shown,
    data: { ...numbersJson(numbers, practice.timing.breath), reading: readingJson(reading) },
    out: `${text}\n`,
    log,
  };
}

function readingOf(one: CompiledPlan, numbers: PlanNumbers, { compiled, wording }: Work) {
  const { practice } = compiled;
  const words = wording.get(one.language);
  if (!words) throw new Error('a plan without words has an error of its own');
  const { view } = numberedSheet({ plan: numbers.plan, numbers, last: null }, compiled, words);
  return planReading(numbers.plan, practice, sheetGrade(view, practice));
}

function noteText(one: CompiledPlan, numbers: PlanNumbers, work: Work): string {
  const { compiled, wording } = work;
  const { practice } = compiled;
  const words = wording.get(practice.language);
  const sheetWords = wording.get(one.language);
  if (!words || !sheetWords) throw new Error('a plan without words has an error of its own');
  const last = work.lastTimes.of(one);
  const { number } = numberedSheet({ plan: numbers.plan, numbers, last }, compiled, sheetWords);
  return visitNote({
    practice,
    numbers,
    sheetNumber: number,
    changes: last && {
      since: last.date,
      changes: changesSince(last, { practice, numbers }, words),
    },
    words,
  });
}

type Version = Pick<LastTime, 'practice' | 'numbers'>;

function changesSince(last: Version, now: Version, words: Words) {
  const version = ({ practice, numbers }: Version) => ({
    practice,
    plan: numbers.plan,
    numbers,
    sheet: null,
  });
  return planChanges(version(last), version(now), { words, renamed: new Map() });
}
