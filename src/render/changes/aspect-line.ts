// "sets, left only: 2 → 3": an aspect, its side and what is told of it.
import type { Words } from '../words/words.ts';
import type { Fact } from './fact.ts';

export function aspectLine(aspect: string, side: Fact['side'], text: string, words: Words): string {
  const name = words.say(`changes.aspects.${aspect}`);
  if (side === null) return words.say('changes.line', { aspect: name, text }).trim();
  const only = words.say(`changes.sides-only.${side}`);
  return words.say('changes.line-of-side', { aspect: name, side: only, text }).trim();
}
