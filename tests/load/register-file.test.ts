// A row goes to the register's file in one write, so that a kill between two writes can leave no half of
// it; and a disk that takes only a part of it gets that part back.
import {
  appendFileSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { addRow } from '../../src/handouts/register-file.ts';
import { REGISTER_HEADER, registerLine } from '../../src/load/register.ts';
import type { Handover } from '../../src/model/handover.ts';

vi.mock('node:fs', async (original) => {
  const real = await original<typeof import('node:fs')>();
  return { ...real, writeSync: vi.fn(real.writeSync), writeFileSync: real.writeFileSync };
});

const ROW: Handover = {
  date: '2026-10-26',
  plan: 'M-0412',
  sheet: 'KP4T 7WQM',
  commit: '3f2a1b4c5d6e7f8091a2b3c4d5e6f708192a3b4c',
  language: 'en',
  by: 'rk',
};
const LINE = registerLine(ROW);

const root = mkdtempSync(join(tmpdir(), 'carryover-register-'));
const file = join(root, 'handovers.csv');
afterAll(() => rmSync(root, { recursive: true, force: true }));
beforeEach(() => {
  rmSync(file, { force: true });
  vi.mocked(writeSync).mockClear();
});

/** What was written, write by write. */
const written = () => vi.mocked(writeSync).mock.calls.map(([, bytes]) => String(bytes));

describe('a row', () => {
  it.each([
    ['of a register that is begun, with its first line', null, `${REGISTER_HEADER}\n${LINE}\n`],
    ['after others', `${REGISTER_HEADER}\n${LINE}\n`, `${LINE}\n`],
    ['after CRLF', `${REGISTER_HEADER}\r\n${LINE}\r\n`, `${LINE}\r\n`],
    ['after a half row', `${REGISTER_HEADER}\n2026-10-2`, `\n${LINE}\n`],
    ['after a mark of UTF-8 alone', '\uFEFF', `${REGISTER_HEADER}\n${LINE}\n`],
  ])('%s: one write, at the end', (_, before, added) => {
    if (before !== null) writeFileSync(file, before);
    addRow(root, ROW);
    expect(written()).toEqual([added]);
    expect(readFileSync(file, 'utf8')).toBe(`${before ?? ''}${added}`);
  });

  it('is of less than a page, whatever its parts', () => {
    // The longest that a code, a language tag and an id can reasonably be.
    const longest = { ...ROW, plan: 'P'.repeat(63), by: 'b'.repeat(63), commit: '0'.repeat(64) };
    addRow(root, { ...longest, language: 'de-Latn-CH-x-Practice' });
    expect((written()[0] ?? '').length).toBeLessThan(512);
  });

  it('goes after what another has added while this one was looking', () => {
    writeFileSync(file, `${REGISTER_HEADER}\n`);
    const real = vi.mocked(writeSync).getMockImplementation();
    vi.mocked(writeSync).mockImplementationOnce((...args: Parameters<typeof writeSync>) => {
      appendFileSync(file, `${LINE}\n`);
      return real ? real(...args) : 0;
    });
    addRow(root, { ...ROW, plan: 'K-2031' });
    expect(readFileSync(file, 'utf8')).toBe(
      `${REGISTER_HEADER}\n${LINE}\n${LINE.replace('M-0412', 'K-2031')}\n`,
    );
  });

  it('that the disk has no room for leaves the file as it was', async () => {
    const { writeSync: real } = await vi.importActual<typeof import('node:fs')>('node:fs');
    const before = `${REGISTER_HEADER}\n${LINE}\n`;
    writeFileSync(file, before);
    vi.mocked(writeSync).mockImplementationOnce(((fd: number, bytes: Uint8Array) =>
      real(fd, bytes.subarray(0, 7))) as typeof writeSync);
    expect(() => addRow(root, { ...ROW, plan: 'K-2031' })).toThrow(
      expect.objectContaining({ code: 'ENOSPC' }),
    );
    expect(readFileSync(file, 'utf8')).toBe(before);
  });
});
