// What stands around the body, and how far a point of it is from a surface.
import { DEPTHS, HEIGHTS } from './body.ts';
import type { Point } from './space.ts';

/** Walls around the body, which nothing goes through. */
export const WALLS = ['wall-ahead', 'wall-behind', 'wall-right', 'wall-left'] as const;

/** What stands where a pose first touches it. */
export const PUT_UP = [...WALLS, 'door-frame', 'rail'] as const;

/** Level ground at some height, or what a pose puts up. */
export type Surface = 'floor' | 'seat' | 'worktop' | 'step' | (typeof PUT_UP)[number];

/** Heights of level surfaces and places of the others, in statures; null until a pose has put it up. */
export interface Scene extends Readonly<Record<(typeof PUT_UP)[number], number | null>> {
  readonly floor: number;
  readonly seat: number;
  readonly worktop: number;
  readonly step: number;
}

export const BARE_SCENE: Scene = {
  floor: 0,
  seat: HEIGHTS.seat,
  worktop: HEIGHTS.worktop,
  step: HEIGHTS.step,
  'wall-ahead': null,
  'wall-behind': null,
  'wall-right': null,
  'wall-left': null,
  'door-frame': null,
  rail: null,
};

/** How steeply a handrail goes up: as stairs with a tread of 28 cm. */
export const RAIL_SLOPE = HEIGHTS.step / DEPTHS.tread;

/** How far a point with its flesh is from a surface; below 0 it has gone through. */
export function gap(at: Point, flesh: number, surface: Surface, level: number): number {
  switch (surface) {
    case 'wall-ahead':
    case 'door-frame':
      return level - at.x - flesh;
    case 'wall-behind':
      return at.x - level - flesh;
    case 'wall-right':
      return level - at.z - flesh;
    case 'wall-left':
      return at.z - level - flesh;
    case 'rail':
      return at.y - RAIL_SLOPE * at.x - level - flesh;
    default:
      return at.y - level - flesh;
  }
}

const AHEAD: ReadonlySet<Surface> = new Set(['wall-ahead', 'wall-right', 'door-frame'] as const);

/** Where a surface has to be for a point with its flesh to touch it. */
export function putUpAt(at: Point, flesh: number, surface: Surface): number {
  const off = gap(at, flesh, surface, 0);
  return AHEAD.has(surface) ? -off : off;
}
