// Text without regard to case, accents and the width of gaps, with the way back to every place in
// it, so that "maria  lópez" is found as "Maria Lopez" where it stands.
import type { Stretch } from './ways-to-reach.ts';

interface FoldedText {
  readonly text: string;
  /** For each unit of the folded text, where it began in the text as written. */
  readonly from: readonly number[];
}

/** Letters that have no accent to take off but are often written without their stroke or as two. */
const PLAIN: Readonly<Record<string, string>> = {
  ł: 'l',
  ø: 'o',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ı: 'i',
  '’': "'",
  ʼ: "'",
};
/** Scripts that put no gap between words. */
const GAPLESS = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Thai}]/u;

/** A name to look for; a name of one word counts only with its capital, since names are words too. */
export interface FoldedName {
  readonly text: string;
  readonly isGapless: boolean;
  readonly needsCapital: boolean;
}

/** The name as it is looked for; null where there is too little of it. */
export function foldedName(name: string): FoldedName | null {
  const text = folded(name).text.trim();
  if (text.length < 2) return null;
  return {
    text,
    isGapless: GAPLESS.test(name),
    needsCapital: !text.includes(' ') && /^\p{Lu}/u.test(name.trim()),
  };
}

/** Every place at which one of the names stands as whole words. */
export function nameStretches(written: string, names: readonly FoldedName[]): readonly Stretch[] {
  if (names.length === 0) return [];
  const { text, from } = folded(written);
  const found: Stretch[] = [];
  for (const name of names) {
    for (let at = text.indexOf(name.text); at !== -1; at = text.indexOf(name.text, at + 1)) {
      const end = at + name.text.length;
      const stretch = { start: from[at] ?? 0, end: from[end] ?? written.length };
      if (!name.isGapless && (isWordAt(text, at - 1) || isWordAt(text, end))) continue;
      if (name.needsCapital && !/^\p{Lu}/u.test(written.slice(stretch.start))) continue;
      found.push(stretch);
    }
  }
  return found;
}

function isWordAt(text: string, at: number): boolean {
  return /[\p{L}\p{N}]/u.test(text.charAt(at));
}

function folded(written: string): FoldedText {
  const pieces: string[] = [];
  const from: number[] = [];
  let at = 0;
  let wasGap = false;
  for (const character of written) {
    const isGap = /\s/.test(character);
    const plain = isGap ? (wasGap ? '' : ' ') : plainForm(character);
    for (let i = 0; i < plain.length; i += 1) from.push(at);
    pieces.push(plain);
    at += character.length;
    wasGap = isGap;
  }
  from.push(at);
  return { text: pieces.join(''), from };
}

function plainForm(character: string): string {
  const lower = character.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
  return PLAIN[lower] ?? lower;
}
