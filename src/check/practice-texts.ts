// Does the practice say in a further language all that sheets in it print: how to reach it, when to stop,
// whom to call; and with as many sentences and the same numbers? A rule that is missing there would be
// missing on the sheet.
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import { type Place, startOf } from '../finding/place.ts';
import type { Practice, PracticeTexts } from '../model/practice.ts';
import type { PlanInLanguage, SheetParts } from './sheet-parts.ts';
import { counted, listed } from './wording.ts';
import { otherNumbers } from './written-numbers.ts';

/** Its keys in the file with what they hold in both languages. */
interface Said {
  readonly key: string;
  readonly original: readonly string[];
  readonly translated: readonly string[];
}

export function practiceTexts(
  practice: Practice,
  plans: readonly PlanInLanguage[],
  language: string,
): readonly Finding[] {
  const texts = practice.inLanguage.get(language) ?? null;
  const said = saidIn(practice, texts);
  return [
    ...lacking(practice, texts, said, plans, language),
    ...(texts ? said.flatMap((one) => differing(practice, texts, one, plans, language)) : []),
  ];
}

function saidIn(practice: Practice, texts: PracticeTexts | null): readonly Said[] {
  const contact = texts?.contact ?? null;
  return [
    {
      key: 'contact',
      original: [practice.contact],
      translated: contact === null ? [] : [contact],
    },
    {
      key: 'emergency_if',
      original: practice.emergencyIf,
      translated: texts?.emergencyIf ?? [],
    },
    {
      key: 'get_in_touch',
      original: practice.getInTouch,
      translated: texts?.getInTouch ?? [],
    },
    { key: 'stop_if', original: practice.stopIf, translated: texts?.stopIf ?? [] },
  ];
}

/** What is not there at all: one finding for all that the same sheets lack. */
function lacking(
  practice: Practice,
  texts: PracticeTexts | null,
  said: readonly Said[],
  plans: readonly PlanInLanguage[],
  language: string,
): readonly Finding[] {
  const forAll = said
    .filter(({ original, translated }) => original.length > 0 && translated.length === 0)
    .map(({ key }) => key);
  const plansByKey = new Map<string, PlanInLanguage[]>(forAll.map((key) => [key, [...plans]]));
  for (const one of plans)
    for (const key of one.parts ? lackingParts(texts, one.parts) : [])
      plansByKey.set(key, [...(plansByKey.get(key) ?? []), one]);
  const codes = (some: readonly PlanInLanguage[]) => some.map(({ plan }) => plan.id).join(', ');
  const groups = new Set([...plansByKey.values()].map(codes));
  return [...groups].map((group) => {
    const keys = [...plansByKey.keys()].filter((key) => codes(plansByKey.get(key) ?? []) === group);
    const needing = plansByKey.get(keys[0] ?? '') ?? [];
    const names = listed(
      keys.map((key) => `"${key}"`),
      'and',
    );
    const [sheets, them] = [
      needing.length === 1 ? 'sheet' : 'sheets',
      keys.length === 1 ? 'it' : 'them',
    ];
    return finding({
      check: 'translation-missing',
      severity: 'error',
      place: texts?.place ?? startOf(practice.source),
      message: `The practice does not say ${names} in "${language}", which the ${sheets} of ${group} would print; write ${them} in practice.yaml under "in_language:", "${language}:".`,
      related: needing.map(({ plan }) => ({
        message: 'This sheet is in that language.',
        place: plan.valuePlaces.get('handout_language') ?? plan.place,
      })),
      alsoMisleads: needing.map(({ file }) => file),
    });
  });
}

function lackingParts(texts: PracticeTexts | null, parts: SheetParts): readonly string[] {
  return (['practitioners', 'bands', 'kit', 'positions'] as const).flatMap((kind) =>
    parts[kind].filter((name) => !texts?.[kind].has(name)).map((name) => `${kind}: ${name}`),
  );
}

function differing(
  practice: Practice,
  texts: PracticeTexts,
  { key, original, translated }: Said,
  plans: readonly PlanInLanguage[],
  language: string,
): readonly Finding[] {
  if (translated.length === 0) return [];
  const place = texts.keyPlaces.get(key) ?? texts.place;
  const related = [{ message: 'The practice says it here.', place: keyPlace(practice, key) }];
  const sentences = `"${key}" has ${counted(original.length, 'sentence')}, but ${translated.length} in "${language}"`;
  if (translated.length < original.length)
    return [
      finding({
        check: 'translation-missing',
        severity: 'error',
        message: `${sentences}: a rule would be missing on the sheet.`,
        place,
        related,
        alsoMisleads: plans.map(({ file }) => file),
      }),
    ];
  const numbers = otherNumbers(original, translated);
  const says =
    translated.length > original.length
      ? `${sentences}.`
      : numbers && `"${key}" has ${numbers.there}, but in "${language}" ${numbers.here}.`;
  if (says === null) return [];
  const severity = severityOf('translation-differs');
  return [finding({ check: 'translation-differs', severity, message: says, place, related })];
}

/** Where a key of practice.yaml itself stands. */
function keyPlace({ source }: Practice, key: string): Place {
  const at = new RegExp(`^["']?${key}["']?[ \\t]*:`, 'm').exec(source.text);
  return at ? { source, start: at.index, end: at.index + at[0].length } : startOf(source);
}
