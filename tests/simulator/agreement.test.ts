// Two blind readings of the contract must come to the same numbers: the simulator's and carryover's,
// on 2,000 random valid plans. A disagreement is a bug in one of the two, or a hole in the contract.

import fc from 'fast-check';
import { describe, it } from 'vitest';
import { showData } from '../support/show-data.ts';
import { differences } from './compare.ts';
import { runs } from './laws.ts';
import { cases, EVERYTHING, focusOn } from './plans.ts';
import { simulate } from './simulate.ts';
import type { Case } from './written.ts';
import { filesOf } from './yaml.ts';

/** Fails with the places that differ and the files to see it with. */
function holdTogether(all: Case): void {
  const files = filesOf(all);
  const told = Object.entries(files).map(([path, text]) => `# ${path}\n${text}`);
  let found: string[];
  try {
    const shown = showData(files, all.plan.plan);
    found = differences(simulate(all.practice, all.exercises, all.plan), shown);
  } catch (refusal) {
    throw new Error(`a plan thought valid was refused:\n${refusal}\n${told.join('\n')}`);
  }
  if (!found.length) return;
  const more = found.length > 12 ? [`and ${found.length - 12} more`] : [];
  throw new Error([...found.slice(0, 12), ...more, ...told].join('\n'));
}

describe('the simulator and carryover agree on', () => {
  const about = {
    climbs: focusOn('climbs', 'sides', 'easy'),
    circuits: focusOn('circuits', 'climbs', 'sides', 'easy'),
    'sides and orders': focusOn('sides'),
    'entries and windows': focusOn('entries', 'windows', 'sides', 'easy'),
    'everything together': EVERYTHING,
  };
  for (const [name, focus] of Object.entries(about)) {
    it(name, () => fc.assert(fc.property(cases(focus), holdTogether), runs(400)), 900_000);
  }
});
