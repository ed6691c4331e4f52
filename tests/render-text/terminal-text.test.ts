// What makes a text safe for a terminal, and lines of it as wide as the screen.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  brokenAtCommas,
  displayWidth,
  endWithin,
  oneLine,
  startWithin,
  visible,
  wrappedLines,
} from '../../src/render/terminal/terminal-text.ts';
import { isUnsafe } from './saltmarsh.ts';

describe('visible', () => {
  test.each([
    ['\x1b[31mred\x1b[0m', '␛[31mred␛[0m'],
    ['\x1b]8;;https://example.org\x07link', '␛]8;;https://example.org␇link'],
    ['\x9b2J', '<U+009B>2J'],
    ['a\tb\x00\x7f', 'a␉b␀␡'],
    ['left\u202Ethgir', 'left<U+202E>thgir'],
    ['\uD83D', '<U+D83D>'],
    ['\u{E0041}', '<U+E0041>'],
  ])('%j', (text, shown) => expect(visible(text)).toBe(shown));

  test('leaves scripts and emoji as they are', () => {
    for (const text of ['رفع الكعب', 'می\u200Cخواهم', '足首', 'é', '👩\u200D⚕️']) {
      expect(visible(text)).toBe(text);
    }
  });

  test('leaves nothing that could steer a terminal, whatever comes', () => {
    const units = fc.array(fc.nat(0xffff)).map((codes) => String.fromCharCode(...codes));
    fc.assert(fc.property(units, (text) => !isUnsafe(visible(text))));
  });
});

test('oneLine joins lines, and shows other control characters', () => {
  expect(oneLine('  A title\r\n  over two lines\n\n')).toBe('A title over two lines');
  expect(oneLine('a\rb')).toBe('a␍b');
});

describe('widths', () => {
  test('wide characters take two columns, combining marks none', () => {
    expect(displayWidth('足首')).toBe(4);
    expect(displayWidth('e\u0301')).toBe(1);
  });

  test('cuts between characters, never inside one', () => {
    expect(startWithin('足首の運動', 5)).toBe('足首');
    expect(endWithin('足首の運動', 5)).toBe('運動');
    expect(startWithin('e\u0301e\u0301', 1)).toBe('e\u0301');
    expect(startWithin('abc', 0)).toBe('');
  });
});

describe('wrappedLines', () => {
  test('breaks between words', () => {
    expect(wrappedLines('Rise onto your toes', 10)).toEqual(['Rise onto', 'your toes']);
  });

  test('cuts a word that is too long', () => {
    expect(wrappedLines('a abcdefgh b', 4)).toEqual(['a', 'abcd', 'efgh', 'b']);
  });

  test('keeps a number with its unit', () => {
    expect(wrappedLines(brokenAtCommas('2 x 8, hold 2 s'), 12)).toEqual(['2 x 8,', 'hold 2 s']);
  });

  test('loses no word, and no line is too wide', () => {
    const words = fc.array(fc.stringMatching(/^[a-z足é]{1,12}$/), { minLength: 1 });
    fc.assert(
      fc.property(words, fc.integer({ min: 2, max: 30 }), (all, width) => {
        const lines = wrappedLines(all.join(' '), width);
        expect(lines.join('').replaceAll(' ', '')).toBe(all.join(''));
        for (const line of lines) expect(displayWidth(line)).toBeLessThanOrEqual(width);
      }),
    );
  });
});
