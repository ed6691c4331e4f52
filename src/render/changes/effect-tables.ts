// What a change comes to, as two tables: minutes with a row for weeks that are alike, sets with a row a muscle.
import { runsOf, type TableView } from '../record/table-view.ts';
import { NOTHING } from '../words/plain-number.ts';
import type { Words } from '../words/words.ts';
import type { Change, Step } from './change.ts';
import type { PlanChanges } from './plan-changes.ts';
import { weeksText } from './plan-facts.ts';

export function effectTables(
  { effect, weeks, firstWeek }: PlanChanges,
  words: Words,
): readonly TableView[] {
  const isOfMuscle = ({ subject }: Change) =>
    /^sets /.test(subject.after?.id ?? subject.before?.id ?? '');
  const minutes = effect.filter((change) => !isOfMuscle(change));
  const muscles = effect.filter(isOfMuscle);
  return [
    ...(minutes.length === 0 ? [] : [minutesTable(minutes, [firstWeek, weeks], words)]),
    ...(muscles.length === 0 ? [] : [musclesTable(muscles, words)]),
  ];
}

function minutesTable(
  changes: readonly Change[],
  [first, last]: readonly [number, number],
  words: Words,
): TableView {
  const cellsIn = (week: number) =>
    changes.map(({ steps }) => {
      const step = steps.find(
        (one) => one.weeks === null || (week >= one.weeks[0] && week <= one.weeks[1]),
      );
      return step ? stepText(step, words) : '';
    });
  const weeks = Array.from({ length: Math.max(0, last - first + 1) }, (_, at) => {
    const week = first + at;
    const cells = cellsIn(week);
    return { week, value: cells.some((cell) => cell !== '') ? cells : null };
  });
  return {
    heading: words.say('changes.effect.minutes'),
    columns: [
      words.say('changes.effect.weeks'),
      ...changes.map((change) => measureName(change, words)),
    ],
    rows: runsOf(weeks).map((run) => ({
      head: weeksText(run.first, run.last, words),
      cells: run.value,
    })),
    none: '',
  };
}

function musclesTable(changes: readonly Change[], words: Words): TableView {
  return {
    heading: words.say('changes.effect.muscles'),
    columns: ['muscle', 'weeks', 'change'].map((key) => words.say(`changes.effect.${key}`)),
    rows: changes.flatMap((change) =>
      change.steps.map((step) => ({
        head: measureName(change, words),
        cells: [
          step.weeks
            ? weeksText(step.weeks[0], step.weeks[1], words)
            : words.say('changes.all-weeks'),
          stepText(step, words),
        ],
      })),
    ),
    none: '',
  };
}

function stepText({ before, after }: Step, words: Words): string {
  return words.say('changes.step', { before: before[0] ?? NOTHING, after: after[0] ?? NOTHING });
}

function measureName({ subject, aspect, side }: Change, words: Words): string {
  const measure = subject.after?.name ?? subject.before?.name ?? '';
  if (aspect === 'number') return measure;
  return side === null
    ? words.say('changes.each-side', { measure })
    : words.say('changes.one-side', { measure, side: words.say(`clinic.sides.${side}`) });
}
