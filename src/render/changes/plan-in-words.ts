// A plan as lines of facts, one fact a line, so that a line-by-line comparison of two of them reads in the
// trade's words: for `git diff` and `git log -p`. Only what the plan itself says: what the library says
// may have changed since.
import { placesOf } from '../../diff/match.ts';
import type { Plan } from '../../model/plan.ts';
import { exerciseName } from '../sheet/exercise-view.ts';
import type { Words } from '../words/words.ts';
import { aspectLine } from './aspect-line.ts';
import type { Fact } from './fact.ts';
import { itemFacts } from './item-facts.ts';
import { planFacts } from './plan-facts.ts';
import { type FactSetting, partFacts, sessionFacts } from './session-facts.ts';

/** The lines; what is not set takes none. */
export function planInWords(plan: Plan, words: Words): readonly string[] {
  const setting: FactSetting = {
    plan,
    numbers: null,
    words,
    idNow: (id) => id,
    placeNow: (place) => place,
  };
  const heading = (kind: string, id: string, name: string) =>
    words.say(`changes.subjects.${kind}`, { id, name });
  const block = (title: string, facts: readonly Fact[]) => {
    const lines = factLines(facts, words).map((line) => `  ${line}`);
    return lines.length === 0 ? [] : ['', title, ...lines];
  };
  const items = placesOf(plan);
  return [
    ...block(heading('plan', plan.id, plan.title), planFacts(plan, plan.pain, words)).slice(1),
    ...plan.sessions.flatMap((session) => [
      ...block(
        heading('session', session.id, session.name ?? session.id),
        sessionFacts(session, setting),
      ),
      ...session.parts.flatMap((part) => [
        ...block(
          heading('part', part.kind, `${session.name ?? session.id}, ${part.name ?? part.kind}`),
          partFacts(part, setting),
        ),
        ...items
          .filter((place) => place.part === part)
          .flatMap((place) => {
            const { item } = place;
            const name = exerciseName(words, item.level);
            return block(
              heading('item', `${session.id}/${item.id}`, name),
              itemFacts(place, setting),
            );
          }),
      ]),
    ]),
  ];
}

function factLines(facts: readonly Fact[], words: Words): readonly string[] {
  const aspects = new Set(facts.map(({ aspect }) => aspect));
  return [...aspects].flatMap((aspect) => {
    const texts = (side: Fact['side']) =>
      facts
        .filter((fact) => fact.aspect === aspect && fact.side === side)
        .flatMap(({ value }) => (value.kind === 'whole' ? value.lines : []));
    const line = (side: Fact['side'], these: readonly string[]) =>
      these.map((text) => aspectLine(aspect, side, text, words));
    const [none, left, right] = [texts(null), texts('left'), texts('right')];
    // The two sides of a dose that is the same on both are one line.
    if (JSON.stringify(left) === JSON.stringify(right))
      return [...line(null, none), ...line(null, left)];
    return [...line(null, none), ...line('left', left), ...line('right', right)];
  });
}
