// The file reference in README.md, made from the schemas, so that the two cannot differ.
// `npm run types` writes it; schemas.test.ts fails where it is stale.
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = new URL('../../', import.meta.url);
const README = new URL('README.md', root);
const BEGIN = '<!-- reference: made from schemas/ by `npm run types` -->';
const END = '<!-- end of reference -->';

/** The tables of the reference, in the order of reading: file, definition of it, heading. */
const TABLES = [
  ['practice', null, '`practice.yaml`'],
  ['practice', 'TimingFile', '`timing:` in practice.yaml'],
  ['practice', 'WordsFile', '`words:` in practice.yaml'],
  ['practice', 'PracticeTextsFile', 'a language under `in_language:` in practice.yaml'],
  ['exercise', null, '`exercises/<id>.yaml`'],
  [
    'exercise',
    'LevelFile',
    'a level (and every key of the exercise but `exercise` and `levels`, to override it)',
  ],
  ['exercise', 'FigureFile', '`figure:`'],
  ['exercise', 'PoseFile', '`start:` and `end:` of a figure (angles in degrees)'],
  ['exercise', 'PropFile', 'a thing in `props:` of a figure, with the place where it is'],
  ['translation', null, '`exercises/<id>.<language>.yaml`'],
  ['quantities', 'DoseFile', '`dose:`'],
  ['quantities', 'BoundsFile', '`bounds:`'],
  ['quantities', 'MoveOnWhenFile', '`move_on_when:`'],
  ['plan', null, '`plans/<code>.yaml`'],
  ['plan', 'LimitsFile', '`limits:`'],
  ['plan', 'EasyWeeksFile', '`easy_weeks:`'],
  ['plan', 'SessionFile', 'a session'],
  ['plan', 'PartFile', 'a part'],
  ['plan', 'ItemFile', 'an item'],
  ['plan', 'SideOverridesFile', '`sides:` of an item'],
  ['plan', 'RepsDialFile', 'a dial of `climb:` (reps, sets, hold, time, rest, pause, effort)'],
  ['plan', 'LoadDialFile', 'the dial `load:`'],
  ['plan', 'AcceptFile', 'an entry of `accept:`'],
  ['people', 'PersonFile', "an entry of `people.yaml`, under the person's code"],
];

function schemaOf(name) {
  return JSON.parse(readFileSync(new URL(`schemas/${name}.schema.json`, root), 'utf8'));
}

function titled(schema, title) {
  if (title === null) return schema;
  const found = [];
  const walk = (one) => {
    if (one === null || typeof one !== 'object') return;
    if (one.title === title) found.push(one);
    for (const inner of Object.values(one)) walk(inner);
  };
  walk(schema);
  if (!found[0]) throw new Error(`no definition is titled ${title}`);
  return found[0];
}

function described(property, schema) {
  if (property.description || !property.$ref) return property.description ?? '';
  const [file, name] = property.$ref.split('#/$defs/');
  const from = file === '' ? schema : schemaOf(file.replace('.schema.json', ''));
  return from.$defs[name].description ?? '';
}

/** The example of a description in code, and nothing that a table would break at. */
function cell(description) {
  return description
    .replaceAll('|', '\\|')
    .replace(/Example: (.+?)\.?$/, (_, example) => `Example: \`${example.replaceAll('`', "'")}\``);
}

export function referenceText() {
  const tables = TABLES.map(([name, title, heading]) => {
    const schema = schemaOf(name);
    const { properties, required = [] } = titled(schema, title);
    const shared = title === 'LevelFile' ? new Set(Object.keys(schema.properties)) : new Set();
    const rows = Object.entries(properties)
      .filter(([key]) => !shared.has(key) || key === 'name')
      .map(
        ([key, property]) =>
          `| \`${key}\`${required.includes(key) ? ' (needed)' : ''} | ${cell(described(property, schema))} |`,
      );
    return [`**${heading}**`, '', '| key | what it says |', '| --- | --- |', ...rows].join('\n');
  });
  return tables.join('\n\n');
}

/** The README with its reference made anew. */
export function refreshed(readme) {
  const [before, rest] = readme.split(BEGIN);
  const [, after] = rest.split(END);
  return `${before}${BEGIN}\n\n${referenceText()}\n\n${END}${after}`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(README, refreshed(readFileSync(README, 'utf8')));
}
