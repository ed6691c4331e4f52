// E-mail addresses and telephone numbers in plain text. Meant for a warning: counts, ranges, codes and
// loads are let be, and so is anything that has its unit.

/** In UTF-16 units, `end` exclusive. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
}

const LONGEST_LOCAL = 64;
const LONGEST_DOMAIN = 255;

/** Every e-mail address, found from its @ outwards. */
export function emailStretches(text: string): readonly Stretch[] {
  const found: Stretch[] = [];
  for (let at = text.indexOf('@'); at !== -1; at = text.indexOf('@', at + 1)) {
    const local = /[\p{L}\p{N}._%+'-]+$/u.exec(text.slice(Math.max(0, at - LONGEST_LOCAL), at));
    const domain = /^[\p{L}\p{N}-]+(?:\.[\p{L}\p{N}-]+)*\.\p{L}{2,}/u.exec(
      text.slice(at + 1, at + 1 + LONGEST_DOMAIN),
    );
    if (local && domain)
      found.push({ start: at - local[0].length, end: at + 1 + domain[0].length });
  }
  return found;
}

/** Digits in groups, parted by spaces, a hyphen, brackets or (three groups or more) dots. */
const GROUPS = /\+?\(?\d(?:(?:[ \u00a0]{1,2}|[\u2010-\u2013-]|[ \u00a0]?\(|\)[ \u00a0-]?)?\d)*/g;
const DOTTED = /\+?\d{2,5}(?:\.\d{2,5}){2,}/g;
/** What may not touch a number: letters and signs that make it part of a code, a decimal or a path. */
const PART_OF_MORE_BEFORE = /(?:[\p{L}\p{N}_./@#]|[\p{L}\p{N}_][-])$/u;
const PART_OF_MORE_AFTER = /^(?:[\p{L}_@]|[-.]\p{L}|\.\d)/u;
const UNIT_AFTER =
  /^\s?(?:%|(?:ms|s|min|breaths?|kg|lb|rm|reps?|sets?|steps?|times|days?|weeks?|degrees|m|km)(?![\p{L}\p{N}]))/u;

/** Every telephone number of so many digits or more. */
export function telephoneStretches(text: string, leastDigits: number): readonly Stretch[] {
  const found: Stretch[] = [];
  for (const pattern of [GROUPS, DOTTED]) {
    for (const match of text.matchAll(pattern)) {
      const start = match.index;
      const end = start + match[0].length;
      const before = text.slice(Math.max(0, start - 2), start);
      const after = text.slice(end, end + 10);
      if (PART_OF_MORE_BEFORE.test(before) || PART_OF_MORE_AFTER.test(after)) continue;
      if (isTelephone(match[0], leastDigits) && !UNIT_AFTER.test(after)) found.push({ start, end });
    }
  }
  return found;
}

function isTelephone(token: string, leastDigits: number): boolean {
  const groups = token.match(/\d+/g) ?? [];
  if (groups.join('').length < leastDigits) return false;
  const isMarked = /^[+(]|^0/.test(token);
  if (groups.length === 1) return isMarked || !token.endsWith('000');
  if (groups.length === 2 && isRange(token, groups)) return false;
  // 12 34 56 78 is a number to ring; 8-12 10-15 15-20 is three ranges.
  return isMarked || groups.some((group) => group.length >= 3) || /^\d\d(?: \d\d)+$/.test(token);
}

/** Two years, two round numbers that rise, or two that lie close: 2024-2026, 1000-1500, 1451-1462. */
function isRange(token: string, [first = '', second = '']: readonly string[]): boolean {
  const [from, to] = [Number(first), Number(second)];
  if (!/^\d+ ?[\u2010-\u2013-] ?\d+$/.test(token) || from >= to || first.startsWith('0'))
    return false;
  const areYears = [from, to].every((year) => year >= 1900 && year <= 2200);
  return areYears || to - from < 100 || (from % 50 === 0 && to % 50 === 0);
}
