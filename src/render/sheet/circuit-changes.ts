// How the rounds of circuits change after the week shown; which exercises a circuit has is told by
// those.
import type { WeekNumbers } from '../../compute/numbers.ts';
import { milliseconds } from '../../units/duration.ts';
import { exactly, type Interval, isSame } from '../../units/interval.ts';
import { numbersText } from '../words/amounts.ts';
import { roundsAlone } from '../words/round-words.ts';
import type { Words } from '../words/words.ts';
import { type ChangesInput, dated, sessionIn } from './change-lines.ts';
import type { EasyLine } from './easy-week-view.ts';
import type { ChangesView, LineView } from './sheet-view.ts';

interface CircuitChanges {
  readonly changes: readonly ChangesView[];
  readonly easy: readonly EasyLine[];
}

export function circuitChanges(input: ChangesInput): CircuitChanges {
  const all = input.plan.sessions.flatMap(({ id, parts }) =>
    parts.map((_, at) => oneCircuit(input, id, at)),
  );
  return {
    changes: all.map(({ block }) => block),
    easy: all.flatMap(({ easy }) => easy),
  };
}

interface OneCircuit {
  readonly block: ChangesView;
  readonly easy: readonly EasyLine[];
}

function oneCircuit(input: ChangesInput, id: string, at: number): OneCircuit {
  const { words, shown, later } = input;
  const lines: LineView[] = [];
  const easy: EasyLine[] = [];
  let last = circuitIn(input, shown, id, at);
  let first = last;
  for (const week of later) {
    const now = circuitIn(input, week, id, at);
    if (!now) continue;
    first ??= now;
    if (last && week.isEasy && now.rounds !== last.rounds) {
      const lead = words.say('growth.line', { lead: together(words, first, now) });
      easy.push({ week: week.week, lead, text: now.says });
    } else if (last && !week.isEasy && isOtherPace(last, now)) {
      lines.push(dated(input, week.week, now.says, isMore(last, now) ? null : 'growth.no-more'));
    }
    if (!week.isEasy || !last) last = now;
  }
  return { block: { heading: first ? together(words, first, first) : '', lines }, easy };
}

interface Circuit {
  readonly rounds: number;
  readonly restMs: Interval;
  readonly numbers: readonly number[];
  /** "Do 3 rounds, with 1 minute of rest in between." */
  readonly says: string;
}

function isOtherPace(a: Circuit, b: Circuit): boolean {
  return a.rounds !== b.rounds || !isSame(a.restMs, b.restMs);
}

/** More rounds, or less rest, which is more to ask for. */
function isMore(before: Circuit, { rounds, restMs }: Circuit): boolean {
  return rounds > before.rounds || restMs[0] < before.restMs[0] || restMs[1] < before.restMs[1];
}

function circuitIn(
  { words, plan, numberIn }: ChangesInput,
  week: WeekNumbers,
  id: string,
  at: number,
): Circuit | undefined {
  const session = sessionIn(week, id);
  const written = plan.sessions.find((one) => one.id === id)?.parts[at];
  const part = session?.parts.find((one) => one.part === written);
  if (!part || part.rounds === null) return undefined;
  const { rounds, restBetweenRoundsMs: restMs } = part;
  const numbers = part.items.flatMap(({ item }) => numberIn(`${id}/${item.id}`, week.week) ?? []);
  const rest = restMs[1] === 0 ? null : milliseconds(restMs);
  const says = roundsAlone(words, exactly(rounds), rest);
  return { rounds, restMs, numbers, says };
}

/** "Exercises 3 and 4 together", also by the numbers that they have come to since. */
function together(words: Words, first: Circuit, now: Circuit): string {
  const [numbers, others] = [first, now].map((one) => numbersText(words, one.numbers)) as [
    string,
    string,
  ];
  if (numbers === others && first.numbers.length === 1) {
    return words.say('growth.exercise', { number: numbers });
  }
  return numbers === others
    ? words.say('growth.together', { numbers })
    : words.say('growth.together-or', { numbers, others });
}
