// How long the program takes as a person meets it, as whole processes: the check of one plan, the build
// of everything, and a cold start. `node tests/bench/bench.mjs [plans] [exercises]`; nothing is asserted.
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { makeFolder } from './make-folder.mjs';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const PROGRAM = join(ROOT, 'bin', 'carryover.js');
const [plans = 1000, exercises = 200] = process.argv.slice(2).map(Number);
const TIMES = 5;
const MIB = 1024 * 1024;

/** Runs node once; its seconds from start to end, those on a processor, and the most memory that it held. */
async function timed(args, cwd) {
  const started = process.hrtime.bigint();
  const child = spawn(process.execPath, args, { cwd, stdio: ['ignore', 'ignore', 'pipe'] });
  let told = '';
  child.stderr.on('data', (text) => {
    told += text;
  });
  let used = { peak: 0, cpu: 0 };
  const watch = setInterval(() => {
    used = usedBy(child.pid) ?? used;
  }, 20);
  const status = await new Promise((resolve) => child.on('close', resolve));
  clearInterval(watch);
  if (status !== 0) throw new Error(`node ${args.join(' ')} ended with ${status}:\n${told}`);
  return { seconds: Number(process.hrtime.bigint() - started) / 1e9, ...used };
}

/** The greatest resident size and the processor seconds so far, as Linux tells them; null elsewhere and of what has ended. */
function usedBy(pid) {
  try {
    const kib = /^VmHWM:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1].split(' ');
    if (kib === undefined) return null;
    // User and system time, in hundredths of a second.
    return { peak: Number(kib) * 1024, cpu: (Number(fields[11]) + Number(fields[12])) / 100 };
  } catch {
    return null;
  }
}

/** The median of so many runs, and the greatest memory of any. */
async function measured(name, args, { cwd = ROOT, before = () => {} } = {}) {
  const runs = [];
  for (let n = 0; n < TIMES; n += 1) {
    before();
    runs.push(await timed(args, cwd));
  }
  const inOrder = (key) => runs.map((run) => run[key]).sort((a, b) => a - b);
  const seconds = inOrder('seconds');
  const middle = Math.floor(TIMES / 2);
  const [cpu, peak] = [inOrder('cpu')[middle], inOrder('peak').at(-1)];
  return { name, median: seconds[middle], least: seconds[0], most: seconds.at(-1), cpu, peak };
}

function row({ name, median, least, most, cpu, peak }) {
  const seconds = (value) => `${value.toFixed(value < 10 ? 2 : 1)} s`;
  const memory = peak === 0 ? '-' : `${Math.round(peak / MIB)} MiB`;
  const processor = peak === 0 ? '-' : seconds(cpu);
  return [name, seconds(median), `${seconds(least)} to ${seconds(most)}`, processor, memory];
}

function table(rows) {
  const widths = rows[0].map((_, at) => Math.max(...rows.map((cells) => cells[at].length)));
  return rows
    .map((cells) =>
      cells
        .map((cell, at) => cell.padEnd(widths[at]))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

/** Something to compare with. */
function commitAll(cwd) {
  const who = ['-c', 'user.name=Practice', '-c', 'user.email=practice@example.org'];
  for (const args of [
    ['init', '-q'],
    ['add', '-A'],
    [...who, 'commit', '-q', '-m', 'Start'],
  ])
    spawnSync('git', args, { cwd, stdio: 'inherit' });
}

const built = spawnSync('npm', ['run', 'build', '--silent'], {
  cwd: ROOT,
  stdio: 'inherit',
  shell: process.platform === 'win32',
});
if (built.status !== 0) process.exit(1);
const folder = realpathSync(mkdtempSync(join(tmpdir(), 'carryover-bench-')));
try {
  makeFolder(folder, { plans, exercises });
  const [first] = readdirSync(join(folder, 'plans')).map((name) => name.replace('.yaml', ''));
  commitAll(folder);
  const noPages = () => rmSync(join(folder, 'handouts'), { recursive: true, force: true });
  const rows = [
    await measured('node -e 0', ['-e', '0']),
    await measured('carryover --help', [PROGRAM, '--help']),
    await measured(`carryover check ${first}`, [PROGRAM, 'check', first], { cwd: folder }),
    await measured(`carryover build ${first}`, [PROGRAM, 'build', first], {
      cwd: folder,
      before: noPages,
    }),
    await measured(`carryover diff ${first}`, [PROGRAM, 'diff', first], { cwd: folder }),
    await measured('carryover diff --all', [PROGRAM, 'diff', '--all'], { cwd: folder }),
    await measured('carryover check', [PROGRAM, 'check'], { cwd: folder }),
    await measured('carryover build', [PROGRAM, 'build'], { cwd: folder, before: noPages }),
  ];
  process.stdout.write(
    `${plans} plans, ${exercises} exercises; Node ${process.version}, ${cpus().length} × ${cpus()[0]?.model}; median of ${TIMES}\n\n` +
      `${table([['', 'median', 'least to most', 'processor', 'peak memory'], ...rows.map(row)])}\n`,
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}
