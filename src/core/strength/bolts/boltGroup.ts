import type { Force, Length, Torque } from '../../quantity/index.ts';

/** A point or a force in the plane of a joint. */
export type InPlane<Q extends number> = readonly [x: Q, y: Q];

/**
 * Force on each bolt of a group of equal bolts under a force through `at` and a moment, in the plane of the joint:
 * F/n, and M·r/Σr² across the radius from the group's center.
 * @returns force on each bolt [N], in the order given
 * @source shigley-9, section 8-12, shear joints with eccentric loading
 */
export function groupForces(
  bolts: readonly InPlane<Length>[],
  force: InPlane<Force>,
  at: InPlane<Length>,
  moment = 0 as Torque,
): readonly InPlane<Force>[] {
  const n = bolts.length;
  const center = [0, 1].map((k) => bolts.reduce((sum, bolt) => sum + bolt[k]!, 0) / n);
  const [cx, cy] = center as [number, number];
  const polar = bolts.reduce((sum, [x, y]) => sum + (x - cx) ** 2 + (y - cy) ** 2, 0);
  const turning = moment + (at[0] - cx) * force[1] - (at[1] - cy) * force[0];
  return bolts.map(([x, y]) => {
    const swing = polar > 0 ? turning / polar : 0;
    return [(force[0] / n - swing * (y - cy)) as Force, (force[1] / n + swing * (x - cx)) as Force];
  });
}

/**
 * Pull on each bolt of a bracket that a moment tips about an edge: Fi = M·li/Σl², l from that edge.
 * @source bhandari, section 7.9, eccentric load perpendicular to the bolts
 */
export function tippingForces(distances: readonly Length[], moment: Torque): readonly Force[] {
  const sum = distances.reduce((total, l) => total + l * l, 0);
  return distances.map((l) => ((moment * l) / sum) as Force);
}

/** Area of a bolt in pull and shear by maximum shear: √((Ft/2)² + Fs²)/τ [m²]. @source bhandari, example 7.5 */
export const areaByMaxShear = (pull: Force, shear: Force, allowable: number): number =>
  Math.hypot(pull / 2, shear) / allowable;
