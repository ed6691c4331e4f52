// A word where only certain words belong: what was meant, where that is sure. A side is only ever taken
// from its own word or from what it means; never from a spelling that is near to one.
import type { CheckName } from '../finding/checks.ts';
import { nearest } from './did-you-mean.ts';
import { dayNamed } from './own-days.ts';

export interface WordMistake {
  readonly check: CheckName;
  readonly message: string;
  readonly hints?: readonly string[];
}

const OF_THE_BODY =
  '(?: (?:side|one|arm|leg|shoulder|elbow|wrist|hand|hip|thigh|knee|calf|ankle|foot)s?)?';

const says = (words: string) => new RegExp(`^(?:the )?(?:${words})${OF_THE_BODY}$`, 'i');

/** Words that mean one of those that a key takes, by key. */
const MEANT: Readonly<Record<string, readonly (readonly [RegExp, string])[]>> = {
  only: [
    [says('left'), 'left'],
    [says('right'), 'right'],
    [
      says('un-?affected|non-?affected|uninjured|uninvolved|healthy|sound|good|opposite|other'),
      'other',
    ],
    [says('affected|injured|involved|sore|painful|bad|operated'), 'affected'],
  ],
  affected: [
    [says('left'), 'left'],
    [says('right'), 'right'],
    [says('both|bilateral'), 'both'],
    [says('neither|no'), 'none'],
  ],
  sides: [
    [says('unilateral|single|one|each|alternat(?:e|ing)'), 'each'],
    [says('bilateral|both|together'), 'both'],
  ],
};

/** `isEntry` where the word is one of a list, so that it is written without the key. */
export function unknownWord(
  name: string,
  word: string,
  known: readonly string[],
  isEntry = false,
): WordMistake {
  const takes = `"${name}" says "${word}", but takes one of ${known.join(', ')}`;
  if (name === 'sides' && /^(left|right)$/i.test(word))
    return {
      check: 'unknown-word',
      message: `${takes}.`,
      hints: [
        `What is done one side at a time is "sides: each" here; "only: ${word.toLowerCase()}" goes to the exercise in the plan.`,
      ],
    };
  const own = MEANT[name]?.find(([pattern, meant]) => pattern.test(word) && known.includes(meant));
  const meant = own?.[1] ?? (name === 'days' ? dayNamed(word) : undefined);
  if (meant !== undefined)
    return {
      check: 'unknown-word',
      message: `${takes}; write "${isEntry ? '' : `${name}: `}${meant}".`,
      hints: [],
    };
  const near = nearest(word, known);
  return {
    check: 'unknown-word',
    message: `${takes}.`,
    hints: near === undefined ? [] : [`Did you mean "${near}"?`],
  };
}
