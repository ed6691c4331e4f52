// Bars and small columns in the terminal: in proportion, of plain signs where it is none, and within the width.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { showText } from '../../src/render/terminal/show-text.ts';
import {
  BLOCK_SIGNS,
  PLAIN_SIGNS,
  textBar,
  textColumns,
} from '../../src/render/terminal/text-bar.ts';
import { isUnsafe, plainPaint, planOf, saltmarsh, tooWide } from './saltmarsh.ts';

const show = (code: string, width: number, isPlain: boolean) =>
  showText({
    practice: saltmarsh.practice,
    ...planOf(code),
    reading: { sheet: null, exercises: [] },
    width,
    paint: plainPaint,
    isPlain,
  });

test('a bar goes to the low end, and on to the high end', () => {
  expect(textBar([10, 15], 20, 20, PLAIN_SIGNS)).toBe('##########-----');
  expect(textBar([20, 20], 20, 8, BLOCK_SIGNS)).toBe('████████');
  expect(textBar([5, 20], 20, 8, BLOCK_SIGNS)).toBe('██░░░░░░');
  expect(textBar([0, 0], 20, 8, PLAIN_SIGNS)).toBe('');
  expect(textBar([0.1, 0.1], 20, 8, PLAIN_SIGNS)).toBe('-');
});

test('a bar is in proportion to half a sign, and never over the width', () => {
  fc.assert(
    fc.property(
      fc.nat(9999),
      fc.nat(9999),
      fc.nat(9999),
      fc.integer({ min: 1, max: 60 }),
      (a, b, c, width) => {
        const [low, high, most] = [a, b, c].sort((one, two) => one - two) as [
          number,
          number,
          number,
        ];
        const bar = textBar([low, high], most, width, PLAIN_SIGNS);
        expect(bar).toMatch(/^#*-*$/);
        expect(bar.length).toBeLessThanOrEqual(width);
        const signs = bar.replaceAll('-', '').length;
        expect(Math.abs(signs - (most === 0 ? 0 : (low / most) * width))).toBeLessThanOrEqual(0.5);
      },
    ),
  );
});

test('columns have eight heights, and a dot for nothing', () => {
  expect(textColumns([0, 1, 2, 3, 4, 5, 6, 7, 8], 8)).toBe('·▁▂▃▄▅▆▇█');
  expect(textColumns([0.01, 100], 100)).toBe('▁█');
  expect(textColumns([0, 0], 0)).toBe('··');
});

describe('what is shown of a plan', () => {
  test.each([60, 80, 100, 120])('keeps to %i columns in a terminal', (width) => {
    for (const code of ['M-0412', 'S-1178']) {
      const text = show(code, width, false);
      expect(tooWide(text, width)).toEqual([]);
      expect(isUnsafe(text)).toBe(false);
      expect(text).not.toMatch(/ \n/);
      expect(text).toContain('█');
      expect(text).not.toContain('#');
    }
  });

  test.each([60, 80, 100, 120])('has plain signs elsewhere, at %i columns', (width) => {
    const text = show('M-0412', width, true);
    expect(text).not.toMatch(/[▁-█░]/);
    const bars = text.split('\n').flatMap((line) => /#+-*/.exec(line.slice(30)) ?? []);
    expect(bars.length).toBeGreaterThanOrEqual(8);
    expect(text.replace(/\s+/g, ' ')).toContain('bars: # to the low end, - on to the high end');
  });

  test('has minutes and their bars in a table of their own where a line is too short for all', () => {
    const lines = show('M-0412', 80, true).split('\n');
    const first = lines.findIndex((line) => line.startsWith('Week    From            Minutes'));
    expect(lines[first + 2]).toBe('1       2026-11-24    101-108.4  #######################-');
    expect(lines[first + 9]).toBe(`8       2027-01-12  167.7-177.2  ${'#'.repeat(38)}--`);
    expect(lines[first + 10]).toBe('');
    expect(lines.slice(first + 11, first + 13).join(' ')).toMatch(/Work left +Work right/);
  });

  test('has a small column a week beside the sets of a muscle', () => {
    const lines = show('M-0412', 80, false).split('\n');
    expect(lines).toContain('Muscle              Side         1-2    3  4 easy  5-8  Weeks 1-8');
    const soleus = lines.findIndex((line) => line.startsWith('soleus'));
    expect(lines[soleus]).toMatch(/ 15 {2}▅▅▇▅████$/);
    expect(lines[soleus + 1]).toMatch(/ 6 {2}▄▄▅▄▄▄▄▄$/);
  });
});
