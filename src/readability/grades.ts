// The two grades of a text, from its counts alone: years of school, as in the United States.
import type { TextCounts } from './counts.ts';

type Counts = Pick<TextCounts, 'sentences' | 'words' | 'syllables'>;

/** Kincaid JP et al. Naval Technical Training Command, Research Branch Report 8-75, 1975. Null without a word. */
export function fleschKincaid({ sentences, words, syllables }: Counts): number | null {
  if (sentences === 0 || words === 0) return null;
  return 0.39 * (words / sentences) + 11.8 * (syllables / words) - 15.59;
}

/** What SMOG was made for; a shorter text is scaled to it, which is rough. */
export const SMOG_SENTENCES = 30;

/** McLaughlin GH. Journal of Reading 1969;12(8):639-646. Null without a sentence. */
export function smog(longWords: number, sentences: number): number | null {
  if (sentences === 0) return null;
  return 3.1291 + 1.043 * Math.sqrt(longWords * (SMOG_SENTENCES / sentences));
}
