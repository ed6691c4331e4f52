// Days as people write them, in the form that a schedule takes.
import { WEEKDAYS, type Weekday } from '../units/day.ts';

const NAMES = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];

const PHRASES: readonly (readonly [RegExp, string])[] = [
  [/^(every ?day|each day|all( days)?|7 days( a week)?)$/i, '"days: daily"'],
  [/^(every other|every second|alternate) days?$/i, '"every: 2 days"'],
  [/^(weekdays|working days)$/i, '"days: [mon, tue, wed, thu, fri]"'],
  [/^(the )?weekends?$/i, '"days: [sat, sun]"'],
  [/^(as|when) needed$/i, '"as_needed: true"'],
];

/** What follows "write" in a sentence; undefined where the days cannot be told. */
export function daysForm(text: string): string | undefined {
  const phrase = PHRASES.find(([pattern]) => pattern.test(text));
  if (phrase) return phrase[1];
  const count =
    /^([1-7](?:\s*[-–]\s*[1-7])?)\s*(?:x|times|days)?(?:\s*(?:a|per|\/)\s*week)?$/i.exec(text);
  if (count) return `"days_a_week: ${count[1]}"`;
  const span = /^([a-z]+)\.?\s*(?:-|–|to)\s*([a-z]+)\.?$/i.exec(text);
  const listed = span ? daysFromTo(span[1] as string, span[2] as string) : daysListed(text);
  return listed && `"days: [${listed.join(', ')}]"`;
}

/** The day that a word names: mon, Mon, weds, Monday. */
export function dayNamed(word: string): Weekday | undefined {
  const lower = word.toLowerCase().replace(/\.$/, '').replace(/s$/, '');
  const index = NAMES.findIndex((name) => lower.length >= 2 && name.startsWith(lower));
  return WEEKDAYS[index];
}

function daysFromTo(from: string, to: string): readonly Weekday[] | undefined {
  const [first, last] = [dayNamed(from), dayNamed(to)].map((day) =>
    day === undefined ? -1 : WEEKDAYS.indexOf(day),
  ) as [number, number];
  if (first === -1 || last === -1) return undefined;
  const length = ((last - first + 7) % 7) + 1;
  return Array.from({ length }, (_, i) => WEEKDAYS[(first + i) % 7] as Weekday);
}

function daysListed(text: string): readonly Weekday[] | undefined {
  const days = text
    .split(/\s*(?:[,;/+&]|\band\b|\s)\s*/)
    .filter((word) => word !== '')
    .map(dayNamed);
  return days.length > 0 && days.every((day) => day !== undefined) ? [...new Set(days)] : undefined;
}
