// Numbers of several groups keep their order on a page that is read from right to left; a sheet number is
// kept whole by its letters, and signs inside it would part it.
import { expect, it } from 'vitest';
import { withNumbersInOrder } from '../../src/render/pages/reading-order.ts';

const kept = (number: string) => `\u2066${number.replaceAll(' ', '\u00a0')}\u2069`;

it.each(['555 0142', '+44 20 7946 0000', '(555) 0142', '+5550142'])(
  '%s is kept in order',
  (number) => {
    expect(withNumbersInOrder(`اتصل ${number} الآن`)).toBe(`اتصل ${kept(number)} الآن`);
  },
);

it.each(['TCR3 4M9N', 'KP4T 7WQM', 'C333 3333'])('the sheet number %s stays as it is', (number) => {
  expect(withNumbersInOrder(`الورقة ${number}، زيارة`)).toBe(`الورقة ${number}، زيارة`);
});
