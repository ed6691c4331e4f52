// What a person holds on to is in the picture at the side where the hand is; a typed contact is made or
// told of; and the arrow is at the part that the figure names.
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/build.ts';
import { figureSvg, restingFigure } from '../../src/figure/figure.ts';
import { memoryFolder } from '../../src/load/folder.ts';
import type { ArrowPart } from '../../src/model/figure.ts';
import { exampleFiles } from '../support/pages-of.ts';
import { type MadeFigure, madeFigure } from './made-figure.ts';
import { leanOf } from './measured-body.ts';
import { middleOf, spotsOf } from './svg-spots.ts';

type Level = Parameters<typeof restingFigure>[1];
const STANDING: Level = { position: 'standing', sides: 'each' };

function rested(made: MadeFigure, level = STANDING) {
  const settled = restingFigure(madeFigure(made), level);
  if (!settled) throw new Error('not drawn');
  return settled;
}

function drawn(made: MadeFigure, level = STANDING): string {
  const settled = rested(made, level);
  const words = { title: 'Any', description: 'Any.' };
  const figure = madeFigure(made);
  return figureSvg({
    figure,
    settled,
    sides: level.sides,
    isMirrored: false,
    isHeld: true,
    ...words,
  });
}

const worktop = (at: 'side' | 'other-side') => ({ name: 'worktop', at: [at] }) as const;

describe('what is held at the side', () => {
  // Heights as drawn: a worktop and a chair's back of 90 cm, a seat of 43 cm, on a body of 170 cm.
  it.each([
    ['side', 'right', 1],
    ['other-side', 'left', -1],
  ] as const)('is a worktop at the %s', (at, hand, out) => {
    const pose = { hand: 'worktop' } as const;
    const start = at === 'side' ? pose : { other: pose };
    const { start: one } = rested({ props: [worktop(at)], start });
    expect(one.shortfalls).toEqual([]);
    expect(one.body[hand].wrist.z * out).toBeGreaterThan(0.14);
    expect(one.body[hand].wrist.y * 1.7).toBeCloseTo(0.9 + 0.024, 1);
    // The body stays upright, and the other hand hangs.
    expect(Math.abs(leanOf(one.body))).toBeLessThan(3);
    expect(one.body[hand === 'right' ? 'left' : 'right'].wrist.y).toBeLessThan(0.51);
  });

  it.each([
    ['back', 'side', 1],
    ['back', 'other-side', -1],
    ['front', 'side', -1],
    ['front', 'other-side', 1],
  ] as const)('is seen from the %s at the %s', (view, at, way) => {
    const pose = { hand: 'worktop' } as const;
    const start = at === 'side' ? pose : { other: pose };
    const svg = drawn({ view, props: [worktop(at)], start });
    expect(Math.sign(middleOf(svg, 'q').x - middleOf(svg, 't').x)).toBe(way);
  });

  it('is behind the body at the far side, and only lines at the near one', () => {
    const far = drawn({ props: [worktop('other-side')], start: { other: { hand: 'worktop' } } });
    expect(far.indexOf('class="q"')).toBeLessThan(far.indexOf('class="t"'));
    const near = drawn({ props: [worktop('side')], start: { hand: 'worktop' } });
    expect(near).not.toMatch(/class="[pq]"/);
    expect(near.indexOf('class="l"')).toBeGreaterThan(near.indexOf('class="t"'));
    expect(near).toMatch(/\.l\{fill:none/);
  });

  it('goes along with a person who walks', () => {
    const legs = (hip: number) => ({ angles: { hip_flexion: hip }, foot: 'floor' as const });
    const { start, end } = rested(
      {
        props: [worktop('other-side')],
        start: { ...legs(-15), other: { ...legs(20), hand: 'worktop' } },
        end: { ...legs(20), other: legs(-15) },
      },
      { position: 'walking', sides: 'each' },
    );
    expect([...start.shortfalls, ...(end?.shortfalls ?? [])]).toEqual([]);
    expect(Math.abs(leanOf(end?.body ?? start.body))).toBeLessThan(15);
  });

  it('is a chair, by its back or by its seat', () => {
    const props = [{ name: 'chair', at: ['other-side'] }] as const;
    const kneeling: Level = { position: 'half-kneeling', sides: 'each' };
    const bySeat = rested({ props, start: { other: { hand: 'chair' } } }, kneeling).start;
    expect(bySeat.shortfalls).toEqual([]);
    expect(bySeat.body.left.wrist.y * 1.7).toBeCloseTo(0.43 + 0.024, 1);
    const byBack = rested({ props, start: { other: { hand: 'worktop' } } }, kneeling).start;
    expect(byBack.shortfalls).toEqual([]);
    expect(byBack.body.left.wrist.y * 1.7).toBeCloseTo(0.9 + 0.024, 1);
  });

  it('is a wall that nothing goes through', () => {
    const props = [{ name: 'wall', at: ['side'] }] as const;
    const { start, scene } = rested({ props, start: { hand: 'wall' } });
    expect(start.shortfalls).toEqual([]);
    expect(scene['wall-right']).toBeGreaterThan(0.129);
    expect(scene['wall-ahead']).toBeNull();
    const angles = {
      shoulder_flexion: 0,
      shoulder_abduction: 0,
      elbow_flexion: 90,
      shoulder_rotation: -40,
    };
    // With the hand turned in, the wall would be where the arm is.
    expect(rested({ props, start: { hand: 'wall', angles } }).start.shortfalls).toContainEqual(
      expect.objectContaining({ on: 'wall-right', part: 'forearm' }),
    );
  });

  it('is a rail that goes up as the stairs do', () => {
    const { start, end } = rested({
      start: {
        foot: 'step',
        angles: { hip_flexion: 60, knee_flexion: 70 },
        lean: 10,
        other: { hand: 'rail' },
      },
      end: {
        angles: { hip_flexion: 0, knee_flexion: 0 },
        lean: 0,
        other: { foot: 'free', angles: { hip_flexion: 0 } },
      },
    });
    expect([...start.shortfalls, ...(end?.shortfalls ?? [])]).toEqual([]);
    const [a, b] = [start.body.left.wrist, end?.body.left.wrist ?? start.body.left.wrist];
    expect(b.y - a.y).toBeCloseTo(((b.x - a.x) * 17) / 28, 2);
  });
});

const MADE = (position: string, figure: string) => `exercise: made
name: Made
purpose: strength
position: ${position}
sides: each
limb: leg
steps:
  - Move
figure: ${figure}
levels:
  - level: one
    dose: {reps: 8, move: 3 s}
`;

function told(position: string, figure: string): readonly string[] {
  const files = {
    'practice.yaml': exampleFiles('saltmarsh')['practice.yaml'] ?? '',
    'exercises/made.yaml': MADE(position, figure),
  };
  return compile(memoryFolder(files), { plans: [], exercises: ['made'] }).findings.map(
    ({ check, message }) => `${check}: ${message}`,
  );
}

describe('a contact that is typed', () => {
  it('is kept by legs that change places', () => {
    const legs = (hip: number) => ({ angles: { hip_flexion: hip }, foot: 'floor' as const });
    const { end } = rested(
      { start: { ...legs(-15), other: legs(22) }, end: { ...legs(22), other: legs(-15) } },
      { position: 'walking', sides: 'middle' },
    );
    expect(end?.shortfalls).toEqual([]);
    expect(end?.body.spine[0].y).toBeGreaterThan(0.45);
    expect(Math.abs(leanOf(end?.body as never))).toBeLessThan(15);
  });

  it('is told of by a body that can only fall', () => {
    const stiff = (lean: number) =>
      `{start: {lean: ${lean}, hip_flexion: 0, knee_flexion: 0, other: {hip_flexion: 0, knee_flexion: 0}}}`;
    expect(told('standing', stiff(25))).toEqual([
      expect.stringMatching(
        /^pose-unreached: .* the trunk misses its place over the feet by \d\d cm/,
      ),
    ]);
    expect(told('standing', stiff(3))).toEqual([]);
  });

  it.each(['kneeling', 'half-kneeling'])('is kept by a bent leg in %s', (position) => {
    const { start } = rested(
      { start: { angles: { hip_flexion: -5, knee_flexion: 80 } } },
      { position, sides: 'each' },
    );
    expect(start.shortfalls).toEqual([]);
    expect(start.body.right.knee.y).toBeCloseTo(0.031, 2);
    // With a place for the foot it is the knee that is lifted.
    const lifted = rested(
      { start: { foot: 'floor', angles: { hip_flexion: 88, knee_flexion: 90 } } },
      { position: 'kneeling', sides: 'each' },
    );
    expect(lifted.start.body.right.knee.y).toBeGreaterThan(0.2);
  });

  it.each([
    [
      '{props: [{worktop: other-side}], start: {hand: worktop}}',
      /the other side, and this hand is not/,
    ],
    [
      '{props: [{worktop: side}], start: {other: {hand: worktop}}}',
      /the worked side, and this hand is not/,
    ],
    ['{props: [{bed: side}]}', /A bed has no place beside the body/],
    ['{props: [stairs]}', /No foot is on these stairs/],
    ['{props: [rail]}', /No hand is on this rail/],
    ['{arrow: hand, start: {shoulder_flexion: 20}}', /has no arrow for the hand to follow/],
    ['{props: [door-frame]}', /No hand is on this door frame/],
  ])('has its thing: %s', (figure, message) => {
    expect(told('standing', figure)).toEqual([expect.stringMatching(message)]);
  });

  it.each([
    '{props: [{worktop: other-side}], start: {other: {hand: worktop}}}',
    '{props: [{worktop: other-side}]}',
    '{props: [{wall: side}]}',
    '{props: [stairs], start: {foot: step, hip_flexion: 60, knee_flexion: 70, other: {hand: rail}}}',
    '{start: {hand: door-frame}}',
  ])('is all that is needed: %s', (figure) => {
    expect(told('standing', figure)).toEqual([]);
  });
});

describe('the arrow', () => {
  const squat: MadeFigure = {
    start: { hand: 'other-shoulder' },
    end: { angles: { hip_flexion: 70, knee_flexion: 70 } },
  };
  const tipOf = (arrow: ArrowPart | null, made: MadeFigure) => {
    const svg = drawn({ ...made, arrow }, { position: 'standing', sides: 'both' });
    return spotsOf(svg, 'i')[0] ?? { x: Number.NaN, y: Number.NaN };
  };

  it('is at the part that is named', () => {
    const { body } = rested(squat, { position: 'standing', sides: 'both' }).end ?? {};
    if (!body) throw new Error('no end');
    // Drawn in thousandths of stature, downwards.
    for (const [part, at] of [
      ['seat', body.spine[0]],
      ['knee', body.right.knee],
    ] as const) {
      const tip = tipOf(part, squat);
      expect(Math.hypot(tip.x / 1000 - at.x, -tip.y / 1000 - at.y), part).toBeLessThan(0.25);
    }
    expect(tipOf('head', squat).y).toBeLessThan(tipOf('seat', squat).y);
    expect(tipOf('seat', squat).y).toBeLessThan(tipOf('knee', squat).y);
  });

  it('can be that of the other limb', () => {
    const made: MadeFigure = {
      view: 'front',
      end: { angles: { shoulder_abduction: 60 }, other: { angles: { shoulder_abduction: 60 } } },
    };
    expect(tipOf('hand', made).x).toBeLessThan(0);
    expect(tipOf('other-hand', made).x).toBeGreaterThan(0);
  });
});
