// What the sheets of the example clinic must never say again: each was misread, or could have been.
import { expect, it } from 'vitest';
import { planIn } from '../../src/handouts/version.ts';
import type { SheetView } from '../../src/render/sheet/sheet-view.ts';
import { exampleFiles, versionOf } from '../diff/versions.ts';

const files = exampleFiles();

function sheetOf(plan: string): SheetView {
  const version = versionOf(files, plan);
  const [one] = version.compiled.plans;
  const sheet = one && planIn(version, one)?.version.sheet;
  if (!sheet) throw new Error(`${plan} has no sheet`);
  return sheet;
}

const exercisesOf = ({ exercises, growth }: SheetView) => [
  ...exercises.sessions.flatMap(({ groups }) => groups.flatMap((group) => group.exercises)),
  ...(growth?.later?.exercises ?? []),
];

it('a later line names the load of each side where they differ, though neither changes', () => {
  const { growth } = sheetOf('H-7702');
  const lines = growth?.changes.flatMap((block) => block.lines) ?? [];
  const carry = lines.filter(({ text }) => text.includes('1 minute with the left hand'));
  expect(carry.length).toBeGreaterThan(0);
  for (const { text } of carry)
    expect(text).toMatch(/left hand, holding 8 kg\..* right hand, holding 6 kg\./);
});

it.each(['K-2207', 'T-1630'])(
  '%s: no figure shows more of a movement than its dose allows',
  (plan) => {
    const limited = exercisesOf(sheetOf(plan)).filter(({ dose }) => /Move between/.test(dose));
    expect(limited.length).toBeGreaterThan(0);
    expect(limited.map(({ picture }) => picture)).toEqual(limited.map(() => null));
  },
);

it('a caption of two sides does not call them the same', () => {
  const captions = ['M-0412', 'H-7702'].flatMap((plan) =>
    exercisesOf(sheetOf(plan)).flatMap(({ picture }) => picture?.caption ?? []),
  );
  expect(captions.some((caption) => caption.includes('Then with the right'))).toBe(true);
  expect(captions.join(' ')).not.toContain('the same');
});
