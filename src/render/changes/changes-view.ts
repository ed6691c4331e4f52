// The changes of a plan as finished words, for terminal, Markdown and HTML alike.
import type { TableView } from '../record/table-view.ts';
import { NOTHING } from '../words/plain-number.ts';
import type { Words } from '../words/words.ts';
import { aspectLine } from './aspect-line.ts';
import type { Change, JudgedChange, Named, Step, Subject } from './change.ts';
import { effectTables } from './effect-tables.ts';
import type { PlanChanges } from './plan-changes.ts';
import { weeksText } from './plan-facts.ts';

/** The changes of one or more plans as a page. */
export interface ChangesPageView {
  readonly language: string;
  readonly direction: 'ltr' | 'rtl';
  readonly paper: 'a4' | 'letter';
  readonly title: string;
  readonly plans: readonly ChangesView[];
}

export interface ChangesView {
  readonly title: string;
  /** Which versions are compared. */
  readonly between: string;
  /** Whether the sheet changes. */
  readonly sheet: string;
  /** What could not be compared, a sentence each. */
  readonly troubles: readonly string[];
  readonly groups: readonly ChangeGroup[];
  /** Said where there is no change; null where there is one. */
  readonly none: string | null;
  /** "3 changes, 2 of them on the sheet." */
  readonly count: string;
  /** Said where weeks that are over are left out. */
  readonly over: string | null;
  /** What it comes to: minutes by week, sets by muscle; none where no number changes. */
  readonly effects: readonly TableView[];
}

/** The changes of one thing: a session, an exercise, the plan itself. */
export interface ChangeGroup {
  readonly heading: string;
  /** Whether it came or went as a whole. */
  readonly kind: 'new' | 'gone' | 'changed';
  readonly lines: readonly ChangeLine[];
}

export interface ChangeLine {
  /** "sets, left only: 2 → 3 (weeks 2 to 4)"; of a list, its name alone. */
  readonly text: string;
  /** Of a list: "taken out: …", "new: …". */
  readonly details: readonly string[];
  /** "not on the sheet"; null where it shows there, or that cannot be told. */
  readonly remark: string | null;
}

export interface ChangesInput {
  readonly plan: { readonly id: string; readonly title: string };
  readonly from: string;
  readonly to: string;
  readonly changes: PlanChanges;
  readonly hasSheet: { readonly before: boolean; readonly after: boolean };
  readonly troubles: readonly string[];
  /** In place of changes, where one version has no such plan. */
  readonly presence: 'both' | 'new' | 'gone';
}

export function changesView(input: ChangesInput, words: Words): ChangesView {
  const { plan, from, to, changes, troubles, presence } = input;
  const { changes: all, effect } = changes;
  return {
    title: words.say('changes.title', { title: plan.title }),
    between: words.say('changes.plan-between', { plan: plan.id, from, to }),
    sheet: sheetSentence(input, words),
    troubles,
    groups: groupsOf(
      all.map((change) => fromWeek(change, changes.firstWeek)),
      words,
    ),
    over:
      changes.firstWeek > 1 && hasPast(changes)
        ? words.say('changes.over', { week: String(changes.firstWeek) })
        : null,
    none: noneSentence(presence, all.length + effect.length + troubles.length, words),
    count: words.say('changes.count', {
      n: all.length,
      count: String(all.length),
      shown: String(all.filter(({ isOnSheet }) => isOnSheet).length),
    }),
    effects: effectTables(
      {
        ...changes,
        effect: effect
          .filter(isAhead(changes))
          .map((change) => fromWeek(change, changes.firstWeek)),
      },
      words,
    ),
  };
}

/** Weeks that are over are of no use to a reader, unless nothing else changed. */
export function fromWeek<T extends Change>(change: T, first: number): T {
  const steps = change.steps.flatMap((step) => {
    if (step.weeks === null || step.weeks[0] >= first) return [step];
    const [, last] = step.weeks;
    return last < first ? [] : [{ ...step, weeks: [first, last] as const }];
  });
  return steps.length === 0 ? change : { ...change, steps };
}

function isAhead({ firstWeek }: PlanChanges): (change: Change) => boolean {
  return ({ steps }) => steps.some(({ weeks }) => weeks === null || weeks[1] >= firstWeek);
}

function hasPast({ changes, effect, firstWeek }: PlanChanges): boolean {
  return [...changes, ...effect].some(({ steps }) =>
    steps.some(({ weeks }) => weeks !== null && weeks[0] < firstWeek),
  );
}

function noneSentence(
  presence: ChangesInput['presence'],
  told: number,
  words: Words,
): string | null {
  if (presence !== 'both') return words.say(`changes.${presence}-plan`);
  return told === 0 ? words.say('changes.no-change') : null;
}

function sheetSentence(
  { hasSheet: { before, after }, changes }: ChangesInput,
  words: Words,
): string {
  if (!before && !after) return words.say('changes.sheet-none');
  if (!before) return words.say('changes.sheet-new');
  if (!after) return words.say('changes.sheet-gone');
  const differs = changes.changes.some(({ isOnSheet }) => isOnSheet);
  return words.say(differs ? 'changes.sheet-differs' : 'changes.sheet-same');
}

function groupsOf(changes: readonly JudgedChange[], words: Words): readonly ChangeGroup[] {
  const groups = new Map<string, ChangeGroup & { readonly lines: ChangeLine[] }>();
  for (const change of changes) {
    const key = JSON.stringify(change.subject);
    const group = groups.get(key) ?? {
      heading: headingOf(change.subject, words),
      kind: kindOf(change.subject),
      lines: [],
    };
    groups.set(key, group);
    group.lines.push(lineOf(change, words));
  }
  return [...groups.values()];
}

function kindOf({ before, after }: Subject): ChangeGroup['kind'] {
  if (before && after) return 'changed';
  return after ? 'new' : 'gone';
}

function headingOf({ kind, before, after }: Subject, words: Words): string {
  const said = (id: string, name: string) => words.say(`changes.subjects.${kind}`, { id, name });
  const both = (one: string, other: string) =>
    one === other ? other : words.say('changes.step', { before: one, after: other });
  if (before && after) return said(both(before.id, after.id), both(before.name, after.name));
  const { id, name } = (before ?? after) as Named;
  return words.say(before ? 'changes.gone-subject' : 'changes.new-subject', {
    subject: said(id, name),
  });
}

function lineOf(change: JudgedChange, words: Words): ChangeLine {
  const { isOnSheet } = change;
  return {
    ...changeText(change, words),
    remark: isOnSheet === false ? words.say('changes.off-sheet') : null,
  };
}

/** A change without its subject; of a list, its name, then what is gone and what is new. */
export function changeText(
  { aspect, side, steps }: Change,
  words: Words,
): Pick<ChangeLine, 'text' | 'details'> {
  const [only] = steps;
  // The heading says that it came or went; the line says what it is.
  if (aspect === 'presence' && only)
    return { text: only.after[0] ?? only.before[0] ?? '', details: [] };
  const isList = steps.some(({ before, after }) => before.length > 1 || after.length > 1);
  const details = isList
    ? steps.flatMap(({ before, after }) => [
        ...before.map((one) => words.say('changes.gone', { before: one })),
        ...after.map((one) => words.say('changes.new', { after: one })),
      ])
    : [];
  const text = isList ? '' : steps.map((step) => stepText(step, words)).join('; ');
  return { text: aspectLine(aspect, side, text, words), details };
}

function stepText({ weeks, before, after }: Step, words: Words): string {
  const [then, now] = [before[0], after[0]];
  const text =
    then === undefined
      ? words.say('changes.new', { after: now ?? NOTHING })
      : now === undefined
        ? words.say('changes.gone', { before: then })
        : then === now
          ? words.say('changes.changed', { text: now })
          : words.say('changes.step', { before: then, after: now });
  if (weeks === null) return text;
  return words.say('changes.in-weeks', { text, weeks: weeksText(weeks[0], weeks[1], words) });
}
