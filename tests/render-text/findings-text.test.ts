// Findings on the screen: the form, the place under its carets, and texts that mean harm.

import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import { finding } from '../../src/finding/finding.ts';
import { fileOnly, type Place } from '../../src/finding/place.ts';
import { findingsText, summaryText } from '../../src/render/terminal/findings-text.ts';
import { isUnsafe, plainPaint, saltmarsh, tooWide } from './saltmarsh.ts';

const screen = (width: number) => ({ width, isTerminal: true, paint: plainPaint });

function placeOf(text: string, marked: string, file = 'plans/M-0412.yaml'): Place {
  const start = text.indexOf(marked);
  if (start < 0) throw new Error(`"${marked}" is not in the text`);
  return { source: { file, text }, start, end: start + marked.length };
}

function shown(place: Place, width = 80, message = 'Something is wrong here.'): string[] {
  const one = finding({ check: 'unknown-exercise', severity: 'error', message, place });
  return findingsText([one], screen(width)).split('\n');
}

/** The two lines of the frame, and the columns that the carets stand under. */
function frame(place: Place, width = 80) {
  const lines = shown(place, width);
  const [text = '', carets = ''] = lines.slice(-2);
  return { text, from: carets.indexOf('^'), count: carets.split('^').length - 1 };
}

test('a finding in full', () => {
  const text = 'plan: M-0412\nsessions:\n  - do: heel-rase\n';
  const place = placeOf(text, 'heel-rase');
  const related = { message: 'The first one.', place: placeOf(text, 'sessions', 'plans/x.yaml') };
  const one = finding({
    check: 'unknown-exercise',
    severity: 'error',
    message: 'There is no exercise "heel-rase".',
    place,
    hints: ['Did you mean "heel-raise"?'],
    related: [related],
  });
  const two = finding({
    check: 'long-session',
    severity: 'warning',
    message: 'Too long.',
    place: fileOnly('pictures/heel.png'),
    accepted: { why: 'It fits in.' },
  });
  expect(findingsText([one, two], screen(80))).toBe(`plans/M-0412.yaml:3:9  error  unknown-exercise
There is no exercise "heel-rase".
3 |   - do: heel-rase
  |         ^^^^^^^^^
hint: Did you mean "heel-raise"?
plans/x.yaml:2:1  The first one.

pictures/heel.png:1:1  warning, accepted  long-session
Too long.
accepted: It fits in.`);
  expect(findingsText([], screen(80))).toBe('');
});

describe('the place', () => {
  test('over several lines is shown to the end of its first', () => {
    expect(frame(placeOf('a: 1\nlist:\n  - one\n  - two\n', 'list:\n  - one'))).toEqual({
      text: '2 | list:',
      from: 4,
      count: 5,
    });
  });

  test('that is empty has a single caret, also at the end of the text', () => {
    const source = { file: 'plans/x.yaml', text: 'plan: x' };
    expect(frame({ source, start: 6, end: 6 })).toEqual({
      text: '1 | plan: x',
      from: 10,
      count: 1,
    });
    expect(frame({ source, start: 7, end: 7 })).toEqual({
      text: '1 | plan: x',
      from: 11,
      count: 1,
    });
  });

  test('after wide characters and marks stands under what is seen', () => {
    expect(frame(placeOf('title: 足首 e\u0301 foot\r\n', 'foot'))).toEqual({
      text: '1 | title: 足首 e\u0301 foot',
      from: 4 + 14,
      count: 4,
    });
    expect(frame(placeOf('足首', '首'))).toMatchObject({ from: 6, count: 2 });
  });

  test('after a tab and an escape sequence too', () => {
    const { text, from } = frame(placeOf('\ttitle: \x1b[2Jred', 'red'));
    expect(text).toBe('1 | ␉title: ␛[2Jred');
    expect(stringWidth(text.slice(0, text.indexOf('red')))).toBe(from);
  });
});

describe('a line of 10,000 characters is cut around the place', () => {
  const filler = 'abcdefghi '.repeat(500);
  test.each([
    ['in the middle', `${filler}HERE${filler}`, 'HERE'],
    ['at the start', `HERE${filler}${filler}`, 'HERE'],
    ['at the end', `${filler}${filler}HERE`, 'HERE'],
    ['wide', `${'足'.repeat(5000)}HERE${'首'.repeat(5000)}`, 'HERE'],
  ])('%s', (_, text, marked) => {
    for (const width of [80, 120]) {
      const seen = frame(placeOf(text, marked), width);
      expect(stringWidth(seen.text)).toBeLessThanOrEqual(width);
      expect(stringWidth(seen.text)).toBeGreaterThan(width - 5);
      expect(stringWidth(seen.text.slice(0, seen.text.indexOf('HERE')))).toBe(seen.from);
      expect(seen.count).toBe(4);
    }
  });

  test('also where the place itself is that long', () => {
    const { text, from, count } = frame(placeOf(`a: ${filler}.`, filler.trim()));
    expect(text.startsWith('1 | a: abcdefghi')).toBe(true);
    expect(stringWidth(text)).toBeLessThanOrEqual(80);
    expect(from + count).toBeLessThanOrEqual(80);
    expect(count).toBeGreaterThan(60);
  });

  test('and a file of one line of a million characters takes no time', () => {
    const text = `${'x'.repeat(500_000)}HERE${'x'.repeat(500_000)}`;
    const began = performance.now();
    frame(placeOf(text, 'HERE'));
    expect(performance.now() - began).toBeLessThan(2_000);
  });
});

test('nothing that is written can steer the terminal', () => {
  const nasty = '\x1b]0;owned\x07\x1b[2J\u202Eabc\u2066\x9b31m\ttext\r\x00';
  const place = placeOf(`note: ${nasty}`, nasty, `plans/${nasty}.yaml`);
  const one = finding({
    check: 'unknown-exercise',
    severity: 'note',
    message: nasty,
    place,
    hints: [nasty],
    related: [{ message: nasty, place }],
    accepted: { why: nasty },
  });
  expect(isUnsafe(findingsText([one], screen(80)))).toBe(false);
});

test('sentences wrap at the width', () => {
  const lines = shown(fileOnly('plans/x.yaml'), 80, 'A sentence that goes on. '.repeat(20));
  expect(lines.length).toBeGreaterThan(5);
  expect(tooWide(lines.join('\n'), 80)).toEqual([]);
});

test('findings of a real folder stay within the width', () => {
  expect(saltmarsh.findings.length).toBeGreaterThan(0);
  for (const width of [80, 120]) {
    expect(tooWide(findingsText(saltmarsh.findings, screen(width)), width)).toEqual([]);
  }
});

test.each([
  [
    { errors: 2, warnings: 1, notes: 3, accepted: 2, files: 14 },
    '2 errors, 1 warning, 3 notes (2 accepted) in 14 files.',
  ],
  [{ errors: 1, warnings: 0, notes: 0, accepted: 0, files: 1 }, '1 error in 1 file.'],
  [{ errors: 0, warnings: 2, notes: 1, accepted: 0, files: 2 }, '2 warnings, 1 note in 2 files.'],
  [{ errors: 0, warnings: 0, notes: 0, accepted: 0, files: 14 }, 'No findings in 14 files.'],
  [
    { errors: 0, warnings: 0, notes: 0, accepted: 3, files: 14 },
    'No findings (3 accepted) in 14 files.',
  ],
])('the summary %#', (counts, text) => expect(summaryText(counts)).toBe(text));
