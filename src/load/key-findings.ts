// What the schema says of keys: one that does not belong, one that is missing, two that say the same,
// one that cannot be an id. What is wrong with a value is told in schema-values.ts.
import type { ErrorObject } from 'ajv';
import { isMap, isPair, isScalar, type Node, type Pair } from 'yaml';
import type { CheckName } from '../finding/checks.ts';
import { finding } from '../finding/finding.ts';
import { nearest, wordHints } from './did-you-mean.ts';
import { entryKeyOf } from './entry-keys.ts';
import { idFrom } from './own-form.ts';
import { ENTRY } from './prose-scanning.ts';
import { keysAt } from './schemas.ts';
import { type IdsOf, type Wanted, wantedAt } from './wanted-form.ts';
import type { YamlFile } from './yaml-file.ts';

/** A place of a file that the validator speaks of. */
export interface Spot {
  readonly node: unknown;
  /** The key's own node, for a value of a map. */
  readonly key: Node | null;
  /** Keys as written, and `*` for entries. */
  readonly path: readonly string[];
}

/** A file under the validator, and what its mistakes are told against. */
export interface Checking {
  readonly file: YamlFile;
  readonly ids: IdsOf;
  /** The keys that belong nowhere: one that was only mistyped is not told of as missing, too. */
  readonly unknown: readonly ErrorObject[];
}

export const STOP_RULES: ReadonlySet<string> = new Set(['stop_if', 'emergency_if']);

export function keyText(key: { readonly source?: string; readonly value: unknown }): string {
  return String(key.value);
}

/** Where a finding about a value stands: at it; for what is missing in a map, at the map's start. */
export function rangeOf(node: unknown, fallback: Node | null): readonly [number, number] {
  const range = (node as Node | null)?.range ?? fallback?.range;
  return range ? [range[0], range[1]] : [0, 0];
}

export function tell(
  file: YamlFile,
  check: CheckName,
  message: string,
  range: readonly [number, number],
  hints: readonly string[] = [],
): void {
  const place = { source: file.source, start: range[0], end: range[1] };
  file.findings.push(finding({ check, severity: 'error', message, place, hints }));
}

/** What is wrong, what it would say, and what to write; the full stop is the caller's. */
export function sentenceOf(wrong: string, { meaning, write }: Wanted): string {
  return `${wrong}${meaning === null ? '' : ` (${meaning})`}; write ${write}`;
}

function pairAt({ node }: Spot, key: string): Pair | undefined {
  return isMap(node)
    ? (node.items.find((one) => isScalar(one.key) && keyText(one.key) === key) as Pair | undefined)
    : undefined;
}

/** A key that the practice names itself, and that cannot be an id. */
export function tellKeyName({ file }: Checking, spot: Spot, key: string, error: ErrorObject): void {
  const pair = pairAt(spot, key);
  if (!isScalar(pair?.key) || file.flagged.has(pair.key)) return;
  file.flagged.add(pair.key);
  const isCode = /A-Z/.test(String(error.parentSchema?.pattern));
  // A code is never a name, so that only one with a number is taken up.
  const own = isCode
    ? /\d/.test(key) && key.replace(/[^A-Za-z0-9]+/g, '-').replace(/^-|-$/g, '')
    : idFrom(key);
  const form = own ? `: write ${own}` : isCode ? ', such as M-0412' : ', such as heel-raise';
  const what = isCode ? 'a code; a code has letters' : 'an id; an id has small letters';
  tell(
    file,
    'bad-id',
    `"${key}" cannot be ${what}, digits and hyphens${form}.`,
    rangeOf(pair.key, null),
  );
}

export function tellUnknownKey({ file }: Checking, spot: Spot, key: string): void {
  const pair = pairAt(spot, key);
  if (!isPair(pair) || !isScalar(pair.key)) return;
  file.flagged.add(pair.key);
  tell(
    file,
    'unknown-key',
    `"${key}" is not a key that belongs here.`,
    rangeOf(pair.key, null),
    unknownKeyHints(file, spot, key, pair),
  );
}

function unknownKeyHints(file: YamlFile, spot: Spot, key: string, pair: Pair): readonly string[] {
  const keys = keysAt(file.kind, spot.path);
  const value = isScalar(pair.value) ? String(pair.value.source ?? pair.value.value) : '';
  if (/^sides?$/.test(key) && keys.includes('only') && /^(left|right|affected|other)$/.test(value))
    return [`For one side only write "only: ${value}".`];
  const inside = keys.find((one) => keysAt(file.kind, [...spot.path, one]).includes(key));
  if (inside !== undefined) {
    const shown = value === '' || value.includes('\n') ? '…' : value;
    return [`It belongs inside "${inside}": "${inside}: {${key}: ${shown}}".`];
  }
  const here = keys.filter((one) => isMap(spot.node) && !spot.node.has(one));
  const list = listWith(file, spot.path, key);
  if (list !== undefined && nearest(key, here) === undefined) {
    const entry = entryKeyOf(list);
    const first = entry ? `"- ${entry.key}: …"` : 'a dash';
    const noun = entry?.noun ?? 'entry';
    return [
      `It belongs inside a ${noun}: "${list}:", under it ${first}, and under that "${key}:".`,
    ];
  }
  return wordHints(key, here.length > 0 ? here : keys);
}

/** The list of groups at a place whose entries take a key. */
function listWith({ kind }: YamlFile, path: readonly string[], key: string): string | undefined {
  return keysAt(kind, path).find(
    (one) => one !== 'from_week' && keysAt(kind, [...path, one, ENTRY]).includes(key),
  );
}

/** The keys that belong nowhere, in the group that an error speaks of. */
function unknownBeside({ unknown }: Checking, { instancePath }: ErrorObject): readonly string[] {
  return unknown
    .filter((one) => one.instancePath === instancePath)
    .map(({ params }) => String(params.additionalProperty));
}

export function tellMissing(checking: Checking, spot: Spot, error: ErrorObject): void {
  const { file, ids } = checking;
  const key = String(error.params.missingProperty);
  // A key that was only mistyped, or whose content stands one step too high, is told of once, where it stands.
  const inEntries = keysAt(file.kind, [...spot.path, key, ENTRY]);
  const isTold = unknownBeside(checking, error).some(
    (one) => nearest(one, [key]) !== undefined || inEntries.includes(one),
  );
  if (isTold || (isMap(spot.node) && spot.node.has(key))) return;
  const wanted = wantedAt(file, [...spot.path, key], ids);
  const start = spot.path.length === 0 ? 0 : rangeOf(spot.node, spot.key)[0];
  const isStopRule = STOP_RULES.has(key);
  const wrong = `"${key}" is missing${isStopRule ? ', and no sheet leaves without it' : ' here'}`;
  tell(
    file,
    isStopRule ? 'stop-rule-missing' : 'missing-key',
    `${sentenceOf(wrong, wanted)}.`,
    [start, start],
    wanted.hints,
  );
}

export function tellDependent({ file, ids }: Checking, spot: Spot, error: ErrorObject): void {
  const { property, missingProperty } = error.params as {
    property: string;
    missingProperty: string;
  };
  const range = rangeOf(pairAt(spot, property)?.key ?? spot.node, spot.key);
  if (property === 'start_when') {
    tell(
      file,
      'window-missing',
      '"start_when" needs "weeks" beside it, the estimate that the numbers use; write for example "weeks: 3-6".',
      range,
    );
    return;
  }
  const wanted = wantedAt(file, [...spot.path, missingProperty], ids);
  const wrong = `"${property}" needs "${missingProperty}" beside it`;
  tell(file, 'dial-unclear', `${sentenceOf(wrong, wanted)}.`, range, wanted.hints);
}

const SCHEDULES = ['days', 'days_a_week', 'every', 'as_needed'];

export function tellSchedule(checking: Checking, spot: Spot, error: ErrorObject): void {
  const { file } = checking;
  const isMistyped = unknownBeside(checking, error).some(
    (one) => nearest(one, SCHEDULES) !== undefined,
  );
  if (isMistyped || !isMap(spot.node)) return;
  const pairs = spot.node.items.filter(
    (one) => isScalar(one.key) && SCHEDULES.includes(keyText(one.key)),
  );
  const second = pairs[1];
  if (second && isScalar(second.key)) {
    const names = pairs.map((one) => `"${keyText(one.key as { value: unknown })}"`).join(' and ');
    const both = pairs.length > 2 ? 'all' : 'both';
    tell(
      file,
      'schedule-unclear',
      `${names} ${both} say on which days; keep one of them.`,
      rangeOf(second.key, null),
    );
  } else if (pairs.length === 0) {
    const start = rangeOf(spot.node, spot.key)[0];
    tell(
      file,
      'schedule-unclear',
      'This session does not say on which days; write one of these: "days: daily", days by name such as "days: [mon, wed, fri]", how many a week such as "days_a_week: 3", every so many such as "every: 2 days", or "as_needed: true".',
      [start, start],
    );
  }
}
