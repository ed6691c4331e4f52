// Whatever can be told of two versions of a sheet has its words.
import { expect, it } from 'vitest';
import { planIn } from '../../src/handouts/version.ts';
import { shippedWords } from '../../src/handouts/wording.ts';
import { exampleFiles, versionOf } from './versions.ts';

it('every section of a sheet can be named', () => {
  const version = versionOf(exampleFiles(), 'M-0412');
  const [one] = version.compiled.plans;
  const sheet = one && planIn(version, one)?.version.sheet;
  const sections = Object.keys(sheet ?? {}).filter((key) => !['plan', 'direction'].includes(key));
  expect(sections.length).toBeGreaterThan(10);
  const words = shippedWords();
  expect(sections.filter((section) => !words.has(`changes.sections.${section}`))).toEqual([]);
});
