// The texts of an exercise as a file has them: the exercise's own, or one beside it in another language.
import type { ExerciseTexts, GroupTexts, KeyText, TextKey } from '../model/translation.ts';
import { TEXT_KEYS } from '../model/translation.ts';
import {
  type At,
  entries,
  isList,
  placeOf,
  rootOf,
  startPlace,
  tellAt,
  textOf,
  textUnder,
  under,
} from './at.ts';
import type { TranslatedLevelFile, TranslationFile } from './written.ts';
import type { YamlFile } from './yaml-file.ts';

/** The texts that stand in an exercise's file or a translation's; null where it has no keys at all. */
export function readTexts(file: YamlFile): ExerciseTexts | null {
  const at = rootOf<TranslationFile>(file);
  if (!at) return null;
  const levels = new Map<string, GroupTexts>();
  for (const level of entries(under(at, 'levels'))) {
    const id = textUnder(level, 'level');
    if (id !== null && !levels.has(id)) levels.set(id, groupTexts(level));
  }
  return { source: file.source, shared: groupTexts(at), levels };
}

/** A translation's file: it has to be what its name says, and to name levels that there are, once each. */
export function readTranslation(
  file: YamlFile,
  exercise: string,
  language: string,
  levels: readonly string[],
): ExerciseTexts | null {
  const at = rootOf<TranslationFile>(file);
  if (!at) return null;
  for (const [key, named] of [
    ['exercise', exercise],
    ['language', language],
  ] as const) {
    const found = under(at, key);
    if (!found || textOf(found) === named) continue;
    const message = `"${key}: ${textOf(found)}" stands in a file called ${exercise}.${language}.yaml; write "${key}: ${named}", or give the file the other name.`;
    tellAt(found, 'id-differs', message);
  }
  const told = new Set<string>();
  for (const level of entries(under(at, 'levels'))) {
    const idAt = under(level, 'level');
    if (!idAt) continue;
    const id = textOf(idAt);
    if (!levels.includes(id))
      tellAt(
        idAt,
        'unknown-level',
        `The exercise "${exercise}" has no level "${id}"; it has ${levels.join(', ')}.`,
      );
    else if (told.has(id))
      tellAt(idAt, 'duplicate-level', `Level "${id}" stands twice; write its words once.`);
    told.add(id);
  }
  return readTexts(file);
}

function groupTexts(at: At<TranslationFile> | At<TranslatedLevelFile>): GroupTexts {
  const group = at as At<TranslatedLevelFile>;
  const found = TEXT_KEYS.flatMap((key): (readonly [TextKey, KeyText])[] => {
    const one = under(group, key) as At<unknown> | undefined;
    if (!one) return [];
    const lines = isList(one) ? entries(one as At<readonly unknown[]>).map(textOf) : [textOf(one)];
    return [[key, { lines, place: one.keyPlace ?? placeOf(one) }]];
  });
  return { texts: new Map(found), start: startPlace(at) };
}
