// The figure floor's door: a figure of a level made to rest, its drawing, and its angles read back.
import type { Figure, LimbAngle, MiddleAngle } from '../model/figure.ts';
import { LIMB_ANGLES } from '../model/figure.ts';
import type { Sides } from '../units/side.ts';
import type { Gap } from './contacts.ts';
import { figureSvg } from './drawing.ts';
import { type Settled, type SettledFigure, settledFigure } from './settle.ts';
import { type Hand, limbAt, middleAt, ROOT_AT } from './skeleton.ts';

export type { Gap, Hand, Settled, SettledFigure };
export { figureSvg };

/** What of a level its figure hangs on. */
export interface FigureSetting {
  readonly position: string;
  readonly sides: Sides;
}

// A library is drawn again for every plan that uses it; the same figure always comes to rest alike.
const known = new WeakMap<Figure, Map<string, SettledFigure | null>>();

/** A figure's body at rest; null where its position is none that a figure knows. */
export function restingFigure(figure: Figure, setting: FigureSetting): SettledFigure | null {
  const key = `${setting.position} ${setting.sides}`;
  const byKey = known.get(figure) ?? new Map<string, SettledFigure | null>();
  known.set(figure, byKey);
  const before = byKey.get(key);
  if (before !== undefined) return before;
  const settled = settledFigure(figure, setting);
  byKey.set(key, settled);
  return settled;
}

/** A joint's angle in a pose, in whole degrees; of the limb on the right in the figure's own frame. */
export function angleIn({ stance }: Settled, angle: LimbAngle | MiddleAngle, hand: Hand): number {
  const isOfLimb = (LIMB_ANGLES as readonly string[]).includes(angle);
  const index = isOfLimb ? limbAt(hand, angle as LimbAngle) : middleAt(angle as MiddleAngle);
  return Math.round(stance[index] as number) + 0;
}

/** How far the whole body leans forwards in a pose, in whole degrees. */
export function leanIn({ stance }: Settled): number {
  return Math.round((-(stance[ROOT_AT.turnZ] as number) * 180) / Math.PI) + 0;
}
