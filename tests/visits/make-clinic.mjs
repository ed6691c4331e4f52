// A throw-away repository of the example clinic with three visits, each committed and handed over:
//   npm run visits -- /tmp/clinic
// The README's examples of `diff` and of the register come from it.
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';

const top = join(import.meta.dirname, '..', '..');

/** Makes the repository in a new folder; `carryover` runs one command line there, on a day. */
export function makeClinic(folder, carryover) {
  const { plan, visits } = parse(readFileSync(join(import.meta.dirname, 'visits.yaml'), 'utf8'));
  if (existsSync(folder)) throw new Error(`${folder} is there already`);
  mkdirSync(folder, { recursive: true });
  const examples = join(top, 'examples', 'saltmarsh');
  cpSync(examples, folder, { recursive: true, filter: (path) => !path.includes('handouts') });
  writeFileSync(join(folder, '.gitignore'), 'people.yaml\nhandouts/\n');
  writeFileSync(join(folder, '.gitattributes'), 'handovers.csv merge=union\n');
  git(folder, '2026-11-23', 'init', '-q', '-b', 'main');
  for (const { date, message, edits } of visits) {
    for (const { file, from, to } of edits) {
      const path = join(folder, file);
      const text = readFileSync(path, 'utf8');
      if (text.split(from).length !== 2)
        throw new Error(`"${from}" does not stand once in ${file}`);
      writeFileSync(
        path,
        text.replace(from, () => to),
      );
    }
    commit(folder, date, message);
    carryover(folder, ['handover', plan], date);
    commit(folder, date, `Handed over ${plan}`);
  }
}

function commit(folder, date, message) {
  git(folder, date, 'add', '-A');
  git(folder, date, 'commit', '-q', '-m', message);
}

function git(folder, date, ...args) {
  const day = `${date}T12:00:00Z`;
  const who = { NAME: 'Practice', EMAIL: 'practice@example.org', DATE: day };
  const env = { PATH: process.env.PATH, GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_NOSYSTEM: '1' };
  for (const [name, value] of Object.entries(who)) {
    env[`GIT_AUTHOR_${name}`] = value;
    env[`GIT_COMMITTER_${name}`] = value;
  }
  execFileSync('git', args, { cwd: folder, env, stdio: 'pipe' });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [folder] = process.argv.slice(2);
  if (folder === undefined) throw new Error('say where to make it: npm run visits -- /tmp/clinic');
  const bin = join(top, 'bin', 'carryover.js');
  makeClinic(folder, (cwd, args, today) =>
    execFileSync(process.execPath, [bin, ...args, '--today', today], { cwd, stdio: 'inherit' }),
  );
}
