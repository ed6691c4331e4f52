// The texts of a file that a sheet prints as they stand, each with its place.
import type { PrintedText } from '../model/printed-text.ts';
import { type At, entries, isGroup, isList, pairs, placeOf, textOf } from './at.ts';
import type { FileKind } from './schemas.ts';

type Prose = Exclude<FileKind, 'people' | 'translation'>;

const PRINTED: Readonly<Record<Prose, readonly string[]>> = {
  practice: ['emergency_if', 'get_in_touch', 'stop_if'],
  exercise: ['name', 'setup', 'steps', 'feel', 'avoid', 'easier', 'harder'],
  plan: ['title', 'goals', 'precautions', 'stop_if_also', 'name', 'note', 'start_when'],
};
/** Groups with keys of her own, or of the same names and for the record alone. */
const NOT_PRINTED = [
  ...['visits', 'accept', 'report', 'closed', 'practitioners', 'words', 'checks'],
  // In other languages than the file.
  'in_language',
];

/** In the order of the file. */
export function printedTexts(at: At<unknown>, kind: Prose): readonly PrintedText[] {
  if (isList(at))
    return entries(at as At<readonly unknown[]>).flatMap((one) => printedTexts(one, kind));
  if (!isGroup(at)) return [];
  return pairs(at).flatMap((one) => {
    if (NOT_PRINTED.includes(one.key)) return [];
    if (!PRINTED[kind].includes(one.key)) return printedTexts(one, kind);
    const texts = isList(one) ? entries(one as At<readonly unknown[]>) : [one];
    return texts.map((text) => ({ key: one.key, text: textOf(text), place: placeOf(text) }));
  });
}
