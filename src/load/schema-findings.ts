// What the schema says against a file, in a practitioner's words, at the key or value concerned.
// Quantities are passed by: the reader explains them better.
import type { ErrorObject } from 'ajv';
import { isMap, isPair, isScalar, isSeq, type Node, type YAMLSeq } from 'yaml';
import type { CheckName } from '../finding/checks.ts';
import { finding } from '../finding/finding.ts';
import { nearest, wordHints } from './did-you-mean.ts';
import { ENTRY } from './prose-scanning.ts';
import { idFrom, type Spot, valueMistake } from './schema-values.ts';
import { descriptionAt, isRequired, keysAt, validatorOf } from './schemas.ts';
import type { YamlFile } from './yaml-file.ts';

/** The plain value of a tree: source texts, but canonical whole numbers, true, false and nothing. */
function plainValue(node: unknown, flagged: ReadonlySet<unknown>): unknown {
  if (isMap(node)) {
    const keys = Object.create(null) as Record<string, unknown>;
    for (const pair of node.items) {
      if (isScalar(pair.key) && !flagged.has(pair.key) && !flagged.has(pair.value)) {
        keys[keyText(pair.key)] = plainValue(pair.value, flagged);
      }
    }
    return keys;
  }
  if (isSeq(node))
    return node.items.filter((one) => !flagged.has(one)).map((one) => plainValue(one, flagged));
  if (!isScalar(node)) return null;
  if (node.type !== 'PLAIN') return isBlank(String(node.value)) ? '' : String(node.value);
  const text = String(node.source ?? node.value ?? '');
  if (isBlank(text)) return null;
  if (text === 'true' || text === 'false') return text === 'true';
  return /^(?:0|-?[1-9]\d{0,14})$/.test(text) ? Number(text) : text;
}

/** Whether a text has nothing in it that is seen: only spaces, or joiners and marks with nothing to join. */
function isBlank(text: string): boolean {
  return /^[\s\p{Cf}\p{Default_Ignorable_Code_Point}]*$/u.test(text);
}

export function keyText(key: { readonly source?: string; readonly value: unknown }): string {
  return String(key.value);
}

/** The reader explains a quantity that is one value; not what is empty, or a list or keys in the place of one, or one in the place of a list. */
function isForReader({ data, keyword, parentSchema }: ErrorObject): boolean {
  if (parentSchema?.quantity === undefined || typeof data === 'object') return false;
  return keyword !== 'type' || parentSchema.type !== 'array';
}

/** Validates a file; what is wrong goes into its findings, and its node among the flagged. */
export function checkAgainstSchema(file: YamlFile): void {
  const validate = validatorOf(file.kind);
  if (validate(plainValue(file.root, file.flagged))) return;
  const errors = (validate.errors ?? []).filter(
    (error) => !error.schemaPath.includes('/oneOf/') && !isForReader(error),
  );
  const unknown = errors.filter(({ keyword }) => keyword === 'additionalProperties');
  // Every place is looked up before any is flagged, since what is flagged is left out when entries are counted.
  const usable = usableOf(file);
  const spots = errors.map((error) => spotAt(file, error.instancePath, usable));
  for (const [i, error] of errors.entries()) tellError(file, spots[i] as Spot, error, unknown);
}

/** The entries of a list as the schema counts them; counted once, since a long list can have a mistake in every entry. */
function usableOf({ flagged }: YamlFile): (list: YAMLSeq) => readonly unknown[] {
  const known = new Map<YAMLSeq, readonly unknown[]>();
  return (list) => {
    const entries = known.get(list) ?? list.items.filter((one) => !flagged.has(one));
    known.set(list, entries);
    return entries;
  };
}

function spotAt(file: YamlFile, pointer: string, usable: ReturnType<typeof usableOf>): Spot {
  let node: unknown = file.root;
  let key: Node | null = null;
  const path: string[] = [];
  for (const raw of pointer.split('/').slice(1)) {
    const step = raw.replaceAll('~1', '/').replaceAll('~0', '~');
    if (isMap(node)) {
      const pair = node.items.find(
        (one) => isScalar(one.key) && !file.flagged.has(one.key) && keyText(one.key) === step,
      );
      key = isScalar(pair?.key) ? (pair.key as Node) : null;
      node = pair?.value ?? key;
      path.push(step);
    } else if (isSeq(node)) {
      node = usable(node)[Number(step)];
      path.push(ENTRY);
    }
  }
  return { node, key, path };
}

/** Where a finding about a value stands: at it; for what is missing in a map, at the map's start. */
function rangeOf(node: unknown, fallback: Node | null): readonly [number, number] {
  const range = (node as Node | null)?.range ?? fallback?.range;
  return range ? [range[0], range[1]] : [0, 0];
}

function tellError(
  file: YamlFile,
  spot: Spot,
  error: ErrorObject,
  unknown: readonly ErrorObject[],
): void {
  const name = spot.path.findLast((step) => step !== ENTRY) ?? 'this file';
  if (error.propertyName !== undefined) return tellKeyName(file, spot, error.propertyName, error);
  switch (error.keyword) {
    case 'additionalProperties':
      return tellUnknownKey(file, spot, String(error.params.additionalProperty));
    case 'required':
      return tellMissing(file, spot, error, unknown);
    case 'dependentRequired':
      return tellDependent(file, spot, error);
    case 'oneOf':
      return tellSchedule(file, spot, error, unknown);
    case 'propertyNames':
      return;
    default:
      return tellValue(file, spot, name, error);
  }
}

function tell(
  file: YamlFile,
  check: CheckName,
  message: string,
  range: readonly [number, number],
  hints: readonly string[] = [],
): void {
  const place = { source: file.source, start: range[0], end: range[1] };
  file.findings.push(finding({ check, severity: 'error', message, place, hints }));
}

/** What a file of its kind begins with. */
function firstKey(file: YamlFile): string {
  const [key = ''] = keysAt(file.kind, []);
  return writeForm(key, exampleAt(file, [key]));
}

/** A key that the practice names itself, and that cannot be an id. */
function tellKeyName(file: YamlFile, spot: Spot, key: string, error: ErrorObject): void {
  const pair = isMap(spot.node)
    ? spot.node.items.find((one) => isScalar(one.key) && keyText(one.key) === key)
    : undefined;
  if (!isScalar(pair?.key) || file.flagged.has(pair.key)) return;
  file.flagged.add(pair.key);
  const isCode = /A-Z/.test(String(error.parentSchema?.pattern));
  // A code is never a name, so that only one with a number is taken up.
  const code = /\d/.test(key) ? key.replace(/[^A-Za-z0-9]+/g, '-').replace(/^-|-$/g, '') : 'M-0412';
  const form = isCode ? code : idFrom(key) || 'heel-raise';
  const what = isCode ? 'a code; a code has letters' : 'an id; an id has small letters';
  tell(
    file,
    'bad-id',
    `"${key}" cannot be ${what}, digits and hyphens, such as ${form}.`,
    rangeOf(pair.key, null),
  );
}

function tellUnknownKey(file: YamlFile, spot: Spot, key: string): void {
  const pair = isMap(spot.node)
    ? spot.node.items.find((one) => isScalar(one.key) && keyText(one.key) === key)
    : undefined;
  if (!isPair(pair) || !isScalar(pair.key)) return;
  file.flagged.add(pair.key);
  const keys = keysAt(file.kind, spot.path);
  const here = keys.filter((one) => isMap(spot.node) && !spot.node.has(one));
  const inside = keys.find((one) => keysAt(file.kind, [...spot.path, one]).includes(key));
  const hints =
    inside === undefined
      ? wordHints(key, here.length > 0 ? here : keys)
      : [`It belongs inside "${inside}": "${inside}: {${key}: …}".`];
  tell(
    file,
    'unknown-key',
    `"${key}" is not a key that belongs here.`,
    rangeOf(pair.key, null),
    hints,
  );
}

/** One right form of what stands under a key, from the example in its description. */
function exampleAt(file: YamlFile, path: readonly string[]): string | undefined {
  const toKey = path.slice(0, path.findLastIndex((step) => step !== ENTRY) + 1);
  const description = descriptionAt(file.kind, toKey);
  // A sentence is shown whole; of several forms of a quantity the first.
  const example = /Example: (- .+|.+?(?=; |, or |\.?$))/.exec(description)?.[1];
  return /^\d/.test(example ?? '') ? example?.replace(/, .*/, '') : example?.replace(/\.$/, '');
}

/** What to write under a key, with the key; undefined where no example is given of it. */
export function formAt(file: YamlFile, path: readonly string[]): string | undefined {
  const example = exampleAt(file, path);
  const key = path.findLast((step) => step !== ENTRY);
  return example === undefined || key === undefined ? undefined : writeForm(key, example);
}

const STOP_RULES: ReadonlySet<string> = new Set(['stop_if', 'emergency_if']);

function writeForm(key: string, example: string | undefined, isEntry = false): string {
  if (example === undefined) return `"${key}: …"`;
  if (isEntry && example.startsWith('- ')) return `"${example}"`;
  return example.startsWith('- ') ? `"${key}:" and under it "${example}"` : `"${key}: ${example}"`;
}

function tellMissing(
  file: YamlFile,
  spot: Spot,
  error: ErrorObject,
  unknown: readonly ErrorObject[],
): void {
  const key = String(error.params.missingProperty);
  // A key that was only mistyped is told of once, where it stands.
  const near = unknown
    .filter(({ instancePath }) => instancePath === error.instancePath)
    .map(({ params }) => String(params.additionalProperty));
  if (near.some((one) => nearest(one, [key]) !== undefined)) return;
  if (isMap(spot.node) && spot.node.has(key)) return;
  const form = writeForm(key, exampleAt(file, [...spot.path, key]));
  const start = spot.path.length === 0 ? 0 : rangeOf(spot.node, spot.key)[0];
  const range: readonly [number, number] = [start, start];
  if (STOP_RULES.has(key))
    tell(
      file,
      'stop-rule-missing',
      `"${key}" is missing, and no sheet leaves without it; write ${form}.`,
      range,
    );
  else tell(file, 'missing-key', `"${key}" is missing here; write ${form}.`, range);
}

function tellDependent(file: YamlFile, spot: Spot, error: ErrorObject): void {
  const { property, missingProperty } = error.params as {
    property: string;
    missingProperty: string;
  };
  const pair = isMap(spot.node)
    ? spot.node.items.find((one) => isScalar(one.key) && keyText(one.key) === property)
    : undefined;
  const range = rangeOf(pair?.key ?? spot.node, spot.key);
  if (property === 'start_when') {
    tell(
      file,
      'window-missing',
      '"start_when" needs "weeks" beside it, the estimate that the numbers use; write "weeks: 3-6".',
      range,
    );
    return;
  }
  const form = writeForm(missingProperty, exampleAt(file, [...spot.path, missingProperty]));
  tell(
    file,
    'dial-unclear',
    `"${property}" needs "${missingProperty}" beside it; write ${form}.`,
    range,
  );
}

const SCHEDULES = ['days', 'days_a_week', 'every', 'as_needed'];

function tellSchedule(
  file: YamlFile,
  spot: Spot,
  error: ErrorObject,
  unknown: readonly ErrorObject[],
): void {
  const near = unknown
    .filter(({ instancePath }) => instancePath === error.instancePath)
    .map(({ params }) => String(params.additionalProperty));
  if (near.some((one) => nearest(one, SCHEDULES) !== undefined)) return;
  if (!isMap(spot.node)) return;
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
      'This session does not say on which days; write "days: [mon, wed, fri]", "days_a_week: 3", "every: 2 days" or "as_needed: true".',
      [start, start],
    );
  }
}

function tellValue(file: YamlFile, spot: Spot, name: string, error: ErrorObject): void {
  if (file.flagged.has(spot.node)) return;
  file.flagged.add(spot.node);
  const range = rangeOf(spot.node, spot.key);
  const isEntry = spot.path.at(-1) === ENTRY;
  const form =
    spot.path.length === 0 ? firstKey(file) : writeForm(name, exampleAt(file, spot.path), isEntry);
  if (error.data === null || (error.keyword === 'minLength' && error.data === '')) {
    const check = STOP_RULES.has(name) ? 'stop-rule-missing' : 'empty-value';
    const at = spot.key?.range ? ([spot.key.range[0], spot.key.range[1]] as const) : range;
    return tell(
      file,
      check,
      isEntry
        ? `An entry of "${name}" is empty; fill it or delete its dash.`
        : `"${name}" has nothing after it; write ${form}${isRequired(file.kind, spot.path) ? '' : ', or delete it'}.`,
      isEntry ? range : at,
    );
  }
  if (error.keyword === 'minItems' || error.keyword === 'minProperties') {
    // Where something stands that was told of already, it only looks empty.
    if ((isSeq(spot.node) || isMap(spot.node)) && spot.node.items.length > 0) return;
    const check = STOP_RULES.has(name) ? 'stop-rule-missing' : 'empty-value';
    return tell(file, check, `"${name}" is empty; write ${form}.`, range);
  }
  const { check, message, hints } = valueMistake(
    name,
    error,
    spot,
    form,
    file.source.text.slice(...range),
  );
  tell(file, check, message, range, hints);
}
