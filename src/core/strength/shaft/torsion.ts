import type { Angle, Length, Torque } from '../../quantity/index.ts';
import type { ShaftMesh } from './mesh.ts';
import { SAME_PLACE, type Shaft } from './shaft.ts';

/** Shaft between two neighboring places where torque goes in or out. */
export interface TorsionPiece {
  readonly from: Length;
  readonly to: Length;
  /** Torque on the left part's face about x [N·m]. */
  readonly torque: Torque;
  /** Twist of the right end against the left one, T·L/(G·J) [rad]. */
  readonly twist: Angle;
}

/** T on the left part's face: minus the sum of the torques left of `x` [N·m]. @source derived, statics */
export const torqueBetween = (shaft: Shaft, x: number): number =>
  shaft.loads.reduce((sum, { at, torque = 0 }) => (at < x ? sum - torque : sum), 0);

export function torsionPieces(shaft: Shaft, mesh: ShaftMesh): readonly TorsionPiece[] {
  const stations = shaft.loads
    .filter(({ torque = 0 }) => torque !== 0)
    .map(({ at }) => at)
    .sort((a, b) => a - b)
    .filter((at, i, all) => i === 0 || at - all[i - 1]! > SAME_PLACE);
  return stations.slice(1).map((to, i) => {
    const from = stations[i]!;
    const torque = torqueBetween(shaft, (from + to) / 2);
    const twist = mesh.pieces
      .filter(({ start, length }) => start + length / 2 > from && start + length / 2 < to)
      .reduce(
        (sum, { length, section }) =>
          sum + (torque * length) / (shaft.shearModulus * 2 * section.secondMoment),
        0,
      );
    return { from, to, torque: torque as Torque, twist: twist as Angle };
  });
}
