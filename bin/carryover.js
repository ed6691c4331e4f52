#!/usr/bin/env node
// The door to the outside: streams, working folder, today's date. The rest is main's.
import { existsSync, readSync } from 'node:fs';

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
  while (readSync(0, one, 0, 1) === 1 && one[0] !== 10) bytes.push(one[0]);
  return Buffer.from(bytes).toString('utf8').trim();
}

// A reader that has seen enough (`carryover list | head`) is no fault.
for (const one of [process.stdout, process.stderr]) {
  one.on('error', (error) => {
    if (error.code === 'EPIPE') process.exit(0);
    throw error;
  });
}
// An interrupt ends the process at once (130 in a shell): every page is written in one step, so none is left half done.

const now = new Date();
const two = (n) => String(n).padStart(2, '0');
process.exitCode = main(process.argv.slice(2), {
  cwd: process.cwd(),
  env: process.env,
  today: `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`,
  out: stream(process.stdout),
  err: stream(process.stderr),
  ...(process.stdin.isTTY && process.stderr.isTTY ? { ask } : {}),
});
