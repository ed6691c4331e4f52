// Numbers of several groups on a page that is read from right to left: "555 0142" would show as "0142 555",
// for the blank between two numbers goes with the page. Such a number is put between signs that keep what
// is inside in order, whoever wrote the text; files may not hold these signs themselves.
import { isLinkView } from './link-code.ts';
import { isPictureView } from './picture.ts';

const LEFT_TO_RIGHT = '\u2066';
const END = '\u2069';

/** "555 0142", "+44 20 7946 0000", "(555) 0142", "+5550142". */
const GROUPED = new RegExp(
  [
    // Not inside a sheet number: "TCR3 4M9N" keeps its order by its letters, which signs would part.
    '(?<![A-Za-z0-9])(?:',
    '(?:\\(\\+?\\d{3,}\\)[ \u00a0-]?|\\+)?\\d+(?:[ \u00a0/-]\\d+)+',
    '|\\(\\+?\\d{3,}\\)[ \u00a0-]?\\d+|\\+\\d+',
    ')(?![A-Za-z0-9])',
  ].join(''),
  'g',
);

/** What no eye reads: addresses of links and names of places in the page. */
const UNREAD = new Set(['dial', 'file', 'id', 'language', 'direction']);

export function withNumbersInOrder(text: string): string {
  // Parted over two lines it would be read from its second half.
  const whole = (number: string) => number.replaceAll(' ', '\u00a0');
  return text.replace(GROUPED, (number) => `${LEFT_TO_RIGHT}${whole(number)}${END}`);
}

/** The view as it is; one that is read from right to left, with its numbers kept in order. */
export function inReadingOrder<T extends object>(view: T): T {
  const isMirrored = 'direction' in view && view.direction === 'rtl';
  return isMirrored ? (ordered(view) as T) : view;
}

function ordered(value: unknown): unknown {
  if (typeof value === 'string') return withNumbersInOrder(value);
  if (Array.isArray(value)) return value.map(ordered);
  if (isPictureView(value)) return { ...value, alt: withNumbersInOrder(value.alt) };
  if (isLinkView(value)) return { ...value, lead: withNumbersInOrder(value.lead) };
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [key, UNREAD.has(key) ? inner : ordered(inner)]),
  );
}
