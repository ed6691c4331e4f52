// What stands beside the body, and at which side: a hand of that side reaches sideways to it.
import type { HandPlace, Prop } from '../model/figure.ts';
import type { Hand } from './skeleton.ts';
import type { HandHold } from './touches.ts';

/** The things beside the body, with the side of the drawn body that each stands at. */
export type Beside = ReadonlyMap<string, Hand>;

export function besideOf({
  props,
}: {
  readonly props: readonly Pick<Prop, 'name' | 'at'>[];
}): Beside {
  return new Map(
    props.flatMap(({ name, at }): readonly [string, Hand][] => {
      if (at.includes('side')) return [[name, 'right']];
      return at.includes('other-side') ? [[name, 'left']] : [];
    }),
  );
}

/** How a hand is held that is put on a place; a chair is held by its back from behind it, or by its seat. */
export function handHold(hand: Hand, place: HandPlace, beside: Beside): HandHold {
  const stands = (name: string) => beside.get(name) === hand;
  if (place === 'worktop' && (stands('worktop') || stands('chair'))) return 'worktop-beside';
  if (place === 'chair' && stands('chair')) return 'chair-beside';
  return place === 'wall' && stands('wall') ? 'wall-beside' : place;
}
