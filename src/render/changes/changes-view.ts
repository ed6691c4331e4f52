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
    groups: groupsOf(all, words),
    none: noneSentence(presence, all.length + effect.length + troubles.length, words),
    count: words.say('changes.count', {
      n: all.length,
      count: String(all.length),
      shown: String(all.filter(({ isOnSheet }) => isOnSheet).length),
    }),
    effects: effectTables(changes, words),
  };
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
  const say = ({ id, name }: Named) => words.say(`changes.subjects.${kind}`, { id, name });
  if (!before || !after) {
    const subject = say((before ?? after) as Named);
    return words.say(before ? 'changes.gone-subject' : 'changes.new-subject', { subject });
  }
  const [then, now] = [say(before), say(after)];
  return then === now ? now : words.say('changes.both-subjects', { before: then, after: now });
}

function lineOf(change: JudgedChange, words: Words): ChangeLine {
  const { isOnSheet } = change;
  return {
    ...textOf(change, words),
    remark: isOnSheet === false ? words.say('changes.off-sheet') : null,
  };
}

function textOf(
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
