// The checks of figures, for the levels that a plan uses and for an exercise of the library by itself.
// What they find stands in the exercise's file; a plan that uses the level can accept it.
import type { CheckName } from '../finding/checks.ts';
import type { Finding } from '../finding/finding.ts';
import type { Exercise, Level } from '../model/exercise.ts';
import type { Figure } from '../model/figure.ts';
import type { Practice } from '../model/practice.ts';
import { figureFits } from './figure-fits.ts';
import { type FigureLevel, figuresOf } from './figure-levels.ts';
import { jointRange } from './joint-range.ts';
import type { PlanCheck, PlanUnderCheck } from './plan-check.ts';
import { plannedItems } from './planned-item.ts';
import { poseUnreached } from './pose-unreached.ts';

type FindInFigure = (drawn: FigureLevel, scope: readonly object[]) => readonly Finding[];

const FIND: readonly { readonly check: CheckName; readonly find: FindInFigure }[] = [
  { check: 'joint-range', find: ({ figure }, scope) => jointRange(figure, scope) },
  { check: 'figure-does-not-fit', find: figureFits },
  { check: 'pose-unreached', find: poseUnreached },
];

export const FIGURE_CHECKS: readonly PlanCheck[] = FIND.map(({ check, find }) => ({
  check,
  settings: {},
  find: (subject) => inPlan(subject, find),
}));

/** The levels that a plan comes to in any week, and the records that each is used by. */
function usedLevels({ plan, numbers }: PlanUnderCheck): ReadonlyMap<Level, ReadonlySet<object>> {
  const used = new Map<Level, Set<object>>();
  for (const { session, part, item } of numbers.weeks.flatMap(plannedItems)) {
    const scope = used.get(item.level) ?? new Set([plan]);
    used.set(item.level, scope);
    for (const record of [session.session, part.part, item.item]) scope.add(record);
  }
  return used;
}

function inPlan(subject: PlanUnderCheck, find: FindInFigure): readonly Finding[] {
  const used = usedLevels(subject);
  const scopeOf = (figure: Figure) =>
    [...used].flatMap(([level, scope]) => (level.figure === figure ? [...scope] : []));
  return figuresOf([...used.keys()]).flatMap((drawn) =>
    find(drawn, [...new Set(scopeOf(drawn.figure))]),
  );
}

/**
 * What is found in the figures of an exercise, whether or not a plan uses them. Where the file has a
 * mistake something may be missing from a figure, and nothing is said of what it needs as a whole.
 */
export function checkFigures(
  { levels }: Exercise,
  practice: Practice,
  isSound: boolean,
): readonly Finding[] {
  const isRun = (check: CheckName) =>
    practice.checks.get(check)?.severity !== 'off' && (isSound || check === 'joint-range');
  const drawn = figuresOf(levels);
  return FIND.filter(({ check }) => isRun(check)).flatMap(({ find }) =>
    drawn.flatMap((one) => find(one, [])),
  );
}
