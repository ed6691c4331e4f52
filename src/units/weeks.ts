// Weeks of a plan as written: windows (`3-6`) and lists of weeks (`[4, 8-9]`).
import { parseCount, parseCounts } from './number.ts';
import { misread, type Reading } from './reading.ts';

/** First and last week, both included. */
export type WeekRange = readonly [first: number, last: number];

/** A window. A bare number could be "in week 6" or "for 6 weeks", and is refused. */
export function parseWindow(text: string, weeks: number): Reading<WeekRange> {
  if (/^\d+$/.test(text)) {
    const bare = parseCount(text);
    if (!bare.ok) return bare;
    return misread(
      'weeks-unclear',
      `says ${text}, which could be "in week ${text}" (write ${text}-${text}) or "for ${text} weeks" (write 1-${text})`,
    );
  }
  return within(parseCounts(text), text, weeks);
}

/** A week or a range of weeks. */
export function parseWeeks(text: string, weeks: number): Reading<WeekRange> {
  return within(parseCounts(text), text, weeks);
}

function within(reading: Reading<WeekRange>, text: string, weeks: number): Reading<WeekRange> {
  if (reading.ok && reading.value[1] > weeks) {
    return misread(
      'weeks-outside',
      `says ${text}, but the plan has ${weeks} ${weeks === 1 ? 'week' : 'weeks'}`,
    );
  }
  return reading;
}

/** The first week that two of the ranges share; undefined where none does. */
export function overlap(ranges: readonly WeekRange[]): number | undefined {
  const sorted = [...ranges].sort((a, b) => a[0] - b[0]);
  for (const [i, range] of sorted.entries()) {
    const before = sorted[i - 1];
    if (before && range[0] <= before[1]) return range[0];
  }
  return undefined;
}
