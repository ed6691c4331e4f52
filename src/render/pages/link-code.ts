// The address of a link as a code for a phone's camera: QR, ISO/IEC 18004, black on white with the
// quiet zone that the standard asks for. How large it is on paper is the style's.
import { encode } from 'uqr';
import type { LinkView } from '../sheet/sheet-view.ts';

/** In modules. */
const QUIET_ZONE = 4;
/** A version-1 code would be a third quiet zone, and so too small at the size that all codes have. */
const LEAST_VERSION = 2;

/** True of the place in a view that holds a link. */
export function isLinkView(value: unknown): value is LinkView {
  return typeof value === 'object' && value !== null && 'address' in value && 'codeAlt' in value;
}

/** The code as a drawing, a path of one rectangle for each run of black modules. */
export function linkCode(address: string): string {
  // Level M: a seventh of it may be stained or creased.
  const { data, size } = encode(address, {
    ecc: 'M',
    border: QUIET_ZONE,
    minVersion: LEAST_VERSION,
  });
  const runs = data.flatMap((row, y) => runsOf(row).map(([x, n]) => `M${x} ${y}h${n}v1h-${n}z`));
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size} ${size}" shape-rendering="crispEdges">` +
    `<path fill="white" d="M0 0h${size}v${size}H0z"/><path d="${runs.join('')}"/></svg>`
  );
}

/** Where runs of black begin in a row, and how long they are. */
function runsOf(row: readonly boolean[]): readonly (readonly [start: number, length: number])[] {
  return row.flatMap((isBlack, x) => {
    if (!isBlack || row[x - 1]) return [];
    const end = row.indexOf(false, x);
    return [[x, (end === -1 ? row.length : end) - x] as const];
  });
}
