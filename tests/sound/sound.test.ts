// Sound plans make no noise: ten plans written from published guidance by someone who had not read the
// checks, over the example clinic's library. The checks say nothing of them but what stands in agreed.yaml.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { compile } from '../../src/build.ts';
import { withSheetReading } from '../../src/handouts/sheet-reading.ts';
import { loadWording } from '../../src/handouts/wording.ts';
import { memoryFolder } from '../../src/load/folder.ts';
import { exampleFiles } from '../support/example-files.ts';

const here = import.meta.dirname;
const plans = readdirSync(join(here, 'plans')).sort();
const agreed = parse(readFileSync(join(here, 'agreed.yaml'), 'utf8')) as Record<
  string,
  Record<string, string>
>;

describe('a sound plan', () => {
  it.each(plans)('%s', (file) => {
    const code = file.replace('.yaml', '');
    const text = readFileSync(join(here, 'plans', file), 'utf8');
    const files = { ...exampleFiles('saltmarsh'), [`plans/${file}`]: text };
    const folder = memoryFolder(files);
    const compiled = compile(folder, { plans: [code], exercises: [] });
    const { findings } = withSheetReading(compiled, loadWording(folder, compiled).value, true);
    const checks = [
      ...new Set(findings.filter(({ accepted }) => !accepted).map(({ check }) => check)),
    ].sort();
    expect(checks).toEqual(Object.keys(agreed[code] ?? {}).sort());
  });

  it('mostly hears nothing, and mostly agrees with what it hears', () => {
    const verdicts = Object.values(agreed).flatMap((one) => Object.values(one));
    expect(plans).toHaveLength(10);
    expect(verdicts.filter((one) => one === 'eager').length).toBeLessThan(3);
  });
});
