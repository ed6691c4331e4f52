// Published programmes, each a practice folder here, against the totals that their authors state.
// Every number was worked by hand or printed by the source; none came from this tool. README.md
// beside this file says how to add a source; what the words mean is expectation.ts's business.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { showData } from '../support/show-data.ts';
import {
  type Expectation,
  expectedIntervals,
  measuredIntervals,
  parseSource,
  type Source,
} from './expectation.ts';

const here = fileURLToPath(new URL('.', import.meta.url));
const folders = readdirSync(here, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name)
  .sort();

test('there are published programmes to hold against', () => {
  expect(folders.length).toBeGreaterThan(0);
});

for (const folder of folders) {
  const source = parseSource(readFileSync(join(here, folder, 'expected.yaml'), 'utf8'), folder);
  describe(`${source.source} (${source.how})`, () => testSource(folder, source));
}

function testSource(folder: string, source: Source): void {
  const files = readPractice(join(here, folder));

  test('every plan of the folder is held against the source', () => {
    const plans = Object.keys(files)
      .filter((path) => path.startsWith('plans/'))
      .map((path) => path.slice('plans/'.length, -'.yaml'.length));
    expect(Object.keys(source.plans).sort()).toEqual(plans.sort());
  });

  for (const [plan, rows] of Object.entries(source.plans)) {
    for (const row of rows) {
      test(title(plan, row), () => {
        const data = showData(files, plan);
        const measured = measuredIntervals(data, row);
        const expected = expectedIntervals(row, data.weeks.length);
        expect(measured).toHaveLength(expected.length);
        expected.forEach(([low, high], index) => {
          expect(measured[index]?.[0], `low end, ${index + 1}.`).toBeCloseTo(low, 6);
          expect(measured[index]?.[1], `high end, ${index + 1}.`).toBeCloseTo(high, 6);
        });
      });
    }
  }
}

/** The title says what is compared, with what, and who states the number. */
function title(plan: string, row: Expectation): string {
  const number = row.value ?? row.values?.join(' ') ?? `${row.low} to ${row.high}`;
  const unit = row.unit === undefined ? '' : ` ${row.unit}`;
  const who = row.stated === 'authors' ? 'printed' : 'by its scheme';
  const how = row.how === undefined ? '' : `, ${row.how}`;
  return `${plan}, week ${row.week}: ${row.what} = ${number}${unit} (${who}${how})`;
}

/** The YAML of a practice folder by its path in the folder, with `/` on every system. */
function readPractice(folder: string): Record<string, string> {
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => /^(?:practice|(?:exercises|plans)\/.+)\.yaml$/.test(path))
    .sort();
  return Object.fromEntries(paths.map((path) => [path, readFileSync(join(folder, path), 'utf8')]));
}
