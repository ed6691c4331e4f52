// What `carryover init` writes only to be replaced: the values that ship with a mark beside them.
import { readShipped } from './shipped-files.ts';

let texts: readonly string[] | undefined;

/** Without their mark, as somebody leaves them who deletes just that. */
export function startingTexts(): readonly string[] {
  texts ??= [
    ...readShipped('examples/first-folder/practice.yaml').matchAll(
      /^[^#\n]*?:[ \t]+"?([^"\n]+?)[ \t]*\(replace this\)/gm,
    ),
  ].map(([, text = '']) => text);
  return texts;
}
