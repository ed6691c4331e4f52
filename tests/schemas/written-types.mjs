// The TypeScript types of the files as written, made from the schemas, so that both have one source.
// `npm run types` writes them to src/load/written.ts; schemas.test.ts fails where they differ.
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { compile } from 'json-schema-to-typescript';

const root = new URL('../../', import.meta.url);
const FILES = ['practice', 'exercise', 'translation', 'plan', 'people'];
const SHARED = 'quantities';
// What a type cannot say; the validator and the reader hold to it.
const UNSAID = new Set([
  '$schema',
  '$id',
  '$defs',
  'quantity',
  'ids',
  'pattern',
  'minimum',
  'maximum',
  'minItems',
  'maxItems',
  'minLength',
  'minProperties',
  'maxProperties',
  'uniqueItems',
  'oneOf',
  'dependentRequired',
  'propertyNames',
  'description',
]);

function schemaOf(name) {
  return JSON.parse(readFileSync(new URL(`schemas/${name}.schema.json`, root), 'utf8'));
}

/** The types as TypeScript text: one interface for each titled definition. */
export async function writtenTypes() {
  const schemas = Object.fromEntries(
    [...FILES, SHARED].map((name) => [`${name}.schema.json`, schemaOf(name)]),
  );
  const definitions = {};
  function flat(schema, file, isMap = false) {
    if (Array.isArray(schema)) return schema.map((one) => flat(one, file));
    if (schema === null || typeof schema !== 'object') return schema;
    if (!isMap && schema.$ref) {
      const [other, name] = schema.$ref.split('#/$defs/');
      const from = other || file;
      const target = schemas[from].$defs[name];
      if (!target.title) return flat(target, from);
      if (!definitions[target.title]) {
        definitions[target.title] = {};
        definitions[target.title] = flat(target, from);
      }
      return { $ref: `#/$defs/${target.title}` };
    }
    const said = Object.entries(schema).filter(([key]) => isMap || !UNSAID.has(key));
    return Object.fromEntries(
      said.map(([key, value]) => [key, flat(value, file, !isMap && key === 'properties')]),
    );
  }
  const properties = Object.fromEntries(
    FILES.map((name) => [name, flat(schemas[`${name}.schema.json`], `${name}.schema.json`)]),
  );
  const whole = {
    title: 'Files',
    type: 'object',
    properties,
    required: FILES,
    additionalProperties: false,
    $defs: definitions,
  };
  return compile(whole, 'Files', {
    bannerComment:
      '// Made from schemas/ by `npm run types`: what the files look like as written. Do not edit.',
    additionalProperties: false,
    unreachableDefinitions: false,
    style: { singleQuote: true, printWidth: 100 },
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(new URL('src/load/written.ts', root), await writtenTypes());
}
