// Words of a list that the vocabulary of the practice has, and what is said of one that it has not: what
// was meant, where that is sure, else how to add it.
import type { CheckName } from '../finding/checks.ts';
import { MUSCLES } from '../model/vocabulary.ts';
import { type At, entries, tellAt, textOf } from './at.ts';
import { wordHints } from './did-you-mean.ts';
import { idFrom } from './own-form.ts';

/** Ids of a list that the vocabulary has; each other one is told of. */
export function knownWords(
  at: At<readonly unknown[]> | undefined,
  check: CheckName,
  known: ReadonlySet<string> | ReadonlyMap<string, unknown>,
): readonly string[] | undefined {
  if (!at) return undefined;
  return entries(at).flatMap((one) => (isKnown(one, check, known) ? [textOf(one)] : []));
}

/** What each list of the vocabulary is called in a sentence, and how a word is added to it. */
const WHAT: Readonly<
  Partial<Record<CheckName, (id: string, word: string) => readonly [string, string]>>
> = {
  'unknown-muscle': (id, word) => ['muscle', `muscles: {${id}: ${word}}`],
  'unknown-kit': (id, word) => ['kit', `kit: {${id}: ${withArticle(word)}}`],
  'unknown-position': (id) => ['position', `positions: {${id}: …}`],
  'unknown-demand': (id) => ['demand', `demands: {${id}: …}`],
  'unknown-concern': (id, word) => [
    'concern',
    `concerns: {${id}: {name: ${word}, limits: […], positions: […]}}`,
  ],
};

/** The muscles of a group: rotator cuff, glutes, calf. */
function musclesOf(group: string): readonly string[] {
  return Object.keys(MUSCLES).filter((id) => MUSCLES[id as keyof typeof MUSCLES].group === group);
}

function withArticle(word: string): string {
  return `${/^[aeiou]/i.test(word) ? 'an' : 'a'} ${word}`;
}

export function isKnown(
  at: At<unknown>,
  check: CheckName,
  known: ReadonlySet<string> | ReadonlyMap<string, unknown>,
): boolean {
  const word = textOf(at);
  if (known.has(word)) return true;
  const id = idFrom(word);
  const [what, entry] = WHAT[check]?.(id, word.replaceAll('-', ' ')) ?? ['word', `${id}: …`];
  const says = `carryover does not know the ${what} "${word}"`;
  const ofGroup = check === 'unknown-muscle' ? musclesOf(id) : [];
  if (known.has(id)) tellAt(at, check, `${says}; write "${id}".`);
  else if (ofGroup.length > 0)
    tellAt(
      at,
      check,
      `${says}, which is a group; write those that are meant of ${ofGroup.join(', ')}.`,
    );
  else
    tellAt(at, check, `${says}; correct it, or add it in practice.yaml: "words: {${entry}}".`, {
      hints: wordHints(word, known.keys()),
    });
  return false;
}
