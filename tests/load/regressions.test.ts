// Inputs that once went wrong: all the invariants hold of them now, and what is found is found.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { exampleFiles } from '../support/example-files.ts';
import { held } from '../support/invariants.ts';

interface Regression {
  readonly name: string;
  readonly was: string;
  readonly file: string;
  readonly replace: string;
  readonly with: string;
  readonly repeat?: { readonly text: string; readonly times: number; readonly then?: string };
  readonly found?: readonly string[];
  readonly only?: string;
}

const regressions: readonly Regression[] = parse(
  readFileSync(join(import.meta.dirname, 'regressions.yaml'), 'utf8'),
);

describe('once wrong', () => {
  it.each(regressions.map((one) => [one.name, one] as const))(
    '%s',
    (_, { file, replace, repeat, found, only, ...one }) => {
      const files = exampleFiles('contract');
      const text = files[file] ?? '';
      expect(text.split(replace)).toHaveLength(2);
      const repeated = repeat ? `${repeat.text.repeat(repeat.times)}${repeat.then ?? ''}` : '';
      const after = { ...files, [file]: text.replace(replace, () => one.with + repeated) };
      const { broken, findings } = held(after);
      expect(broken).toEqual([]);
      const errors = findings.filter(({ severity }) => severity === 'error');
      const checks = errors.map(({ check }) => check);
      if (found) expect(checks).toEqual(found);
      else expect([...new Set(checks)]).toEqual([only]);
    },
    60_000,
  );
});
