// Where a value stands in a file is where it is read again: every place of a tree gives back its source.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse, type Scalar, visit } from 'yaml';
import type { FileKind } from '../../src/load/schemas.ts';
import { parseYaml } from '../../src/load/yaml-file.ts';
import { EXAMPLES, type ExampleName, exampleFiles, type Files } from '../support/example-files.ts';
import { differences, mutated, mutations } from '../support/mutations.ts';

function kindOf(path: string): FileKind {
  return path.startsWith('plans/')
    ? 'plan'
    : path.startsWith('exercises/')
      ? 'exercise'
      : 'practice';
}

/** The scalars whose place does not hold what they say, and how many there are in all. */
function misplaced(path: string, text: string): { readonly wrong: string[]; readonly all: number } {
  const { root, findings, isWhole } = parseYaml({ file: path, text }, kindOf(path));
  // Where something was told of, stand-ins may be in the place of what was written.
  if (!root || !isWhole || findings.length > 0) return { wrong: [], all: 0 };
  const wrong: string[] = [];
  let all = 0;
  visit(root, {
    Scalar: (_, node) => {
      all += 1;
      const [start, end] = node.range ?? [0, 0, 0];
      const written = text.slice(start, end);
      if (reread(node, written) !== node.value)
        wrong.push(`${path}:${start} ${JSON.stringify(written)} for ${JSON.stringify(node.value)}`);
    },
  });
  return { wrong, all };
}

/** What stands at a scalar's place says by itself. A block needs a key before it to be one. */
function reread(node: Scalar, written: string): unknown {
  if (written === '') return '';
  if (node.type === 'BLOCK_LITERAL' || node.type === 'BLOCK_FOLDED')
    return parse(`a: ${written}`, { schema: 'failsafe' }).a;
  return parse(`- ${written}`, { schema: 'failsafe' })[0];
}

const names = Object.keys(EXAMPLES) as ExampleName[];

describe('a place', () => {
  it.each(names)('holds what is read from it, in every file of %s', (name) => {
    for (const [path, text] of yamlFiles(name)) {
      const { wrong, all } = misplaced(path, text);
      expect(wrong).toEqual([]);
      expect([path, all > 10]).toEqual([path, true]);
    }
  });

  it('holds it after slips that are no mistakes', () => {
    const before: Files = Object.fromEntries(yamlFiles('contract'));
    fc.assert(
      fc.property(fc.array(mutations, { minLength: 1, maxLength: 2 }), (some) => {
        const after = some.reduce(mutated, before);
        const wrong = Object.entries(after).flatMap(([path, text]) => misplaced(path, text).wrong);
        if (wrong.length > 0) throw new Error([...wrong, differences(before, after)].join('\n'));
      }),
      { numRuns: 300, seed: 20261005 },
    );
  }, 120_000);
});

function yamlFiles(name: ExampleName): readonly (readonly [string, string])[] {
  return Object.entries(exampleFiles(name)).filter(([path]) => path.endsWith('.yaml'));
}
