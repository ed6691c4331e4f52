// What a plan's sheets print in their language beside its own words: of the practice, by whom it is, bands,
// things and positions.
import type { PlanNumbers } from '../compute/numbers.ts';
import type { Exercise } from '../model/exercise.ts';
import type { Plan } from '../model/plan.ts';
import { KIT, POSITIONS } from '../model/vocabulary.ts';

export interface SheetParts {
  readonly practitioners: readonly string[];
  readonly bands: readonly string[];
  /** Ids that the practice added to the shipped ones, which every words pack has. */
  readonly kit: readonly string[];
  readonly positions: readonly string[];
}

/** A plan with the language of its sheet. */
export interface PlanInLanguage {
  readonly plan: Plan;
  readonly file: string;
  readonly language: string;
  /** Its exercises that have no words in that language. */
  readonly untranslated: readonly Exercise[];
  /** What of the practice's its sheet prints; null where the plan has no numbers yet. */
  readonly parts: SheetParts | null;
}

export function sheetParts({ plan, weeks }: PlanNumbers): SheetParts {
  const items = weeks.flatMap(({ sessions }) =>
    sessions.flatMap(({ parts }) => parts.flatMap((part) => part.items)),
  );
  const loads = items.flatMap(({ left, right, middle }) =>
    [left, right, middle].flatMap((work) => work?.dose.values.load ?? []),
  );
  const own = (ids: readonly string[], shipped: readonly string[]) =>
    [...new Set(ids)].filter((id) => id !== '' && !shipped.includes(id));
  return {
    practitioners: plan.by === null ? [] : [plan.by],
    bands: [...new Set(loads.flatMap((load) => (load.kind === 'band' ? [load.band] : [])))],
    kit: own(
      items.flatMap(({ level }) => level.kit.flat()),
      KIT,
    ),
    positions: own(
      items.map(({ level }) => level.position),
      POSITIONS,
    ),
  };
}
