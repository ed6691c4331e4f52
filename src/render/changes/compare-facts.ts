// Two versions' facts of one subject, compared: what differs, in which weeks.
import type { Change, Step, Subject } from './change.ts';
import type { Fact, FactValue } from './fact.ts';

/** The changes of one subject. What is the same on the left and on the right is one change of no side. */
export function compareFacts(
  subject: Subject,
  before: readonly Fact[],
  after: readonly Fact[],
): readonly Change[] {
  const names = new Set([...before, ...after].map(({ aspect }) => aspect));
  return [...names].flatMap((aspect) => {
    const of = (facts: readonly Fact[], side: Fact['side']) =>
      facts.find((fact) => fact.aspect === aspect && fact.side === side);
    const shows = [...before, ...after].find((fact) => fact.aspect === aspect)?.shows ?? [];
    const steps = (side: Fact['side']) =>
      stepsBetween(of(before, side)?.value, of(after, side)?.value);
    const change = (side: Fact['side'], these: readonly Step[]): readonly Change[] =>
      these.length === 0 ? [] : [{ subject, aspect, side, steps: these, shows }];
    const [none, left, right] = [steps(null), steps('left'), steps('right')];
    if (JSON.stringify(left) === JSON.stringify(right))
      return [...change(null, none), ...change(null, left)];
    return [...change(null, none), ...change('left', left), ...change('right', right)];
  });
}

const NONE: FactValue = { kind: 'whole', lines: [] };

function stepsBetween(before: FactValue = NONE, after: FactValue = NONE): readonly Step[] {
  if (before.kind === 'by-week' && after.kind === 'by-week')
    return weekSteps(before.byWeek, after.byWeek);
  if (before.kind === 'by-week' || after.kind === 'by-week') return [];
  return wholeSteps(before.lines, after.lines);
}

function wholeSteps(before: readonly string[], after: readonly string[]): readonly Step[] {
  if (isEqual(before, after)) return [];
  if (before.length < 2 && after.length < 2) return [{ weeks: null, before, after }];
  const gone = without(before, after);
  const fresh = without(after, before);
  // The same sentences in another order.
  if (gone.length + fresh.length === 0) return [{ weeks: null, before, after }];
  return [{ weeks: null, before: gone, after: fresh }];
}

/** What stands in the first list more often than in the second. */
function without(these: readonly string[], others: readonly string[]): readonly string[] {
  const left = [...others];
  return these.filter((one) => {
    const at = left.indexOf(one);
    if (at === -1) return true;
    left.splice(at, 1);
    return false;
  });
}

function isEqual(before: readonly string[], after: readonly string[]): boolean {
  return before.length === after.length && before.every((one, at) => one === after[at]);
}

/** Stretches of the weeks that both have in which both values stay and differ. */
function weekSteps(
  before: ReadonlyMap<number, string>,
  after: ReadonlyMap<number, string>,
): readonly Step[] {
  const weeks = [...before.keys()].filter((week) => after.has(week)).sort((a, b) => a - b);
  const runs: { first: number; last: number; then: string; now: string }[] = [];
  for (const [at, week] of weeks.entries()) {
    const [then, now] = [before.get(week) ?? '', after.get(week) ?? ''];
    const run = runs.at(-1);
    const isNext = run?.last === weeks[at - 1];
    if (run && isNext && run.then === then && run.now === now) run.last = week;
    else runs.push({ first: week, last: week, then, now });
  }
  const lastRun = runs.at(-1);
  if (lastRun) lastRun.last = heldUntil(lastRun, before, after);
  const differing = runs.filter(({ then, now }) => then !== now);
  const lines = (text: string) => (text === '' ? [] : [text]);
  return differing.map(({ first, last, then, now }) => ({
    weeks: differing.length === 1 && runs.length === 1 ? null : [first, last],
    before: lines(then),
    after: lines(now),
  }));
}

/** A plan that became longer or shorter: as long as the version that goes on holds its value. */
function heldUntil(
  { last, then, now }: { last: number; then: string; now: string },
  before: ReadonlyMap<number, string>,
  after: ReadonlyMap<number, string>,
): number {
  const holds = (week: number) =>
    after.has(week) ? after.get(week) === now : before.has(week) && before.get(week) === then;
  let held = last;
  while (holds(held + 1)) held += 1;
  return held;
}
