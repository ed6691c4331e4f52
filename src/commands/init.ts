// `carryover init`: a practice folder that builds at once. It never writes over a file.
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { readShipped, shippedFiles } from '../load/shipped-files.ts';
import { type CommandResult, type Session, UsageError } from './session.ts';

const FIRST_FOLDER = 'examples/first-folder';
const SCHEMAS = '.schemas';

/** The starting files, by path in the new folder. */
function startingFiles(): ReadonlyMap<string, string> {
  const files = new Map<string, string>();
  for (const name of shippedFiles(FIRST_FOLDER)) {
    files.set(name.replace(/^dot-/, '.'), readShipped(`${FIRST_FOLDER}/${name}`));
  }
  // Editors with a YAML language server complete and check the files by these.
  for (const name of shippedFiles('schemas').filter((one) => one !== 'output.schema.json')) {
    files.set(`${SCHEMAS}/${name}`, readShipped(`schemas/${name}`));
  }
  files.set('.vscode/settings.json', `${JSON.stringify(editorSettings(), null, 2)}\n`);
  return files;
}

function editorSettings(): object {
  const schema = (name: string) => `./${SCHEMAS}/${name}.schema.json`;
  return {
    'yaml.schemas': {
      [schema('practice')]: 'practice.yaml',
      [schema('people')]: 'people.yaml',
      [schema('exercise')]: 'exercises/**/*.yaml',
      [schema('plan')]: 'plans/**/*.yaml',
    },
  };
}

export function init({ outside }: Session, where: string | undefined): CommandResult {
  const root = resolve(outside.cwd, where ?? '.');
  const written: string[] = [];
  const kept: string[] = [];
  for (const [path, text] of startingFiles()) {
    const target = join(root, path);
    if (existsSync(target)) {
      kept.push(path);
      continue;
    }
    try {
      mkdirSync(dirname(target), { recursive: true });
      writeFileSync(target, text, { flag: 'wx' });
    } catch (cause) {
      throw new UsageError(`${join(where ?? '.', path)} cannot be written (${cause instanceof Error && 'code' in cause ? cause.code : cause})`);
    }
    written.push(path);
  }
  const folder = relative(outside.cwd, root) || '.';
  const go = folder === '.' ? '' : `cd ${folder} && `;
  const lines = [
    written.length > 0 ? `A practice folder stands in ${folder}:` : `Everything is there already in ${folder}; nothing was written.`,
    ...written.filter((path) => !path.startsWith('.')).map((path) => `  ${path}`),
    ...(kept.length > 0 ? [`Left as they were: ${kept.join(', ')}`] : []),
    `Next: ${go}carryover build, then open handouts/index.html.`,
  ];
  return { status: 0, findings: [], data: { folder, written }, out: `${lines.join('\n')}\n`, log: '' };
}
