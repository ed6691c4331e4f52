// How a sheet and its exercises read, in the published form (schemas/output.schema.json, ShownReading).
import type { PlanReading } from '../../check/reading-grade.ts';
import type { TextGrade } from '../../readability/text-grade.ts';

/** `reading` of `carryover show --format json`; a grade is null where the words are not English. */
export function readingJson({ sheet, exercises }: PlanReading): object {
  return {
    sheet: sheet && gradeJson(sheet),
    exercises: Object.fromEntries(exercises.map(({ id, grade }) => [id, gradeJson(grade)])),
  };
}

function gradeJson({ fleschKincaid, smog, counts }: TextGrade): object {
  const { sentences, words, syllables, longWords } = counts;
  return {
    flesch_kincaid: fleschKincaid,
    smog,
    sentences,
    words,
    syllables,
    long_words: longWords.length,
  };
}
