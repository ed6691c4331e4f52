// With --format json standard output is one document, and nothing else, that the published schema holds.
import { execFileSync } from 'node:child_process';
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
  ['list', 'words'],
  ['list', 'words', 'muscles'],
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
    ['list', 'exercises', '--muscle', 'shoulder'],
    ['help', 'nonsense'],
  ])('%s %s: on 2 too', (...args) => {
    const { status, document, errors } = documentOf(args);
    expect(errors).toEqual([]);
    expect(status).toBe(2);
    expect(document).toMatchObject({ version: 1, ok: false, data: null });
  });

  it('handover: the row, what is found and what is not, and why not', () => {
    const git = (...args: string[]) =>
      execFileSync(
        'git',
        ['-c', 'user.name=P', '-c', 'user.email=p@example.org', '-c', 'gc.auto=0', ...args],
        { cwd: root, stdio: 'pipe' },
      );
    git('init', '-q');
    git('add', 'practice.yaml', 'exercises', 'plans');
    git('commit', '-q', '-m', 'Start');
    const handedOver = documentOf(['handover', 'M-0412']);
    expect(handedOver.errors).toEqual([]);
    expect(handedOver.document).toMatchObject({ ok: true, data: { plan: 'M-0412', added: true } });
    const { sheet } = handedOver.document.data;
    for (const [told, hits] of [
      [sheet, 1],
      ['HHHH HHHH', 0],
    ]) {
      const { status, document, errors } = documentOf(['handover', '--find', told]);
      expect(errors).toEqual([]);
      expect(status).toBe(0);
      expect(document.data.found).toHaveLength(hits);
    }
    const plan = join(root, 'plans', 'M-0412.yaml');
    const text = readFileSync(plan, 'utf8');
    writeFileSync(plan, `${text}# asked about stairs\n`);
    const { status, document, errors } = documentOf(['handover', 'M-0412']);
    writeFileSync(plan, text);
    expect(errors).toEqual([]);
    expect(status).toBe(1);
    expect(document).toMatchObject({ ok: false, data: null });
    expect(document.findings[0].related[0]).toMatchObject({ file: 'plans/M-0412.yaml' });
  });

  it('diff: what changed, what came of it, and what could not be compared', () => {
    const plan = join(root, 'plans', 'M-0412.yaml');
    const text = readFileSync(plan, 'utf8');
    const differing = text.replace('weeks: 6', 'weeks: 7').replace(/title: .*/, 'title: Another');
    for (const [changed, status] of [
      [text, 0],
      [differing, 0],
      [text.replace('weeks: 6', 'weeks: 0'), 1],
    ] as const) {
      writeFileSync(plan, changed);
      const told = documentOf(['diff', 'M-0412']);
      writeFileSync(plan, text);
      expect(told.errors).toEqual([]);
      expect(told.status).toBe(status);
      expect(told.document).toMatchObject({
        ok: status === 0,
        data: { plans: [{ plan: 'M-0412' }] },
      });
      const [one] = told.document.data.plans;
      expect(one.troubles.length > 0).toBe(status === 1);
      expect(one.changes.length > 0).toBe(changed !== text);
    }
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
