#!/usr/bin/env node
// The door to the outside: streams, working folder, today's date. The rest is main's.
import { existsSync, readSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const built = new URL('../dist/main.js', import.meta.url);
if (!existsSync(built)) {
  process.stderr.write(
    'carryover is not built yet; run "npm ci" or "npm run build" in its folder first.\n',
  );
  process.exit(70);
}
const { main } = await import(built.href);

function stream(one) {
  return {
    write: (text) => one.write(text),
    isTerminal: Boolean(one.isTTY),
    columns: one.columns ?? 80,
  };
}

/** Asks in the terminal and waits for a line. */
function ask(question) {
  process.stderr.write(question);
  const bytes = [];
  const one = Buffer.alloc(1);
  while (readWaiting(one) === 1 && one[0] !== 10) bytes.push(one[0]);
  return Buffer.from(bytes).toString('utf8').trim();
}

const BETWEEN_LOOKS_MS = 20;
const bell = new Int32Array(new SharedArrayBuffer(4));

/** Node opens a terminal so that reading it does not wait for a key, so the waiting is done here. */
function readWaiting(one) {
  for (;;) {
    try {
      return readSync(0, one, 0, 1);
    } catch (error) {
      if (error.code === 'EOF') return 0;
      if (error.code !== 'EAGAIN') throw error;
      Atomics.wait(bell, 0, 0, BETWEEN_LOOKS_MS);
    }
  }
}

// A reader that has seen enough (`carryover list | head`) is no fault.
for (const one of [process.stdout, process.stderr]) {
  one.on('error', (error) => {
    if (error.code === 'EPIPE') process.exit(0);
    throw error;
  });
}
// An interrupt ends the process at once (130 in a shell): every page is written in one step, so none is left half done.

/** One word of a shell's command line. */
function inShell(text) {
  return `'${text.replaceAll("'", "'\\''")}'`;
}

const now = new Date();
const two = (n) => String(n).padStart(2, '0');
process.exitCode = main(process.argv.slice(2), {
  cwd: process.cwd(),
  env: process.env,
  today: `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`,
  self: [process.execPath, fileURLToPath(import.meta.url)].map(inShell).join(' '),
  out: stream(process.stdout),
  err: stream(process.stderr),
  ...(process.stdin.isTTY && process.stderr.isTTY ? { ask } : {}),
});
