// What must hold whatever stands in the files: nothing throws, every finding has a place in its file
// and is a sentence in a practitioner's words, none is told twice, and a plan without errors has
// numbers the right way round and prints.
import { compile, errorsOf, FolderUnusable } from '../../src/build.ts';
import type { Finding } from '../../src/finding/finding.ts';
import { positionOf } from '../../src/finding/place.ts';
import { NO_LAST_TIMES } from '../../src/handouts/last-time.ts';
import { type Printing, pagesOf } from '../../src/handouts/pages.ts';
import { loadWording } from '../../src/handouts/wording.ts';
import { memoryFolder } from '../../src/load/folder.ts';
import { loadTemplates } from '../../src/load/templates.ts';
import { numbersJson } from '../../src/render/json/numbers-json.ts';
import { findingsText } from '../../src/render/terminal/findings-text.ts';
import type { Files } from './example-files.ts';

// A key is named as it was written, in quotes; outside quotes these are a programmer's words.
const PROGRAMMER =
  /\b(schema|propert(y|ies)|enum|null|undefined|NaN|Infinity|mapping|scalar|token|regex)\b|must match/;

const same = (text: string) => text;
const SCREEN = {
  width: 100,
  isTerminal: false,
  paint: { error: same, warning: same, note: same, path: same, dim: same, bold: same },
};

const templates = loadTemplates(memoryFolder({})).value;

export interface Held {
  /** What does not hold; empty where all does. */
  readonly broken: readonly string[];
  readonly findings: readonly Finding[];
  /** How many plans had no errors, and printed. */
  readonly printed: number;
}

/** Compiles the files and says which of the invariants do not hold. */
export function held(files: Files): Held {
  try {
    return heldOf(files);
  } catch (thrown) {
    // A folder of a newer edition is refused as a whole.
    if (thrown instanceof FolderUnusable) return { broken: [], findings: [], printed: 0 };
    return {
      broken: [`threw ${thrown instanceof Error ? thrown.stack : thrown}`],
      findings: [],
      printed: 0,
    };
  }
}

function heldOf(files: Files): Held {
  const folder = memoryFolder(files);
  const compiled = compile(folder, null);
  const wording = loadWording(folder, compiled);
  const findings = [...compiled.findings, ...wording.findings];
  const broken = [
    ...findings.flatMap((one) => findingFaults(one, files)),
    ...toldTwice(findings),
    ...printFaults(
      { compiled, templates, wording: wording.value, lastTimes: NO_LAST_TIMES },
      findings,
    ),
  ];
  if (findingsText(findings, SCREEN) === '' && findings.length > 0)
    broken.push('findings, but no text');
  const printed = compiled.plans.filter(
    (one) => one.numbers && errorsOf(one, findings).length === 0,
  ).length;
  return { broken, findings, printed };
}

function findingFaults({ check, message, place, hints, related }: Finding, files: Files): string[] {
  const faults: string[] = [];
  const where = `${check} "${message}"`;
  for (const { source, start, end } of [place, ...related.map((one) => one.place)]) {
    const isInside = 0 <= start && start <= end && end <= source.text.length;
    if (!isInside) faults.push(`${where}: place ${start}-${end} of ${source.text.length}`);
    if (!Object.hasOwn(files, source.file)) faults.push(`${where}: no file ${source.file}`);
  }
  // A hint may list the keys of a place as they are.
  const shown = hints.map((hint) => hint.replace(/^Known here: .*(?=\.$)/, 'Known here'));
  for (const sentence of [message, ...shown, ...related.map((one) => one.message)]) {
    if (!/[.?!…]$/.test(sentence)) faults.push(`${check}: no sentence: ${sentence}`);
    // What is put in the place of a trapped sentence is never shown for what was written.
    if (/x{6}/.test(sentence) && !Object.values(files).some((text) => text.includes('xxxxxx'))) {
      faults.push(`${check}: a stand-in: ${sentence}`);
    }
    if (PROGRAMMER.test(sentence.replace(/"[^"]*"/g, '""')) || /\[object/.test(sentence)) {
      faults.push(`${check}: a programmer's word: ${sentence}`);
    }
  }
  return faults;
}

function toldTwice(findings: readonly Finding[]): string[] {
  const told = new Set<string>();
  return findings.flatMap(({ check, message, place }) => {
    const { line, column } = positionOf(place);
    const one = `${place.source.file}:${line}:${column} ${check} ${message}`;
    if (told.has(one)) return [`told twice: ${one}`];
    told.add(one);
    return [];
  });
}

function printFaults(printing: Printing, findings: readonly Finding[]): string[] {
  const { compiled } = printing;
  return compiled.plans.flatMap((one) => {
    if (one.plan?.closed || errorsOf(one, findings).length > 0) return [];
    if (!one.numbers) return [`plan ${one.id} has no errors and no numbers`];
    const outcome = pagesOf(one, printing);
    if (!outcome.ok) return [`plan ${one.id} does not print: ${outcome.finding.message}`];
    const slips = [...outcome.pages.files].flatMap(([path, text]) =>
      (text.match(/\b(undefined|NaN|Infinity)\b|\[object/g) ?? []).map(
        (slip) => `${path} prints ${slip}`,
      ),
    );
    return [...slips, ...upsideDown(numbersJson(one.numbers, compiled.practice.timing.breath))];
  });
}

/** Ranges whose low end is above their high end, and numbers that are none or below zero. */
function upsideDown(tree: unknown, place = 'numbers'): string[] {
  if (typeof tree === 'number') {
    const isChange = /\.change\./.test(place);
    return Number.isFinite(tree) && (isChange || tree >= 0) ? [] : [`${place}: ${tree}`];
  }
  if (typeof tree !== 'object' || tree === null) return [];
  const inside = Object.entries(tree).flatMap(([key, value]) =>
    upsideDown(value, `${place}.${key}`),
  );
  if (!Array.isArray(tree) || tree.length !== 2) return inside;
  const [low, high] = tree as readonly unknown[];
  const isRange = typeof low === 'number' && typeof high === 'number';
  return isRange && low > high ? [...inside, `${place}: ${low} to ${high}`] : inside;
}
