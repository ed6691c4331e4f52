// The text of a file without what a practice prints on purpose: the values of contact, emergency and
// practitioners in practice.yaml. Blanked, so that every place in the rest stays where it is.
import type { SourceText } from '../finding/place.ts';

const PRACTICE = 'practice.yaml';
/** From such a key to the line before the next key at the margin. */
const MEANT_TO_BE_READ =
  /^(?:contact|emergency|practitioners|"(?:contact|emergency|practitioners)"|'(?:contact|emergency|practitioners)')[ \t]*:.*(?:\r?\n(?:[ \t}\]-].*|(?=\r?\n|$)))*/gm;

/** The text to look through; only practice.yaml at the folder's root has anything blanked. */
export function withoutPracticeContacts({ file, text }: SourceText): string {
  if (file !== PRACTICE) return text;
  return text.replace(MEANT_TO_BE_READ, (stretch) => stretch.replace(/[^\r\n]/g, ' '));
}
