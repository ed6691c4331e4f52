// The exercises of a practice, each read when a plan first asks for it. A file that could not be
// read still owns the id that its name gives.
import { type Finding, finding } from '../finding/finding.ts';
import { fileOnly, type SourceText, startOf } from '../finding/place.ts';
import type { Exercise } from '../model/exercise.ts';
import { ID } from '../model/ids.ts';
import type { ExerciseTexts } from '../model/translation.ts';
import { idsFor } from './editor-schemas.ts';
import type { Folder } from './folder.ts';
import { type ExerciseSetting, readExercise } from './read-exercise.ts';
import { readTexts, readTranslation } from './read-translation.ts';
import { checkAgainstSchema } from './schema-findings.ts';
import type { FileKind } from './schemas.ts';
import { beyondLimits, readText } from './text-file.ts';
import {
  isTranslation,
  type LoadedTranslation,
  translationFiles,
  withTranslations,
} from './translations.ts';
import { type IdsOf, NO_IDS } from './wanted-form.ts';
import { parseYaml, type YamlFile } from './yaml-file.ts';

export interface LoadedExercise {
  readonly file: string;
  /** Null where too little could be read. */
  readonly exercise: Exercise | null;
  readonly findings: readonly Finding[];
  /** Its texts as its file has them; null where too little could be read. */
  readonly texts: ExerciseTexts | null;
  /** Its words in further languages, by BCP 47 tag. */
  readonly translations: ReadonlyMap<string, LoadedTranslation>;
}

export interface Library {
  /** Every id that a file name gives. */
  readonly ids: readonly string[];
  readonly load: (id: string) => LoadedExercise | undefined;
  /** The id of the exercise that is printed under a name; asked for only where an id is not known. */
  readonly idOfName: (name: string) => string | undefined;
  /** Those that were asked for so far. */
  readonly loaded: () => readonly LoadedExercise[];
  /** Two files with one id. */
  readonly duplicates: readonly Finding[];
  /** Translations that belong to no exercise. */
  readonly strays: readonly Finding[];
}

/** Files of a folder by the id that their names give; a second one with the same id is a finding. */
export function filesById(
  folder: Folder,
  under: string,
  check: 'duplicate-exercise' | 'duplicate-plan',
): { readonly byId: ReadonlyMap<string, string>; readonly findings: readonly Finding[] } {
  const byId = new Map<string, string>();
  const byFoldedId = new Map<string, string>();
  const findings: Finding[] = [];
  for (const { path, kind } of folder.list(under)) {
    if (kind === 'link' && !/\.ya?ml$/.test(path)) {
      const message = 'This is a link, and links are not followed; put the folder itself here.';
      findings.push(
        finding({ check: 'file-linked', severity: 'error', message, place: fileOnly(path) }),
      );
      continue;
    }
    if (check === 'duplicate-exercise' && isTranslation(path)) continue;
    if (!/\.ya?ml$/.test(path) || (kind === 'other' && !path.endsWith('.yaml'))) continue;
    const id = path.slice(path.lastIndexOf('/') + 1).replace(/\.ya?ml$/, '');
    const first = byFoldedId.get(id.toLowerCase());
    if (first !== undefined) {
      const what = check === 'duplicate-plan' ? 'plan' : 'exercise';
      findings.push(
        finding({
          check,
          severity: 'error',
          place: fileOnly(path),
          alsoMisleads: [first],
          message: `There is another ${what} called "${id}"${byId.has(id) ? '' : ', for small and capital letters count as the same'}; give one of the two files another name.`,
          related: [{ message: 'The other one.', place: fileOnly(first) }],
        }),
      );
      continue;
    }
    byFoldedId.set(id.toLowerCase(), path);
    byId.set(id, path);
  }
  return { byId, findings };
}

/** Reads, parses and validates one file; null where its text could not be used. `ids` are for its messages. */
export function loadYaml(
  folder: Folder,
  path: string,
  kind: FileKind,
  ids: IdsOf = NO_IDS,
): { readonly file: YamlFile | null; readonly findings: readonly Finding[] } {
  const text = readText(folder, path);
  if (!text.value) return { file: null, findings: text.findings };
  const unfit = whyUnfit(text.value);
  if (unfit) return { file: null, findings: [unfit] };
  const file = parseYaml(text.value, kind);
  if (!file.isWhole) return { file: null, findings: file.findings };
  checkAgainstSchema(file, ids);
  return { file, findings: file.findings };
}

function whyUnfit(source: SourceText): Finding | null {
  if (/^\s*$/.test(source.text)) {
    return finding({
      check: 'file-empty',
      severity: 'error',
      message: 'This file is empty.',
      place: startOf(source),
    });
  }
  return beyondLimits(source);
}

export function openLibrary(folder: Folder, setting: ExerciseSetting): Library {
  const { byId, findings } = filesById(folder, 'exercises', 'duplicate-exercise');
  const loaded = new Map<string, LoadedExercise>();
  const translations = translationFiles(folder, [...byId.values()]);
  let idsByName: ReadonlyMap<string, string> | undefined;
  // Where the whole library is out of reach, no exercise of it can be called unknown.
  const unread = findings.find(
    ({ check, place }) => check === 'file-linked' && place.source.file === 'exercises',
  );
  return {
    ids: [...byId.keys()],
    duplicates: findings,
    strays: translations.findings,
    loaded: () => [...loaded.values()],
    idOfName: (name) => {
      idsByName ??= new Map([...byId].map(([id, path]) => [nameIn(folder, path) ?? '', id]));
      return idsByName.get(folded(name));
    },
    load: (id) => {
      const path = byId.get(id);
      if (path === undefined)
        return unread && { ...NOTHING_READ, file: 'exercises', findings: [unread] };
      const beside = translations.beside.get(path) ?? new Map();
      const known = loaded.get(id) ?? loadExercise(folder, path, id, beside, setting);
      loaded.set(id, known);
      return known;
    },
  };
}

const NOTHING_READ = { exercise: null, texts: null, translations: new Map() } as const;

function folded(name: string): string {
  return name.trim().replace(/\s+/g, ' ').toLowerCase();
}

/** The name in a file's text, whatever else is in it. */
function nameIn(folder: Folder, path: string): string | undefined {
  const text = readText(folder, path).value?.text ?? '';
  const name = /^name:[ \t]+(?:"([^"\n]*)"|'([^'\n]*)'|([^\n]*?))[ \t\r]*$/m.exec(text);
  return name ? folded(name[1] ?? name[2] ?? name[3] ?? '') : undefined;
}

function loadExercise(
  folder: Folder,
  path: string,
  id: string,
  beside: ReadonlyMap<string, string>,
  setting: ExerciseSetting,
): LoadedExercise {
  if (!ID.test(id)) {
    const message = `"${id}" cannot be an exercise's id; a file name has small letters, digits and hyphens.`;
    return {
      ...NOTHING_READ,
      file: path,
      findings: [finding({ check: 'bad-id', severity: 'error', message, place: fileOnly(path) })],
    };
  }
  const { file, findings } = loadYaml(folder, path, 'exercise', idsFor(setting.practice));
  if (!file) return { ...NOTHING_READ, file: path, findings };
  const read = readExercise(file, id, setting);
  const translations = read ? loadTranslations(folder, read, beside) : new Map();
  const exercise = read && withTranslations(read, translations);
  return { file: path, exercise, findings: file.findings, texts: readTexts(file), translations };
}

function loadTranslations(
  folder: Folder,
  exercise: Exercise,
  beside: ReadonlyMap<string, string>,
): ReadonlyMap<string, LoadedTranslation> {
  return new Map(
    [...beside].map(([language, path]): readonly [string, LoadedTranslation] => {
      const { file, findings } = loadYaml(folder, path, 'translation');
      if (!file) return [language, { file: path, texts: null, findings }];
      const ids = exercise.levels.map(({ id }) => id);
      const texts = readTranslation(file, exercise.id, language, ids);
      return [language, { file: path, texts, findings: file.findings }];
    }),
  );
}
