// A plan for the mirror image of a person: every left is a right and every right a left, in the numbers
// and in the words, and nothing else has changed.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { mirrored, SEED } from './simulator/laws.ts';
import { cases, EVERYTHING } from './simulator/plans.ts';
import type { Case } from './simulator/written.ts';
import { filesOf } from './simulator/yaml.ts';
import { type Block, figures, htmlBlocks } from './support/page-blocks.ts';
import { pagesIn } from './support/pages-of.ts';
import { namesASide, toldBySide } from './support/told-by-side.ts';

const LIMBS = [
  'leg',
  'arm',
  'foot',
  'hand',
  'knee',
  'shoulder',
  'foot-in-front',
  'side',
  'direction',
];

/** Random plans, their exercises with limbs of every name. */
const plans = fc
  .tuple(cases(EVERYTHING), fc.array(fc.constantFrom(...LIMBS), { minLength: 3, maxLength: 3 }))
  .map(([all, limbs]): Case => {
    const exercises = all.exercises.map((one, at) => ({ ...one, limb: limbs[at] ?? 'leg' }));
    return { ...all, exercises };
  });

function pagesOf(all: Case) {
  const { html, clinic, sheetNumber } = pagesIn(filesOf(all), all.plan.plan);
  return { blocks: htmlBlocks(html.replaceAll(sheetNumber, 'NUMBER')), clinic, sheetNumber };
}

/** What is no mirror image of its counterpart, both one below the other. */
function unlike(one: readonly Block[], mirror: readonly Block[]): string[] {
  return one.flatMap(({ kind, text }, at) => {
    const other = mirror[at];
    const same = other !== undefined && other.kind === kind && isMirrored(text, other.text);
    return same ? [] : [`${text}\n${other?.text}`];
  });
}

function isMirrored(text: string, mirror: string): boolean {
  if (!namesASide(text) && !namesASide(mirror)) {
    // What to put ready is listed in the order in which it is needed.
    return listed(text) === listed(mirror);
  }
  const told = toldBySide(mirror);
  const swapped = { left: told.right, right: told.left, all: told.all };
  return JSON.stringify(toldBySide(text)) === JSON.stringify(swapped);
}

function listed(text: string): string {
  const things = text.toLowerCase().replace(/^put ready: |\.$/g, '');
  return /^(?:a |\d|the )/.test(things) ? things.split(', ').sort().join(', ') : text;
}

const OTHER: Record<string, string> = { left: 'right', right: 'left' };
const swapped = (text: string) => OTHER[text] ?? text;

/** The rows of a clinic copy's numbers in an order of their own, so that a side has no place. */
function numbers(clinic: string, change = (text: string) => text): string[] {
  const rows = figures(clinic).map((row) =>
    row.map(([column, cell]) => [change(column), change(cell)]),
  );
  return rows.map((row) => JSON.stringify(row.sort())).sort();
}

it('swaps left and right in every sentence of the sheet and every number of the clinic copy', () => {
  let differing = 0;
  const swaps = fc.property(plans, (all) => {
    const [one, mirror] = [pagesOf(all), pagesOf(mirrored(all))];
    expect(unlike(one.blocks, mirror.blocks)).toEqual([]);
    expect(mirror.blocks.length).toBe(one.blocks.length);
    expect(numbers(mirror.clinic, swapped)).toEqual(numbers(one.clinic));
    const isSame = JSON.stringify(one.blocks) === JSON.stringify(mirror.blocks);
    expect(one.sheetNumber === mirror.sheetNumber).toBe(isSame);
    if (!isSame) differing += 1;
  });
  fc.assert(swaps, { numRuns: 100, seed: SEED });
  // Most plans have something to swap, or this would tell nothing.
  expect(differing).toBeGreaterThan(50);
}, 120_000);
