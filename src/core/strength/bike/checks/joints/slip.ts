import type { Force, Length } from '../../../../quantity/index.ts';
import { groupForces, type InPlane } from '../../../bolts/boltGroup.ts';
import { slipLoad } from '../../../bolts/boltJoint.ts';
import type { LoadCase } from '../../loads/caseTypes.ts';
import type { BoltSetting } from './boltSetting.ts';

const GRAVITY = 9.80665;

/** In the plane of the plate: the pull as it lies off the bolts' middle; its lift by lever loosens the clamp. */
export function slipShare(
  one: LoadCase,
  engine: {
    readonly mass: number;
    readonly center: { readonly x: number; readonly y: number; readonly z: number };
  },
  points: readonly { readonly x: number; readonly y: number; readonly z: number }[],
  bolt: BoltSetting,
  holeFactor: number,
): { readonly load: number; readonly limit: number } {
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
  const pull = Math.max(0, lift / points.length + (reach > 0 ? (Math.abs(tilt) * far) / reach : 0));
  const clamp = Math.max(0, bolt.preload - pull) as Force;
  const limit = slipLoad({ clamp, friction: bolt.friction, faces: 1, holeFactor });
  return { load: Math.max(...each.map(([x, y]) => Math.hypot(x, y))), limit };
}
