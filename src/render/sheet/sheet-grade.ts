// How hard a sheet is to read, as printed.
import { isEnglish } from '../../check/english.ts';
import type { Practice } from '../../model/practice.ts';
import { type TextGrade, textGrade } from '../../readability/text-grade.ts';
import { sheetSentences } from './sheet-sentences.ts';
import type { SheetView } from './sheet-view.ts';

/** Null where it is not in English. */
export function sheetGrade(sheet: SheetView, { plainWords }: Practice): TextGrade | null {
  return isEnglish(sheet.language) ? textGrade(sheetSentences(sheet), plainWords) : null;
}
