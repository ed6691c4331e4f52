// The example folder, compiled once, and a screen without colours.

import stringWidth from 'string-width';
import { type Compiled, compile } from '../../src/build.ts';
import type { PlanNumbers } from '../../src/compute/numbers.ts';
import { diskFolder } from '../../src/load/folder.ts';
import type { Plan } from '../../src/model/plan.ts';

export const saltmarsh: Compiled = compile(diskFolder('examples/saltmarsh'), null);

const same = (text: string) => text;
export const plainPaint = {
  bold: same,
  dim: same,
  warn: same,
  path: same,
  error: same,
  warning: same,
  note: same,
};

export function planOf(code: string): { plan: Plan; numbers: PlanNumbers } {
  const found = saltmarsh.plans.find(({ id }) => id === code);
  if (!found?.plan || !found.numbers) throw new Error(`the example has no sound plan ${code}`);
  return { plan: found.plan, numbers: found.numbers };
}

/** The lines that are wider than the screen. */
export function tooWide(text: string, width: number): string[] {
  return text.split('\n').filter((line) => stringWidth(line) > width);
}

const UNSAFE =
  /(?!\n)[\p{Cc}\p{Cs}\u200B\u200E\u200F\u2028\u2029\u202A-\u202E\u2066-\u2069\uFEFF]/u;

/** Whether anything in the text could steer the terminal, hide, or turn the direction. */
export function isUnsafe(text: string): boolean {
  return UNSAFE.test(text);
}
