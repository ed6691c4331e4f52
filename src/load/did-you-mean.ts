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
  get_in_contact: 'get_in_touch',
};

/** The nearest known word, or undefined where none is near. */
export function nearest(word: string, known: Iterable<string>): string | undefined {
  const words = [...known];
  const lower = word.toLowerCase().replaceAll('_', '-');
  const exact = words.find((one) => one.toLowerCase().replaceAll('_', '-') === lower);
  if (exact !== undefined) return exact;
  const meant = MEANT[word.toLowerCase()];
  if (meant !== undefined && words.includes(meant)) return meant;
  let best: string | undefined;
  let bestDistance = Math.max(1, Math.floor(word.length / 3)) + 1;
  for (const one of words) {
    const folded = one.toLowerCase().replaceAll('_', '-');
    // Two letters that changed places are one slip, not two.
    const away = isSwapped(lower, folded) ? 1 : distance(lower, folded);
    if (away < bestDistance) {
      best = one;
      bestDistance = away;
    }
  }
  if (best !== undefined) return best;
  return words.find(
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
  if (near !== undefined) return [`Did you mean "${near}"?`];
  if (words.length === 0) return [];
  const shown =
    words.length <= MOST_SHOWN
      ? words.join(', ')
      : `${words.slice(0, MOST_SHOWN).join(', ')} and ${words.length - MOST_SHOWN} more`;
  return [`Known here: ${shown}.`];
}
