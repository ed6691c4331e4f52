// The known word that is nearest to one that is not known.
import { distance } from 'fastest-levenshtein';

/** Words that people write for a key that is called otherwise here. */
const MEANT: Readonly<Record<string, string>> = {
  repetitions: 'reps',
  rep: 'reps',
  set: 'sets',
  weight: 'load',
  duration: 'time',
  seconds: 'hold',
  exercises: 'items',
  frequency: 'days',
  equipment: 'kit',
  goal: 'goals',
  side: 'sides',
  instructions: 'steps',
  description: 'steps',
  exercise: 'do',
  because: 'why',
  reason: 'why',
  title: 'name',
  upto: 'to',
  minutes: 'time',
  lvl: 'level',
  pain_max: 'pain_at_most',
  max_pain: 'pain_at_most',
  effort_max: 'effort_at_most',
  get_in_contact: 'get_in_touch',
};

/** Words for a side. A wrong side is the worst of slips, so that where left is one of the words none is guessed by its spelling. */
const SIDE_WORDS: ReadonlySet<string> = new Set([
  'left',
  'right',
  'affected',
  'other',
  'both',
  'none',
]);

/** The nearest known word, or undefined where none is near. */
export function nearest(word: string, known: Iterable<string>): string | undefined {
  const words = [...known];
  const lower = word.toLowerCase().replaceAll('_', '-');
  const exact = words.find((one) => one.toLowerCase().replaceAll('_', '-') === lower);
  if (exact !== undefined) return exact;
  const meant = MEANT[word.toLowerCase()];
  if (meant !== undefined && words.includes(meant)) return meant;
  const spelt = words.includes('left') ? words.filter((one) => !SIDE_WORDS.has(one)) : words;
  let best: string | undefined;
  let bestDistance = Math.max(1, Math.floor(word.length / 3)) + 1;
  for (const one of spelt) {
    const folded = one.toLowerCase().replaceAll('_', '-');
    // Two letters that changed places are one slip, not two.
    const away = isSwapped(lower, folded) ? 1 : distance(lower, folded);
    if (away < bestDistance) {
      best = one;
      bestDistance = away;
    }
  }
  if (best !== undefined) return best;
  return spelt.find(
    (one) =>
      lower.length >= 3 && (one.startsWith(lower) || (one.length >= 3 && lower.startsWith(one))),
  );
}

function isSwapped(a: string, b: string): boolean {
  const first = [...a].findIndex((letter, i) => letter !== b[i]);
  return (
    a.length === b.length &&
    first !== -1 &&
    a.slice(0, first) + a[first + 1] + a[first] + a.slice(first + 2) === b
  );
}

const MOST_SHOWN = 30;

/** The hint for an unknown word: one that is near, else what there is. */
export function wordHints(word: string, known: Iterable<string>): readonly string[] {
  const words = [...known];
  const near = nearest(word, words);
  return near === undefined ? knownHint(words) : [`Did you mean "${near}"?`];
}

/** The hint that lists what there is. */
export function knownHint(words: readonly string[]): readonly string[] {
  if (words.length === 0) return [];
  const shown =
    words.length <= MOST_SHOWN
      ? words.join(', ')
      : `${words.slice(0, MOST_SHOWN).join(', ')} and ${words.length - MOST_SHOWN} more`;
  return [`Known here: ${shown}.`];
}
