// An id that was written as a person says it: in capitals, with spaces, or by the printed name.
import { idFrom } from './own-form.ts';

/** The known id that a word was meant for; undefined where that is not sure. */
export function idMeant(
  word: string,
  ids: Iterable<string>,
  idOfName: (name: string) => string | undefined = () => undefined,
): string | undefined {
  const id = idFrom(word);
  return [...ids].includes(id) ? id : idOfName(word);
}
