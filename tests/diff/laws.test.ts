// What holds of any two versions of a plan: nothing that alters a sheet goes unsaid, nothing is said of a
// plan that stayed, and the way back says the same the other way round.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { errorsOf } from '../../src/build.ts';
import { numberedSheet } from '../../src/handouts/pages.ts';
import { mirrored } from '../../src/render/changes/plan-changes.ts';
import {
  diffOf,
  type Edit,
  edited,
  edits,
  exampleFiles,
  type Files,
  versionOf,
} from './versions.ts';

const files = exampleFiles();
const plans = ['M-0412', 'S-1178', 'K-2207', 'B-0925', 'T-1630', 'H-7702', 'D-3051', 'C-0388'];
/** What can reach a sheet: the plan, its exercises, the settings. */
const sources = new Map(
  plans.map((plan) => {
    const { compiled } = versionOf(files, plan);
    const uses = compiled.plans[0]?.uses ?? [];
    return [plan, [...Array(uses.length).fill(`plans/${plan}.yaml`), ...uses, 'practice.yaml']];
  }),
);
const changed = (plan: string, made: readonly Edit[]) =>
  edited(files, sources.get(plan) ?? [], made);

/** The sheet number of a version: another one as soon as a word, a number or a picture differs. */
function numberOf(version: Files, plan: string): string | null {
  const { compiled, wording } = versionOf(version, plan);
  const one = compiled.plans[0];
  const words = wording.get(compiled.practice.language);
  if (!one?.plan || !one.numbers || !words || errorsOf(one, compiled.findings).length > 0)
    return null;
  return numberedSheet({ plan: one.plan, numbers: one.numbers, last: null }, compiled, words)
    .number;
}

const RUNS = Number(process.env.DIFF_RUNS ?? 60);

describe('two versions of a plan', () => {
  const versions = fc.record({ plan: fc.constantFrom(...plans), edits });

  it('differ on the sheet exactly where a change says so', () => {
    let onSheet = 0;
    fc.assert(
      fc.property(versions, ({ plan, edits: made }) => {
        const other = changed(plan, made);
        const diff = diffOf(files, other, plan);
        const [before, after] = [files, other].map((version) => numberOf(version, plan));
        if (!before || !after) return;
        if (before !== after) onSheet += 1;
        expect(diff.differs).toBe(before !== after);
      }),
      { numRuns: RUNS },
    );
    // Otherwise the edits reach no sheet, and the law says nothing.
    expect(onSheet).toBeGreaterThan(RUNS / 10);
  });

  it('are the same the other way round', () => {
    const sorted = (changes: readonly unknown[]) =>
      changes.map((one) => JSON.stringify(one)).sort();
    fc.assert(
      fc.property(versions, ({ plan, edits: made }) => {
        const other = changed(plan, made);
        const there = diffOf(files, other, plan).changes;
        const back = diffOf(other, files, plan).changes;
        expect(sorted(mirrored(back.changes))).toEqual(sorted(there.changes));
        expect(sorted(mirrored(back.effect))).toEqual(sorted(there.effect));
      }),
      { numRuns: RUNS },
    );
  });

  it.each(plans)('say nothing of %s where nothing changed', (plan) => {
    const { changes, hasSheet, differs, troubles } = diffOf(files, { ...files }, plan);
    expect([changes.changes, changes.effect, troubles]).toEqual([[], [], []]);
    expect([hasSheet.after, differs]).toEqual([true, false]);
  });
});
