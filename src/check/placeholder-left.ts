// Does a file still hold a text that was only there to be replaced? It would be printed on every sheet.
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { SourceText } from '../finding/place.ts';

const PLACEHOLDER = '(replace this)';

/** One finding a file, at the first place outside a comment. */
export function placeholderLeft(sources: readonly SourceText[]): readonly Finding[] {
  return sources.flatMap((source) => {
    // A comment may speak of it; same length, so that places stay.
    const text = source.text.replace(/(^|[ \t])#.*$/gm, (comment) => ' '.repeat(comment.length));
    const count = text.split(PLACEHOLDER).length - 1;
    if (count === 0) return [];
    const start = text.indexOf(PLACEHOLDER);
    const more =
      count === 1 ? '' : `, here and in ${count - 1} more ${count === 2 ? 'place' : 'places'}`;
    return [
      finding({
        check: 'placeholder-left',
        severity: severityOf('placeholder-left'),
        message: `"${PLACEHOLDER}" still stands in this file${more}, and would be printed on the sheets; write what holds for your practice.`,
        place: { source, start, end: start + PLACEHOLDER.length },
      }),
    ];
  });
}
