// What changed in a plan, in the published form (schemas/output.schema.json, diff_data).
import type { Change, JudgedChange, Step } from '../changes/change.ts';
import type { PlanChanges } from '../changes/plan-changes.ts';

type Json = Readonly<Record<string, unknown>>;

/** `changes` and `effect` of a plan in `carryover diff --format json`. */
export function changesJson({ changes, effect }: PlanChanges): Json {
  return {
    changes: changes.map((change: JudgedChange) => ({
      ...changeJson(change),
      subject: change.subject,
      aspect: change.aspect,
      on_sheet: change.isOnSheet,
    })),
    effect: effect.map((change) => ({
      number: change.subject.after?.id ?? change.subject.before?.id ?? '',
      name: change.subject.after?.name ?? change.subject.before?.name ?? '',
      ...changeJson(change),
    })),
  };
}

function changeJson({ side, steps }: Change): Json {
  return { side, steps: steps.map(stepJson) };
}

function stepJson({ weeks, before, after }: Step): Json {
  return { weeks, before, after };
}
