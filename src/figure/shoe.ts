// A shoe, as seen: its flat sole says at once which way a body faces. Measures in statures, chosen by
// eye but for the length and breadth of the foot.
import { BALL_AHEAD, BREADTHS, HEEL_BEHIND, LENGTHS } from './body.ts';
import type { Camera } from './camera.ts';
import { ellipsoid, fewer, hull } from './outline.ts';
import { roundedPath } from './path.ts';
import type { Limbs } from './skeleton.ts';
import { after, along, type Frame, type Point, point, turnZxy } from './space.ts';

/** A shoe with a flat sole; the toes are bent up where the ground is in their way. */
export function shoePath({ ankle, foot, shank, ball }: Limbs, camera: Camera): string {
  const sole = -LENGTHS.footHeight;
  const at = (x: number, y: number, z: number) => camera(along(ankle, foot, point(x, y, z)));
  const half = BREADTHS.foot / 2;
  const both = (x: number, y: number, z: number) => [at(x, y, z), at(x, y, -z)];
  const rear = [
    ...both(-HEEL_BEHIND, sole, 0.014),
    ...both(-HEEL_BEHIND - 0.003, sole + 0.014, 0.012),
    ...both(-HEEL_BEHIND + 0.006, sole + 0.034, 0.014),
    ...both(-0.02, 0.016, 0.018),
    ...both(0.022, 0.012, 0.018),
    ...both(0.05, -0.006, 0.02),
    ...both(BALL_AHEAD, -0.016, 0.02),
    ...both(BALL_AHEAD, sole, half),
  ];
  const toes = after(foot, turnZxy(toeBend(foot, ball), 0, 0));
  const front = (x: number, y: number, z: number) => camera(along(ball, toes, point(x, y, z)));
  const tip = LENGTHS.foot - HEEL_BEHIND - BALL_AHEAD;
  const fore = [
    at(BALL_AHEAD - 0.012, -0.012, 0.018),
    at(BALL_AHEAD - 0.012, -0.012, -0.018),
    ...[half, -half].map((z) => front(-0.004, 0, z)),
    ...[0.022, -0.018].map((z) => front(tip - 0.008, 0, z)),
    ...[0.012, -0.012].map((z) => front(tip, 0.006, z)),
    ...[0.014, -0.014].map((z) => front(tip - 0.005, 0.016, z)),
  ];
  const heel = [...ellipsoid(ankle, shank, point(0.019, 0.02, 0.019), camera)];
  return roundedPath(fewer(hull([...rear, ...heel])), 0.012) + roundedPath(fewer(hull(fore)), 0.01);
}

const MOST_TOE_BEND = 60;

/** By how many degrees the ground bends the toes up: only where the ball of the foot is on it. */
function toeBend(foot: Frame, ball: Point): number {
  const isOnGround = ball.y < 0.02 && foot.x.x > 0.3;
  if (!isOnGround || foot.x.y >= 0) return 0;
  return Math.min(MOST_TOE_BEND, (Math.asin(Math.min(1, -foot.x.y)) * 180) / Math.PI);
}
