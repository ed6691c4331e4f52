// What is said of a figure to a person who cannot see it: the position, the joints that move, from
// where to where, in words without a sign. Each row is written out by hand.
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/build.ts';
import { loadWording } from '../../src/handouts/wording.ts';
import { memoryFolder } from '../../src/load/folder.ts';
import type { Level } from '../../src/model/exercise.ts';
import { figureView } from '../../src/render/sheet/figure-view.ts';
import { exampleFiles } from '../support/pages-of.ts';
import { EXAMPLE_LEVELS, type MadeFigure, madeFigure } from './made-figure.ts';

const folder = memoryFolder(exampleFiles('saltmarsh'));
const words = loadWording(folder, compile(folder, { plans: [], exercises: [] })).value.get('en');

interface Row {
  readonly says: string;
  readonly made: MadeFigure;
  readonly level?: Partial<Level>;
  readonly sides?: readonly ('left' | 'right')[];
}

function told({ made, level = {}, sides = [] }: Row): string {
  const like = EXAMPLE_LEVELS[0]?.level;
  if (!like || !words) throw new Error('no example');
  const one: Level = {
    ...like,
    position: 'standing',
    sides: 'both',
    limb: 'leg',
    purposes: ['strength'],
    exerciseDose: null,
    levelDose: null,
    ...level,
    figure: madeFigure(made),
  };
  const view = figureView(words, one, 'Made', sides);
  return `${view?.alt} | ${view?.caption ?? ''}`;
}

const EACH = { sides: 'each' as const };

const ROWS: readonly Row[] = [
  {
    says: 'Made. Stand. Both knees, bending: from 0 to 60 degrees. | ',
    made: {
      start: { angles: { knee_flexion: 0, hip_flexion: 0 } },
      end: { angles: { knee_flexion: 60, hip_flexion: 0 } },
    },
  },
  {
    says: 'Made. Sit. Left knee, straightening: from 90 to 5 degrees bent. | Shown with the left leg only.',
    made: { start: { angles: { knee_flexion: 90 } }, end: { angles: { knee_flexion: 5 } } },
    level: { ...EACH, position: 'sitting' },
    sides: ['left'],
  },
  {
    says: 'Made. Sit. Right ankle, pointing the foot down: from 2 degrees up to 35 degrees. | Shown with the right leg. Then with the left leg.',
    made: {
      start: { angles: { knee_flexion: 0, hip_flexion: 80, ankle_dorsiflexion: 2 } },
      end: { angles: { ankle_dorsiflexion: -35 } },
    },
    level: { ...EACH, position: 'sitting' },
    sides: ['right', 'left'],
  },
  {
    says: 'Made. Sit. Both ankles, bringing the foot up: from 30 to 10 degrees down. | ',
    made: {
      start: { angles: { knee_flexion: 0, hip_flexion: 80, ankle_dorsiflexion: -30 } },
      end: { angles: { ankle_dorsiflexion: -10 } },
    },
    level: { position: 'sitting' },
  },
  {
    says: 'Made. Stand. Left hip, the thigh going back: from 0 to 1 degree. | Shown with the left leg only.',
    made: {
      start: { angles: { hip_flexion: 0, knee_flexion: 0 } },
      end: { angles: { hip_flexion: -1 } },
    },
    level: EACH,
    sides: ['left'],
  },
  {
    // What the other limb does is told of the other side.
    says: 'Made. Lie on your back. Left hip, bending: from 0 to 40 degrees. Right hip, bending: from 0 to 20 degrees. | Shown with the left leg only.',
    made: {
      start: { angles: { hip_flexion: 0 }, other: { angles: { hip_flexion: 0 } } },
      end: { angles: { hip_flexion: 40 }, other: { angles: { hip_flexion: 20 } } },
    },
    level: { ...EACH, position: 'supine' },
    sides: ['left'],
  },
  {
    says: 'Made. Sit. Neck, turning to the left: from 20 degrees to the right to 30 degrees. | Shown with the left leg only.',
    made: { start: { angles: { neck_rotation: -20 } }, end: { angles: { neck_rotation: 30 } } },
    level: { ...EACH, position: 'sitting' },
    sides: ['left'],
  },
  {
    says: 'Made. Sit. Neck, turning to the left: from 0 to 30 degrees. | ',
    made: { start: { angles: { neck_rotation: 0 } }, end: { angles: { neck_rotation: -30 } } },
    level: { sides: 'middle', position: 'sitting' },
  },
  {
    says: 'Made. Stand. Whole body, leaning forwards: from 0 to 15 degrees. | ',
    made: { start: { hand: 'wall', lean: 0 }, end: { lean: 15 } },
  },
  {
    // Nothing that moves is given: what follows most is told.
    says: 'Made. Stand. | Hold.',
    made: { start: { angles: { hip_flexion: 0 } } },
    level: { purposes: ['balance'] },
  },
];

describe('the words of a figure', () => {
  it.each(ROWS)('say: $says', (row) => {
    expect(told(row)).toBe(row.says);
  });

  it.each(EXAMPLE_LEVELS)('have a position, joints and no sign: $id', ({ level, figure }) => {
    if (!words) throw new Error('no words');
    const view = figureView(words, level, 'Made', level.sides === 'each' ? ['left', 'right'] : []);
    expect(view?.alt).toMatch(/^Made\. [A-Z][^.]+\./);
    expect(view?.alt).not.toMatch(/-\d|[{}]|undefined/);
    if (figure.end) expect(view?.alt).toMatch(/: from \d+ .*degrees?/);
    expect(view?.caption === null).toBe(
      level.sides !== 'each' && !/Hold/.test(view?.caption ?? ''),
    );
  });
});
