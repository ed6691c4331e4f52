// A piece of a thing in the picture, and how one is put into it: what stands behind the body is drawn
// before it, what is held after it.
import type { Dot } from './path.ts';

export interface PropPiece {
  readonly look: 'solid' | 'pale' | 'heavy' | 'line' | 'thick-line' | 'rail';
  readonly path: string;
}

export interface PropShapes {
  readonly behind: readonly PropPiece[];
  readonly before: readonly PropPiece[];
  /** Dots that have to be in the picture. */
  readonly dots: readonly Dot[];
}

/** One thing in the making. */
export interface PropDraft {
  readonly layer: 'behind' | 'before';
  readonly pieces: readonly PropPiece[];
  readonly dots: readonly Dot[];
}

export function drawn(
  layer: PropDraft['layer'],
  look: PropPiece['look'],
  path: string,
  dots: readonly Dot[] = [],
): PropDraft {
  return { layer, pieces: [{ look, path }], dots };
}
