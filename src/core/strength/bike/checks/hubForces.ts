import type { Force } from '../../../quantity/index.ts';
import type { BearingLoad } from '../../bearing/bearingLife.ts';
import type { LoadCase } from '../loads/caseTypes.ts';
import type { BikeFrame } from '../model/frameTypes.ts';

/** What a hub's two bearings push on their axle with: across at each, and along it both together [N]. */
export interface HubForces {
  /** [x, z], left first. */
  readonly radial: readonly [readonly [number, number], readonly [number, number]];
  readonly axial: number;
}

export interface HubInput {
  readonly frame: Pick<BikeFrame, 'wheels'>;
  readonly wheel: 'front' | 'rear';
  readonly one: LoadCase;
  /** From the hub's face to the middle of the bearing [m], < half of the hub. */
  readonly inset: number;
}

/** What one bearing carries, all of the force along the axle on it [N]. */
export const bearingLoad = ({ radial, axial }: HubForces, side: 0 | 1): BearingLoad => ({
  radial: Math.hypot(...radial[side]) as Force,
  axial: Math.abs(axial) as Force,
});

/**
 * Forces of a wheel on the bearings of its hub, which sit `inset` inside its faces: the forces at the faces moved in,
 * with the same sum and moment.
 * @source derived, statics of the hub
 */
export function hubForces({ frame, wheel, one, inset }: HubInput): HubForces {
  const { hub, hubY } = frame.wheels[wheel];
  const sums = hub.map((node) => {
    const sum = { x: 0, y: 0, z: 0 };
    for (const load of one.balanced.loads.nodes ?? []) {
      if (load.node !== node || !load.force) continue;
      sum.x += load.force.x;
      sum.y += load.force.y;
      sum.z += load.force.z;
    }
    return sum;
  });
  const [left, right] = [sums[0]!, sums[1]!];
  const half = (hubY[0] - hubY[1]) / 2;
  const wider = half / (half - inset);
  const moved = (l: number, r: number): readonly [number, number] => {
    const [mean, pair] = [(l + r) / 2, ((l - r) / 2) * wider];
    return [mean + pair, mean - pair];
  };
  const [x, z] = [moved(left.x, right.x), moved(left.z, right.z)];
  return {
    radial: [
      [x[0], z[0]],
      [x[1], z[1]],
    ],
    axial: left.y + right.y,
  };
}
