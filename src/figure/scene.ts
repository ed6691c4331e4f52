// What stands around the body, and how far a point of it is from a surface.
import { HEIGHTS } from './body.ts';
import type { Point } from './space.ts';

/** Level ground at some height, a wall in front of the body, or one behind it. */
export type Surface = 'floor' | 'seat' | 'worktop' | 'step' | 'wall-ahead' | 'wall-behind';

/** Heights of level surfaces and places of walls, in statures; a wall is null until a pose has put it up. */
export interface Scene {
  readonly floor: number;
  readonly seat: number;
  readonly worktop: number;
  readonly step: number;
  readonly 'wall-ahead': number | null;
  readonly 'wall-behind': number | null;
}

export const WALLS = ['wall-ahead', 'wall-behind'] as const;

export const BARE_SCENE: Scene = {
  floor: 0,
  seat: HEIGHTS.seat,
  worktop: HEIGHTS.worktop,
  step: HEIGHTS.step,
  'wall-ahead': null,
  'wall-behind': null,
};

/** How far a point with its flesh is from a surface; below 0 it has gone through. */
export function gap(at: Point, flesh: number, surface: Surface, level: number): number {
  if (surface === 'wall-ahead') return level - at.x - flesh;
  if (surface === 'wall-behind') return at.x - level - flesh;
  return at.y - level - flesh;
}

/** Where a wall has to stand for a point with its flesh to touch it. */
export function wallAt(at: Point, flesh: number, surface: Surface): number {
  return at.x + (surface === 'wall-ahead' ? flesh : -flesh);
}
