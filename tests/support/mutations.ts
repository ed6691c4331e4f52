// Slips of the hand, and worse, in the text of a folder's files: each a small record, so that what is
// left after shrinking can be read.
import fc from 'fast-check';
import type { Files } from './example-files.ts';

/** Places are shares of what there is, so that every mutation fits every file. */
export type Mutation =
  | {
      readonly slip: 'delete-line' | 'double-line' | 'swap-with-next';
      readonly file: number;
      readonly line: number;
    }
  | { readonly slip: 'indent'; readonly file: number; readonly line: number; readonly by: number }
  | {
      readonly slip: 'insert';
      readonly file: number;
      readonly line: number;
      readonly column: number;
      readonly text: string;
    }
  | {
      readonly slip: 'delete-character' | 'truncate';
      readonly file: number;
      readonly line: number;
      readonly column: number;
    }
  | { readonly slip: 'swap-files'; readonly file: number; readonly other: number }
  | { readonly slip: 'value'; readonly file: number; readonly line: number; readonly text: string }
  | { readonly slip: 'delete-key'; readonly file: number; readonly line: number }
  | {
      readonly slip: 'rename-key';
      readonly file: number;
      readonly line: number;
      readonly text: string;
    };

const SIGNS = [
  ...':#-"\'[]{}&*!|>%@,`?=<\\/.+_~^()',
  '\t',
  ' ',
  '  ',
  '\n',
  '0',
  '1',
  '7',
  'a',
  'x',
  'é',
  '😀',
  '–',
  'ש',
  'سلام',
  '\u202e',
  '\u2066',
  '\u0000',
  '\u00a0',
  '\u2028',
  '\ufeff',
  '\r',
  ': ',
  ' #',
  '- ',
  '-x',
  '---',
  '...',
  '<<: ',
  '!!str ',
  '&a ',
  '*a',
  '|',
  '>-',
  ', ',
  '2,5',
] as const;

/** What stands in the place of a value: forms of every kind, right ones where they are wrong, and worse. */
export const VALUES = [
  '',
  'null',
  '~',
  '[]',
  '{}',
  '[[]]',
  '[{}]',
  '{a: }',
  '[a, b]',
  '{a: b}',
  '__proto__',
  'constructor',
  'toString',
  '9999999999',
  '99999999999999999999',
  '-1',
  '0',
  '1e9',
  '0x10',
  '08',
  '1_0',
  '.nan',
  '.inf',
  '-.inf',
  '2.5',
  '2,5',
  '1.0000',
  '5',
  '8-12',
  '12-8',
  '8-8',
  '1-100',
  '0-0',
  '8–12',
  '5 s',
  '0 s',
  '5s',
  '1 min 30 s',
  '86400 s',
  '6 breaths',
  '0.001 s',
  '0.0001 s',
  '4 kg',
  '2 x 4 kg',
  '0 kg',
  '10 lb',
  '70 % 1rm',
  '8 rm',
  'body weight',
  '20 % body weight',
  'heavy band',
  '50 %',
  '0 %',
  '300 %',
  'none',
  'tired',
  'left',
  'both',
  'each',
  'middle',
  'affected',
  'daily',
  'true',
  'false',
  'yes',
  'off',
  'error',
  '3-1-2-0',
  '0-0-0-0',
  '2026-02-30',
  '2026-10-05',
  '1900-01-01',
  '0412',
  '2 days',
  '10-60 degrees',
  '"',
  "'",
  '"a',
  '""',
  '" "',
  "''",
  '"x" y',
  '|',
  '>',
  '>-',
  '*',
  '&a',
  '!x',
  '@',
  '%',
  '`',
  '? a',
  '- a',
  '# a',
  ': a',
  'a: b',
  'a #b',
  'a  # b',
  'x'.repeat(500),
] as const;

const KEYS = [
  'sets',
  'rep',
  'reps',
  'hold',
  'time',
  'tempo',
  'rest',
  'load',
  'days',
  'every',
  'dose',
  'levels',
  'level',
  'weeks',
  'climb',
  'only',
  'sides',
  '__proto__',
  'constructor',
  'hasOwnProperty',
  'toString',
  '<<',
  '""',
  '"sets"',
  'Sets',
  'null',
  '1',
  '? x',
  '*a',
  '&a b',
  '[a]',
  '{a}',
  '-',
  '',
] as const;

const share = fc.nat({ max: 999 });
const sign = fc.constantFrom(...SIGNS);
const value = fc.constantFrom(...VALUES);

/** One slip in one of the files. */
export const mutations: fc.Arbitrary<Mutation> = fc.oneof(
  fc.record({
    slip: fc.constantFrom('delete-line', 'double-line', 'swap-with-next'),
    file: share,
    line: share,
  }),
  fc.record({
    slip: fc.constant('indent'),
    file: share,
    line: share,
    by: fc.integer({ min: -6, max: 6 }),
  }),
  fc.record({
    slip: fc.constant('insert'),
    file: share,
    line: share,
    column: share,
    text: fc.oneof(
      sign,
      fc.array(sign, { maxLength: 4 }).map((signs) => signs.join('')),
    ),
  }),
  fc.record({
    slip: fc.constantFrom('delete-character', 'truncate'),
    file: share,
    line: share,
    column: share,
  }),
  fc.record({ slip: fc.constant('swap-files'), file: share, other: share }),
  {
    weight: 4,
    arbitrary: fc.record({ slip: fc.constant('value'), file: share, line: share, text: value }),
  },
  fc.record({ slip: fc.constant('delete-key'), file: share, line: share }),
  {
    weight: 2,
    arbitrary: fc.record({
      slip: fc.constant('rename-key'),
      file: share,
      line: share,
      text: fc.constantFrom(...KEYS),
    }),
  },
) as fc.Arbitrary<Mutation>;

const KEY = /[A-Za-z_-]+(?=:(\s|$))/g;

/** The files with one slip more. */
export function mutated(files: Files, mutation: Mutation): Files {
  const paths = Object.keys(files).filter((path) => path.endsWith('.yaml'));
  const path = paths[mutation.file % paths.length] as string;
  const text = files[path] as string;
  if (mutation.slip === 'swap-files') {
    const other = paths[mutation.other % paths.length] as string;
    return { ...files, [path]: files[other] as string, [other]: text };
  }
  const lines = text.split('\n');
  const at = mutation.line % lines.length;
  if (mutation.slip === 'truncate') {
    const before = lines.slice(0, at).join('\n');
    return {
      ...files,
      [path]: `${before}\n${(lines[at] as string).slice(0, mutation.column % ((lines[at] as string).length + 1))}`,
    };
  }
  const changed = changedLines(lines, at, mutation);
  return { ...files, [path]: changed.join('\n') };
}

function changedLines(lines: readonly string[], at: number, mutation: Mutation): readonly string[] {
  const line = lines[at] as string;
  const put = (...instead: readonly string[]) => [
    ...lines.slice(0, at),
    ...instead,
    ...lines.slice(at + 1),
  ];
  switch (mutation.slip) {
    case 'delete-line':
      return put();
    case 'double-line':
      return put(line, line);
    case 'swap-with-next':
      return at + 1 < lines.length
        ? [...lines.slice(0, at), lines[at + 1] as string, line, ...lines.slice(at + 2)]
        : lines;
    case 'indent':
      return put(
        mutation.by > 0
          ? ' '.repeat(mutation.by) + line
          : line.slice(Math.min(-mutation.by, line.length - line.trimStart().length)),
      );
    case 'insert': {
      const column = mutation.column % (line.length + 1);
      return put(line.slice(0, column) + mutation.text + line.slice(column));
    }
    case 'delete-character': {
      const column = mutation.column % (line.length + 1);
      return put(line.slice(0, column) + line.slice(column + 1));
    }
    case 'value':
      return put(withValueChanged(line, mutation));
    default:
      return put(withKeyChanged(line, mutation));
  }
}

/** The value of one of the keys of a line, else what stands after its dash, replaced. */
function withValueChanged(line: string, mutation: Mutation & { readonly slip: 'value' }): string {
  const keys = [...line.replace(/#.*/, '').matchAll(KEY)];
  const key = keys[mutation.file % Math.max(1, keys.length)];
  if (!key) return line.replace(/^(\s*(?:- )?).*/, (_, before: string) => before + mutation.text);
  const from = key.index + key[0].length + 1;
  const isInBraces = /[{[]/.test(line.slice(0, key.index));
  const rest = line.slice(from).replace(isInBraces ? /^ ?(?:\[[^\]]*\]|[^,}\]]*)/ : /^.*/, '');
  return `${line.slice(0, from)} ${mutation.text}${rest}`;
}

/** One of the keys of a line, renamed or taken out with its colon. */
function withKeyChanged(line: string, mutation: Mutation): string {
  const keys = [...line.matchAll(KEY)];
  const key = keys[mutation.file % Math.max(1, keys.length)];
  if (!key) return line;
  const rest = line.slice(key.index + key[0].length);
  return (
    line.slice(0, key.index) +
    (mutation.slip === 'rename-key' ? mutation.text + rest : rest.slice(1).trimStart())
  );
}

/** What differs, file by file and line by line, to be read in a failure. */
export function differences(before: Files, after: Files): string {
  return Object.keys(before)
    .filter((path) => before[path] !== after[path])
    .map((path) => {
      const [was, is] = [(before[path] as string).split('\n'), (after[path] as string).split('\n')];
      const start = was.findIndex((line, i) => line !== is[i]);
      let end = 0;
      while (end < Math.min(was.length, is.length) - start && was.at(-1 - end) === is.at(-1 - end))
        end += 1;
      const shown = (lines: readonly string[], sign: string) =>
        lines
          .slice(start, lines.length - end)
          .slice(0, 12)
          .map((line) => `${sign}${JSON.stringify(line)}`);
      return [`# ${path}, line ${start + 1}`, ...shown(was, '- '), ...shown(is, '+ ')].join('\n');
    })
    .join('\n');
}
