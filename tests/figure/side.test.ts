// The worst that a figure could do is to show the wrong side. Whatever is written of sides, the limb
// that is drawn is the one that the dose sentence names first: read off the picture on the finished
// sheet, by where things are in it.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/build.ts';
import { loadWording } from '../../src/handouts/wording.ts';
import { memoryFolder } from '../../src/load/folder.ts';
import { figureView } from '../../src/render/sheet/figure-view.ts';
import { SEED } from '../simulator/laws.ts';
import { exampleFiles, pagesIn } from '../support/pages-of.ts';
import { EXAMPLE_LEVELS } from './made-figure.ts';
import { middleOf, spotsOf } from './svg-spots.ts';

type Side = 'left' | 'right';

/** A movement seen from one side, and which side a person would say moves. */
interface Seen {
  readonly position: string;
  readonly figure: string;
  readonly sideIn: (svg: string) => Side;
}

/** Of a person who is seen from the front, the right side is on the left of the picture. */
const bySideOfTrunk =
  (isFront: boolean) =>
  (svg: string): Side =>
    middleOf(svg, 'a').x < middleOf(svg, 't').x === isFront ? 'right' : 'left';

const SEEN: readonly Seen[] = [
  {
    position: 'standing',
    figure: '{view: front, end: {hip_abduction: 40}}',
    sideIn: bySideOfTrunk(true),
  },
  {
    position: 'standing',
    figure: '{view: back, tilt: 15, start: {other: {hand: hip}}, end: {hip_abduction: 40}}',
    sideIn: bySideOfTrunk(false),
  },
  {
    position: 'standing',
    figure: '{view: front, end: {shoulder_abduction: 85}}',
    sideIn: bySideOfTrunk(true),
  },
  {
    // From the side the nearer limb is dark, and it is the one that moves: whoever looks to the right
    // of the picture shows the right side.
    position: 'standing',
    figure: '{end: {hip_flexion: 80, knee_flexion: 30}}',
    sideIn: (svg) => {
      const trunk = middleOf(svg, 't').x;
      const ahead = middleOf(svg, 'm').x > middleOf(svg, 'h').x ? 1 : -1;
      const farthest = (name: string) =>
        Math.max(...spotsOf(svg, name).map(({ x }) => (x - trunk) * ahead));
      if (farthest('n') <= farthest('f')) throw new Error('the farther leg is the one that moves');
      return ahead > 0 ? 'right' : 'left';
    },
  },
  {
    // On the back, seen from above, the head to the left: the right leg is the lower one.
    position: 'supine',
    figure: '{view: above, end: {hip_abduction: 40}}',
    sideIn: (svg) => {
      const isHeadLeft = middleOf(svg, 'h').x < middleOf(svg, 't').x;
      const isLower = middleOf(svg, 'a').y > middleOf(svg, 't').y;
      return isHeadLeft === isLower ? 'right' : 'left';
    },
  },
  {
    // A face that turns to its right turns to the left of the picture.
    position: 'sitting',
    figure: '{view: front, show: head, end: {neck_rotation: 45}}',
    sideIn: (svg) => (middleOf(svg, 'm').x < middleOf(svg, 'h').x ? 'right' : 'left'),
  },
];

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

interface Written {
  readonly seen: Seen;
  readonly limb: string;
  readonly only: string | null;
  readonly affected: string;
  readonly order: string;
  readonly override: string | null;
}

const written: fc.Arbitrary<Written> = fc.record({
  seen: fc.constantFrom(...SEEN),
  limb: fc.constantFrom(...LIMBS),
  only: fc.constantFrom(null, null, 'left', 'right', 'affected', 'other'),
  affected: fc.constantFrom('left', 'right'),
  order: fc.constantFrom('each-set', 'each-rep', 'all-sets'),
  override: fc.constantFrom(
    null,
    '{left: {sets: 3}, why: It is weaker}',
    '{right: {reps: 5}, why: It hurts}',
  ),
});

const PRACTICE = exampleFiles('saltmarsh')['practice.yaml'] ?? '';

function sheetOf({ seen, limb, only, affected, order, override }: Written): string {
  const files = {
    'practice.yaml': PRACTICE,
    'exercises/lift.yaml': `exercise: lift
name: Lift
purpose: strength
position: ${seen.position}
sides: each
limb: ${limb}
order: ${order}
steps:
  - Lift and lower
figure: ${seen.figure}
levels:
  - level: one
    dose: {sets: 2, reps: 8, move: 3 s}
`,
    'plans/X-1.yaml': `plan: X-1
title: Sides
visits:
  - date: 2026-10-05
weeks: 2
affected: ${affected}
sessions:
  - session: daily
    name: Daily
    days: daily
    parts:
      - part: strength
        items:
          - do: lift
${only === null ? '' : `            only: ${only}\n`}${override === null || only !== null ? '' : `            sides: ${override}\n`}`,
  };
  return pagesIn(files, 'X-1').html;
}

/** The dose sentence, the picture, and its words, of the only exercise of a sheet. */
function shownOn(html: string) {
  const dose = /<p class="dose">([\s\S]*?)<\/p>/.exec(html)?.[1] ?? '';
  const [, base64 = '', alt = ''] =
    /<img src="data:image\/svg\+xml;base64,([^"]*)" alt="([^"]*)">/.exec(html) ?? [];
  const caption = /<p class="caption">([\s\S]*?)<\/p>/.exec(html)?.[1] ?? '';
  return { dose, svg: Buffer.from(base64, 'base64').toString('utf8'), alt, caption };
}

const firstSide = (text: string) => /\b(left|right)\b/i.exec(text)?.[1]?.toLowerCase();

describe('the side that is drawn', () => {
  it('is the one that the dose sentence names first', () => {
    const seen = { left: 0, right: 0 };
    fc.assert(
      fc.property(written, (one) => {
        const { dose, svg, alt, caption } = shownOn(sheetOf(one));
        const side = one.seen.sideIn(svg);
        seen[side] += 1;
        expect(firstSide(dose), dose).toBe(side);
        expect(firstSide(alt), alt).toBe(side);
        expect(firstSide(caption), caption).toBe(side);
        const other = side === 'left' ? 'right' : 'left';
        expect(new RegExp(`\\b${other}\\b`).test(caption)).toBe(one.only === null);
      }),
      { numRuns: 250, seed: SEED },
    );
    expect(Math.min(seen.left, seen.right)).toBeGreaterThan(25);
  });

  it.each(
    SEEN.flatMap((seen) =>
      (['left', 'right'] as const).map((only) => ({ seen, only, figure: seen.figure })),
    ),
  )('is only the $only one, where only that is done: $figure', ({ seen, only }) => {
    const one = { seen, limb: 'leg', only, affected: 'left', order: 'each-set', override: null };
    expect(seen.sideIn(shownOn(sheetOf(one)).svg)).toBe(only);
  });
});

describe('a page that reads from right to left', () => {
  it('turns no figure round', () => {
    const files = exampleFiles('saltmarsh');
    const folder = memoryFolder(files);
    const compiled = compile(folder, { plans: [], exercises: [] });
    const words = loadWording(folder, compiled).value.get('en');
    if (!words) throw new Error('no words');
    for (const { level } of EXAMPLE_LEVELS) {
      const sides = level.sides === 'each' ? (['left', 'right'] as const) : [];
      const [one, two] = [words, { ...words, direction: 'rtl' as const }].map((pack) =>
        figureView(pack, level, 'Any', sides),
      );
      expect(two).toEqual(one);
    }
  });

  it('shows whoever has no side of its own as written', () => {
    for (const { level } of EXAMPLE_LEVELS.filter((one) => one.level.sides !== 'each')) {
      const folder = memoryFolder(exampleFiles('saltmarsh'));
      const words = loadWording(folder, compile(folder, { plans: [], exercises: [] })).value.get(
        'en',
      );
      const view = words && figureView(words, level, 'Any', []);
      const svg = new TextDecoder().decode(view?.picture.bytes);
      expect(svg).not.toContain('transform');
    }
  });
});
