// `carryover init`: a practice folder that builds at once. It never writes over a file.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { compile } from '../build.ts';
import { EDITOR_SCHEMAS, editorSchemas } from '../load/editor-schemas.ts';
import { diskFolder, type Folder } from '../load/folder.ts';
import { filesById } from '../load/library.ts';
import { readShipped, shippedFiles } from '../load/shipped-files.ts';
import { idsOf } from './editor-ids.ts';
import { gitWords, type OnOff } from './git-words.ts';
import { type CommandResult, openFolder, type Session, UsageError } from './session.ts';

const FIRST_FOLDER = 'examples/first-folder';

export interface InitOptions {
  readonly git?: OnOff;
  readonly refresh?: boolean;
}

/** The starting files, by path in the new folder. */
function startingFiles(): ReadonlyMap<string, string> {
  const files = new Map<string, string>();
  for (const name of shippedFiles(FIRST_FOLDER)) {
    files.set(name.replace(/^dot-/, '.'), readShipped(`${FIRST_FOLDER}/${name}`));
  }
  files.set('.vscode/settings.json', `${JSON.stringify(editorSettings(), null, 2)}\n`);
  return files;
}

function editorSettings(): object {
  const schema = (name: string) => `./${EDITOR_SCHEMAS}/${name}.schema.json`;
  return {
    'yaml.schemas': {
      [schema('practice')]: 'practice.yaml',
      [schema('people')]: 'people.yaml',
      [schema('exercise')]: ['exercises/**/*.yaml', '!exercises/**/*.*.yaml'],
      [schema('translation')]: 'exercises/**/*.*.yaml',
      [schema('plan')]: 'plans/**/*.yaml',
    },
  };
}

/** Starts a folder; with `refresh`, makes the editor's schemas of a folder anew, with its own ids. */
export function init(
  session: Session,
  where: string | undefined,
  { refresh, git }: InitOptions,
): CommandResult {
  const { outside } = session;
  const root = resolve(outside.cwd, where ?? '.');
  if (git !== undefined) return gitWords(session, where, git);
  if (refresh) return refreshed(session, where);
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
      throw new UsageError(
        `${join(where ?? '.', path)} cannot be written (${cause instanceof Error && 'code' in cause ? cause.code : cause})`,
      );
    }
    written.push(path);
  }
  written.push(...writeSchemas(root));
  const folder = relative(outside.cwd, root) || '.';
  const go = folder === '.' ? '' : `cd ${folder} && `;
  const lines = [
    written.length > 0
      ? `A practice folder stands in ${folder}:`
      : `Everything is there already in ${folder}; nothing was written.`,
    ...written.filter((path) => !path.startsWith('.')).map((path) => `  ${path}`),
    ...(kept.length > 0 ? [`Left as they were: ${kept.join(', ')}`] : []),
    `Next: ${go}carryover build, then open handouts/index.html.`,
  ];
  return {
    status: 0,
    findings: [],
    data: { folder, written },
    out: `${lines.join('\n')}\n`,
    log: '',
  };
}

function refreshed(session: Session, where: string | undefined): CommandResult {
  const { root } = openFolder({ ...session, folderOption: where ?? session.folderOption });
  const written = writeSchemas(root);
  const out =
    written.length === 0
      ? 'The editor knows all ids already.\n'
      : 'The editor now offers the ids that this folder has.\n';
  return {
    status: 0,
    findings: [],
    data: { folder: relative(session.outside.cwd, root) || '.', written },
    out,
    log: '',
  };
}

/** The schemas are ours to write, so that they keep up with the folder; the practice's files are not. */
export function writeSchemas(root: string): string[] {
  const written: string[] = [];
  for (const [path, text] of schemasOf(diskFolder(root))) {
    const target = join(root, path);
    if (existsSync(target) && readFileSync(target, 'utf8') === text) continue;
    mkdirSync(dirname(target), { recursive: true });
    writeFileSync(target, text);
    written.push(path);
  }
  return written;
}

function schemasOf(folder: Folder): ReadonlyMap<string, string> {
  const exercises = [...filesById(folder, 'exercises', 'duplicate-exercise').byId.keys()];
  const compiled = compile(folder, { plans: [], exercises });
  return editorSchemas(idsOf(compiled));
}
