// The files beside exercises that have their words in other languages: heel-raise.es.yaml beside
// heel-raise.yaml. A broken one costs only the sheets in its language.
import { type Finding, finding } from '../finding/finding.ts';
import { fileOnly } from '../finding/place.ts';
import type { Exercise } from '../model/exercise.ts';
import { type ExerciseTexts, levelTexts } from '../model/translation.ts';
import { wordHints } from './did-you-mean.ts';
import type { Folder } from './folder.ts';
import { packLanguages } from './templates.ts';

const NAME = /^(.*\/)?([^/]+)\.([A-Za-z]{2,8}(?:-[A-Za-z0-9]{1,8})*)\.yaml$/;

export interface LoadedTranslation {
  readonly file: string;
  /** Null where too little could be read. */
  readonly texts: ExerciseTexts | null;
  readonly findings: readonly Finding[];
}

/** Whether a path below exercises/ is no exercise, but the words of one in a language. */
export function isTranslation(path: string): boolean {
  return NAME.test(path);
}

export interface TranslationFiles {
  /** By the exercise's path, then by language: the file. */
  readonly beside: ReadonlyMap<string, ReadonlyMap<string, string>>;
  /** Those that stand beside no exercise, or are of no language. */
  readonly findings: readonly Finding[];
}

/** Which translations lie in the folder; none is read yet. */
export function translationFiles(folder: Folder, exercises: readonly string[]): TranslationFiles {
  const beside = new Map<string, Map<string, string>>();
  const findings: Finding[] = [];
  let languages: readonly string[] | undefined;
  for (const { path } of folder.list('exercises')) {
    const [, under = '', id = '', language = ''] = NAME.exec(path) ?? [];
    if (id === '') continue;
    languages ??= packLanguages(folder);
    const exercise = `${under}${id}.yaml`;
    if (!exercises.includes(exercise)) {
      const ids = exercises.map((one) => one.slice(one.lastIndexOf('/') + 1, -'.yaml'.length));
      findings.push(
        finding({
          check: 'unknown-exercise',
          severity: 'error',
          place: fileOnly(path),
          message: `This is named as the words of "${id}" in "${language}", but there is no exercise ${id}.yaml beside it.`,
          hints: wordHints(id, ids),
        }),
      );
    } else if (!languages.includes(language)) {
      findings.push(
        finding({
          check: 'unknown-language',
          severity: 'error',
          place: fileOnly(path),
          message: `This is named as the words of "${id}" in "${language}", but there is no words pack for "${language}".`,
          hints: wordHints(language, languages),
        }),
      );
    } else beside.set(exercise, new Map([...(beside.get(exercise) ?? []), [language, path]]));
  }
  return { beside, findings };
}

/** The exercise with its levels as they read in these languages. */
export function withTranslations(
  exercise: Exercise,
  translations: ReadonlyMap<string, LoadedTranslation>,
): Exercise {
  const read = [...translations].flatMap(([language, { texts }]) =>
    texts ? [[language, texts] as const] : [],
  );
  if (read.length === 0) return exercise;
  const levels = exercise.levels.map((level) => ({
    ...level,
    translations: new Map(
      read.map(([language, texts]) => [language, levelTexts(texts, level.id)] as const),
    ),
  }));
  return { ...exercise, levels };
}
