import { type ShaftMesh, type ShaftPiece, stationAt } from './mesh.ts';
import type { Shaft } from './shaft.ts';

/** Shear and bending moment at a cut: what the part left of it carries over. */
export interface Cut {
  /** V, sum of the forces left of the cut [N]. */
  readonly shear: number;
  /** M, positive where it bends the shaft towards its positive axis at both ends [N·m]. */
  readonly moment: number;
}

/** Force and couple at each station in one plane. */
export interface StationLoads {
  readonly force: Float64Array;
  readonly couple: Float64Array;
}

/** A moment about y turns the shaft the other way in the x-z plane. */
export function stationLoads(shaft: Shaft, mesh: ShaftMesh, plane: 0 | 1): StationLoads {
  const force = new Float64Array(mesh.stations.length);
  const couple = new Float64Array(mesh.stations.length);
  for (const load of shaft.loads) {
    const i = stationAt(mesh, load.at);
    force[i]! += load.force?.[plane] ?? 0;
    couple[i]! += plane === 0 ? (load.moment?.[1] ?? 0) : -(load.moment?.[0] ?? 0);
  }
  return { force, couple };
}

/** The cut at the end of a piece. @source derived, statics */
export const acrossPiece = (
  { shear, moment }: Cut,
  { length }: Pick<ShaftPiece, 'length'>,
  q: number,
): Cut => ({
  shear: shear + q * length,
  moment: moment + shear * length + (q * length * length) / 2,
});

/** The cut just right of a station. @source derived, statics */
export const acrossStation = ({ shear, moment }: Cut, loads: StationLoads, station: number): Cut => ({
  shear: shear + loads.force[station]!,
  moment: moment - loads.couple[station]!,
});

/** Force and couple about `from` of all that acts on the stations and pieces between, ends left out or not. */
export function resultant(
  mesh: ShaftMesh,
  loads: StationLoads,
  plane: 0 | 1,
  of: {
    readonly from: number;
    readonly firstStation: number;
    readonly lastStation: number;
    readonly firstPiece: number;
    readonly lastPiece: number;
  },
): { readonly force: number; readonly couple: number } {
  let [force, couple] = [0, 0];
  for (let i = of.firstStation; i <= of.lastStation; i += 1) {
    force += loads.force[i]!;
    couple += loads.couple[i]! + loads.force[i]! * (mesh.stations[i]! - of.from);
  }
  for (let n = of.firstPiece; n <= of.lastPiece; n += 1) {
    const { start, length, q } = mesh.pieces[n]!;
    force += q[plane] * length;
    couple += q[plane] * length * (start + length / 2 - of.from);
  }
  return { force, couple };
}
