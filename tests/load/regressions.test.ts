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
  /** A stretch of the file that stands there once, and what is put in its place. */
  readonly replace: string;
  readonly with: string;
  /** So many spaces are put after what is put in. */
  readonly pad?: number;
  /** The checks of the errors, in order. */
  readonly found: readonly string[];
}

const regressions: readonly Regression[] = parse(
  readFileSync(join(import.meta.dirname, 'regressions.yaml'), 'utf8'),
);

describe('once wrong', () => {
  it.each(regressions.map((one) => [one.name, one] as const))('%s', (_, one) => {
    const files = exampleFiles('contract');
    const text = files[one.file] ?? '';
    expect(text.split(one.replace)).toHaveLength(2);
    const instead = one.with + (one.pad === undefined ? '' : `${' '.repeat(one.pad)}slowly`);
    const { broken, findings } = held({ ...files, [one.file]: text.replace(one.replace, () => instead) });
    expect(broken).toEqual([]);
    const errors = findings.filter(({ severity }) => severity === 'error');
    expect(errors.map(({ check }) => check)).toEqual(one.found);
  });
});
