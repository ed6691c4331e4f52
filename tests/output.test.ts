// With --format json standard output is one document, and nothing else, that the published schema holds.
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, describe, expect, it } from 'vitest';
import { freshFolder, runIn } from './support/cases.ts';

const schema = JSON.parse(
  readFileSync(join(import.meta.dirname, '..', 'schemas', 'output.schema.json'), 'utf8'),
);
const validate = new Ajv2020({
  strict: true,
  strictRequired: false,
  allowUnionTypes: true,
  allErrors: true,
}).compile(schema);

const root = freshFolder();
afterAll(() => rmSync(root, { recursive: true, force: true }));

function documentOf(args: readonly string[]) {
  const { status, out } = runIn(root, [...args, '--format', 'json']);
  const document = JSON.parse(out);
  validate(document);
  return { status, document, errors: validate.errors ?? [] };
}

const COMMANDS: readonly (readonly string[])[] = [
  ['check'],
  ['check', 'M-0412'],
  ['build'],
  ['build', 'M-0412'],
  ['check', '--handouts'],
  ['show', 'M-0412'],
  ['list', 'exercises'],
  ['list', 'exercises', 'nothing-like-it'],
  ['list', 'plans'],
  ['list', 'plans', '--due'],
  ['explain', 'side-balance'],
  ['explain'],
  ['init', 'another'],
];

describe('standard output with --format json', () => {
  it.each(COMMANDS.map((args) => [args.join(' '), args] as const))('%s', (_, args) => {
    const { status, document, errors } = documentOf(args);
    expect(errors).toEqual([]);
    expect(status).toBe(0);
    expect(document).toMatchObject({
      version: 1,
      command: args[0] === 'list' ? `list ${args[1]}` : args[0],
      ok: true,
    });
    expect(document.data).not.toBeNull();
  });

  it.each([
    ['show', 'M-0413'],
    ['build', 'nobody'],
    ['check', '--today', 'yesterday'],
    ['explain', 'side-balanse'],
    ['chekc'],
  ])('%s %s: on 2 too', (...args) => {
    const { status, document, errors } = documentOf(args);
    expect(errors).toEqual([]);
    expect(status).toBe(2);
    expect(document).toMatchObject({ version: 1, ok: false, data: null });
  });

  it('on 1 it holds the findings, with places', () => {
    const plan = join(root, 'plans', 'M-0412.yaml');
    const text = readFileSync(plan, 'utf8');
    writeFileSync(plan, text.replace('weeks: 6', 'weeks: 0'));
    const { status, document, errors } = documentOf(['check']);
    writeFileSync(plan, text);
    expect(errors).toEqual([]);
    expect(status).toBe(1);
    expect(document).toMatchObject({
      ok: false,
      findings: [
        {
          check: 'out-of-range',
          severity: 'error',
          file: 'plans/M-0412.yaml',
          line: 10,
          column: 8,
        },
      ],
    });
  });
});
