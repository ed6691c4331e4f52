// What a pose must touch, and how far the body is from it. Contacts are listed once a pose, since a
// fit measures them thousands of times.
import type { Intent } from './intent.ts';
import { ankleTarget, palmOf, palmTarget } from './own-body.ts';
import { gap, PUT_UP, putUpAt, type Scene, type Surface, WALLS } from './scene.ts';
import { HANDS, type Hand, type Skeleton } from './skeleton.ts';
import type { Point } from './space.ts';
import { BODY_POINTS, type BodyPart, type Touch } from './touches.ts';

/** A part of the body and what it has to touch. */
export interface Contact {
  readonly part: BodyPart;
  /** Which limb of the drawn body; null where it has no side. */
  readonly hand: Hand | null;
  /** A surface, or a place of the body itself. */
  readonly on: string;
  /** Adds how far it is off, in statures: one number for a surface, one an axis for a place of the body. */
  readonly measure: (body: Skeleton, into: number[]) => void;
}

/** A contact that is not made; below 0 it goes through. */
export interface Gap {
  readonly part: BodyPart;
  readonly hand: Hand | null;
  readonly on: string;
  readonly by: number;
}

/** All contacts of a pose, in a fixed order. */
export function contactsOf(intent: Intent, scene: Scene): readonly Contact[] {
  return [
    ...surfaceContacts(intent.touches, scene),
    ...HANDS.flatMap((hand) => ownBodyContacts(hand, intent)),
    ...HANDS.flatMap((hand) => lowestContact(hand, intent)),
  ];
}

function surfaceContacts(touches: readonly Touch[], scene: Scene): readonly Contact[] {
  // What is not put up yet goes where its first touch is; all others have to be in line with it.
  const first = new Map<Surface, Touch>();
  return touches.map((touch) => {
    const { part, hand, at, flesh, surface } = touch;
    const level = scene[surface];
    const before = first.get(surface);
    if (level === null && !before) first.set(surface, touch);
    const measure = (body: Skeleton, into: number[]) => {
      const height = level ?? (before && putUpAt(before.at(body), before.flesh, surface));
      into.push(height === undefined ? 0 : gap(at(body), flesh, surface, height));
    };
    return { part, hand, on: surface, measure };
  });
}

/** A palm or an ankle that is put on the body itself. */
function ownBodyContacts(hand: Hand, { hands, feet }: Intent): readonly Contact[] {
  const [palm, ankle] = [palmTarget(hand, hands[hand]), ankleTarget(hand, feet[hand])];
  const off = (
    at: (body: Skeleton) => Point,
    target: (body: Skeleton) => Point,
  ): Contact['measure'] => {
    return (body, into) => {
      const [is, wanted] = [at(body), target(body)];
      into.push(is.x - wanted.x, is.y - wanted.y, is.z - wanted.z);
    };
  };
  return [
    ...(palm
      ? [{ part: 'hand' as const, hand, on: hands[hand], measure: off(palmOf(hand), palm) }]
      : []),
    ...(ankle
      ? [
          {
            part: 'foot' as const,
            hand,
            on: feet[hand],
            measure: off((body) => body[hand].ankle, ankle),
          },
        ]
      : []),
  ];
}

/** A foot of which only the lowest point has to touch. */
function lowestContact(hand: Hand, { feet }: Intent): readonly Contact[] {
  if (feet[hand] !== 'lowest') return [];
  const measure: Contact['measure'] = (body, into) => {
    into.push(Math.min(body[hand].heel.y, body[hand].ball.y));
  };
  return [{ part: 'foot', hand, on: 'floor', measure }];
}

/** How far each contact is off, in the order of the contacts. */
export function measured(contacts: readonly Contact[], body: Skeleton): readonly number[] {
  const all: number[] = [];
  for (const contact of contacts) contact.measure(body, all);
  return all;
}

/** What is off by more than a length, and what has gone through the floor or a wall by more. */
export function gapsBeyond(
  least: number,
  body: Skeleton,
  intent: Intent,
  scene: Scene,
): readonly Gap[] {
  const open = contactsOf(intent, scene).flatMap(({ part, hand, on, measure }) => {
    const all: number[] = [];
    measure(body, all);
    return all.map((by) => ({ part, hand, on, by }));
  });
  const through = BODY_POINTS.flatMap(({ at, flesh, part, hand }) =>
    (['floor', ...WALLS] as const).flatMap((on) => {
      const level = scene[on];
      const by = level === null ? 0 : gap(at(body), flesh, on, level);
      return by < 0 ? [{ part, hand, on, by }] : [];
    }),
  );
  return [...open, ...through].filter(({ by }) => Math.abs(by) > least);
}

/** The scene with walls, frames and rails where the poses touch them. */
export function withPutUp(
  scene: Scene,
  poses: readonly { readonly intent: Intent; readonly body: Skeleton }[],
): Scene {
  const touched = PUT_UP.flatMap((name) => {
    if (scene[name] !== null) return [];
    const places = poses.flatMap(({ intent, body }) => {
      const touch = intent.touches.find(({ surface }) => surface === name);
      return touch ? [putUpAt(touch.at(body), touch.flesh, name)] : [];
    });
    return places.length > 0 ? [[name, places[0]]] : [];
  });
  return { ...scene, ...Object.fromEntries(touched) };
}
