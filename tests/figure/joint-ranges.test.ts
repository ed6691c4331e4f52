// How far joints go, held against the published columns; and where the two findings begin.
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/build.ts';
import { beyondRange, IMPOSSIBLE_BEYOND, rangeIn } from '../../src/figure/joint-ranges.ts';
import { memoryFolder } from '../../src/load/folder.ts';
import type { AngleName } from '../../src/model/figure.ts';
import { exampleFiles } from '../support/pages-of.ts';

// AAOS: American Academy of Orthopaedic Surgeons 1965, as in Norkin CC, White DJ, Measurement of Joint
// Motion, app. A. VA: US 38 CFR 4.71a, Plates I and II, spine Note 2. Each row: the angle, its sign,
// AAOS, VA; null where a column has none. Foot and spine rows are from memory.
const PUBLISHED: readonly (readonly [AngleName, 1 | -1, number | null, number | null])[] = [
  ['shoulder_flexion', 1, 180, 180],
  ['shoulder_flexion', -1, 60, null],
  ['shoulder_abduction', 1, 180, 180],
  ['shoulder_rotation', -1, 70, 90],
  ['shoulder_rotation', 1, 90, 90],
  ['elbow_flexion', 1, 150, 145],
  ['elbow_flexion', -1, 0, 0],
  ['wrist_flexion', 1, 80, 80],
  ['wrist_flexion', -1, 70, 70],
  ['hip_flexion', 1, 120, 125],
  ['hip_flexion', -1, 30, 30],
  ['hip_abduction', 1, 45, 45],
  ['hip_abduction', -1, 30, 25],
  ['hip_rotation', -1, 45, 40],
  ['hip_rotation', 1, 45, 60],
  ['knee_flexion', 1, 135, 140],
  ['knee_flexion', -1, 10, 0],
  ['ankle_dorsiflexion', 1, 20, 20],
  ['ankle_dorsiflexion', -1, 50, 45],
  ['foot_eversion', -1, 35, null],
  ['foot_eversion', 1, 15, null],
  ['neck_flexion', 1, 45, 45],
  ['neck_flexion', -1, 45, 45],
  ['neck_side_bend', 1, 45, 45],
  ['neck_side_bend', -1, 45, 45],
  ['neck_rotation', 1, 60, 80],
  ['neck_rotation', -1, 60, 80],
  ['trunk_flexion', 1, 80, 90],
  ['trunk_flexion', -1, 25, 30],
  ['trunk_side_bend', 1, 35, 30],
  ['trunk_side_bend', -1, 35, 30],
  ['trunk_rotation', 1, 45, 30],
  ['trunk_rotation', -1, 45, 30],
];

describe('a normal range', () => {
  it.each(PUBLISHED)('of %s (%i) is the larger of %s and %s degrees', (angle, sign, aaos, va) => {
    const { low, high } = rangeIn(angle, {}, null);
    expect(sign > 0 ? high : 0 - low).toBe(Math.max(aaos ?? 0, va ?? 0));
  });

  it('of an arm raised forwards is turned in from where its forearm points up', () => {
    expect(rangeIn('shoulder_rotation', { shoulder_flexion: 90 }, null)).toMatchObject({
      low: -180,
      high: 90,
    });
    expect(rangeIn('shoulder_rotation', { shoulder_flexion: 30 }, null)).toMatchObject({
      low: -120,
    });
    expect(rangeIn('shoulder_rotation', { shoulder_flexion: -30 }, null)).toMatchObject({
      low: -90,
    });
  });

  it('sitting on the heels, knee, hip and ankle fold further than muscles bend them', () => {
    // Mulholland and Wyss 2001, kneeling: knee to 165, hip to 130 degrees; from memory.
    const bent = { knee_flexion: 155 };
    expect(rangeIn('knee_flexion', bent, ['knees', 'hands'])).toMatchObject({ high: 165 });
    expect(rangeIn('hip_flexion', bent, ['knees', 'hands'])).toMatchObject({ high: 130 });
    expect(rangeIn('knee_flexion', bent, ['back'])).toMatchObject({ high: 140 });
    expect(rangeIn('hip_flexion', { knee_flexion: 90 }, ['knees'])).toMatchObject({ high: 125 });
  });

  it('ends at its end', () => {
    const knee = rangeIn('knee_flexion', {}, null);
    expect([140, 141, -10, -12].map((one) => beyondRange(knee, one))).toEqual([0, 1, 0, 2]);
  });
});

/** The checks that a knee at an angle calls for. */
function foundAt(degrees: number): readonly string[] {
  const exercise = `exercise: made
name: Made
purpose: strength
position: side-lying
sides: each
limb: leg
steps:
  - Move
figure: {start: {knee_flexion: ${degrees}}}
levels:
  - level: one
    dose: {reps: 8, move: 3 s}
`;
  const practice = exampleFiles('saltmarsh')['practice.yaml'] ?? '';
  const files = { 'practice.yaml': practice, 'exercises/made.yaml': exercise };
  const { findings } = compile(memoryFolder(files), { plans: [], exercises: ['made'] });
  return findings.map(({ check }) => check);
}

describe('a knee', () => {
  it.each([
    [140, []],
    [141, ['joint-range']],
    [140 + IMPOSSIBLE_BEYOND, ['joint-range']],
    [140 + IMPOSSIBLE_BEYOND + 1, ['joint-impossible']],
    [-10, []],
    [-11, ['joint-range']],
    [-36, ['joint-impossible']],
  ])('at %i degrees is told of as %j', (degrees, checks) => {
    expect(foundAt(degrees)).toEqual(checks);
  });
});
