// Sentences as a practitioner types them, without a thought for YAML: each is read to its last sign, or
// refused. Nothing between the two is allowed, since the sheet would then say less than was written.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { rootOf, textsUnder, textUnder } from '../../src/load/at.ts';
import { memoryFolder } from '../../src/load/folder.ts';
import { loadYaml } from '../../src/load/library.ts';
import { proseTraps } from '../../src/load/prose-traps.ts';
import { proseOf } from '../../src/load/schemas.ts';
import type { ExerciseFile } from '../../src/load/written.ts';

const FILE = 'exercises/heel-raise.yaml';

/** An exercise with one text as the second of three steps, and one where it is felt. */
function exerciseText(step: string, feel: string): string {
  return [
    'exercise: heel-raise',
    'name: Heel raise',
    'purpose: strength',
    'position: standing',
    'sides: both',
    'steps:',
    '  - First of all',
    `  - ${step}`,
    '  - Last of all',
    `feel: ${feel}`,
    'avoid:',
    '  - Not this',
    'levels:',
    '  - {level: one, dose: {reps: 8}}',
    '',
  ].join('\n');
}

interface Heard {
  readonly checks: readonly string[];
  readonly steps: readonly string[];
  readonly feel: string | null;
  readonly avoid: readonly string[];
}

function heard(text: string): Heard {
  const { file, findings } = loadYaml(memoryFolder({ [FILE]: text }), FILE, 'exercise');
  const root = file ? rootOf<ExerciseFile>(file) : undefined;
  return {
    checks: findings.map(({ check }) => check),
    steps: textsUnder(root, 'steps'),
    feel: textUnder(root, 'feel'),
    avoid: textsUnder(root, 'avoid'),
  };
}

const READ: readonly (readonly [text: string, read: string])[] = [
  ['Rise, slowly', 'Rise, slowly'],
  ["Don't stop", "Don't stop"],
  ['Hold "it" there', 'Hold "it" there'],
  ['10:30 is fine', '10:30 is fine'],
  ['Rise (both feet)', 'Rise (both feet)'],
  ['Lower - and wait', 'Lower - and wait'],
  ['-Lower', '-Lower'],
  ['50 % of the way', '50 % of the way'],
  ['You & me', 'You & me'],
  ['Wait! Then go', 'Wait! Then go'],
  ['a#b', 'a#b'],
  ['See http://example.org/a', 'See http://example.org/a'],
  ['Rise  # slowly', 'Rise'],
  ['Rise   #', 'Rise'],
  ['"Rise: slowly"', 'Rise: slowly'],
  ["'Rise # slowly'", 'Rise # slowly'],
  ['"Rise"  # slowly', 'Rise'],
  ['"Rise" # slowly', 'Rise'],
  ["'Don''t stop'", "Don't stop"],
  ['"a \\"b\\""', 'a "b"'],
  ['null', 'null'],
  ['yes', 'yes'],
  ['0412', '0412'],
  ['1e3', '1e3'],
  ['~', '~'],
  ['Größer – weiter', 'Größer – weiter'],
  ['ارفع كعبيك', 'ارفع كعبيك'],
  ['Rise 🦶', 'Rise 🦶'],
  ['Rise?', 'Rise?'],
  ['?Rise', '?Rise'],
  ['<3', '<3'],
  ['=', '='],
  ['a: b'.replace(': ', ':'), 'a:b'],
  ['[a] and b'.slice(4), 'and b'],
];

const TRAPPED: readonly string[] = [
  'Rise: slowly',
  'Rise:',
  'Rise # slowly',
  'Rise #',
  'Rise  #slowly',
  '#slowly',
  '* slowly',
  '*slowly',
  '&slowly',
  '!slowly',
  '! slowly',
  '> slowly',
  '| slowly',
  '@home',
  '%slowly',
  '`slowly`',
  '- slowly',
  '? slowly',
  ': slowly',
  '[both feet] rise',
  '{both feet} rise',
  '[rise',
  '{rise',
  '"Rise" slowly',
  "'Rise' slowly",
  '"Rise',
  "'Rise",
  "'Don't stop'",
  '"Rise" and "lower"',
  'Rise: "slowly"',
  'a: b: c',
  'Rise\tslowly',
];

describe('a sentence', () => {
  it.each(READ)('%j is read as %j', (text, read) => {
    // The dash of an entry with nothing after it but a hyphen and a word is a slip of its own.
    expect(heard(exerciseText(text, text))).toEqual({
      checks: [],
      steps: ['First of all', read, 'Last of all'],
      feel: read,
      avoid: ['Not this'],
    });
  });

  it.each(TRAPPED)('%j is refused as a step, and what stands around it is read', (text) => {
    const { checks, steps, avoid } = heard(exerciseText(text, 'The calf'));
    expect(checks).not.toEqual([]);
    expect(
      checks.every((check) =>
        ['text-cut-off', 'tab-indent', 'yaml-feature', 'wrong-kind', 'yaml-broken'].includes(check),
      ),
    ).toBe(true);
    if (steps.length > 0)
      expect([steps[0], steps.at(-1), avoid]).toEqual([
        'First of all',
        'Last of all',
        ['Not this'],
      ]);
  });

  it.each(TRAPPED)('%j is refused as a value of a key', (text) => {
    expect(heard(exerciseText('Rise', text)).checks).not.toEqual([]);
  });

  it('that runs on over a second line is refused, whatever it begins with', () => {
    for (const second of ['and lower', '-and lower', 'and: lower', '# and lower']) {
      expect([
        second,
        heard(exerciseText(`Rise\n    ${second}`, 'The calf')).checks.length > 0,
      ]).toEqual([second, !second.startsWith('#')]);
    }
  });

  it('runs over lines in quotes, and as a block', () => {
    expect(heard(exerciseText('"Rise and\n    lower"', 'The calf'))).toMatchObject({
      checks: [],
      steps: ['First of all', 'Rise and lower', 'Last of all'],
    });
    for (const sign of ['>', '>-', '|', '|-', '>+']) {
      expect([
        sign,
        heard(exerciseText(`${sign}\n    Rise: # and\n    lower`, 'The calf')).steps[1],
      ]).toEqual([sign, 'Rise: # and lower']);
    }
  });
});

const PIECES = [
  ...':#-"\'[]{}&*!|>%@,`?=\\/.',
  ' ',
  ' ',
  ' ',
  '  ',
  '\t',
  'Rise',
  'slowly',
  'x',
  '8',
  '12',
  ': ',
  ' #',
  '  # ',
  '- ',
  ', ',
  '""',
  "''",
  '"a"',
  "it's",
  'é',
  '😀',
  'سلام',
  '\u00a0',
  '---',
  '...',
  'null',
  '<<',
  '<<: ',
  '|-',
  '>+',
  '\\"',
] as const;

const sentences = fc
  .array(fc.constantFrom(...PIECES), { minLength: 1, maxLength: 7 })
  .map((pieces) => pieces.join(''));

/** What a text that is not refused has to be read as; null for a comment in the place of one. */
function meant(text: string): string {
  const trimmed = text.replace(/^[ \t]+|[ \t]+$/g, '');
  if (/^["']/.test(trimmed)) return String(parse(trimmed));
  return trimmed.replace(/(^| {2,})#( .*)?$/, '').replace(/ +$/, '');
}

const RUNS = { numRuns: 2_000, seed: 20261005 } as const;

describe('any text at all', () => {
  it('is read to its last sign, or refused', () => {
    fc.assert(
      fc.property(sentences, fc.boolean(), (text, isStep) => {
        const [step, feel] = isStep ? [text, 'The calf'] : ['Rise', text];
        const { checks, ...read } = heard(exerciseText(step, feel));
        if (checks.length === 0)
          expect(read).toEqual({
            steps: ['First of all', meant(step), 'Last of all'],
            feel: meant(feel),
            avoid: ['Not this'],
          });
      }),
      RUNS,
    );
  }, 300_000);

  it('is left as long as it was, line by line, when it is mended', () => {
    fc.assert(
      fc.property(fc.array(sentences, { minLength: 1, maxLength: 3 }), sentences, (lines, feel) => {
        const text = exerciseText(lines.join('\n    '), feel);
        const mended = proseTraps({ file: FILE, text }, proseOf('exercise'));
        const lengths = (whole: string) => whole.split('\n').map((line) => line.length);
        expect(lengths(mended.text)).toEqual(lengths(text));
      }),
      RUNS,
    );
  }, 300_000);
});
