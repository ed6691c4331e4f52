// Adding a row to the register of handovers. Nothing in the file is ever changed: the row goes to its
// end in one write of far less than a page, which the system does whole or not at all, so that a
// process that is killed leaves no half row behind, and two that add at once leave two rows.
import {
  closeSync,
  fstatSync,
  ftruncateSync,
  lstatSync,
  openSync,
  readFileSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import { isUtf16, REGISTER, REGISTER_HEADER, registerLine } from '../load/register.ts';
import type { Handover } from '../model/handover.ts';

/** Why no row can be added; null where one can. Damaged rows are no reason. */
export function whyNoRow(root: string): string | null {
  const path = join(root, REGISTER);
  const stat = lstatSync(path, { throwIfNoEntry: false });
  if (!stat) return null;
  if (stat.isSymbolicLink()) return `${REGISTER} is a link; put the file itself in its place`;
  if (!stat.isFile()) return `${REGISTER} is not a file`;
  return isUtf16(readFileSync(path)) ? `${REGISTER} is saved as UTF-16; save it as UTF-8` : null;
}

/** Adds a row, and the first line where there is none yet. Throws what the system says. */
export function addRow(root: string, handover: Handover): void {
  const file = openSync(join(root, REGISTER), 'a+');
  try {
    const there = readFileSync(file, 'utf8');
    const lineEnd = /\r\n[^\n]*$/.test(there) ? '\r\n' : '\n';
    const isEmpty = there.replace('\uFEFF', '') === '';
    const before = isEmpty ? `${REGISTER_HEADER}${lineEnd}` : there.endsWith('\n') ? '' : lineEnd;
    const row = Buffer.from(`${before}${registerLine(handover)}${lineEnd}`);
    const { size } = fstatSync(file);
    if (writeSync(file, row) < row.length) {
      // A disk that fills up in the middle of a row.
      ftruncateSync(file, size);
      throw Object.assign(new Error('the row does not fit'), { code: 'ENOSPC' });
    }
  } finally {
    closeSync(file);
  }
}
