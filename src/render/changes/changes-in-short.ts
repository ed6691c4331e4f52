// The changes that an account of a visit names: what is asked of the person from now on, without ids, and
// without what only the program needs.
import { closed } from '../words/amounts.ts';
import type { Words } from '../words/words.ts';
import type { Change } from './change.ts';
import { changeText, fromWeek } from './changes-view.ts';
import type { PlanChanges } from './plan-changes.ts';

const TOLD = new Set([
  'presence',
  'exercise',
  'level',
  'side',
  'split',
  'sets',
  'reps',
  'hold',
  'time',
  'load',
  'days',
  'place',
  'in-weeks',
  'rounds',
  'goals',
  'precautions',
  'stop-if',
  'pain',
  'affected',
  'weeks',
  'concerns',
]);

/** One sentence for each thing that changed. */
export function changesInShort(
  { changes, firstWeek }: PlanChanges,
  words: Words,
): readonly string[] {
  const bySubject = new Map<string, { heading: string; texts: string[] }>();
  for (const change of changes) {
    if (!TOLD.has(change.aspect) && change.subject.kind !== 'exercise') continue;
    const key = JSON.stringify(change.subject);
    const group = bySubject.get(key) ?? { heading: headingOf(change, words), texts: [] };
    bySubject.set(key, group);
    const { text, details } = changeText(onlyFirst(fromWeek(change, firstWeek)), words);
    group.texts.push([text, details.join('; ')].filter((part) => part !== '').join(' '));
  }
  return [...bySubject.values()].map(({ heading, texts }) =>
    closed(
      words,
      heading === ''
        ? texts.join('; ')
        : words.say('changes.line', { aspect: heading, text: texts.join('; ') }),
    ),
  );
}

/** What holds from now on; later steps stand on the sheet. */
function onlyFirst<T extends Change>(change: T): T {
  const [first] = change.steps;
  return first && change.steps.length > 1 ? { ...change, steps: [first] } : change;
}

function headingOf({ subject: { kind, before, after } }: Change, words: Words): string {
  if (kind === 'plan' || kind === 'practice') return '';
  const name = after?.name ?? before?.name ?? '';
  if (before && after) return name;
  return words.say(before ? 'changes.gone-subject' : 'changes.new-subject', { subject: name });
}
