// `carryover textconv <file>`: a plan in words, for git, which hands over the file of any version under
// any path. What cannot be read as a plan comes out as it is: git must always get an answer.
import { readFileSync } from 'node:fs';
import { basename, relative, resolve, sep } from 'node:path';
import { FolderUnusable } from '../build.ts';
import { openVersion, planIn } from '../handouts/version.ts';
import { shippedWords } from '../handouts/wording.ts';
import type { Folder } from '../load/folder.ts';
import { planInWords } from '../render/changes/plan-in-words.ts';
import { type CommandResult, openFolder, type Session } from './session.ts';

export function textconv(session: Session, file: string): CommandResult {
  const path = resolve(session.outside.cwd, file);
  const bytes = readFileSync(path);
  const out = (text: string): CommandResult => ({
    status: 0,
    findings: [],
    data: null,
    out: text,
    log: '',
  });
  const asItIs = () => out(bytes.toString('utf8'));
  try {
    const { root, folder } = openFolder(session);
    const code = /^plan:[ \t]*["']?([A-Za-z0-9-]+)/m.exec(bytes.toString('utf8'))?.[1];
    if (code === undefined) return asItIs();
    const inside = relative(root, path).split(sep).join('/');
    const place = inside.startsWith('plans/') ? inside : `plans/${basename(code)}.yaml`;
    const version = openVersion(withPlan(folder, place, bytes), [code]);
    const one = version.compiled.plans.find(({ id }) => id === code);
    const found = one && planIn(version, one);
    if (!found) return asItIs();
    const { plan } = found.version;
    const words = version.wording.get(version.compiled.practice.language) ?? shippedWords();
    return out(`${planInWords(plan, words).join('\n')}\n`);
  } catch (cause) {
    if (cause instanceof FolderUnusable) return asItIs();
    throw cause;
  }
}

/** The folder with this plan as its only one, and its own library and settings. */
function withPlan(folder: Folder, path: string, bytes: Uint8Array): Folder {
  const entry = { path, kind: 'file' as const, size: bytes.length };
  return {
    list: (under) => (under === 'plans' ? [entry] : folder.list(under)),
    entry: (other) => (other === path ? entry : folder.entry(other)),
    read: (other) => (other === path ? bytes : folder.read(other)),
  };
}
