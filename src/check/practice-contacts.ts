// The text of a file without what a practice prints on purpose: the values of contact, emergency and
// practitioners in practice.yaml. Blanked, so that every place in the rest stays where it is.
import type { SourceText } from '../finding/place.ts';

const PRACTICE = 'practice.yaml';
/** From such a key to the line before the next key at the margin. */
const MEANT_TO_BE_READ =
  /^(?:contact|emergency|practitioners|"(?:contact|emergency|practitioners)"|'(?:contact|emergency|practitioners)')[ \t]*:.*(?:\r?\n(?:[ \t}\]-].*|(?=\r?\n|$)))*/gm;

/** The same in another language, below in_language: such a key and what is indented further. */
const IN_ANOTHER_LANGUAGE =
  /^([ \t]+)["']?(?:contact|practitioners)["']?[ \t]*:.*(?:\r?\n\1[ \t]+.*)*/gm;

/** The text to look through; only practice.yaml at the folder's root has anything blanked. */
export function withoutPracticeContacts({ file, text }: SourceText): string {
  if (file !== PRACTICE) return text;
  const blanked = (stretch: string) => stretch.replace(/[^\r\n]/g, ' ');
  return text.replace(MEANT_TO_BE_READ, blanked).replace(IN_ANOTHER_LANGUAGE, blanked);
}
