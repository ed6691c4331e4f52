// Two sheets held against one another, section by section: which sections differ, and in which
// sentences. It is what a change is judged by, and it catches what no fact tells of.

import { folded } from '../pages/markdown.ts';
import { base64, isPictureView } from '../pages/picture.ts';
import { inKeyOrder } from '../sheet/sheet-number.ts';
import type { SheetView } from '../sheet/sheet-view.ts';
import type { Section } from './fact.ts';

/** The sections whose words or pictures differ. The person's name is no word of the sheet. */
export function differingSections(before: SheetView, after: SheetView): readonly Section[] {
  return sectionsOf(before, after).filter(
    (section) => shownText(before, section) !== shownText(after, section),
  );
}

/** The sentences of a section, as one list. */
export function sentencesOf(view: SheetView, section: Section): readonly string[] {
  return flattened(shown(view, section));
}

function sectionsOf(before: SheetView, after: SheetView): readonly Section[] {
  const keys = new Set([...Object.keys(before), ...Object.keys(after)]);
  keys.delete('plan');
  keys.delete('direction');
  return [...keys] as Section[];
}

function shown(view: SheetView, section: Section): unknown {
  return section === 'head' ? { ...view.head, person: null } : view[section];
}

function shownText(view: SheetView, section: Section): string {
  return JSON.stringify(inKeyOrder(shown(view, section)) ?? null);
}

function flattened(value: unknown): readonly string[] {
  if (value === null || value === undefined) return [];
  if (isPictureView(value)) {
    const { alt, caption, picture } = value;
    return [folded(alt), ...(caption === null ? [] : [folded(caption)]), base64(picture.bytes)];
  }
  if (Array.isArray(value)) return value.flatMap(flattened);
  if (typeof value === 'object') return Object.values(value).flatMap(flattened);
  return [folded(String(value))];
}
