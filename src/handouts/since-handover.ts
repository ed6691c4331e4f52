// What was handed over, held against what the plans say now: by the number of the sheet, so that only
// what a person reads counts.

import { type CompiledPlan, errorsOf } from '../build.ts';
import { settled } from '../check/accept.ts';
import { asSet } from '../check/plan-checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { Folder } from '../load/folder.ts';
import type { RegisterRow } from '../load/register.ts';
import type { LastTime } from '../render/sheet/news-input.ts';
import type { Words } from '../render/words/words.ts';
import { numberedSheet, type Printing } from './pages.ts';
import { wordsOf } from './wording.ts';

/** The number that a plan's sheet has now, or what keeps it from having one. */
export type SheetNow =
  /** Whether a row's sheet still says what the plan says. */
  | { readonly number: string; readonly isCurrent: boolean }
  | { readonly lacks: 'sound plan' | 'words' | 'history' };

/** Says it for a plan, in the language of a row where this machine does not know the person's. */
export function sheetsNow(
  rows: readonly RegisterRow[],
  printing: Printing,
  folder: Folder,
): (row: RegisterRow, one: CompiledPlan) => SheetNow {
  const { compiled } = printing;
  const others = new Map<string, Words | null>();
  const wordsIn = (language: string, { place }: RegisterRow) => {
    if (!others.has(language))
      others.set(language, wordsOf(folder, language, place, compiled.practice).value);
    return others.get(language) ?? null;
  };
  return (row, one) => {
    const { plan, numbers } = one;
    if (!plan || !numbers || errorsOf(one, compiled.findings).length > 0)
      return { lacks: 'sound plan' };
    // people.yaml is not on every machine; without it the row tells what the plan does not.
    const isUntold = plan.handoutLanguage === null && compiled.people.size === 0;
    const language = isUntold ? row.language : one.language;
    const words = printing.wording.get(language) ?? wordsIn(language, row);
    if (!words) return { lacks: 'words' };
    const numberOf = (last: LastTime | null) =>
      numberedSheet({ plan, numbers, last }, compiled, words).number;
    const number = numberOf(printing.lastTimes.of(one));
    // The first sheet of all says of nothing that it is new; of a later one that is part of its number.
    if (row === firstOf(rows, row.plan)) return { number, isCurrent: numberOf(null) === row.sheet };
    const isCurrent = number === row.sheet;
    if (!isCurrent && printing.lastTimes.lost(one)?.hasGit) return { lacks: 'history' };
    return { number, isCurrent };
  };
}

/** A note at each open plan whose sheet is not the one last handed over. */
export function changedSinceHandover(
  rows: readonly RegisterRow[],
  printing: Printing,
  folder: Folder,
): readonly Finding[] {
  if (rows.length === 0) return [];
  const { practice, plans } = printing.compiled;
  if (practice.checks.get('changed-since-handover')?.severity === 'off') return [];
  const last = lastByPlan(rows);
  const now = sheetsNow(rows, printing, folder);
  return plans.flatMap((one) => {
    const row = last.get(one.id);
    if (!row || !one.plan || one.plan.closed) return [];
    const sheet = now(row, one);
    if (!('number' in sheet) || sheet.isCurrent) return [];
    const changed = finding({
      check: 'changed-since-handover',
      severity: 'note',
      place: one.plan.place,
      message: `The sheet handed over on ${row.date} (${row.sheet}) is not what plan ${one.id} says now (sheet ${sheet.number}); hand over the new one.`,
      related: [{ message: 'Handed over here.', place: row.place }],
      scope: [one.plan],
    });
    return settled(asSet([changed], practice), one.plan);
  });
}

/** The earliest handover of a plan. */
function firstOf(rows: readonly RegisterRow[], plan: string): RegisterRow | undefined {
  const own = rows.filter((row) => row.plan === plan);
  return own.find((row) => own.every((other) => other.date >= row.date));
}

/** By date, then by place in the file, which a merge of two branches leaves to chance within a day. */
function lastByPlan(rows: readonly RegisterRow[]): ReadonlyMap<string, RegisterRow> {
  const last = new Map<string, RegisterRow>();
  for (const row of rows) {
    const before = last.get(row.plan);
    if (!before || row.date >= before.date) last.set(row.plan, row);
  }
  return last;
}
