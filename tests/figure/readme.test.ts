// The figure that the README shows is one that can be written: it is drawn, and nothing is found in it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { compile } from '../../src/build.ts';
import { restingFigure } from '../../src/figure/figure.ts';
import { memoryFolder } from '../../src/load/folder.ts';
import { exampleFiles } from '../support/pages-of.ts';

const readme = readFileSync(join(import.meta.dirname, '..', '..', 'README.md'), 'utf8');
const section = /\n## Figures\n([\s\S]*?)\n## /.exec(readme)?.[1] ?? '';

function found(figure: string) {
  const files = {
    'practice.yaml': exampleFiles('saltmarsh')['practice.yaml'] ?? '',
    'exercises/made.yaml': `exercise: made
name: Made
purpose: strength
position: standing
sides: both
steps:
  - Move
${figure}
levels:
  - level: one
    dose: {reps: 8, move: 3 s}
`,
  };
  const { library, findings } = compile(memoryFolder(files), { plans: [], exercises: ['made'] });
  return { level: library.load('made')?.exercise?.levels[0], findings };
}

it('shows a figure that is drawn', () => {
  const figure = /```yaml\n([\s\S]*?)```/.exec(section)?.[1] ?? '';
  expect(figure).toMatch(/^figure:/);
  const { level, findings } = found(figure);
  expect(findings).toEqual([]);
  const settled = level?.figure ? restingFigure(level.figure, level) : null;
  // Up on the toes: the heels leave the floor.
  expect(settled?.end?.body.right.heel.y).toBeGreaterThan(0.03);
});

it('shows keys that are read', () => {
  const shown = [...section.matchAll(/`((?:props|view|tilt|show): [^`]+)`/g)].map(([, one]) => one);
  expect(shown.length).toBeGreaterThanOrEqual(4);
  const { findings } = found(
    `figure:\n${[...new Set(shown)]
      .slice(0, 4)
      .map((one) => `  ${one}`)
      .join('\n')}`,
  );
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
});
