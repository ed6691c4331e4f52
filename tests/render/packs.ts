// The shipped words packs, and what a sentence says whatever its language: its numbers and its sides.
import { readdirSync, readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { type Words, wordsFrom } from '../../src/render/words/words.ts';
import { englishPack } from './records.ts';

const FOLDER = new URL('../../templates/words/', import.meta.url);

export const LANGUAGES: readonly string[] = readdirSync(FOLDER)
  .map((name) => name.replace(/\.yaml$/, ''))
  .sort();

export function packOf(language: string): unknown {
  return parse(readFileSync(new URL(`${language}.yaml`, FOLDER), 'utf8'));
}

const known = new Map<string, Words>();

export function wordsOf(language: string): Words {
  const words = known.get(language) ?? read(language);
  known.set(language, words);
  return words;
}

function read(language: string): Words {
  const reading = wordsFrom(packOf(language), { language, shipped: englishPack });
  if (!reading.ok) throw new Error(reading.problems.map(({ message }) => message).join('\n'));
  return reading.words;
}

/** How each language names the sides, by hand: not taken from the packs that are tried. */
const SIDES: Readonly<Record<string, { readonly left: RegExp; readonly right: RegExp }>> = {
  en: { left: /\bleft\b/giu, right: /(?<!felt )\bright\b/giu },
  es: { left: /izquierd[oa]/giu, right: /derech[oa]/giu },
  ar: { left: /يسرى|أيسر|يسار/gu, right: /يمنى|أيمن|يمين/gu },
};

export interface Told {
  /** Numbers and sides, in the order of the sentence: `8 12 left`. */
  readonly tokens: readonly string[];
  readonly numbers: readonly string[];
  readonly sides: readonly string[];
}

/** What a text tells; fails for a language whose sides are not written down above. */
export function told(language: string, text: string): Told {
  const sides = SIDES[language];
  if (!sides) throw new Error(`tests/render/packs.ts does not know the sides in ${language}`);
  const found = [
    ...[...text.matchAll(/\d+(?:[.,]\d+)?/g)].map(({ 0: number, index }) => ({
      index,
      token: number.replace(',', '.'),
    })),
    ...(['left', 'right'] as const).flatMap((side) =>
      [...text.matchAll(sides[side])].map(({ index }) => ({ index, token: side as string })),
    ),
  ].sort((a, b) => a.index - b.index);
  const tokens = found.map(({ token }) => token);
  const isSide = (token: string) => /^[lr]/.test(token);
  return {
    tokens,
    numbers: tokens.filter((token) => !isSide(token)),
    sides: tokens.filter(isSide),
  };
}

/** A text that something was lost on the way to: a placeholder, a value, a blank too many. */
export const SPOILT = /[{}]|undefined|null|NaN|\[object| {2}| [.,;:،؛]|\.\.|,,|،،/;
