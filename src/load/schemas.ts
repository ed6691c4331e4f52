// The JSON Schemas that ship, as a validator and as a map of where sentences stand.
import { readFileSync } from 'node:fs';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import { ENTRY, type ProseAt } from './prose-scanning.ts';

/** The kinds of file that a practice writes. */
export type FileKind = 'practice' | 'exercise' | 'translation' | 'plan' | 'people';

interface Schema {
  readonly $id?: string;
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, Schema>>;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly additionalProperties?: boolean | Schema;
  readonly items?: Schema;
  readonly description?: string;
  readonly required?: readonly string[];
  readonly type?: string | readonly string[];
  readonly title?: string;
  readonly enum?: readonly string[];
  readonly const?: unknown;
  readonly pattern?: string;
  readonly minItems?: number;
  readonly quantity?: string;
  readonly ids?: string;
}

/** What the schema says of a place; `ids` names the list of the practice that its words come from. */
export type Shape = Pick<
  Schema,
  'title' | 'enum' | 'const' | 'pattern' | 'minItems' | 'quantity' | 'ids' | 'required'
> & {
  readonly types: readonly string[];
  /** Words: what is written is what is printed. */
  readonly isProse: boolean;
};

const BASE = 'https://carryover.invalid/schemas/';
const NAMES = ['quantities', 'practice', 'exercise', 'translation', 'plan', 'people'] as const;
const folder = new URL('../../schemas/', import.meta.url);

const byFile = new Map<string, Schema>();
let validator: Ajv2020 | undefined;

function schemaFile(name: string): Schema {
  const known = byFile.get(name);
  if (known) return known;
  const schema = JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as Schema;
  byFile.set(name, schema);
  return schema;
}

/** The compiled validator of one kind of file; every mistake is reported, with the schema beside it. */
export function validatorOf(kind: FileKind): ValidateFunction {
  if (!validator) {
    validator = new Ajv2020({
      strict: true,
      strictRequired: false,
      allowUnionTypes: true,
      allErrors: true,
      verbose: true,
      keywords: ['quantity', 'ids'],
      // Half the time to compile: the schemas are sound (a test says so), and no code is worth polishing for a few hundred files.
      validateSchema: false,
      meta: false,
      code: { optimize: false },
    });
    for (const name of NAMES) validator.addSchema(schemaFile(`${name}.schema.json`));
  }
  const validate = validator.getSchema(`${BASE}${kind}.schema.json`);
  if (!validate) throw new Error(`no schema for ${kind}`);
  return validate;
}

interface Located {
  readonly schema: Schema;
  readonly file: string;
}

function followed({ schema, file }: Located): Located {
  if (!schema.$ref) return { schema, file };
  const [other = '', name = ''] = schema.$ref.split('#/$defs/');
  const from = other === '' ? file : other;
  const target = schemaFile(from).$defs?.[name];
  if (!target) throw new Error(`${file} refers to ${schema.$ref}, which is not there`);
  return followed({ schema: target, file: from });
}

function stepInto({ schema, file }: Located, step: string): Located | null {
  const next =
    step === ENTRY
      ? schema.items
      : Object.hasOwn(schema.properties ?? {}, step)
        ? schema.properties?.[step]
        : schema.additionalProperties;
  return typeof next === 'object' ? { schema: next, file } : null;
}

/** The schema at a path of keys and list entries, as it is referred to there; null where none is. */
function referredTo(kind: FileKind, path: readonly string[]): Located | null {
  const file = `${kind}.schema.json`;
  let at: Located | null = { schema: schemaFile(file), file };
  for (const step of path) {
    at = stepInto(followed(at), step);
    if (!at) return null;
  }
  return at;
}

function locate(kind: FileKind, path: readonly string[]): Located | null {
  const at = referredTo(kind, path);
  return at && followed(at);
}

/** What the schema says of the value at a path; null where nothing belongs. */
export function shapeAt(kind: FileKind, path: readonly string[]): Shape | null {
  const at = referredTo(kind, path);
  if (!at) return null;
  const { schema } = followed(at);
  return {
    ...schema,
    ...(at.schema.ids === undefined ? {} : { ids: at.schema.ids }),
    types: [schema.type ?? []].flat(),
    isProse:
      schema === schemaFile('quantities.schema.json').$defs?.text && at.schema.ids === undefined,
  };
}

/** What is said of the value at a path: at its key, else of its kind. */
export function descriptionAt(kind: FileKind, path: readonly string[]): string {
  const at = referredTo(kind, path);
  return (at && (at.schema.description ?? followed(at).schema.description)) ?? '';
}

/** Where the sentences of a kind of file stand. */
export function proseOf(kind: FileKind): ProseAt {
  const { text, sentences } = schemaFile('quantities.schema.json').$defs ?? {};
  const known = new Map<string, 'text' | 'sentences' | null>();
  return (path) => {
    const key = path.join('\n');
    const before = known.get(key);
    if (before !== undefined) return before;
    const schema = locate(kind, path)?.schema;
    const prose =
      schema === undefined
        ? null
        : schema === text
          ? 'text'
          : schema === sentences
            ? 'sentences'
            : null;
    known.set(key, prose);
    return prose;
  };
}

/** Whether what stands at a path has to, always or in some plans and exercises. */
export function isRequired(kind: FileKind, path: readonly string[]): boolean {
  const isAlways = locate(kind, path.slice(0, -1))?.schema.required?.includes(path.at(-1) ?? '');
  return isAlways || /\bneeded (where|from|for)\b/.test(descriptionAt(kind, path));
}

/** The keys that belong at a path, for "did you mean". */
export function keysAt(kind: FileKind, path: readonly string[]): readonly string[] {
  return Object.keys(locate(kind, path)?.schema.properties ?? {});
}
