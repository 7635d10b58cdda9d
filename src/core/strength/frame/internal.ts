/** Forces in a section of a member on the part before it, exerted by the part after it, local axes. */
export interface SectionForces {
  /** N, tension positive [N]. */
  readonly normal: number;
  /** Shear forces along y and z [N]. */
  readonly shearY: number;
  readonly shearZ: number;
  /** Torque about x [N·m]. */
  readonly torque: number;
  /** Bending moments about y and z [N·m]. */
  readonly momentY: number;
  readonly momentZ: number;
}

/**
 * Forces inside a uniformly loaded member from those at its start.
 * @param ends twelve end forces a member, exerted by the joints, local axes [N], [N·m]
 * @param load w, three a member: load per length, local axes [N/m]
 * @param x from the start [m], 0 to L
 * @param member which of the members in `ends` and `load`
 * @source derived, equilibrium of the part from 0 to x
 */
export function sectionForces(ends: Float64Array, load: Float64Array, x: number, member = 0): SectionForces {
  const f = member * 12;
  const w = member * 3;
  const fy = ends[f + 1]!;
  const fz = ends[f + 2]!;
  const wy = load[w + 1]!;
  const wz = load[w + 2]!;
  return {
    normal: -(ends[f]! + load[w]! * x),
    shearY: -(fy + wy * x),
    shearZ: -(fz + wz * x),
    torque: -ends[f + 3]!,
    momentY: -(ends[f + 4]! + fz * x + (wz * x ** 2) / 2),
    momentZ: -(ends[f + 5]! - fy * x - (wy * x ** 2) / 2),
  };
}
