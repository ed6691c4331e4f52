// The handouts of both example folders, built in a place of their own, on either paper; and those of
// a plan that is gone, as they lie among the outdated ones.
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
import { runIn } from '../support/cases.ts';

export type Paper = 'a4' | 'letter';

export interface BuiltPage {
  /** "saltmarsh M-0412.clinic.html, letter". */
  readonly name: string;
  readonly kind: 'sheet' | 'clinic copy' | 'index' | 'outdated sheet';
  readonly paper: Paper;
  readonly url: string;
  readonly html: string;
}

const EXAMPLES = join(import.meta.dirname, '..', '..', 'examples');

/** Builds every example on these papers; `remove` takes it all away again. */
export function builtExamples(papers: readonly Paper[]): {
  readonly pages: readonly BuiltPage[];
  readonly remove: () => void;
} {
  const root = realpathSync(mkdtempSync(join(tmpdir(), 'carryover-pages-')));
  const pages = papers.flatMap((paper) =>
    readdirSync(EXAMPLES).flatMap((example) => builtPages(root, example, paper)),
  );
  return { pages, remove: () => rmSync(root, { recursive: true, force: true }) };
}

function builtPages(root: string, example: string, paper: Paper): BuiltPage[] {
  const folder = join(root, `${example}-${paper}`);
  const built = join(EXAMPLES, example, 'handouts');
  cpSync(join(EXAMPLES, example), folder, { recursive: true, filter: (path) => path !== built });
  const settings = join(folder, 'practice.yaml');
  const text = readFileSync(settings, 'utf8').replace(/^paper: \w+/m, `paper: ${paper}`);
  if (!text.includes(`\npaper: ${paper}`)) throw new Error(`${example} does not set its paper`);
  writeFileSync(settings, text);
  build(folder);
  const later = `${folder}-later`;
  cpSync(folder, later, { recursive: true });
  rmSync(join(later, 'plans'), { recursive: true });
  build(later);
  // The stamp is the same on all: one is enough to look at.
  const outdated = pagesIn(later, join('handouts', 'outdated')).find(
    ({ url }) => !url.endsWith('.clinic.html'),
  );
  return [...pagesIn(folder, 'handouts'), ...(outdated ? [outdated] : [])].map((page) => ({
    ...page,
    name: `${example} ${page.name}, ${paper}`,
    paper,
  }));
}

function build(folder: string): void {
  const { status, out, err } = runIn(folder, ['build']);
  if (status !== 0) throw new Error(`${folder} does not build:\n${out}${err}`);
}

function pagesIn(folder: string, under: string): Omit<BuiltPage, 'paper'>[] {
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
