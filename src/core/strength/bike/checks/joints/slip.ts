import type { Force, Length } from '../../../../quantity/index.ts';
import { groupForces, type InPlane } from '../../../bolts/boltGroup.ts';
import type { LoadCase } from '../../loads/caseTypes.ts';

const GRAVITY = 9.80665;

/**
 * Tension that a bolt must be set to so that its faces hold F across it by friction while P pulls on it: F/(ks·µ) + P [N].
 * It stays finite where P takes all of the tension, and the faces could hold nothing.
 * @source en-1993-1-8, section 3.9, without its partial factor
 */
export const clampNeeded = (across: number, pull: number, friction: number, holeFactor: number): number =>
  across / (holeFactor * friction) + pull;

/** Most loaded bolt under the engine's pulls: across it as they lie off the bolts' middle, along it by lift and lever [N]. */
export function boltPulls(
  one: LoadCase,
  engine: { readonly mass: number },
  points: readonly { readonly x: number; readonly y: number; readonly z: number }[],
): { readonly across: number; readonly along: number } {
  const pulls = one.applied.filter(({ what }) => what.endsWith(' on engine'));
  const bolts = points.map(({ x, y }): InPlane<Length> => [x as Length, y as Length]);
  const base = points.reduce((sum, { z }) => sum + z, 0) / points.length;
  const middle = points.reduce((sum, { x }) => sum + x, 0) / points.length;
  const each = points.map(() => [0, 0] as [number, number]);
  let tilt = 0;
  let lift = -engine.mass * GRAVITY;
  for (const { force, at } of pulls) {
    groupForces(bolts, [force.x as Force, force.y as Force], [at.x as Length, at.y as Length]).forEach(
      ([x, y], i) => {
        each[i]![0] += x;
        each[i]![1] += y;
      },
    );
    tilt += (at.z - base) * force.x - (at.x - middle) * force.z;
    lift += force.z;
  }
  const reach = points.reduce((sum, { x }) => sum + (x - middle) ** 2, 0);
  const far = Math.max(...points.map(({ x }) => Math.abs(x - middle)));
  const along = Math.max(0, lift / points.length + (reach > 0 ? (Math.abs(tilt) * far) / reach : 0));
  return { across: Math.max(...each.map(([x, y]) => Math.hypot(x, y))), along };
}
