// Does an exercise, or a sheet as it is printed, read above the grade that is asked for? English
// alone: the formulas were made for it. What a sheet prints is the render floor's, and handed in.
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding, type RelatedPlace } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import type { Exercise, Level } from '../model/exercise.ts';
import type { Plan } from '../model/plan.ts';
import type { Practice } from '../model/practice.ts';
import type { PrintedText } from '../model/printed-text.ts';
import { SMOG_SENTENCES } from '../readability/grades.ts';
import {
  byWeight,
  type TextGrade,
  textGrade,
  type WeighedSentence,
} from '../readability/text-grade.ts';
import { isEnglish } from './english.ts';
import type { Settings } from './plan-check.ts';
import { listed } from './wording.ts';

export const READING_GRADE_SETTINGS = {
  above: {
    kind: 'count',
    byDefault: 6,
    source: 'Weiss BD. Health literacy: a manual for clinicians. Chicago: AMA, 2003 and 2007.',
  },
} as const satisfies Settings;

/** As many sentences as can be mended in one go. */
const SHOWN = 3;

/** The grade of an exercise: that of its hardest level. Null where there is nothing to read. */
function exerciseGrade(
  { levels }: Exercise,
  practice: Practice,
): { readonly level: Level; readonly grade: TextGrade } | null {
  const graded = levels.flatMap((level) => {
    const grade = textGrade(levelTexts(level), practice.plainWords);
    return grade ? [{ level, grade }] : [];
  });
  return graded.toSorted((a, b) => b.grade.fleschKincaid - a.grade.fleschKincaid)[0] ?? null;
}

/** How the sheet of a plan reads, and each of its exercises; those that are not in English have no grade. */
export interface PlanReading {
  readonly sheet: TextGrade | null;
  readonly exercises: readonly { readonly id: string; readonly grade: TextGrade }[];
}

export function planReading(plan: Plan, practice: Practice, sheet: TextGrade | null): PlanReading {
  const exercises = isEnglish(practice.language) ? exercisesOf(plan) : [];
  return {
    sheet,
    exercises: exercises.flatMap((one) => {
      const hardest = exerciseGrade(one, practice);
      return hardest ? [{ id: one.id, grade: hardest.grade }] : [];
    }),
  };
}

/** One finding an exercise, at its hardest level. */
export function readingGradeOfExercises(
  exercises: readonly Exercise[],
  practice: Practice,
  above: number,
): readonly Finding[] {
  if (!isEnglish(practice.language)) return [];
  return exercises.flatMap((exercise) => {
    const hardest = exerciseGrade(exercise, practice);
    if (!hardest || !isAbove(hardest.grade, above)) return [];
    const { level, grade } = hardest;
    const what =
      exercise.levels.length === 1 ? 'This exercise' : `Level "${level.id}" of this exercise`;
    return [
      gradeFinding({
        what,
        grade,
        above,
        place: exercise.place,
        texts: levelTexts(level),
        printed: exercise.printed,
        plain: practice.plainWords,
      }),
    ];
  });
}

/** The finding on a sheet, of which `texts` are the sentences as printed in English. */
export function readingGradeOfSheet(
  { plan, texts }: { readonly plan: Plan; readonly texts: readonly string[] },
  practice: Practice,
  above: number,
): readonly Finding[] {
  const grade = textGrade(texts, practice.plainWords);
  if (!grade || !isAbove(grade, above)) return [];
  const printed = [plan, practice, ...exercisesOf(plan)].flatMap((one) => one.printed);
  const { plainWords: plain } = practice;
  const what = 'The sheet as printed';
  const { place } = plan;
  return [{ ...gradeFinding({ what, grade, above, place, texts, printed, plain }), scope: [plan] }];
}

/** Each once, in the order of the plan. */
function exercisesOf({ sessions }: Plan): readonly Exercise[] {
  const all = sessions.flatMap(({ parts }) =>
    parts.flatMap(({ items }) => items.map(({ exercise }) => exercise)),
  );
  return [...new Set(all)];
}

/** "4.2 by Flesch-Kincaid and 6.1 by SMOG". */
export function gradeText({ fleschKincaid, smog, counts }: TextGrade): string {
  const { sentences } = counts;
  const rough = sentences < SMOG_SENTENCES ? ` (rough, from ${sentences} sentences)` : '';
  return `${fleschKincaid.toFixed(1)} by Flesch-Kincaid and ${smog.toFixed(1)} by SMOG${rough}`;
}

function levelTexts({ setup, steps, feel, avoid, easier, harder }: Level): readonly string[] {
  return [...setup, ...steps, feel, ...avoid, easier, harder].filter((one) => one !== null);
}

/** As shown, to one decimal. SMOG judges no text shorter than those that it was made for. */
function isAbove({ fleschKincaid, smog, counts }: TextGrade, above: number): boolean {
  const judges = counts.sentences < SMOG_SENTENCES ? [fleschKincaid] : [fleschKincaid, smog];
  return judges.some((grade) => isOver(grade, above));
}

function isOver(grade: number, above: number): boolean {
  return Number(grade.toFixed(1)) > above;
}

interface Graded {
  readonly what: string;
  readonly grade: TextGrade;
  readonly above: number;
  readonly place: Place;
  readonly texts: readonly string[];
  /** What the files say of it, to point at. */
  readonly printed: readonly PrintedText[];
  readonly plain: readonly string[];
}

function gradeFinding({ what, grade, above, place, texts, printed, plain }: Graded): Finding {
  return finding({
    check: 'reading-grade',
    severity: severityOf('reading-grade'),
    message: `${what} reads at grade ${gradeText(grade)}, above ${above}; write shorter sentences, and shorter words.`,
    place,
    related: hardestPlaces(hardSentences({ grade, above, texts, plain }), printed),
  });
}

/** Those above the grade, by the formula that finds the text above it, the one that weighs most first. */
function hardSentences({
  grade: { fleschKincaid },
  above,
  texts,
  plain,
}: Pick<Graded, 'grade' | 'above' | 'texts' | 'plain'>): readonly WeighedSentence[] {
  const by = isOver(fleschKincaid, above) ? 'fleschKincaid' : 'smog';
  // "Lower slowly" is above the grade by its sums, and not hard.
  const isHard = ({ grade, weight }: WeighedSentence) =>
    grade[by] > above && (weight > 0 || grade.counts.longWords.length > 0);
  return byWeight(texts, plain, by).filter(isHard);
}

/** The hardest sentences that stand in the files; those of a words pack are not hers to mend here. */
function hardestPlaces(
  all: readonly WeighedSentence[],
  printed: readonly PrintedText[],
): readonly RelatedPlace[] {
  const running = printed.filter(({ key }) => !['name', 'title'].includes(key));
  const placed = all.flatMap((one) => {
    const from = running.filter(({ text }) => isFrom(one.text, text));
    // "Sit" is a part of much; what is nearest in length is meant.
    const apart = ({ text }: PrintedText) => Math.abs(text.length - one.text.length);
    const [nearest] = from.toSorted((a, b) => apart(a) - apart(b));
    return nearest ? [{ ...one, place: nearest.place }] : [];
  });
  return placed.slice(0, SHOWN).map(({ text, grade: { fleschKincaid, counts }, place }) => {
    const long = [...new Set(counts.longWords)].map((word) => `"${word}"`);
    const words = counts.words === 1 ? '1 word' : `${counts.words} words`;
    const longWords = long.length === 0 ? '' : `, long: ${listed(long, 'and')}`;
    const message = `"${beginning(text)}" Grade ${fleschKincaid.toFixed(1)}: ${words}${longWords}.`;
    return { message, place };
  });
}

const SHOWN_SIGNS = 60;

/** As much of a sentence as tells which one it is. */
function beginning(text: string): string {
  if (text.length <= SHOWN_SIGNS) return text;
  return `${text.slice(0, text.lastIndexOf(' ', SHOWN_SIGNS))} …`;
}

/** Whether a sentence as printed comes from a text of a file: either may have something round it. */
function isFrom(sentence: string, text: string): boolean {
  const [printed, written] = [bare(sentence), bare(text)];
  return printed.includes(written) || written.includes(printed);
}

function bare(text: string): string {
  return text
    .trim()
    .replace(/[.!?…]+$/, '')
    .toLowerCase();
}
