// The templates and the words packs: the shipped ones, each replaced by a file of the same name in
// the practice's templates/.
import { isAlias, isMap, isScalar, parseDocument, visit } from 'yaml';
import { type Finding, finding, type Outcome } from '../finding/finding.ts';
import { fileOnly, type SourceText } from '../finding/place.ts';
import { wordHints } from './did-you-mean.ts';
import type { Folder } from './folder.ts';
import { readShipped, shippedFiles } from './shipped-files.ts';
import { readText } from './text-file.ts';

const FOLDER = 'templates';
const WORDS = 'words/';
const PACK = /^words\/[A-Za-z]{2,8}(?:-[A-Za-z0-9]{1,8})*\.yaml$/;
/** A file browser leaves such files in every folder that it shows. */
export const LEFT_BY_THE_SYSTEM = /(?:^|\/)\./;

export interface TemplateFiles {
  /** Name below templates/ to text. */
  readonly texts: ReadonlyMap<string, string>;
  /** Those that are the practice's own. */
  readonly own: ReadonlyMap<string, SourceText>;
}

/** Every template and style; a file of the practice that replaces nothing is told of. */
export function loadTemplates(folder: Folder): Outcome<TemplateFiles> {
  const findings: Finding[] = [];
  const shipped = shippedFiles(FOLDER).filter((name) => !name.startsWith(WORDS));
  const texts = new Map(shipped.map((name) => [name, readShipped(`${FOLDER}/${name}`)]));
  const own = new Map<string, SourceText>();
  for (const { path, kind } of folder.list(FOLDER)) {
    const name = path.slice(FOLDER.length + 1);
    if (kind === 'link') {
      findings.push(...readText(folder, path).findings);
      continue;
    }
    if (LEFT_BY_THE_SYSTEM.test(name) || PACK.test(name)) continue;
    if (name.startsWith(WORDS)) {
      const message = `"${name}" is no words pack; a pack is called by its language: "words/en.yaml".`;
      findings.push(
        finding({ check: 'template-broken', severity: 'error', place: fileOnly(path), message }),
      );
      continue;
    }
    if (!texts.has(name)) {
      findings.push(
        finding({
          check: 'template-broken',
          severity: 'error',
          place: fileOnly(path),
          message: `"${name}" replaces no shipped template; a template of the practice has the name of a shipped one.`,
          hints: wordHints(name, shipped),
        }),
      );
      continue;
    }
    const text = readText(folder, path);
    findings.push(...text.findings);
    if (!text.value) continue;
    if (/^\s*$/.test(text.value.text)) {
      const message = 'This template has nothing in it; delete it to use the shipped one.';
      findings.push(
        finding({ check: 'template-broken', severity: 'error', place: fileOnly(path), message }),
      );
      continue;
    }
    texts.set(name, text.value.text);
    own.set(name, text.value);
  }
  return { value: { texts, own }, findings };
}

/** A words pack as nested texts, and the file of the practice that it comes from. */
export interface PackFile {
  readonly pack: unknown;
  readonly source: SourceText | null;
}

/** The shipped English pack: it says which sentences a pack has. */
export function shippedEnglish(): unknown {
  return shippedPack(`${WORDS}en.yaml`);
}

const shippedPacks = new Map<string, unknown>();

/** A shipped pack is taken apart once: that is a good part of a small command's time. */
function shippedPack(name: string): unknown {
  const known = shippedPacks.get(name);
  if (known !== undefined) return known;
  const pack = plainPack(
    parseDocument(readShipped(`${FOLDER}/${name}`), { schema: 'failsafe' }).contents,
  );
  shippedPacks.set(name, pack);
  return pack;
}

/** The pack of a language: the practice's own, else the shipped one; null where there is none. */
export function loadPack(folder: Folder, language: string): Outcome<PackFile | null> {
  const name = `${WORDS}${language}.yaml`;
  const path = `${FOLDER}/${name}`;
  const entry = folder.entry(path);
  // A link is told of among the templates; a pack stands in for it, from which nothing is made.
  if (entry?.kind === 'link')
    return { value: { pack: shippedEnglish(), source: null }, findings: [] };
  if (!entry) {
    const isShipped = shippedFiles(FOLDER).includes(name);
    if (!isShipped) return { value: null, findings: [] };
    return { value: { pack: shippedPack(name), source: null }, findings: [] };
  }
  const text = readText(folder, path);
  if (!text.value) return { value: null, findings: text.findings };
  const document = parseDocument(text.value.text, {
    schema: 'failsafe',
    prettyErrors: false,
    logLevel: 'silent',
    uniqueKeys: true,
  });
  const source = text.value;
  const broken: Finding[] = document.errors.slice(0, 1).map(({ pos }) =>
    finding({
      check: 'template-broken',
      severity: 'error',
      place: { source, start: pos[0], end: pos[1] },
      message:
        'This line of the words pack cannot be taken apart into keys and texts; put each text in double quotes.',
    }),
  );
  visit(document, {
    Alias: (_, alias) => {
      const [start, end] = alias.range ?? [0, 0, 0];
      broken.push(
        finding({
          check: 'yaml-feature',
          severity: 'error',
          message: 'References with * are not used here; write the text out in quotes.',
          place: { source, start, end },
        }),
      );
    },
  });
  if (broken.length > 0) return { value: null, findings: broken };
  return { value: { pack: plainPack(document.contents), source }, findings: [] };
}

/** The languages that have a pack. */
export function packLanguages(folder: Folder): readonly string[] {
  const own = folder
    .list(`${FOLDER}/words`)
    .map(({ path }) => path.slice(`${FOLDER}/${WORDS}`.length));
  const shipped = shippedFiles(`${FOLDER}/words`);
  return [...new Set([...shipped, ...own])].map((name) => name.replace(/\.yaml$/, '')).sort();
}

/** Where a key like `dose.round` stands in a pack's file. */
export function packPlace(
  source: SourceText,
  key: string,
): { readonly source: SourceText; readonly start: number; readonly end: number } {
  const document = parseDocument(source.text, { schema: 'failsafe', logLevel: 'silent' });
  let at: unknown = document.contents;
  let range: readonly number[] = [0, 0];
  for (const step of key.split('.')) {
    if (!isMap(at)) break;
    const pair = at.items.find((one) => isScalar(one.key) && String(one.key.value) === step);
    if (!pair) break;
    range = (isScalar(pair.key) && pair.key.range) || range;
    at = pair.value;
  }
  return { source, start: range[0] ?? 0, end: range[1] ?? 0 };
}

function plainPack(node: unknown): unknown {
  if (isAlias(node)) return null;
  if (isMap(node)) {
    const keys = Object.create(null) as Record<string, unknown>;
    for (const pair of node.items)
      if (isScalar(pair.key)) keys[String(pair.key.value)] = plainPack(pair.value);
    return keys;
  }
  return isScalar(node) ? String(node.value) : null;
}
