// The look of what is drawn: greys that survive a photocopy, white gaps between limbs. Each look has a
// class of one letter, and only those that a drawing uses are written into it.
import { UNIT } from './path.ts';
import type { Piece } from './piece.ts';
import type { PropPiece } from './prop-piece.ts';

/** Near limbs are dark and far ones light. */
export type Tone = 'near' | 'far';

/** The class of a piece of the body. */
export function bodyClass(tone: Piece['tone'], limb: Tone): string {
  return { limb: limb === 'near' ? 'n' : 'f', trunk: 't', skin: 's', hair: 'h', mark: 'm' }[tone];
}

export const PROP_CLASSES: Readonly<Record<PropPiece['look'], string>> = {
  solid: 'p',
  pale: 'q',
  heavy: 'k',
  line: 'l',
  'thick-line': 'b',
  rail: 'r',
};

/** Widths are in thousandths of stature. */
const GAP = 13;
const RIM = 6;
const STROKE = 13;

/** The rules for the classes in a drawing; a close-up has finer lines, so that they come out as wide on paper. */
export function styleOf(size: number, drawing: string): string {
  const scale = (Math.max(0.4, Math.min(1, size)) * UNIT) / 1000;
  const w = (width: number) => Math.round(width * scale * 10) / 10;
  const rim = (fill: string, stroke: string, width: number) =>
    `{fill:${fill};stroke:${stroke};stroke-width:${w(width)}}`;
  const line = (stroke: string, width: number) =>
    `{fill:none;stroke:${stroke};stroke-width:${w(width)}}`;
  const rules = [
    `.n${rim('#3d3d3d', '#fff', GAP)}`,
    `.f${rim('#c9c9c9', '#444', RIM)}`,
    `.t${rim('#6e6e6e', '#fff', GAP)}`,
    `.s${rim('#f4f4f4', '#333', 10)}`,
    `.h${rim('#333', '#fff', GAP)}`,
    '.m{fill:#222}',
    `.g{fill:none;stroke:#333;stroke-width:${w(10)};stroke-dasharray:${w(16)} ${w(12)}}`,
    '.w{fill:#fff}',
    `.p${rim('#fff', '#666', 10)}`,
    `.q${rim('#eee', '#666', 10)}`,
    `.k${rim('#111', '#fff', 9)}`,
    `.l${line('#444', RIM)}`,
    `.b${line('#111', STROKE)}`,
    `.r${line('#777', 20)}`,
    `.o${line('#666', 7)}`,
    `.u${line('#fff', 28)}`,
    `.v${rim('#fff', '#fff', 16)}`,
    `.a${line('#111', STROKE)}`,
    '.i{fill:#111}',
  ];
  const used = rules.filter((rule) => drawing.includes(`class="${rule[1]}"`));
  // Rims are drawn before what they go round, so that it keeps its full breadth.
  return `path{stroke-linejoin:round;stroke-linecap:round;paint-order:stroke}${used.join('')}`;
}
