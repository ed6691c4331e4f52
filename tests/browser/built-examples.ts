// The handouts of the example folders, built in a place of their own: on either paper, in large print, in
// every language; and those of a plan that is gone, as they lie among the outdated ones.
import {
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { freshFolder, runIn } from '../support/cases.ts';

export type Paper = 'a4' | 'letter';

/** How pages are built: `language` and `print` are set over what the examples say, in every file. */
export interface Look {
  readonly paper: Paper;
  readonly print?: 'large';
  readonly language?: string;
}

export interface BuiltPage extends Look {
  /** "saltmarsh M-0412.clinic.html, letter". */
  readonly name: string;
  readonly kind: 'sheet' | 'clinic copy' | 'index' | 'outdated sheet';
  readonly url: string;
  readonly html: string;
}

const ROOT = join(import.meta.dirname, '..', '..');
const EXAMPLES = join(ROOT, 'examples');

/** The languages that words packs are shipped for, but English, which the examples are in. */
export const TRANSLATED = readdirSync(join(ROOT, 'templates', 'words'))
  .map((name) => name.replace('.yaml', ''))
  .filter((language) => language !== 'en');

/** Builds every example, and a folder of what is hard on paper, so; `remove` takes it all away again. */
export function builtExamples(looks: readonly Look[]): {
  readonly pages: readonly BuiltPage[];
  readonly remove: () => void;
} {
  const root = realpathSync(mkdtempSync(join(tmpdir(), 'carryover-pages-')));
  const edges = freshFolder(join(import.meta.dirname, 'edges'));
  const sources = new Map([
    ...readdirSync(EXAMPLES).map((name) => [name, join(EXAMPLES, name)] as const),
    ['edges', edges],
    ['arabic', join(ROOT, 'tests', 'languages', 'arabic')],
  ]);
  const pages = looks.flatMap((look) =>
    [...sources]
      // Its sheet has a language of its own.
      .filter(([name]) => name !== 'arabic' || look.language === undefined)
      .flatMap(([name, source]) => builtPages(root, name, source, look)),
  );
  const remove = () => {
    for (const one of [root, edges]) rmSync(one, { recursive: true, force: true });
  };
  return { pages, remove };
}

function builtPages(root: string, example: string, source: string, look: Look): BuiltPage[] {
  const said = [look.paper, look.print, look.language].filter((one) => one !== undefined);
  const folder = join(root, `${example}-${said.join('-')}`);
  const built = join(source, 'handouts');
  cpSync(source, folder, { recursive: true, filter: (path) => path !== built });
  const settings = join(folder, 'practice.yaml');
  setIn(settings, /^paper: \w+/m, `paper: ${look.paper}`);
  if (look.language) setIn(settings, /^language: [\w-]+/m, `language: ${look.language}`);
  for (const [at, plan] of plansIn(folder).entries()) {
    if (!isLookedAt(at, look)) rmSync(plan);
    else if (look.print) setIn(plan, /^(?=affected:)/m, 'print: large\n');
  }
  build(folder);
  // Large print is of the sheet alone; of the other pages in another language one is enough.
  const isWanted = ({ kind }: Pick<BuiltPage, 'kind'>) =>
    kind === 'sheet' || !(look.print || (look.language && kind !== 'index'));
  return [...pagesIn(folder, 'handouts').filter(isWanted), ...outdatedPage(folder, look)].map(
    (page) => ({ ...page, ...look, name: `${example} ${page.name}, ${said.join(', ')}` }),
  );
}

/** Large print takes turns with the paper, and of another language two plans show the words. */
function isLookedAt(plan: number, { paper, print, language }: Look): boolean {
  if (language) return plan < 2;
  return !print || plan === 0 || (plan % 2 === 0) === (paper === 'a4');
}

function outdatedPage(folder: string, { paper, print, language }: Look) {
  if (paper !== 'a4' || print || language) return [];
  const later = `${folder}-later`;
  cpSync(folder, later, { recursive: true });
  rmSync(join(later, 'plans'), { recursive: true });
  build(later);
  // The stamp is the same on all: one is enough to look at.
  const sheet = pagesIn(later, join('handouts', 'outdated')).find(
    ({ url }) => !url.endsWith('.clinic.html'),
  );
  return sheet ? [sheet] : [];
}

function plansIn(folder: string): string[] {
  const names = readdirSync(join(folder, 'plans'), { recursive: true }) as string[];
  return names
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => join(folder, 'plans', name));
}

function setIn(path: string, from: RegExp, to: string): void {
  const text = readFileSync(path, 'utf8');
  if (!from.test(text)) throw new Error(`${path} has no ${from}`);
  writeFileSync(path, text.replace(from, to));
}

function build(folder: string): void {
  const { status, out, err } = runIn(folder, ['build']);
  if (status !== 0) throw new Error(`${folder} does not build:\n${out}${err}`);
}

function pagesIn(folder: string, under: string): Omit<BuiltPage, keyof Look>[] {
  const names = readdirSync(join(folder, under)).filter((name) => name.endsWith('.html'));
  return names.map((name) => {
    const path = join(folder, under, name);
    const isOutdated = under.endsWith('outdated');
    return {
      name: isOutdated ? `outdated ${name}` : name,
      kind: isOutdated ? 'outdated sheet' : kindOf(name),
      url: pathToFileURL(path).href,
      html: readFileSync(path, 'utf8'),
    };
  });
}

function kindOf(name: string): BuiltPage['kind'] {
  if (name === 'index.html') return 'index';
  return name.endsWith('.clinic.html') ? 'clinic copy' : 'sheet';
}
