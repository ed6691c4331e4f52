// What the schema says against a file, in a practitioner's words, at the key or value concerned.
// Quantities are passed by: the reader explains them better.
import type { ErrorObject } from 'ajv';
import { isMap, isScalar, isSeq, type Node, type YAMLSeq } from 'yaml';
import {
  type Checking,
  keyText,
  rangeOf,
  type Spot,
  STOP_RULES,
  sentenceOf,
  tell,
  tellDependent,
  tellKeyName,
  tellMissing,
  tellSchedule,
  tellUnknownKey,
} from './key-findings.ts';
import { ownForm } from './own-form.ts';
import { ENTRY } from './prose-scanning.ts';
import { valueMistake } from './schema-values.ts';
import { isRequired, keysAt, shapeAt, validatorOf } from './schemas.ts';
import { type IdsOf, NO_IDS, wantedAt } from './wanted-form.ts';
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

/** The reader explains a quantity that is one value; not what is empty, or a list or keys in the place of one, or one in the place of a list. */
function isForReader({ data, keyword, parentSchema }: ErrorObject): boolean {
  if (parentSchema?.quantity === undefined || typeof data === 'object') return false;
  return keyword !== 'type' || parentSchema.type !== 'array';
}

/** An id of a list of the practice is looked up by the reader, which knows the list and says what was meant. */
function isLookedUp({ kind }: YamlFile, { path }: Spot, { keyword }: ErrorObject): boolean {
  return /^(pattern|minimum)$/.test(keyword) && shapeAt(kind, path)?.ids !== undefined;
}

/** Validates a file; what is wrong goes into its findings, and its node among the flagged. `ids` are those of the practice. */
export function checkAgainstSchema(file: YamlFile, ids: IdsOf = NO_IDS): void {
  const validate = validatorOf(file.kind);
  if (validate(plainValue(file.root, file.flagged))) return;
  const errors = (validate.errors ?? []).filter(
    (error) => !error.schemaPath.includes('/oneOf/') && !isForReader(error),
  );
  const unknown = errors.filter(({ keyword }) => keyword === 'additionalProperties');
  // Every place is looked up before any is flagged, since what is flagged is left out when entries are counted.
  const usable = usableOf(file);
  const spots = errors.map((error) => spotAt(file, error.instancePath, usable));
  const checking: Checking = { file, ids, unknown };
  for (const [i, error] of errors.entries()) tellError(checking, spots[i] as Spot, error);
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

function tellError(checking: Checking, spot: Spot, error: ErrorObject): void {
  if (error.propertyName !== undefined)
    return tellKeyName(checking, spot, error.propertyName, error);
  switch (error.keyword) {
    case 'additionalProperties':
      return tellUnknownKey(checking, spot, String(error.params.additionalProperty));
    case 'required':
      return tellMissing(checking, spot, error);
    case 'dependentRequired':
      return tellDependent(checking, spot, error);
    case 'oneOf':
      return tellSchedule(checking, spot, error);
    case 'propertyNames':
      return;
    default:
      if (!isLookedUp(checking.file, spot, error)) tellValue(checking, spot, error);
  }
}

/** What a file of its kind begins with. */
function firstKey({ file, ids }: Checking): string {
  const [key = ''] = keysAt(file.kind, []);
  return wantedAt(file, [key], ids).write.replace(/^for example /, '');
}

function tellValue(checking: Checking, spot: Spot, error: ErrorObject): void {
  const { file, ids } = checking;
  if (file.flagged.has(spot.node)) return;
  file.flagged.add(spot.node);
  const name = spot.path.findLast((step) => step !== ENTRY) ?? 'this file';
  const range = rangeOf(spot.node, spot.key);
  const isEntry = spot.path.at(-1) === ENTRY;
  const isEmpty = error.data === null || (error.keyword === 'minLength' && error.data === '');
  if (isEmpty && isEntry)
    return tell(
      file,
      emptyCheck(name),
      `An entry of "${name}" is empty; fill it or delete its dash.`,
      range,
    );
  const wanted = wantedAt(file, spot.path, ids);
  if (isEmpty) {
    const at = spot.key?.range ? ([spot.key.range[0], spot.key.range[1]] as const) : range;
    const orNot = isRequired(file.kind, spot.path) ? '' : ', or delete it';
    const message = `${sentenceOf(`"${name}" has nothing after it`, wanted)}${orNot}.`;
    return tell(file, emptyCheck(name), message, at, wanted.hints);
  }
  if (error.keyword === 'minItems' || error.keyword === 'minProperties') {
    // Where something stands that was told of already, it only looks empty.
    if ((isSeq(spot.node) || isMap(spot.node)) && spot.node.items.length > 0) return;
    return tell(
      file,
      emptyCheck(name),
      `${sentenceOf(`"${name}" is empty`, wanted)}.`,
      range,
      wanted.hints,
    );
  }
  const own = ownForm({ file, path: spot.path, node: spot.node });
  const written = file.source.text.slice(...range);
  const form = spot.path.length === 0 ? firstKey(checking) : (own ?? wanted.write);
  const { check, message, hints } = valueMistake({ name, error, spot, form, written, own });
  // What there is to choose from helps only where nothing could be made of what stands there.
  tell(file, check, message, range, hints ?? (own === undefined ? wanted.hints : []));
}

function emptyCheck(name: string): 'stop-rule-missing' | 'empty-value' {
  return STOP_RULES.has(name) ? 'stop-rule-missing' : 'empty-value';
}
