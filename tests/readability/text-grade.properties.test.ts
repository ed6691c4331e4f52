// What must hold of a grade whatever the text: it rises with longer sentences and longer words, and the
// order of sentences is nothing to it.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { byWeight, textGrade } from '../../src/readability/text-grade.ts';

const SHORT = ['lift', 'your', 'leg', 'and', 'hold', 'it', 'low', 'then', 'rest', 'a', 'bit'];
const LONG = ['alternately', 'comfortable', 'immediately', 'positioning', 'underneath'];

const words = (from: readonly string[], least = 1) =>
  fc.array(fc.constantFrom(...from), { minLength: least, maxLength: 15 });
const sentence = words([...SHORT, ...LONG]).map((all) => all.join(' '));
const text = fc.array(sentence, { minLength: 1, maxLength: 40 });

const grade = (texts: readonly string[]) => {
  const found = textGrade(texts, []);
  if (!found) throw new Error('there is nothing to grade');
  return found;
};

test('a short word made long raises both grades', () => {
  fc.assert(
    fc.property(text, words(SHORT), fc.constantFrom(...LONG), (others, all, long) => {
      const before = grade([...others, all.join(' ')]);
      const after = grade([...others, [long, ...all.slice(1)].join(' ')]);
      expect(after.fleschKincaid).toBeGreaterThan(before.fleschKincaid);
      expect(after.smog).toBeGreaterThan(before.smog);
    }),
  );
});

test('two sentences run together raise both grades, or leave SMOG where no word is long', () => {
  fc.assert(
    fc.property(text, sentence, sentence, (others, one, two) => {
      const apart = grade([...others, one, two]);
      const together = grade([...others, `${one} ${two}`]);
      expect(together.fleschKincaid).toBeGreaterThan(apart.fleschKincaid);
      const hasLong = apart.counts.longWords.length > 0;
      if (hasLong) expect(together.smog).toBeGreaterThan(apart.smog);
      else expect(together.smog).toBe(apart.smog);
    }),
  );
});

test('the order of sentences, a stop at their ends and the whole said twice change nothing', () => {
  fc.assert(
    fc.property(text, (texts) => {
      const once = grade(texts);
      expect(grade([...texts].reverse())).toMatchObject({
        fleschKincaid: once.fleschKincaid,
        smog: once.smog,
      });
      expect(grade(texts.map((one) => `${one}.`))).toEqual(once);
      expect(grade([...texts, ...texts]).fleschKincaid).toBeCloseTo(once.fleschKincaid, 9);
      expect(grade([...texts, ...texts]).smog).toBeCloseTo(once.smog, 9);
    }),
  );
});

test('a word made plain never raises a grade', () => {
  fc.assert(
    fc.property(text, fc.constantFrom(...LONG), (texts, plain) => {
      const eased = textGrade(texts, [plain]);
      const { fleschKincaid, smog } = grade(texts);
      expect(eased?.fleschKincaid).toBeLessThanOrEqual(fleschKincaid);
      expect(eased?.smog).toBeLessThanOrEqual(smog);
    }),
  );
});

test.each(['fleschKincaid', 'smog'] as const)(
  'by %s, the text is easiest without the hardest sentence',
  (by) => {
    fc.assert(
      fc.property(fc.uniqueArray(sentence, { minLength: 2, maxLength: 20 }), (texts) => {
        const hardest = byWeight(texts, [], by).map(({ text: one }) => one);
        const without = (left: string) => grade(texts.filter((one) => one !== left))[by];
        expect([...hardest].sort()).toEqual([...texts].sort());
        const grades = hardest.map(without);
        for (const [i, one] of grades.slice(1).entries())
          expect(one).toBeGreaterThanOrEqual((grades[i] as number) - 1e-9);
      }),
    );
  },
);
