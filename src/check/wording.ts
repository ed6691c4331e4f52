// Numbers and lists as a person says them in a finding: 4.5 sets, 1 min 30 s, a chair or a worktop.

const MS_PER_SECOND = 1000;
const SECONDS_PER_MINUTE = 60;

/** At most two decimals: 4, 4.5, 0.33. */
export function numberText(n: number): string {
  return String(Math.round(n * 100) / 100);
}

/** `1 set`, `4.5 sets`. */
export function counted(n: number, thing: string): string {
  return `${numberText(n)} ${thing}${n === 1 ? '' : 's'}`;
}

/** `45 s`, `2 min`, `1 min 30 s`. */
export function durationText(ms: number): string {
  const seconds = ms / MS_PER_SECOND;
  if (seconds < SECONDS_PER_MINUTE) return `${numberText(seconds)} s`;
  const minutes = Math.floor(seconds / SECONDS_PER_MINUTE);
  const rest = seconds - minutes * SECONDS_PER_MINUTE;
  return rest === 0 ? `${minutes} min` : `${minutes} min ${numberText(rest)} s`;
}

/** Whole minutes, upwards: a person plans for what it can take. */
export function minutesUp(ms: number): string {
  return counted(Math.ceil(ms / (MS_PER_SECOND * SECONDS_PER_MINUTE)), 'minute');
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(words: readonly string[], last: 'and' | 'or'): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}
