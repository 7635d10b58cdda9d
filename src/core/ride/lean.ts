import { STANDARD_GRAVITY } from './whippleFromBuild.ts';

/**
 * Lean of a thin bike in a steady turn: tan φ = v²/(g·r) [rad].
 * @param speed v [m/s]
 * @param radius r, of the turn [m], > 0
 * @source derived, moments about the contact line
 */
export const turnLean = (speed: number, radius: number): number =>
  Math.atan2(speed ** 2, STANDARD_GRAVITY * radius);

/**
 * What a round tread adds to the lean of a thin bike: asin(t·sin φ/(h − t)) [rad]; the contact moves to the inside.
 * @param lean φ of the thin bike [rad]
 * @param crown t, crown radius of the tread [m], 0 ≤ t < h/2
 * @param height h, center of mass upright [m], > 0
 * @source derived, line from contact to center of mass
 */
export const crownLean = (lean: number, crown: number, height: number): number =>
  Math.asin((crown * Math.sin(lean)) / (height - crown));

/** A point or the middle of a round part of the bike, upright. */
export interface LowPart {
  /** Across from the center plane, to either side [m]. */
  readonly across: number;
  /** z, above the ground [m]. */
  readonly height: number;
  /** Radius of a round part [m]; 0: a point. */
  readonly radius: number;
  /** t, crown radius of the tires there [m]. */
  readonly crown: number;
}

/**
 * Lean at which a part touches the ground: (z − t)·cos φ − y·sin φ + t = radius, the bike rolling over on its round
 * tread. Undefined when it never does, 0 when it already does upright.
 * @returns φ [rad], 0 ≤ φ ≤ π/2
 * @source derived, height of a point of a leaning bike
 */
export function contactLean({ across, height, radius, crown }: LowPart): number | undefined {
  if (height <= radius) return 0;
  const up = height - crown;
  const out = Math.abs(across);
  const span = Math.hypot(up, out);
  const cosine = (radius - crown) / span;
  if (!(Math.abs(cosine) <= 1)) return undefined;
  const angle = Math.acos(cosine) - Math.atan2(out, up);
  return angle >= 0 && angle <= Math.PI / 2 ? angle : undefined;
}
