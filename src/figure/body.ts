// The measures of the drawn body, as fractions of stature.
// Lengths: Drillis R, Contini R, Body Segment Parameters, New York University 1966, as in Winter DA,
// Biomechanics and Motor Control of Human Movement, 4th ed. 2009, fig. 4.1. Mean adults: fine for
// pictures, never for measurement.

export const LENGTHS = {
  head: 0.13,
  neck: 0.052,
  trunk: 0.288,
  upperArm: 0.186,
  forearm: 0.146,
  hand: 0.108,
  thigh: 0.245,
  shank: 0.246,
  footHeight: 0.039,
  foot: 0.152,
} as const;

export const BREADTHS = { halfShoulder: 0.129, hip: 0.191, chest: 0.174, foot: 0.055 } as const;

/** The trunk bends in two places, so that it has three pieces of equal length. */
export const TRUNK_PIECE = LENGTHS.trunk / 3;

// Where joints lie inside the breadths, and how thick the flesh is around them: measured from no
// table, chosen so that the outlines look like a body.
export const HALF_HIPS = 0.05;
/** From the middle to the shoulder joint; with the flesh around it, half the shoulder breadth. */
export const COLLAR_BONE = 0.103;
export const HEEL_BEHIND = 0.045;
export const BALL_AHEAD = 0.062;

/** Flesh around points that can touch something. */
export const FLESH = {
  hip: 0.056,
  waist: 0.05,
  chest: 0.058,
  shoulder: BREADTHS.halfShoulder - COLLAR_BONE,
  head: 0.056,
  elbow: 0.021,
  wrist: 0.014,
  fingers: 0.008,
  hipJoint: BREADTHS.hip / 2 - HALF_HIPS,
  knee: 0.031,
  ankle: 0.02,
} as const;

/** Shares of body mass, with the trunk's middle for its point: Dempster, as in Winter 2009, table 4.1 (from memory). */
export const MASS = {
  trunk: 0.497,
  head: 0.081,
  upperArm: 0.028,
  forearmAndHand: 0.022,
  thigh: 0.1,
  shank: 0.0465,
  foot: 0.0145,
} as const;

/** A common seat of 43 cm, a worktop of 90 cm, a table of 73 cm and a stair of 17 cm, for a body of 1.70 m. */
export const HEIGHTS = {
  seat: 0.253,
  worktop: 0.53,
  table: 0.43,
  step: 0.1,
  chairBack: 0.53,
} as const;

/** A tread of 28 cm. */
export const DEPTHS = { tread: 0.165 } as const;
