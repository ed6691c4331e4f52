// The handouts of a plan for a practice folder in memory, as a build would write them.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Compiled, compile } from '../../src/build.ts';
import { positionOf } from '../../src/finding/place.ts';
import { NO_LAST_TIMES } from '../../src/handouts/last-time.ts';
import { pagesOf, pathsOf } from '../../src/handouts/pages.ts';
import { loadWording } from '../../src/handouts/wording.ts';
import { memoryFolder } from '../../src/load/folder.ts';
import { loadTemplates, type TemplateFiles } from '../../src/load/templates.ts';

export type Files = Readonly<Record<string, string | Uint8Array>>;

export interface MadePages {
  readonly sheetNumber: string;
  readonly html: string;
  readonly markdown: string;
  readonly clinic: string;
}

/** The shipped templates, read once: a folder without templates of its own has these. */
let shipped: TemplateFiles | undefined;

/** The pages of a plan; throws with what was found where it has errors. */
export function pagesIn(files: Files, plan: string): MadePages {
  return pagesOfCompiled(files, compile(memoryFolder(files), { plans: [plan], exercises: [] }));
}

/** The same for a folder that is compiled already. */
function pagesOfCompiled(files: Files, compiled: Compiled): MadePages {
  const folder = memoryFolder(files);
  const wording = loadWording(folder, compiled);
  const found = [...compiled.findings, ...wording.findings];
  const errors = found.filter(({ severity }) => severity === 'error');
  const [one] = compiled.plans;
  if (errors.length > 0 || !one) {
    const told = errors.map(
      ({ place, message }) => `${place.source.file}:${positionOf(place).line} ${message}`,
    );
    throw new Error(`no pages:\n${told.join('\n')}`);
  }
  const hasOwn = folder.list('templates').some(({ path }) => !path.includes('/words/'));
  shipped ??= loadTemplates(memoryFolder({})).value;
  const templates = hasOwn ? loadTemplates(folder).value : shipped;
  const outcome = pagesOf(one, {
    compiled,
    templates,
    wording: wording.value,
    lastTimes: NO_LAST_TIMES,
  });
  if (!outcome.ok) throw new Error(outcome.finding.message);
  const { files: texts, sheetNumber } = outcome.pages;
  const [html, markdown, clinic] = pathsOf(one.id).map((path) => texts.get(path) ?? '');
  return { sheetNumber, html: html ?? '', markdown: markdown ?? '', clinic: clinic ?? '' };
}

/** What an example folder may hold beside its own files, once somebody has built it. */
const BUILT = /^(?:handouts|\.\w+)\/|^(?:people\.yaml|handovers\.csv)$/;

/** The files of an example folder, by path; what was built in it is left out. */
export function exampleFiles(name: string): Record<string, string | Uint8Array> {
  const root = join(import.meta.dirname, '..', '..', 'examples', name);
  const entries = readdirSync(root, { recursive: true, withFileTypes: true });
  const files: Record<string, string | Uint8Array> = {};
  for (const entry of entries.filter((one) => one.isFile())) {
    const path = join(entry.parentPath, entry.name);
    const key = path.slice(root.length + 1).replaceAll('\\', '/');
    if (BUILT.test(key)) continue;
    const bytes = readFileSync(path);
    files[key] = /\.(ya?ml|csv)$/.test(entry.name) ? bytes.toString('utf8') : bytes;
  }
  return files;
}

/** The codes of the plans in such files. */
export function planCodes(files: Files): string[] {
  return Object.keys(files).flatMap(
    (path) => /^plans\/(?:.*\/)?([^/]+)\.yaml$/.exec(path)?.[1] ?? [],
  );
}
