// The words of the handouts: one usable pack for each language that a sheet asks for.
import type { Compiled } from '../build.ts';
import { type Finding, finding, type Outcome } from '../finding/finding.ts';
import { type Place, startOf } from '../finding/place.ts';
import { wordHints } from '../load/did-you-mean.ts';
import type { Folder } from '../load/folder.ts';
import { loadPack, packLanguages, packPlace, shippedEnglish } from '../load/templates.ts';
import { type Practice, practiceIn } from '../model/practice.ts';
import { type Words, wordsFrom } from '../render/words/words.ts';

/** Words by language. */
export type Wording = ReadonlyMap<string, Words>;

/** The packs for the language of the practice, those of its people and those of the plans. */
export function loadWording(
  folder: Folder,
  { practice, people, plans }: Pick<Compiled, 'practice' | 'people' | 'plans'>,
): Outcome<Wording> {
  const wording = new Map<string, Words>();
  const findings: Finding[] = [];
  const wanted = new Map<string, Place>([[practice.language, languagePlace(practice)]]);
  for (const { language, place } of people.values()) {
    if (language !== null && !wanted.has(language)) wanted.set(language, place);
  }
  const asking = new Map<string, string[]>();
  for (const { plan, file } of plans) {
    const language = plan?.handoutLanguage ?? null;
    if (plan === null || language === null) continue;
    asking.set(language, [...(asking.get(language) ?? []), file]);
    if (!wanted.has(language))
      wanted.set(language, plan.valuePlaces.get('handout_language') ?? plan.place);
  }
  for (const [language, place] of wanted) {
    const outcome = wordsOf(folder, language, place, practice);
    const alsoMisleads = asking.get(language) ?? [];
    findings.push(...outcome.findings.map((one) => ({ ...one, alsoMisleads })));
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
    isShipped: file.source === null,
    own: practiceIn(practice, language).vocabulary.words,
    bands: practice.inLanguage.get(language)?.bands ?? new Map(),
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
