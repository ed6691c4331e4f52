// The same files give the same bytes: in any place, time zone and locale, on any day, however the
// files were laid down. And the number of a sheet changes exactly when what it says does.
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { isMap, isScalar, isSeq, parseDocument } from 'yaml';
import { type BuiltProgram, builtProgram } from './support/built-program.ts';
import { exampleFiles, type Files, pagesIn, planCodes } from './support/pages-of.ts';

// Whole processes, and many of them.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const TODAY = '2026-12-01';
const COMMANDS = ['check', 'list plans', 'show M-0412'];
const PLANS = ['M-0412', 'S-1178'];

/** Two plans of the example, with something to tell: what was accepted is not so here. */
const EXAMPLE: Files = (() => {
  const files = Object.entries(exampleFiles('saltmarsh')).filter(
    ([path]) => !path.startsWith('plans/') || PLANS.some((code) => path === `plans/${code}.yaml`),
  );
  const told = files.map(([path, text]) =>
    path === 'plans/S-1178.yaml'
      ? [path, String(text).replace(/^ {12}accept:.*\n(?: {14}.*\n)+/m, '')]
      : [path, text],
  );
  return Object.fromEntries(told);
})();

describe('the same folder gives the same bytes', () => {
  let root = '';
  let program: BuiltProgram;
  let plain: Said;
  beforeAll(async () => {
    root = realpathSync(mkdtempSync(join(tmpdir(), 'carryover-same-')));
    program = builtProgram();
    plain = await said(laidDown('plain', EXAMPLE));
  });
  afterAll(() => {
    program.remove();
    rmSync(root, { recursive: true, force: true });
  });

  interface Said {
    readonly pages: Record<string, string>;
    readonly json: Record<string, unknown>;
  }

  function laidDown(name: string, files: Files, order = Object.keys(files)): string {
    const folder = join(root, name);
    for (const path of order) {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), files[path] as string | Uint8Array);
    }
    return folder;
  }

  /** All pages that a build writes, and what it and other commands say as JSON. */
  async function said(
    folder: string,
    env: Record<string, string> = {},
    today = TODAY,
  ): Promise<Said> {
    const say = async (command: string) => {
      const args = [...command.split(' '), '--format', 'json', '--today', today];
      const { status, out, err } = await program.run(args, folder, env);
      expect([status, err], command).toEqual([0, '']);
      return [command, JSON.parse(out)] as const;
    };
    const built = await say('build');
    const json = Object.fromEntries([built, ...(await Promise.all(COMMANDS.map(say)))]);
    const names = readdirSync(join(folder, 'handouts')).sort();
    const pages = names.map((name) => [name, readFileSync(join(folder, 'handouts', name), 'utf8')]);
    return { pages: Object.fromEntries(pages), json };
  }

  it('has pages and findings to compare', () => {
    expect(Object.keys(plain.pages)).toHaveLength(7);
    expect(plain.json.check).toMatchObject({
      findings: [{ check: 'concern-conflict', severity: 'warning' }],
    });
  });

  it.each([
    { TZ: 'Pacific/Kiritimati', LANG: 'C' },
    { TZ: 'Pacific/Pago_Pago', LC_ALL: 'tr_TR.UTF-8', LANG: 'tr_TR.UTF-8' },
    { TZ: 'America/St_Johns', LC_ALL: 'ar_EG.UTF-8', LANGUAGE: 'ar' },
    { TZ: 'Europe/Berlin', LC_ALL: 'de_DE.UTF-8', LC_NUMERIC: 'de_DE.UTF-8', COLUMNS: '40' },
  ])('in another time zone and locale: %o', async (env) => {
    expect(await said(laidDown(`zone ${env.TZ.replace('/', ' ')}`, EXAMPLE), env)).toEqual(plain);
  });

  it('in another place', async () => {
    expect(await said(laidDown(join('übung 1', 'a b', '日本'), EXAMPLE))).toEqual(plain);
  });

  it('built again over what is there', async () => {
    const folder = laidDown('again', EXAMPLE);
    await said(folder);
    const { pages, json } = await said(folder);
    expect(pages).toEqual(plain.pages);
    expect(json.build).toMatchObject({ data: { written: [], moved: [] } });
  });

  it('with the files made in another order', async () => {
    const order = Object.keys(EXAMPLE).reverse();
    expect(await said(laidDown('reversed', EXAMPLE, order))).toEqual(plain);
  });

  it('with CRLF and a byte order mark in every YAML file', async () => {
    const files = changedYaml(EXAMPLE, (text) => `\uFEFF${text.replaceAll('\n', '\r\n')}`);
    expect(await said(laidDown('crlf', files))).toEqual(plain);
  });

  it('on another day, but for the index', async () => {
    const later = await said(laidDown('later', EXAMPLE), {}, '2031-02-28');
    const withoutIndex = ({ 'index.html': _, ...pages }: Record<string, string>) => pages;
    expect(withoutIndex(later.pages)).toEqual(withoutIndex(plain.pages));
    expect(later.pages['index.html']).not.toBe(plain.pages['index.html']);
    expect(later.json).toEqual(plain.json);
  });
});

function changedYaml(files: Files, change: (text: string) => string): Files {
  const entries = Object.entries(files).map(([path, text]) =>
    typeof text === 'string' && path.endsWith('.yaml') ? [path, change(text)] : [path, text],
  );
  return Object.fromEntries(entries);
}

const CODES = planCodes(EXAMPLE);
const numbersOf = (files: Files) => CODES.map((code) => pagesIn(files, code).sheetNumber);
const before = numbersOf(EXAMPLE);

function replaced(path: string, from: string | RegExp, to: string): Files {
  const text = String(EXAMPLE[path]);
  const changed = text.replace(from, to);
  if (changed === text) throw new Error(`${path} has no ${from}`);
  return { ...EXAMPLE, [path]: changed };
}

describe('the number of a sheet stays', () => {
  it.each<[string, Files]>([
    ['a name of the person', { ...EXAMPLE, 'people.yaml': 'M-0412: {name: "Ada Invented"}\n' }],
    ['the paper', replaced('practice.yaml', 'paper: a4', 'paper: letter')],
    ['the size of print', replaced('plans/M-0412.yaml', /^(?=affected:)/m, 'print: large\n')],
    ['CRLF', changedYaml(EXAMPLE, (text) => text.replaceAll('\n', '\r\n'))],
    ['a comment', changedYaml(EXAMPLE, (text) => `# A comment\n${text}`)],
    ['what was found', replaced('plans/M-0412.yaml', 'Walks on the flat', 'Strolls on the flat')],
    ['why', replaced('plans/M-0412.yaml', 'Ready for strength', 'Ready for work')],
    ['a style', { ...EXAMPLE, 'templates/sheet.css': 'body { color: black; }\n' }],
    ['an exercise of no plan', { ...EXAMPLE, 'exercises/other.yaml': otherExercise() }],
  ])('with another: %s', (_, files) => {
    expect(numbersOf(files)).toEqual(before);
  });
});

const LINK = 'link: https://example.org/heel-raise\n';

describe('the number of a sheet changes', () => {
  it.each<[string, Files]>([
    ['a dose of an item', replaced('plans/M-0412.yaml', 'reps: 10-14}', 'reps: 10-13}')],
    ['a dose of a level', replaced('exercises/ankle/heel-raise.yaml', /reps: 8-12/, 'reps: 8-11')],
    ['a link', replaced('exercises/ankle/heel-raise.yaml', /^(?=levels:)/m, LINK)],
    ['the affected side', replaced('plans/M-0412.yaml', 'affected: left', 'affected: right')],
    ['a date', replaced('plans/M-0412.yaml', '2026-12-21', '2026-12-22')],
    ['the pain ranges', replaced('plans/M-0412.yaml', '0-2, ease_off: 3-5', '0-1, ease_off: 2-5')],
    ['the days', replaced('plans/M-0412.yaml', '[mon, wed, fri]', '[mon, wed, sat]')],
    ['the times', replaced('practice.yaml', 'change_sides: 5 s', 'change_sides: 5 min')],
    ['the language', inAnotherLanguage()],
  ])('with another: %s', (_, files) => {
    expect(numbersOf(files)[CODES.indexOf('M-0412')]).not.toBe(before[CODES.indexOf('M-0412')]);
  });

  it('with another byte of a picture, for those that show it', () => {
    const path = 'pictures/heel-raise.svg';
    const bytes = Buffer.from(EXAMPLE[path] as Uint8Array);
    const changed = Buffer.concat([bytes, Buffer.from('\n')]);
    const at = CODES.indexOf('M-0412');
    expect(numbersOf({ ...EXAMPLE, [path]: changed })[at]).not.toBe(before[at]);
    const unused = { ...EXAMPLE, 'pictures/other.svg': changed };
    expect(numbersOf(unused)).toEqual(before);
  });

  it('with another word in any sentence that it shows, and with no other', () => {
    const wrong: string[] = [];
    let shown = 0;
    for (const { path, key, text, plan, files } of withOneWordMore()) {
      const { sheetNumber, markdown } = pagesIn(files, plan);
      const isShown = markdown.toLowerCase().includes(MARK);
      if (isShown) shown += 1;
      const isAnother = sheetNumber !== before[CODES.indexOf(plan)];
      if (isShown !== isAnother) wrong.push(`${plan}: ${path} ${key}: ${text}`);
    }
    expect(wrong).toEqual([]);
    expect(shown).toBeGreaterThan(80);
  });
});

/** A word that stands nowhere else. */
const MARK = 'quixotic';
/** What a person reads, and beside it what only the clinic copy shows. */
const PROSE =
  /^(practice|contact|emergency_if|get_in_touch|stop_if|rk|tw|title|goals|precautions|stop_if_also|note|start_when|name|setup|steps|feel|avoid|easier|harder|found|why)$/;

/** The example again and again, each time with the first sentence of a key a word longer. */
function withOneWordMore() {
  return Object.entries(EXAMPLE).flatMap(([path, text]) => {
    const plan = planOf(path);
    if (typeof text !== 'string' || plan === undefined) return [];
    const found: Sentence[] = [];
    walk(parseDocument(text).contents, '', found);
    const first = found.filter(({ key }, at) => found.findIndex((one) => one.key === key) === at);
    return first.map(({ key, text: sentence, end }) => {
      const at = text[end - 1] === '"' ? end - 1 : end;
      const changed = `${text.slice(0, at)} ${MARK}${text.slice(at)}`;
      return { path, key, text: sentence, plan, files: { ...EXAMPLE, [path]: changed } };
    });
  });
}

/** A plan that reads this file. */
function planOf(path: string): string | undefined {
  const name = /([^/]+)\.yaml$/.exec(path)?.[1] ?? '';
  if (path === 'practice.yaml') return CODES[0];
  if (path.startsWith('plans/')) return name;
  return CODES.find((code) => String(EXAMPLE[`plans/${code}.yaml`]).includes(`do: ${name}`));
}

interface Sentence {
  readonly key: string;
  readonly text: string;
  /** Where it ends in its file. */
  readonly end: number;
}

function walk(node: unknown, key: string, found: Sentence[]): void {
  if (isMap(node)) {
    for (const { key: name, value } of node.items)
      walk(value, isScalar(name) ? String(name.value) : '', found);
  } else if (isSeq(node)) {
    for (const item of node.items) walk(item, key, found);
  } else if (isScalar(node) && PROSE.test(key) && node.range) {
    found.push({ key, text: String(node.value), end: node.range[1] });
  }
}

function otherExercise(): string {
  const text = String(EXAMPLE['exercises/legs/side-leg-lift.yaml']);
  return text.replace('exercise: side-leg-lift', 'exercise: other');
}

/** A pack of the same words under another language's name. */
function inAnotherLanguage(): Files {
  const pack = readFileSync(
    join(import.meta.dirname, '..', 'templates', 'words', 'en.yaml'),
    'utf8',
  );
  return {
    ...replaced('practice.yaml', 'language: en', 'language: en-GB'),
    'templates/words/en-GB.yaml': pack,
  };
}
