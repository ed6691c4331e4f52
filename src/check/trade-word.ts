// Does a text that a sheet prints have a word of the trade, with no everyday one beside it? English
// alone. A person should not have to look a word up before she can do what it says.
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import type { Plan } from '../model/plan.ts';
import type { Practice } from '../model/practice.ts';
import type { PrintedText } from '../model/printed-text.ts';
import { EVERYDAY_BY_GROUP, TRADE_WORDS } from '../model/trade-words.ts';
import { MUSCLES, muscleGroup } from '../model/vocabulary.ts';
import { maskingOf } from '../readability/plain-words.ts';
import { isEnglish } from './english.ts';
import type { PlanUnderCheck } from './plan-check.ts';

/** Every trade word with its everyday one; the list words some muscles better. */
const EVERYDAY: ReadonlyMap<string, string> = new Map([
  ...Object.keys(MUSCLES).map((id) => [id.replaceAll('-', ' '), everydayOf(id)] as const),
  ...TRADE_WORDS,
]);

const ANY = new RegExp(
  `(?<![\\p{L}\\p{N}-])(?:${[...EVERYDAY.keys()]
    .sort((a, b) => b.length - a.length)
    .map((word) => word.replace(/[ -]/g, '[ -]'))
    .join('|')})s?(?![\\p{L}\\p{N}-])(?<!prone(?= to\\b))`,
  'giu',
);

function everydayOf(muscle: string): string {
  const group = muscleGroup(muscle);
  if (group === null) throw new Error(`${muscle} is no muscle of the vocabulary`);
  return EVERYDAY_BY_GROUP[group];
}

/** Those of a plan: what it says itself. */
export function tradeWord({ plan, practice }: PlanUnderCheck): readonly Finding[] {
  // What a plan says itself is in the language of its sheet.
  const language = plan.handoutLanguage ?? practice.language;
  return tradeWordsIn(plan.printed, { ...practice, language }).map((one) => ({
    ...one,
    scope: recordsAt(plan, one.place),
  }));
}

/** One finding a word and file, where it first stands. */
export function tradeWordsIn(
  texts: readonly PrintedText[],
  { language, plainWords }: Pick<Practice, 'language' | 'plainWords'>,
): readonly Finding[] {
  if (!isEnglish(language)) return [];
  const masked = maskingOf(plainWords);
  const told = new Set<string>();
  return texts.flatMap(({ text, place }) =>
    [...masked(text).matchAll(ANY)].flatMap(({ 0: word, index }) => {
      const everyday = everydayFor(word);
      if (isExplained(text, word, index, everyday) || told.has(word.toLowerCase())) return [];
      told.add(word.toLowerCase());
      return [
        finding({
          check: 'trade-word',
          severity: severityOf('trade-word'),
          message: `"${word}" is a word of the trade, and no everyday word stands beside it; say it in everyday words, such as "${everyday}", or put those in brackets after it.`,
          place: placeOfWord(place, word),
        }),
      ];
    }),
  );
}

function everydayFor(word: string): string {
  const plain = word.toLowerCase().replaceAll('-', ' ');
  const found = [plain, plain.replace(/s$/, ''), word.toLowerCase()].map((one) =>
    EVERYDAY.get(one),
  );
  const everyday = found.find((one) => one !== undefined);
  if (everyday === undefined) throw new Error(`no everyday word for ${word}`);
  return everyday;
}

/** In brackets, after brackets or "that is", or with its everyday word in the same text. */
function isExplained(text: string, word: string, index: number, everyday: string): boolean {
  const before = text.slice(0, index);
  const after = text.slice(index + word.length);
  const isInBrackets = /\p{L}[^()]*\([^()]*$/u.test(before) && /^[^()]*\)/.test(after);
  const isFollowed = /^(?: \p{L}+)? *(?:\(\p{L}|[,;:–—-]* *that is\b)/iu.test(after);
  const hasEveryday = new RegExp(`(?<!\\p{L})${everyday}(?!\\p{L})`, 'iu').test(text);
  return isInBrackets || isFollowed || hasEveryday;
}

/** The word itself, where the file has it as it is printed; else the whole text. */
function placeOfWord({ source, start, end }: Place, word: string): Place {
  const at = source.text.slice(start, end).indexOf(word);
  return at === -1
    ? { source, start, end }
    : { source, start: start + at, end: start + at + word.length };
}

/** The plan, and the item that a place lies in. */
function recordsAt(plan: Plan, place: Place): readonly object[] {
  for (const session of plan.sessions)
    for (const part of session.parts)
      for (const item of part.items)
        if (place.start >= item.extent.start && place.end <= item.extent.end)
          return [plan, session, part, item];
  return [plan];
}
