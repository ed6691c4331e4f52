// Does a translation of an exercise say all that the exercise says, where it says it, and with the same
// numbers? What a level has of its own has to be of its own in the translation too, or the level would
// read as another one.
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import { type Place, startOf } from '../finding/place.ts';
import type { LoadedExercise } from '../load/library.ts';
import type { Practice } from '../model/practice.ts';
import type { ExerciseTexts, GroupTexts, KeyText, TextKey } from '../model/translation.ts';
import { TEXT_KEYS } from '../model/translation.ts';
import { asSet } from './plan-checks.ts';
import { listed } from './wording.ts';
import { otherNumbers } from './written-numbers.ts';

/** Translations with what is found when they are held against their exercise. */
export function judgedTranslations(
  { texts, translations }: LoadedExercise,
  practice: Practice,
): LoadedExercise['translations'] {
  return new Map(
    [...translations].map(([language, one]) => {
      if (one.findings.length > 0 || !texts || !one.texts) return [language, one];
      const found =
        language === practice.language
          ? [needlessTranslation(startOf(one.texts.source), language)]
          : translatedExercise(texts, one.texts, language);
      return [language, { ...one, findings: asSet(found, practice) }];
    }),
  );
}

function translatedExercise(
  original: ExerciseTexts,
  translation: ExerciseTexts,
  language: string,
): readonly Finding[] {
  const groups: readonly Group[] = [
    { level: null, original: original.shared, translated: translation.shared },
    ...[...original.levels].map(([level, group]) => ({
      level,
      original: group,
      translated: translation.levels.get(level) ?? null,
    })),
  ];
  return groups.flatMap((group) => [
    ...lacking(group, translation, language),
    ...differing(group, language),
  ]);
}

interface Group {
  /** Null for the exercise itself. */
  readonly level: string | null;
  readonly original: GroupTexts;
  /** Null where the translation does not name the level. */
  readonly translated: GroupTexts | null;
}

function lacking(
  { level, original, translated }: Group,
  { shared }: ExerciseTexts,
  language: string,
): readonly Finding[] {
  const keys = TEXT_KEYS.filter((key) => original.texts.has(key) && !translated?.texts.has(key));
  const [first] = keys;
  if (first === undefined) return [];
  const where = level === null ? '' : ` for level "${level}"`;
  const names = listed(
    keys.map((key) => `"${key}"`),
    'and',
  );
  const them = keys.length === 1 ? 'it' : 'them';
  const put = level === null ? '' : ` under "levels:", "- level: ${level}"`;
  return [
    finding({
      check: 'translation-missing',
      severity: 'error',
      message: `${names}${where} ${keys.length === 1 ? 'is' : 'are'} not translated into "${language}"; add ${them} here${put}.`,
      place: (translated ?? shared).start,
      related: [
        { message: 'The exercise says it here.', place: original.texts.get(first)?.place as Place },
      ],
    }),
  ];
}

function differing({ original, translated }: Group, language: string): readonly Finding[] {
  return [...(translated?.texts ?? [])].flatMap(([key, text]) => {
    const from = original.texts.get(key);
    const says = from
      ? otherThan(key, from, text, language)
      : `There is no "${key}" here in the exercise, so only a sheet in "${language}" would say this.`;
    if (says === null) return [];
    return [
      finding({
        check: 'translation-differs',
        severity: severityOf('translation-differs'),
        message: says,
        place: text.place,
        related: from ? [{ message: 'The exercise says it here.', place: from.place }] : [],
      }),
    ];
  });
}

function otherThan(key: TextKey, from: KeyText, text: KeyText, language: string): string | null {
  const [one, other] = [from.lines.length, text.lines.length];
  if (one !== other)
    return `"${key}" has ${one} ${one === 1 ? 'sentence' : 'sentences'} in the exercise, but ${other} in "${language}".`;
  const numbers = otherNumbers(from.lines, text.lines);
  return (
    numbers &&
    `"${key}" has ${numbers.there} in the exercise, but in "${language}" ${numbers.here}.`
  );
}

/** Words in the language of the practice itself, which stand in the exercise or the settings already. */
export function needlessTranslation(place: Place, language: string): Finding {
  return finding({
    check: 'translation-needless',
    severity: severityOf('translation-needless'),
    message: `The practice is in "${language}" itself, so these words are never printed.`,
    place,
  });
}
