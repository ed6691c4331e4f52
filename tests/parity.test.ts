// The two forms of a sheet say the same: Markdown, read as a reader of Markdown does, has the texts of
// the HTML in the same order, as the same kind of thing.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SEED } from './simulator/laws.ts';
import { cases, EVERYTHING } from './simulator/plans.ts';
import type { Case } from './simulator/written.ts';
import { filesOf } from './simulator/yaml.ts';
import { type Block, htmlBlocks, isDrawn, markdownBlocks } from './support/page-blocks.ts';
import { exampleFiles, type MadePages, pagesIn, planCodes } from './support/pages-of.ts';

const EXAMPLES = ['saltmarsh', 'first-folder'].map((name) => [name, exampleFiles(name)] as const);

/** The blocks of the HTML, after they were found to be those of the Markdown too. */
function sameBlocks({ html, markdown }: MadePages): readonly Block[] {
  const blocks = htmlBlocks(html);
  expect(markdownBlocks(markdown)).toEqual(blocks);
  return blocks;
}

/** Headings of exercises: "7. Walk: short and flat". */
const EXERCISE = /^\d+\. /;
const DATE =
  /\b\d{1,2} (January|February|March|April|May|June|July|August|September|October|November|December|de noviembre|de diciembre)\b/g;

/** Of what is in bold, what opens a list, whom to call, from when on, and that the words are unreviewed. */
const NO_DOSE = /:$|^Call us|^From |^Llámenos|^Desde |esta traducción|^This translation/;

/** What a sheet can't do without, counted in its texts. */
function counted(blocks: readonly Block[]) {
  const of = (kind: RegExp, text = /./) =>
    blocks.filter((block) => kind.test(block.kind) && text.test(block.text)).length;
  const words = blocks.map(({ text }) => text).join('\n');
  return {
    exercises: of(/^h3$/, EXERCISE),
    doses: blocks.filter(({ kind, text }) => kind === 'strong' && !NO_DOSE.test(text)).length,
    steps: of(/^step/),
    pictures: of(/^picture$/),
    dates: [...words.matchAll(DATE)].length,
    numbers: [...words.matchAll(/\d+/g)].length,
  };
}

describe.each(EXAMPLES)('%s in Markdown', (_, files) => {
  it.each(planCodes(files))('says what %s says in HTML', (plan) => {
    const pages = pagesIn(files, plan);
    const all = counted(sameBlocks(pages));
    expect(counted(markdownBlocks(pages.markdown))).toEqual(all);
    // As many exercises as are numbered, each with its dose, and something of all the rest.
    const numbers = [...pages.markdown.matchAll(/^### (\d+)\. /gm)].map(([, n]) => Number(n));
    expect(numbers).toEqual(numbers.map((_, at) => at + 1));
    expect(all.exercises).toBe(numbers.length);
    expect(all.doses).toBe(all.exercises);
    expect(all.exercises).toBeGreaterThan(1);
    expect(all.steps).toBeGreaterThan(all.exercises);
    expect(all.dates).toBeGreaterThan(10);
  });

  it.each(planCodes(files))('leads to the pictures of %s', (plan) => {
    const { html, markdown } = pagesIn(files, plan);
    const inside = [...html.matchAll(/src="data:[^;]*;base64(?:,|&#x2C;)([^"]*)"/g)]
      .map(([, data = '']) => data.replaceAll('&#x3D;', '='))
      .filter((data) => !isDrawn(data));
    const beside = [...markdown.matchAll(/^!\[.*\]\(\.\.\/(.*)\)$/gm)].map(([, path = '']) => {
      const bytes = files[decodeURIComponent(path)];
      if (bytes === undefined) throw new Error(`there is no ${path}`);
      return Buffer.from(bytes as Uint8Array).toString('base64');
    });
    expect(beside).toEqual(inside);
  });
});

/** What an exercise, a practice and a plan may have or lack beside their numbers. */
const PROSE = {
  exercise: {
    setup: ['Stand behind a chair'],
    feel: 'The back of your legs',
    avoid: ['Do not lean', 'Do not hold your breath'],
    easier: 'Do it sitting',
    harder: 'Close your eyes',
  },
  practice: { get_in_touch: ['The pain keeps you awake'] },
  plan: {
    goals: ['Walk to the shop'],
    precautions: ['Wear firm shoes'],
    stop_if_also: ['The knee swells'],
    next_visit: '2026-12-21',
  },
};

const some = (prose: Record<string, unknown>) =>
  fc.subarray(Object.entries(prose)).map((kept) => Object.fromEntries(kept));

/** Random plans, with one sentence and without another. */
const plans = fc
  .tuple(
    cases(EVERYTHING),
    fc.array(some(PROSE.exercise), { minLength: 3, maxLength: 3 }),
    some(PROSE.practice),
    some(PROSE.plan),
  )
  .map(
    ([all, prose, practice, plan]): Case => ({
      practice: { ...all.practice, ...practice },
      exercises: all.exercises.map((one, at) => ({ ...one, ...prose[at] })),
      plan: { ...all.plan, ...plan },
    }),
  );

it('holds for random plans', () => {
  let exercises = 0;
  const says = fc.property(plans, (all) => {
    exercises += counted(sameBlocks(pagesIn(filesOf(all), all.plan.plan))).exercises;
  });
  fc.assert(says, { numRuns: 100, seed: SEED });
  expect(exercises).toBeGreaterThan(200);
}, 120_000);
