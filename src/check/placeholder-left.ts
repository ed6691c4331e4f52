// Does a file still hold a text that was only there to be replaced? It would be printed on every sheet.
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { Place, SourceText } from '../finding/place.ts';

const PLACEHOLDER = '(replace this)';
/** The one file that has values to replace. */
const PRACTICE = 'practice.yaml';

/** One finding a file, at the first place outside a comment; `startingTexts` are those that ship with the mark beside them. */
export function placeholderLeft(
  sources: readonly SourceText[],
  startingTexts: readonly string[] = [],
): readonly Finding[] {
  return sources.flatMap((source) => {
    const [first, ...more] = leftIn(source, source.file === PRACTICE ? startingTexts : []);
    if (!first) return [];
    const rest =
      more.length === 0
        ? ''
        : `, here and in ${more.length} more ${more.length === 1 ? 'place' : 'places'}`;
    return [
      finding({
        check: 'placeholder-left',
        severity: severityOf('placeholder-left'),
        message: `"${source.text.slice(first.start, first.end)}" still stands in this file${rest}, and would be printed on the sheets; write what holds for your practice.`,
        place: first,
      }),
    ];
  });
}

function leftIn(source: SourceText, startingTexts: readonly string[]): readonly Place[] {
  // A comment may speak of it; same length, so that places stay.
  const text = source.text.replace(/(^|[ \t])#.*$/gm, (comment) => ' '.repeat(comment.length));
  const marks = [...text.matchAll(new RegExp(literal(PLACEHOLDER), 'g'))];
  // With its mark taken away it is the whole value, or what it ends with: "Call your local …".
  const bare = startingTexts.flatMap((one) => {
    const before = `(?<=[\\w-]+:[ \\t]+["']?(?:[^"'\\n]* )?)`;
    return [
      ...text.matchAll(new RegExp(`${before}${literal(one)}(?=[.!]?["']?[ \\t]*\\}?\\r?$)`, 'gim')),
    ];
  });
  return [...marks, ...bare]
    .map(({ index, 0: found }) => ({ source, start: index, end: index + found.length }))
    .sort((a, b) => a.start - b.start);
}

function literal(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
