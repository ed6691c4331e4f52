// Sentences, words and syllables of English prose, counted as the authors of the formulas count them.
// Flesch R. How to Write Plain English. New York: Harper & Row, 1979, chapter 2 (read in copies):
// hyphenated words, contractions and figures are one word each; a figure has one syllable; a colon,
// semicolon or dash within a sentence ends none; headings and titles are not counted.
import { syllablesOf } from './syllables.ts';

export interface TextCounts {
  readonly sentences: number;
  readonly words: number;
  readonly syllables: number;
  /** Words of three syllables or more, each as often as it comes. */
  readonly longWords: readonly string[];
}

/** McLaughlin's "polysyllable". */
const LONG = 3;
/** Stops that end a sentence, with what closes after them, before a new beginning. */
const SENTENCE_END = /(?<=[.!?…]["”’')\]]*)\s+(?=["“‘'([]*[\p{Lu}\p{N}])/u;
/** A slash and a long dash part words; a hyphen does not. */
const BETWEEN_WORDS = /[\s/–—]+/u;

/** The sentences of texts; the end of a text ends a sentence, with a stop or without. */
export function sentencesIn(texts: readonly string[]): readonly string[] {
  return texts.flatMap((text) =>
    text
      .trim()
      .split(SENTENCE_END)
      .filter((one) => /[\p{L}\p{N}]/u.test(one)),
  );
}

/** The counts of sentences together. */
export function countsOf(sentences: readonly string[]): TextCounts {
  const words = sentences.flatMap(wordsOf);
  return {
    sentences: sentences.length,
    words: words.length,
    syllables: words.reduce((sum, { syllables }) => sum + syllables, 0),
    longWords: words.filter(({ syllables }) => syllables >= LONG).map(({ word }) => word),
  };
}

interface Word {
  readonly word: string;
  readonly syllables: number;
}

/** A sheet says the same words again and again. */
const known = new Map<string, Word | null>();

function wordsOf(sentence: string): readonly Word[] {
  return sentence.split(BETWEEN_WORDS).flatMap((written) => {
    let word = known.get(written);
    if (word === undefined) {
      word = wordIn(written);
      known.set(written, word);
    }
    return word ?? [];
  });
}

/** Without the signs around it; null where there are only signs. */
function wordIn(written: string): Word | null {
  const word = written.replace(/^[^\p{L}\p{N}]+|[^\p{L}\p{N}]+$/gu, '');
  return word === '' ? null : { word, syllables: syllablesIn(word) };
}

/** A figure is no hard word, however it is said: "24", "10-minute", "4kg". */
function syllablesIn(word: string): number {
  if (/\p{N}/u.test(word)) return 1;
  return word.split('-').reduce((sum, part) => sum + syllablesOf(part), 0);
}
