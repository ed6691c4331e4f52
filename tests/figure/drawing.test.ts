// The drawing: sound and small SVG that asks for nothing, the same on every run, finite whatever is
// written; and the left side is the right one in a mirror.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { figureSvg, restingFigure } from '../../src/figure/figure.ts';
import { settledFigure } from '../../src/figure/settle.ts';
import type { Figure, HandPlace, PropName, PropPlace, Rest } from '../../src/model/figure.ts';
import type { Sides } from '../../src/units/side.ts';
import { SEED } from '../simulator/laws.ts';
import {
  angles,
  EXAMPLE_LEVELS,
  LIMB_ANGLES,
  type MadeFigure,
  MIDDLE_ANGLES,
  madeFigure,
  POSITIONS,
} from './made-figure.ts';

const NAME = 'Lift & hold <"high">';

interface Drawn {
  readonly position: string;
  readonly sides: Sides;
}

function drawn(figure: Figure, level: Drawn, isMirrored = false): string {
  const settled = restingFigure(figure, level);
  if (!settled) throw new Error('not drawn');
  const words = { title: NAME, description: 'Both knees, bending: from 0 to 90 degrees.' };
  return figureSvg({ figure, settled, sides: level.sides, isMirrored, isHeld: true, ...words });
}

/** What is wrong with a text as XML; null where it is well formed. */
function notWellFormed(text: string): string | null {
  const open: string[] = [];
  let rest = text.trim();
  while (rest !== '') {
    const tag = /^<(\/?)([a-z]+)((?: [a-zA-Z-]+="[^"<&]*")*)(\/?)>/.exec(rest);
    const words = /^(?:[^<&]|&(?:amp|lt|gt|quot);)+/.exec(rest);
    const found = tag ?? words;
    if (!found) return `at ${rest.slice(0, 40)}`;
    if (words && open.length === 0) return 'text outside';
    if (tag) {
      const [, closes, name = '', attributes = '', closesItself] = tag;
      const keys = [...attributes.matchAll(/ ([a-zA-Z-]+)=/g)].map(([, key]) => key);
      if (new Set(keys).size < keys.length) return `an attribute twice in ${name}`;
      if (closes && open.pop() !== name) return `${name} closed out of turn`;
      if (!closes && !closesItself) open.push(name);
    }
    rest = rest.slice(found[0].length);
  }
  return open.length === 0 ? null : `${open.join(', ')} left open`;
}

describe('the check of XML itself', () => {
  it.each(['<a><b></a></b>', '<a>', '<a x="1" x="2"/>', '<a>&nbsp;</a>', '<a x=1/>', '<a>a<b</a>'])(
    'refuses %s',
    (text) => expect(notWellFormed(text)).not.toBeNull(),
  );
});

describe('a drawing', () => {
  it.each(EXAMPLE_LEVELS)('is sound and small: $id', ({ figure, level }) => {
    for (const isMirrored of [false, true]) {
      const svg = drawn(figure, level, isMirrored);
      expect(notWellFormed(svg)).toBeNull();
      expect(svg).toMatch(
        /^<svg xmlns="http:\/\/www.w3.org\/2000\/svg" viewBox="-?\d+ -?\d+ \d+ \d+" role="img"><title>Lift &amp; hold &lt;"high"&gt;<\/title><desc>Both knees/,
      );
      const inside = svg.replace('xmlns="http://www.w3.org/2000/svg"', '');
      expect(inside).not.toMatch(
        /<script|<image|<foreign|https?:|url\(|@import|\son[a-z]+=|NaN|Infinity|undefined/,
      );
      expect([...inside.matchAll(/href="([^"]*)"/g)].every(([, to]) => to === '#s')).toBe(true);
      expect(svg.length).toBeLessThan(12_000);
    }
  });

  it('takes about 2 to 5 kilobytes', () => {
    const sizes = EXAMPLE_LEVELS.map(({ figure, level }) => drawn(figure, level).length);
    sizes.sort((a, b) => a - b);
    expect(sizes[Math.floor(sizes.length / 2)]).toBeLessThan(5_500);
  });

  it.each(EXAMPLE_LEVELS)(
    'of the left side is that of the right in a mirror: $id',
    ({ figure, level }) => {
      const [right, left] = [drawn(figure, level), drawn(figure, level, true)];
      const partsOf = (svg: string) => {
        const [, x = 0, y = 0, width = 0, height = 0] =
          /viewBox="(\S+) (\S+) (\S+) (\S+)"/.exec(svg)?.map(Number) ?? [];
        const body = /<\/style>([\s\S]*)<\/svg>/.exec(svg)?.[1] ?? '';
        return { x, y, width, height, body };
      };
      const [one, two] = [partsOf(right), partsOf(left)];
      expect(two.body).toBe(`<g transform="scale(-1 1)">${one.body}</g>`);
      expect([two.y, two.width, two.height]).toEqual([one.y, one.width, one.height]);
      // What was at the left edge is at the right one; edges are whole units.
      expect(Math.abs(-(one.x + one.width) - two.x)).toBeLessThanOrEqual(1);
    },
  );

  it('is the same on every run', () => {
    for (const { figure, level } of EXAMPLE_LEVELS.slice(0, 20)) {
      const [one, two] = [settledFigure(figure, level), settledFigure(figure, level)];
      expect(JSON.stringify(one?.way)).toBe(JSON.stringify(two?.way));
    }
  });
});

const HAND_PLACES: readonly HandPlace[] = [
  'floor',
  'wall',
  'worktop',
  'chair',
  'rail',
  'door-frame',
  'hip',
  'thigh',
  'knee',
  'foot',
  'belly',
  'chest',
  'other-shoulder',
  'other-elbow',
  'head',
  'other-ear',
  'neck',
  'back',
  'free',
];
const FOOT_PLACES = [
  'floor',
  'toes',
  'heel',
  'step',
  'wall',
  'other-foot',
  'other-knee',
  'free',
] as const;
const RESTS: readonly Rest[] = [
  'feet',
  'foot',
  'other-foot',
  'toes',
  'knees',
  'knee',
  'other-knee',
  'seat',
  'heels',
  'back',
  'upper-back',
  'front',
  'side',
  'other-side',
  'hands',
  'hand',
  'other-hand',
  'forearms',
  'forearm',
  'other-forearm',
  'wall',
];
const PROPS: readonly PropName[] = [
  'chair',
  'worktop',
  'table',
  'wall',
  'step',
  'stairs',
  'rail',
  'door-frame',
  'bed',
  'mat',
  'pillow',
  'towel',
  'roll',
  'band',
  'weight',
  'stick',
  'ball',
  'bag',
];
const PLACES: readonly PropPlace[] = [
  'hand',
  'hands',
  'other-hand',
  'foot',
  'feet',
  'other-foot',
  'ankle',
  'knee',
  'knees',
  'elbow',
  'head',
  'seat',
  'chest',
  'back',
  'side',
  'other-side',
  'door',
  'floor',
];

const madeLimb = fc.record(
  {
    angles: angles(LIMB_ANGLES),
    hand: fc.constantFrom(...HAND_PLACES),
    foot: fc.constantFrom(...FOOT_PLACES),
  },
  { requiredKeys: [] },
);

const madePose = fc
  .record({
    limb: madeLimb,
    other: madeLimb,
    middle: angles(MIDDLE_ANGLES),
    lean: fc.option(fc.integer({ min: -60, max: 90 })),
    restsOn: fc.option(fc.subarray([...RESTS], { minLength: 1, maxLength: 3 })),
  })
  .map(({ limb, other, middle, lean, restsOn }) => ({
    ...limb,
    angles: { ...limb.angles, ...middle },
    other,
    ...(lean === null ? {} : { lean }),
    ...(restsOn === null ? {} : { restsOn }),
  }));

const anyFigure: fc.Arbitrary<MadeFigure> = fc
  .record({
    view: fc.constantFrom('side' as const, 'front' as const, 'back' as const, 'above' as const),
    shown: fc.constantFrom(
      'whole' as const,
      'upper-body' as const,
      'head' as const,
      'arm' as const,
      'legs' as const,
      'lower-leg' as const,
    ),
    tilt: fc.integer({ min: 0, max: 90 }),
    props: fc.array(
      fc.record({
        name: fc.constantFrom(...PROPS),
        at: fc.array(fc.constantFrom(...PLACES), { maxLength: 2 }),
      }),
      { maxLength: 3 },
    ),
    start: madePose,
    end: fc.option(madePose),
  })
  .map(({ end, ...rest }) => ({ ...rest, ...(end === null ? {} : { end }) }));

describe('anything that can be written', () => {
  it('is drawn in finite numbers, reachable or not', () => {
    const sides = fc.constantFrom<Sides>('each', 'both', 'middle');
    fc.assert(
      fc.property(anyFigure, fc.constantFrom(...POSITIONS), sides, (made, position, side) => {
        const figure = madeFigure(made);
        const settled = restingFigure(figure, { position, sides: side });
        for (const { x, y, z } of settled?.way.flatMap(({ spine, vertex, right, left }) => [
          ...spine,
          vertex,
          right.toe,
          right.fingertip,
          left.toe,
          left.fingertip,
        ]) ?? [])
          expect([x, y, z].every((one) => Number.isFinite(one) && Math.abs(one) < 50)).toBe(true);
        const svg = drawn(figure, { position, sides: side });
        expect(svg).not.toMatch(/NaN|Infinity|undefined|\de-\d/);
        expect(notWellFormed(svg)).toBeNull();
      }),
      { numRuns: 150, seed: SEED },
    );
  });
});
