// One thing that the checks found, at a place in a file. Findings are collected as values;
// how they look on a screen is the render floor's.
import type { CheckName, Severity } from './checks.ts';
import { type Place, positionOf } from './place.ts';

export interface RelatedPlace {
  readonly message: string;
  readonly place: Place;
}

export interface Finding {
  readonly check: CheckName;
  readonly severity: Severity;
  /** One sentence in trade words: no place, no colour. */
  readonly message: string;
  readonly place: Place;
  readonly hints: readonly string[];
  readonly related: readonly RelatedPlace[];
  /** The records that it is about, outermost first (plan, session, part, item): where it can be accepted. */
  readonly scope: readonly object[];
  /** Further files whose plans the error can mislead, beside the file where it stands. */
  readonly alsoMisleads: readonly string[];
  /** Set when an `accept` settles it. */
  readonly accepted: { readonly why: string } | null;
}

/** A value, and what was found on the way to it. */
export interface Outcome<T> {
  readonly value: T;
  readonly findings: readonly Finding[];
}

type Optional = 'hints' | 'related' | 'scope' | 'alsoMisleads' | 'accepted';

export function finding(
  parts: Omit<Finding, Optional> & Partial<Pick<Finding, Optional>>,
): Finding {
  return {
    hints: [],
    related: [],
    scope: [],
    alsoMisleads: [],
    accepted: null,
    ...parts,
    message: shortened(parts.message),
  };
}

const LONGEST_MESSAGE = 1_000;

/** A sentence that quotes a whole page of a file says no more by it, and takes long to print. */
function shortened(message: string): string {
  if (message.length <= LONGEST_MESSAGE) return message;
  const half = (part: string) => part.replace(/^[\udc00-\udfff]|[\ud800-\udbff]$/g, '');
  return `${half(message.slice(0, LONGEST_MESSAGE * 0.7))} … ${half(message.slice(-LONGEST_MESSAGE * 0.2))}`;
}

/** By file, line, column, check; two findings that say the same at one place are one. */
export function inOrder(findings: readonly Finding[]): Finding[] {
  const sorted = [...findings].sort((a, b) => {
    const byFile = compareText(a.place.source.file, b.place.source.file);
    if (byFile !== 0) return byFile;
    const [left, right] = [positionOf(a.place), positionOf(b.place)];
    return (
      left.line - right.line ||
      left.column - right.column ||
      compareText(a.check, b.check) ||
      compareText(a.message, b.message) ||
      // What one plan accepts and another does not is open.
      Number(a.accepted !== null) - Number(b.accepted !== null)
    );
  });
  return sorted.filter((one, i) => {
    const before = sorted[i - 1];
    return !(
      before &&
      before.check === one.check &&
      before.message === one.message &&
      before.place.source.file === one.place.source.file &&
      before.place.start === one.place.start
    );
  });
}

/** Order by code units, the same on every machine and in every locale. */
export function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
