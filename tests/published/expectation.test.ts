// The words of expected.yaml are read strictly: a slip of the pen in a number from the outside
// world must stop the run, or it would pass as a comparison that was never made.
import { expect, test } from 'vitest';
import { parseSource } from './expectation.ts';

const source = (row: string, how = 'found') => `source: "A paper (2000)"
how: ${how}
checked: "Read whole"
stated_by_us: []
plans:
  one:
    - {what: repetitions, stated: authors, ${row}}
`;

test('a full expectation is read', () => {
  const text = source('quantity: reps, side: left, week: 1, value: 90');
  expect(parseSource(text, 'paper').plans.one?.[0]?.value).toBe(90);
});

test.each([
  ['an unknown key', 'quantity: reps, side: left, week: 1, valeu: 90', /unknown key valeu/],
  ['an unknown quantity', 'quantity: repetitions, side: left, week: 1, value: 90', /quantity/],
  ['no side', 'quantity: reps, week: 1, value: 90', /side is missing/],
  ['a side of a time', 'quantity: seconds, side: left, week: 1, value: 90', /has no side/],
  [
    'minutes of repetitions',
    'quantity: reps, unit: minutes, side: left, week: 1, value: 9',
    /unit/,
  ],
  ['no number', 'quantity: reps, side: left, week: 1', /one of value/],
  ['half a range', 'quantity: reps, side: left, week: 1, value: 4, low: 3', /go together/],
  ['text for a number', 'quantity: reps, side: left, week: 1, value: "90"', /a number is/],
  ['values without each', 'quantity: reps, side: left, week: all, values: [1, 2]', /each and/],
  ['an unknown week', 'quantity: reps, side: left, week: last, value: 90', /week is/],
  ['an item of no session', 'quantity: reps, side: left, item: a, week: 1, value: 9', /session/],
  ['sets of no muscle', 'quantity: muscle_sets, side: left, week: 1, value: 9', /muscle/],
])('%s is refused', (_, row, message) => {
  expect(() => parseSource(source(row), 'paper')).toThrow(message);
});

test('a way of knowing that is not on the list is refused', () => {
  const text = source('quantity: reps, side: left, week: 1, value: 90', 'probably');
  expect(() => parseSource(text, 'paper')).toThrow(/unknown how/);
});

test('a plan that expects nothing is refused', () => {
  const [head] = source('').split('    - {');
  expect(() => parseSource(`${head}    []\n`, 'paper')).toThrow(/expects nothing/);
});
