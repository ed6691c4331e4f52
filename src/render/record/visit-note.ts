// The account of the last visit as one paragraph, to be put into the notes: found, what changed since the
// sheet before, why, what it comes to now.
import type { PlanNumbers } from '../../compute/numbers.ts';
import type { Practice } from '../../model/practice.ts';
import { changesInShort } from '../changes/changes-in-short.ts';
import type { PlanChanges } from '../changes/plan-changes.ts';
import { shownOf } from '../sheet/shown-week.ts';
import { closed, minutesText } from '../words/amounts.ts';
import { scheduleText } from '../words/schedule-words.ts';
import { raised, type Words } from '../words/words.ts';

export interface VisitNoteInput {
  readonly practice: Practice;
  readonly numbers: PlanNumbers;
  readonly sheetNumber: string | null;
  /** Since the sheet that was handed over before; null where none is known. */
  readonly changes: { readonly since: string; readonly changes: PlanChanges } | null;
  readonly words: Words;
}

export function visitNote({
  practice,
  numbers,
  sheetNumber,
  changes,
  words,
}: VisitNoteInput): string {
  const { plan } = numbers;
  const visit = plan.visits.at(-1);
  const by = plan.by === null ? undefined : practice.practitioners.get(plan.by);
  const say = (key: string, values: Record<string, string>) => words.say(`note.${key}`, values);
  return [
    say('head', { date: visit?.date ?? plan.starts, plan: plan.id, title: plan.title }),
    ...(by ? [say('by', { by: closed(words, by) })] : []),
    ...(visit?.found ? [say('found', { found: closed(words, visit.found) })] : []),
    ...(changes === null ? [] : [changesText(changes, words)]),
    ...(visit?.why ? [say('why', { why: closed(words, visit.why) })] : []),
    ...sessionsText(numbers, words),
    plan.nextVisit === null
      ? words.say('note.no-next-visit')
      : say('next-visit', { date: plan.nextVisit }),
    ...(sheetNumber === null ? [] : [say('sheet', { number: sheetNumber })]),
  ].join(' ');
}

function changesText(
  { since, changes }: NonNullable<VisitNoteInput['changes']>,
  words: Words,
): string {
  const told = changesInShort(changes, words);
  return told.length === 0
    ? words.say('note.nothing-changed', { date: since })
    : words.say('note.changed', { date: since, changes: told.join(' ') });
}

/** "Strong ankle: on Monday and Thursday, 20 to 23 minutes." as the sheet has it now. */
function sessionsText(numbers: PlanNumbers, words: Words): readonly string[] {
  const { week, from } = shownOf(numbers);
  return week.sessions.map(({ session, name, schedule, timesADay, ms }) =>
    words.say('note.session', {
      name: raised(name ?? session.id),
      schedule: scheduleText(words, { schedule, timesADay, starts: numbers.plan.starts, from }),
      minutes: minutesText(words, ms),
    }),
  );
}
