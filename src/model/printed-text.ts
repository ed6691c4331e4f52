// A text of a file that a sheet prints as it stands: a sentence, or several.
import type { Place } from '../finding/place.ts';

export interface PrintedText {
  /** The key that it stands under. */
  readonly key: string;
  readonly text: string;
  readonly place: Place;
}
