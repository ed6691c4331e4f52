// Whatever is done to the files of a practice folder, carryover answers in sentences: never a crash,
// never a wrong place, never a sheet from numbers that are none. FUZZ_RUNS and FUZZ_SEED try more.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ExampleName, exampleFiles, type Files } from './support/example-files.ts';
import { held } from './support/invariants.ts';
import { differences, mutated, mutations } from './support/mutations.ts';

const SEED = Number(process.env.FUZZ_SEED ?? 20261005);
const RUNS = Number(process.env.FUZZ_RUNS ?? 1_500);

const examples = {
  saltmarsh: exampleFiles('saltmarsh'),
  'first-folder': exampleFiles('first-folder'),
  contract: exampleFiles('contract'),
} as const satisfies Record<ExampleName, Files>;

/** Fails with what does not hold, and what was changed. */
function holds(before: Files, after: Files): void {
  let broken: readonly string[];
  try {
    ({ broken } = held(after));
  } catch (thrown) {
    broken = [`threw ${thrown instanceof Error ? thrown.stack : thrown}`];
  }
  if (broken.length > 0) throw new Error([...broken.slice(0, 6), differences(before, after)].join('\n'));
}

describe('files with slips in them', () => {
  it.each(Object.entries(examples))('the invariants hold of %s as it is', (_, files) => {
    const { broken, printed } = held(files);
    expect(broken).toEqual([]);
    expect(printed).toBeGreaterThan(0);
  });

  // The smaller folders are drawn more often: in them a slip is nearer to everything else.
  const shares = [['saltmarsh', 0.2], ['first-folder', 0.35], ['contract', 0.45]] as const;
  it.each(shares)('%s', (name, part) => {
    const before = examples[name];
    const slips = fc.array(mutations, { minLength: 1, maxLength: 3 });
    const property = fc.property(slips, (some) => holds(before, some.reduce(mutated, before)));
    fc.assert(property, { numRuns: Math.round(RUNS * part), seed: SEED, verbose: fc.VerbosityLevel.None });
  }, 3_600_000);
});
