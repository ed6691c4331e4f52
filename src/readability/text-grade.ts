// How hard an English text is to read, as a whole and by sentence: which of its sentences make it so.
import { countsOf, sentencesIn, type TextCounts } from './counts.ts';
import { fleschKincaid, smog } from './grades.ts';
import { type Masking, maskingOf } from './plain-words.ts';

export interface TextGrade {
  readonly fleschKincaid: number;
  /** Scaled where there are fewer than the sentences that it was made for. */
  readonly smog: number;
  readonly counts: TextCounts;
}

export interface WeighedSentence {
  readonly text: string;
  readonly grade: TextGrade;
  /** By how much the grade of the whole falls without it. */
  readonly weight: number;
}

/** Words of `plain` do not count as hard. Null where there is nothing to read. */
export function textGrade(texts: readonly string[], plain: readonly string[]): TextGrade | null {
  const masked = maskingOf(plain);
  return gradeOf(countsOf(sentencesIn(texts).map(masked)));
}

/** The sentences, the one first without which the grade would be lowest. */
export function byWeight(
  texts: readonly string[],
  plain: readonly string[],
  by: 'fleschKincaid' | 'smog',
): readonly WeighedSentence[] {
  const sentences = measured(texts, maskingOf(plain));
  const all = sum(sentences.map(({ counts }) => counts));
  const graded = (sums: Sums) =>
    (by === 'smog' ? smog(sums.long, sums.sentences) : fleschKincaid(sums)) ?? 0;
  return sentences
    .map((one) => ({ ...one, weight: graded(all) - graded(without(all, one.counts)) }))
    .sort((a, b) => b.weight - a.weight)
    .flatMap(({ text, counts, weight }) => {
      const grade = gradeOf(counts);
      return grade ? [{ text, grade, weight }] : [];
    });
}

/** Each sentence once, with its counts. */
function measured(texts: readonly string[], masked: Masking) {
  const distinct = [...new Set(sentencesIn(texts))];
  return distinct.map((text) => ({ text, counts: countsOf([masked(text)]) }));
}

function gradeOf(counts: TextCounts): TextGrade | null {
  const byFleschKincaid = fleschKincaid(counts);
  const bySmog = smog(counts.longWords.length, counts.sentences);
  if (byFleschKincaid === null || bySmog === null) return null;
  return { fleschKincaid: byFleschKincaid, smog: bySmog, counts };
}

type Sums = Omit<TextCounts, 'longWords'> & { readonly long: number };

function sum(all: readonly TextCounts[]): Sums {
  const total = (part: (counts: TextCounts) => number) => all.reduce((n, one) => n + part(one), 0);
  return {
    sentences: total(({ sentences }) => sentences),
    words: total(({ words }) => words),
    syllables: total(({ syllables }) => syllables),
    long: total(({ longWords }) => longWords.length),
  };
}

function without(all: Sums, one: TextCounts): Sums {
  return {
    sentences: all.sentences - one.sentences,
    words: all.words - one.words,
    syllables: all.syllables - one.syllables,
    long: all.long - one.longWords.length,
  };
}
