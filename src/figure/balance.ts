// Whether a body that stands on its feet alone is in balance: its centre of mass over its feet.
import { MASS } from './body.ts';
import type { Intent } from './intent.ts';
import { HANDS, type Skeleton } from './skeleton.ts';
import { between, type Point, plus, times } from './space.ts';

const ALL_MASS =
  MASS.trunk +
  MASS.head +
  2 * (MASS.upperArm + MASS.forearmAndHand + MASS.thigh + MASS.shank + MASS.foot);

/** How far forwards the centre of mass is from above the feet that carry, in statures. */
export function offBalance(body: Skeleton, { feet }: Intent): number {
  const under = HANDS.filter((hand) => feet[hand] !== 'free').map((hand) => {
    const { heel, ball, ankle } = body[hand];
    const isRaised = heel.y - ball.y > 0.01;
    return isRaised || feet[hand] === 'toes' ? ball.x : ankle.x + 0.025;
  });
  if (under.length === 0) return 0;
  const middle = under.reduce((sum, one) => sum + one, 0) / under.length;
  return centreOfMass(body).x - middle;
}

// Where along each segment its centre of mass lies: Dempster, as in Winter 2009, table 4.1 (from memory).
function centreOfMass(body: Skeleton): Point {
  let sum = times(between(body.spine[1], body.spine[2], 0.6), MASS.trunk);
  const add = (at: Point, mass: number) => {
    sum = plus(sum, times(at, mass));
  };
  add(body.headMiddle, MASS.head);
  for (const hand of HANDS) {
    const one = body[hand];
    add(between(one.hip, one.knee, 0.433), MASS.thigh);
    add(between(one.knee, one.ankle, 0.433), MASS.shank);
    add(between(one.heel, one.toe, 0.5), MASS.foot);
    add(between(one.shoulder, one.elbow, 0.436), MASS.upperArm);
    add(between(one.elbow, one.wrist, 0.68), MASS.forearmAndHand);
  }
  return times(sum, 1 / ALL_MASS);
}
