// The drawn body: every segment has its published length, every joint the angle that was written, and
// the body touches what it rests on and goes through nothing.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { restingFigure, type Settled } from '../../src/figure/figure.ts';
import { SEED } from '../simulator/laws.ts';
import {
  angles,
  EXAMPLE_LEVELS,
  LIMB_ANGLES,
  MIDDLE_ANGLES,
  madeFigure,
  POSITIONS,
} from './made-figure.ts';
import { distance, leanOf, limbAngles, middleAngles } from './measured-body.ts';

const HANDS = ['left', 'right'] as const;

function bodiesOf({ level, figure }: (typeof EXAMPLE_LEVELS)[number]): readonly Settled[] {
  const settled = restingFigure(figure, level);
  return [settled?.start, settled?.end].flatMap((one) => one ?? []);
}

/** Drillis R, Contini R, Body Segment Parameters, New York University 1966, as in Winter DA,
 * Biomechanics and Motor Control of Human Movement, 4th ed. 2009, fig. 4.1; shares of stature. */
const PUBLISHED = {
  thigh: 0.245,
  shank: 0.246,
  foot: 0.152,
  footHeight: 0.039,
  upperArm: 0.186,
  forearm: 0.146,
  hand: 0.108,
  trunk: 0.288,
  neck: 0.052,
  head: 0.13,
  halfShoulders: 0.129,
  halfHips: 0.191 / 2,
};

function lengthsOf({ body }: Settled): readonly (readonly [string, number, number])[] {
  const { spine } = body;
  const trunk = [0, 1, 2].reduce(
    (sum, i) => sum + distance(spine[i] ?? spine[0], spine[i + 1] ?? spine[0]),
    0,
  );
  return [
    ['trunk', trunk, PUBLISHED.trunk],
    ['neck', distance(spine[3], body.neckTop), PUBLISHED.neck],
    ['head', distance(body.neckTop, body.vertex), PUBLISHED.head],
    ...HANDS.flatMap((hand) => {
      const one = body[hand];
      // The sole is a line from heel to toe; the ankle stands at its height over it.
      const [along, sole] = [distance(one.heel, one.toe), distance(one.heel, one.ankle)];
      const share = (sole ** 2 + along ** 2 - distance(one.toe, one.ankle) ** 2) / (2 * along);
      return [
        [`${hand} thigh`, distance(one.hip, one.knee), PUBLISHED.thigh],
        [`${hand} shank`, distance(one.knee, one.ankle), PUBLISHED.shank],
        [`${hand} foot`, along, PUBLISHED.foot],
        [`${hand} foot height`, Math.sqrt(sole ** 2 - share ** 2), PUBLISHED.footHeight],
        [`${hand} upper arm`, distance(one.shoulder, one.elbow), PUBLISHED.upperArm],
        [`${hand} forearm`, distance(one.elbow, one.wrist), PUBLISHED.forearm],
        [`${hand} hand`, distance(one.wrist, one.fingertip), PUBLISHED.hand],
      ] as const;
    }),
  ];
}

describe('a segment of the body', () => {
  it.each(EXAMPLE_LEVELS)('has its published length: $id', (example) => {
    const bodies = bodiesOf(example);
    expect(bodies.length).toBeGreaterThan(0);
    for (const body of bodies)
      for (const [name, is, published] of lengthsOf(body))
        expect(is, name).toBeCloseTo(published, 6);
  });

  it('stands at its published height on an upright body', () => {
    const straight = Object.fromEntries([...LIMB_ANGLES, ...MIDDLE_ANGLES].map((one) => [one, 0]));
    const start = { angles: straight, other: { angles: straight }, lean: 0 };
    const settled = restingFigure(madeFigure({ start }), { position: 'standing', sides: 'both' });
    const body = settled?.start.body;
    // The same figure 4.1: heights over the floor.
    expect(body?.right.ankle.y).toBeCloseTo(0.039, 3);
    expect(body?.right.knee.y).toBeCloseTo(0.285, 3);
    expect(body?.right.hip.y).toBeCloseTo(0.53, 3);
    expect(body?.right.shoulder.y).toBeCloseTo(0.818, 3);
    expect(body?.neckTop.y).toBeCloseTo(0.87, 3);
    expect(body?.vertex.y).toBeCloseTo(1, 3);
    expect(body?.right.fingertip.y).toBeCloseTo(0.818 - 0.44, 3);
  });
});

const MEASURED_LIMB = LIMB_ANGLES.filter(
  (one) => !['foot_eversion', 'shrug', 'shoulder_forward'].includes(one),
);
const MEASURED_MIDDLE = MIDDLE_ANGLES.filter((one) => one !== 'chin_back');

/**
 * A turn is only seen, and measured, where the next joint is bent. Where the arm or leg was left to find
 * how far out to the side it is, it may be beyond a right angle, which a goniometer reads otherwise.
 */
function isSeen(name: string, given: Readonly<Record<string, number | undefined>>): boolean {
  const [, joint] = /^(hip|shoulder)_(?:flexion|rotation)$/.exec(name) ?? [];
  if (joint && given[`${joint}_abduction`] === undefined) return false;
  if (name === 'hip_rotation') return Math.abs(given.knee_flexion ?? 0) > 20;
  if (name === 'shoulder_rotation') return Math.abs(given.elbow_flexion ?? 0) > 20;
  return true;
}

describe('an angle that is written', () => {
  it('is the angle of the drawn body, in every position, at the start and at the end', () => {
    const pose = fc
      .record({
        limb: angles(MEASURED_LIMB),
        other: angles(MEASURED_LIMB),
        middle: angles(MEASURED_MIDDLE),
      })
      .map(({ limb, other, middle }) => ({
        angles: { ...limb, ...middle },
        other: { angles: other },
      }));
    const one = fc.record({
      position: fc.constantFrom(...POSITIONS),
      start: pose,
      end: pose,
    });
    let measured = 0;
    fc.assert(
      fc.property(one, ({ position, start, end }) => {
        const figure = madeFigure({ start, end });
        const settled = restingFigure(figure, { position, sides: 'each' });
        for (const [made, at] of [
          [start, settled?.start],
          [end, settled?.end],
        ] as const) {
          if (!at) throw new Error('not drawn');
          const is = {
            right: limbAngles(at.body, 'right'),
            left: limbAngles(at.body, 'left'),
            middle: middleAngles(at.body),
          };
          const held = (wanted: object, read: Readonly<Record<string, number>>, of: object) => {
            for (const [name, degrees] of Object.entries(wanted)) {
              if (!(name in read) || !isSeen(name, of as Record<string, number>)) continue;
              measured += 1;
              const size = /wrist/.test(name) ? Math.abs(degrees as number) : (degrees as number);
              expect(read[name], `${position} ${name}`).toBeCloseTo(size, 3);
            }
          };
          held(made.angles, is.right, made.angles);
          held(made.other.angles, is.left, made.other.angles);
          held(made.angles, is.middle, made.angles);
        }
      }),
      { numRuns: 120, seed: SEED },
    );
    expect(measured).toBeGreaterThan(1000);
  });

  it.each(EXAMPLE_LEVELS)('is that of the example: $id', ({ figure, level }) => {
    const settled = restingFigure(figure, level);
    for (const [pose, at] of [
      [figure.start, settled?.start],
      [figure.end, settled?.end],
    ] as const) {
      if (!pose || !at) continue;
      for (const [hand, given] of [
        ['right', pose.limb.angles],
        [
          'left',
          level.sides === 'each'
            ? pose.other.angles
            : { ...pose.limb.angles, ...pose.other.angles },
        ],
      ] as const) {
        // With a shoulder blade drawn up or forwards the line across is not the chest's.
        const isTilted = [pose, figure.start].some(({ limb, other }) =>
          [limb, other].some(({ angles: all }) => all.shrug || all.shoulder_forward),
        );
        const read: Readonly<Record<string, number>> = limbAngles(at.body, hand);
        for (const [name, degrees] of Object.entries(given)) {
          if (!(name in read)) continue;
          if (
            name.endsWith('rotation') &&
            !isSeen(name, { hip_abduction: 0, shoulder_abduction: 0, ...given })
          )
            continue;
          if (isTilted && name.startsWith('shoulder')) continue;
          // Beyond straight out to the side a goniometer reads the same arm in another way.
          if ((given.shoulder_abduction ?? 0) > 90 && name.startsWith('shoulder')) continue;
          if (name === 'ankle_dorsiflexion' && given.foot_eversion) continue;
          const size = name === 'wrist_flexion' ? Math.abs(degrees) : degrees;
          expect(read[name], `${hand} ${name}`).toBeCloseTo(size, 3);
        }
      }
      if (pose.lean !== null && ['standing', 'sitting'].includes(figure.position ?? level.position))
        expect(leanOf(at.body)).toBeCloseTo(pose.lean, 3);
    }
  });
});

/** 1 cm of 170 cm. */
const TOUCHES = 0.006;

describe('a figure of the example clinic', () => {
  it.each(EXAMPLE_LEVELS)('rests: $id', ({ figure, level }) => {
    const settled = restingFigure(figure, level);
    const scene = settled?.scene;
    if (!settled || !scene) throw new Error('not drawn');
    for (const { body, shortfalls, intent } of [
      settled.start,
      ...(settled.end ? [settled.end] : []),
    ]) {
      expect(shortfalls).toEqual([]);
      const joints = HANDS.flatMap((hand) => {
        const { hip, knee, ankle, heel, ball, shoulder, elbow, wrist, fingertip } = body[hand];
        return [hip, knee, ankle, heel, ball, shoulder, elbow, wrist, fingertip];
      });
      const all = [...joints, ...body.spine, body.neckTop, body.headMiddle];
      for (const { x, y, z } of all) {
        expect(y).toBeGreaterThan(-TOUCHES);
        if (scene['wall-ahead'] !== null) expect(x).toBeLessThan(scene['wall-ahead'] + TOUCHES);
        if (scene['wall-behind'] !== null)
          expect(x).toBeGreaterThan(scene['wall-behind'] - TOUCHES);
        if (scene['wall-right'] !== null) expect(z).toBeLessThan(scene['wall-right'] + TOUCHES);
        if (scene['wall-left'] !== null) expect(z).toBeGreaterThan(scene['wall-left'] - TOUCHES);
      }
      for (const { surface, at, flesh } of intent.touches) {
        const { x, y, z } = at(body);
        const level = scene[surface] ?? Number.NaN;
        const off = {
          'wall-ahead': x + flesh,
          'door-frame': x + flesh,
          'wall-behind': x - flesh,
          'wall-right': z + flesh,
          'wall-left': z - flesh,
          // As steep as stairs of 17 cm with a tread of 28 cm.
          rail: y - (17 / 28) * x - flesh,
        }[surface as string];
        expect(Math.abs((off ?? y - flesh) - level)).toBeLessThan(TOUCHES);
      }
    }
  });

  it.each(
    EXAMPLE_LEVELS.filter(({ figure, level }) => (figure.position ?? level.position) === 'sitting'),
  )('has no leg in the seat: $id', ({ figure, level }) => {
    const settled = restingFigure(figure, level);
    const start = settled?.start;
    if (!start?.intent.touches.some(({ surface }) => surface === 'seat')) return;
    // The seat reaches 0.155 of stature ahead of the hips, and is 0.025 thick.
    const front = start.body.spine[0].x + 0.155;
    for (const body of settled?.way ?? [])
      for (const hand of HANDS)
        for (const { x, y } of [body[hand].knee, body[hand].ankle, body[hand].heel])
          expect(x < front - TOUCHES && y < 0.253 - TOUCHES && y > 0.228 + TOUCHES).toBe(false);
  });
});
