// The words of the handouts: one usable pack for each language that a sheet asks for.
import type { Compiled, CompiledPlan } from '../build.ts';
import { type Finding, finding, type Outcome } from '../finding/finding.ts';
import { type Place, startOf } from '../finding/place.ts';
import { wordHints } from '../load/did-you-mean.ts';
import type { Folder } from '../load/folder.ts';
import { loadPack, packLanguages, packPlace, shippedEnglish } from '../load/templates.ts';
import type { Practice } from '../model/practice.ts';
import { type Words, wordsFrom } from '../render/words/words.ts';

/** Words by language. */
export type Wording = ReadonlyMap<string, Words>;

/** The language of a plan's sheet: the person's, else the practice's. */
export function languageOf(
  { plan }: CompiledPlan,
  { practice, people }: Pick<Compiled, 'practice' | 'people'>,
): string {
  return (plan && people.get(plan.person)?.language) ?? practice.language;
}

/** The packs for the practice's language and those of its people. */
export function loadWording(
  folder: Folder,
  { practice, people }: Pick<Compiled, 'practice' | 'people'>,
): Outcome<Wording> {
  const wording = new Map<string, Words>();
  const findings: Finding[] = [];
  const wanted = new Map<string, Place>([[practice.language, languagePlace(practice)]]);
  for (const { language, place } of people.values()) {
    if (language !== null && !wanted.has(language)) wanted.set(language, place);
  }
  for (const [language, place] of wanted) {
    const outcome = wordsOf(folder, language, place, practice);
    findings.push(...outcome.findings);
    if (outcome.value) wording.set(language, outcome.value);
  }
  return { value: wording, findings };
}

/** The shipped English words, for a version whose own cannot be used. */
export function shippedWords(): Words {
  const reading = wordsFrom(shippedEnglish(), { language: 'en', shipped: shippedEnglish() });
  if (!reading.ok)
    throw new Error(`the shipped words pack is broken: ${reading.problems[0]?.message}`);
  return reading.words;
}

/** The words of one language; null where there is no pack for it, or none that can be used. */
export function wordsOf(
  folder: Folder,
  language: string,
  place: Place,
  practice: Practice,
): Outcome<Words | null> {
  const { value: file, findings } = loadPack(folder, language);
  if (!file) {
    if (findings.length > 0) return { value: null, findings };
    const message = `There is no words pack for "language: ${language}".`;
    return {
      value: null,
      findings: [
        finding({
          check: 'unknown-language',
          severity: 'error',
          message,
          place,
          hints: wordHints(language, packLanguages(folder)),
        }),
      ],
    };
  }
  const reading = wordsFrom(file.pack, {
    language,
    shipped: shippedEnglish(),
    own: practice.vocabulary.words,
  });
  if (reading.ok) return { value: reading.words, findings: [] };
  const { source } = file;
  if (!source)
    throw new Error(
      `the shipped words pack ${language} is broken: ${reading.problems[0]?.message}`,
    );
  return {
    value: null,
    findings: reading.problems.map(({ key, message }) =>
      finding({
        check: 'words-missing',
        severity: 'error',
        message,
        place: packPlace(source, key),
      }),
    ),
  };
}

function languagePlace({ source }: Practice): Place {
  const at = /^language:[ \t]*/m.exec(source.text);
  if (!at) return startOf(source);
  const start = at.index + at[0].length;
  return { source, start, end: start + (source.text.slice(start).search(/\s|$/) ?? 0) };
}
