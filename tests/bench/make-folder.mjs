// Writes a practice folder of many plans and exercises, for measuring: the example's, under new codes
// and with other doses. The same numbers give the same folder.
import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const EXAMPLE = fileURLToPath(new URL('../../examples/saltmarsh', import.meta.url));

/** Every file below a folder of the example but those of another language, by its name without ".yaml". */
function texts(under) {
  const entries = readdirSync(join(EXAMPLE, under), { recursive: true, withFileTypes: true });
  const files = entries.filter((one) => one.isFile()).map((one) => join(one.parentPath, one.name));
  return files
    .sort()
    .map((path) => [/([^/\\]+)\.yaml$/.exec(path)?.[1], readFileSync(path, 'utf8')])
    .filter(([id, text]) => !id.includes('.') && !/^handout_language:/m.test(text));
}

/** The copy of an id: the first stays as it is. */
function copyOf(id, copy) {
  return copy === 0 ? id : `${id}-${copy + 1}`;
}

/** Writes so many plans and exercises; each set of exercises has its own plans. */
export function makeFolder(folder, { plans, exercises }) {
  for (const name of ['practice.yaml', 'pictures']) {
    cpSync(join(EXAMPLE, name), join(folder, name), { recursive: true });
  }
  const library = texts('exercises');
  const sources = texts('plans');
  // The last set is a part of one; no plan may ask for what it lacks.
  const sets = Math.max(1, Math.floor(exercises / library.length));
  for (let n = 0; n < exercises; n += 1) {
    const [id, text] = library[n % library.length];
    const copy = Math.floor(n / library.length);
    mkdirSync(join(folder, 'exercises', `set-${copy + 1}`), { recursive: true });
    const name = copyOf(id, copy);
    writeFileSync(
      join(folder, 'exercises', `set-${copy + 1}`, `${name}.yaml`),
      text
        .replace(/^exercise: .*$/m, `exercise: ${name}`)
        .replace(/rest: 60 s/g, `rest: ${60 + (copy % 5) * 5} s`),
    );
  }
  mkdirSync(join(folder, 'plans'), { recursive: true });
  for (let n = 0; n < plans; n += 1) {
    const [id, text] = sources[n % sources.length];
    const code = `${id.slice(0, 1)}-${String(10000 + n)}`;
    writeFileSync(join(folder, 'plans', `${code}.yaml`), planText(text, code, n, n % sets));
  }
}

/** A plan under another code, with another set of exercises, other days and other numbers of sets. */
function planText(text, code, n, set) {
  const ids = new Set();
  const days = [['mon, wed, fri'], ['tue, thu, sat'], ['mon, thu'], ['wed, fri, sun']][n % 4];
  const changed = text
    .replace(/^plan: .*$/m, `plan: ${code}`)
    .replace(/(\bdo: )([a-z0-9-]+)/g, (_, key, id) => {
      ids.add(id);
      return `${key}${copyOf(id, set)}`;
    })
    .replace(/(?<=^one_rep_max: \{.*)[a-z0-9-]+(?=: )/gm, (id) => copyOf(id, set))
    .replace('[mon, wed, fri]', `[${days}]`)
    .replace(/^weeks: (\d+)/m, (_, weeks) => `weeks: ${Number(weeks) + (n % 3)}`);
  if (ids.size === 0) throw new Error('a plan of the example has no exercises');
  return changed;
}
