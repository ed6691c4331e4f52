// Left, right and the middle. `each` is done one side at a time, `both` with both at once, `middle`
// has no left or right.

export const SIDES = ['left', 'right', 'middle'] as const;
export type Side = (typeof SIDES)[number];

export type Sides = 'each' | 'both' | 'middle';
/** How the two sides of an `each` take turns. */
export type Order = 'each-set' | 'each-rep' | 'all-sets';
export type Affected = 'left' | 'right' | 'both' | 'none';
export type Only = 'left' | 'right' | 'affected' | 'other';

export function otherSide(side: 'left' | 'right'): 'left' | 'right' {
  return side === 'left' ? 'right' : 'left';
}

/**
 * The one side that `only` leaves, or null for both: `affected` where both are affected.
 * Undefined where the plan names no side for it to mean (`affected` of none, `other` of both).
 */
export function sideMeant(only: Only, affected: Affected): 'left' | 'right' | null | undefined {
  if (only === 'left' || only === 'right') return only;
  if (affected === 'left' || affected === 'right') {
    return only === 'affected' ? affected : otherSide(affected);
  }
  return only === 'affected' && affected === 'both' ? null : undefined;
}
