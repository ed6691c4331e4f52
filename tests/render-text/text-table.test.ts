// Tables: aligned by what is seen, within the width, in blocks where there are too many columns.
import fc from 'fast-check';
import stringWidth from 'string-width';
import { expect, test } from 'vitest';
import { type TextColumn, tableText } from '../../src/render/terminal/text-table.ts';
import { isUnsafe, plainPaint, tooWide } from './saltmarsh.ts';

const left = (heading: string): TextColumn => ({ heading, align: 'left' });
const right = (heading: string): TextColumn => ({ heading, align: 'right' });
const screen = (width: number) => ({ width, paint: plainPaint });

test('columns stand two spaces apart, numbers to the right', () => {
  const rows = [
    ['calf', '12', 'one'],
    ['hamstrings', '3-5', ''],
  ];
  const table = tableText(
    { columns: [left('Muscle'), right('Sets'), left('Note')], rows },
    screen(80),
  );
  expect(table).toBe(
    [
      'Muscle      Sets  Note',
      '----------------------',
      'calf          12  one',
      'hamstrings   3-5',
    ].join('\n'),
  );
});

test('wide characters and combining marks are counted as they are seen', () => {
  const rows = [
    ['足首の運動', 'x'],
    ['e\u0301tirement', 'x'],
    ['plain', 'x'],
  ];
  const lines = tableText({ columns: [left('Name'), left('At')], rows }, screen(80)).split('\n');
  const at = lines.slice(2).map((line) => stringWidth(line.slice(0, line.indexOf('x'))));
  expect(at).toEqual([12, 12, 12]);
});

test('the widest text wraps, ids and numbers stay whole', () => {
  const columns = [left('Exercise'), left('How'), right('Seconds')];
  const rows = [['heel-raise', 'Rise onto your toes and lower slowly', '318-446']];
  expect(tableText({ columns, rows }, screen(40))).toBe(
    [
      'Exercise    How                  Seconds',
      '----------------------------------------',
      'heel-raise  Rise onto your toes  318-446',
      '            and lower slowly',
    ].join('\n'),
  );
});

test('a line over the whole width stands between rows', () => {
  const rows = [{ line: 'warm-up', indent: 0 }, ['1-8', 'seated']];
  const table = tableText({ columns: [left('Weeks'), left('Level')], rows, indent: 2 }, screen(40));
  expect(table.split('\n')).toEqual([
    '  Weeks  Level',
    '  -------------',
    'warm-up',
    '  1-8    seated',
  ]);
});

test('too many weeks go on in a further block under the same heads', () => {
  const weeks = Array.from({ length: 20 }, (_, i) => String(i + 1));
  const columns = [left('Muscle'), ...weeks.map(right)];
  const table = tableText({ columns, rows: [['soleus', ...weeks]], heads: 1 }, screen(40));
  const blocks = table.split('\n\n');
  expect(blocks).toHaveLength(3);
  expect(tooWide(table, 40)).toEqual([]);
  const cells = blocks.flatMap((block) => block.split('\n')[2]?.trim().split(/ +/).slice(1) ?? []);
  expect(cells).toEqual(weeks);
  for (const block of blocks) expect(block.split('\n')[2]).toMatch(/^soleus /);
});

test('paint goes round the words, not the blanks', () => {
  const rows = [[{ text: 'late', paint: (text: string) => `<${text}>` }, 'x']];
  const table = tableText({ columns: [left('Next visit'), left('At')], rows }, screen(40));
  expect(table.split('\n')[2]).toBe('<late>        x');
});

test('whatever stands in the cells, no line is over the width and nothing steers the terminal', () => {
  const cell = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 60 }),
    fc.constant('\x1b[2J\t足首 x'),
  );
  const rows = fc.array(fc.tuple(cell, cell, cell), { maxLength: 5 });
  fc.assert(
    fc.property(rows, fc.integer({ min: 24, max: 120 }), (all, width) => {
      const table = tableText(
        { columns: [left('One'), right('Two'), left('Three')], rows: all },
        screen(width),
      );
      expect(tooWide(table, width)).toEqual([]);
      expect(isUnsafe(table)).toBe(false);
    }),
  );
});
