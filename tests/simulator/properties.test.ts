// The laws of any plan's numbers (laws.ts), held of carryover itself through the files it reads.

import { describe } from 'vitest';
import { showData } from '../support/show-data.ts';
import { holdLaws } from './laws.ts';
import type { Simulated } from './simulate.ts';
import { filesOf } from './yaml.ts';

describe('carryover', () => {
  holdLaws((all) => showData(filesOf(all), all.plan.plan) as unknown as Simulated, 150, 600_000);
});
