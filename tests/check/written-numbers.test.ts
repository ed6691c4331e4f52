// The numbers of a text and of its translation, in whatever digits.
import { describe, expect, it } from 'vitest';
import { numbersIn, otherNumbers } from '../../src/check/written-numbers.ts';

describe('the numbers of a text', () => {
  it.each([
    ['Take 3 seconds to come down', ['3']],
    ['2,5 kg, not 2.5 lb', ['2.5', '2.5']],
    // Arabic-Indic and extended Arabic-Indic digits, Unicode 15, blocks Arabic.
    ['لمدة ٣ ثوانٍ و۱۲ مرة', ['3', '12']],
    ['٢٫٥ كغ', ['2.5']],
    ['555 0142', ['555', '0142']],
    ['no number here', []],
  ])('%s', (text, numbers) => {
    expect(numbersIn([text])).toEqual(numbers);
  });

  it('may come in another order, but not be others', () => {
    expect(otherNumbers(['8 to 12'], ['12 bis 8'])).toBeNull();
    expect(otherNumbers(['3 seconds'], ['30 segundos'])).toEqual({
      there: 'the number 3',
      here: 'the number 30',
    });
    expect(otherNumbers(['2 times, 2 s'], ['2 veces'])).toEqual({
      there: 'the numbers 2, 2',
      here: 'the number 2',
    });
  });
});
