// Changes of the library under a plan: the words of the exercises and levels that both versions use.
// What holds of every level in use is told once, of the exercise.
import type { MatchedPlan } from '../../diff/match.ts';
import type { Exercise } from '../../model/exercise.ts';
import type { Change, Named } from './change.ts';
import { compareFacts } from './compare-facts.ts';
import { levelFacts } from './exercise-facts.ts';
import { whole } from './fact.ts';
import { weeksOf } from './item-facts.ts';
import type { FactSetting } from './session-facts.ts';

interface Used {
  readonly before: Exercise;
  readonly after: Exercise;
  readonly levels: Set<string>;
}

export function exerciseChanges(
  { items, splits }: MatchedPlan,
  then: FactSetting,
  now: FactSetting,
): readonly Change[] {
  const halves = splits.flatMap(({ whole: one, left, right, isJoined }) =>
    [left, right].map((half) =>
      isJoined ? { before: half, after: one } : { before: one, after: half },
    ),
  );
  const used = new Map<string, Used>();
  for (const { before, after } of [...items.pairs, ...halves]) {
    const { exercise } = after.item;
    if (then.idNow(before.item.exercise.id) !== exercise.id) continue;
    const one = used.get(exercise.id) ?? {
      before: before.item.exercise,
      after: exercise,
      levels: new Set(),
    };
    for (const level of [...levelsOf(before.item, then), ...levelsOf(after.item, now)])
      one.levels.add(level);
    used.set(exercise.id, one);
  }
  return [...used.values()].flatMap((one) => changesOf(one, then, now));
}

function levelsOf(
  item: Parameters<typeof weeksOf>[0],
  { numbers }: FactSetting,
): readonly string[] {
  return [
    item.level.id,
    ...(numbers ? [...weeksOf(item, numbers).values()].map(({ level }) => level.id) : []),
  ];
}

function changesOf(
  { before, after, levels }: Used,
  then: FactSetting,
  now: FactSetting,
): readonly Change[] {
  const names = (level: string | null): { before: Named; after: Named } => {
    const named = ({ id, name, levels: all }: Exercise): Named => {
      const own = level === null ? undefined : all.find((one) => one.id === level);
      return own
        ? { id: `${id}/${own.id}`, name: own.name === null ? name : `${name}: ${own.name}` }
        : { id, name };
    };
    return { before: named(before), after: named(after) };
  };
  const file = compareFacts(
    { kind: 'exercise', ...names(null) },
    [whole('file', before.id, [])],
    [whole('file', after.id, [])],
  );
  const both = [...levels].flatMap((id) => {
    const [old, fresh] = [before, after].map(({ levels: all }) => all.find((one) => one.id === id));
    return old && fresh ? [{ id, old, fresh }] : [];
  });
  const byLevel = both.map(({ id, old, fresh }) =>
    compareFacts(
      { kind: 'exercise', ...names(id) },
      levelFacts(old, then.words),
      levelFacts(fresh, now.words),
    ),
  );
  const content = ({ aspect, steps }: Change) => JSON.stringify([aspect, steps]);
  const [first = [], ...others] = byLevel;
  const shared = first.filter((one) =>
    others.every((level) => level.some((two) => content(two) === content(one))),
  );
  const own = byLevel.flatMap((changes) =>
    changes.filter((change) => !shared.some((one) => content(one) === content(change))),
  );
  return [
    ...file,
    ...shared.map((change) => ({
      ...change,
      subject: { kind: 'exercise' as const, ...names(null) },
    })),
    ...own,
  ];
}
