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
 * @param ends twelve end forces exerted by the joints, local axes [N], [N·m]
 * @param load w, load per length, local axes [N/m]
 * @param x from the start [m], 0 to L
 * @source derived, equilibrium of the part from 0 to x
 */
export function sectionForces(ends: Float64Array, load: Float64Array, x: number): SectionForces {
  const [fx, fy, fz] = [ends[0]!, ends[1]!, ends[2]!];
  const [mx, my, mz] = [ends[3]!, ends[4]!, ends[5]!];
  const [wx, wy, wz] = [load[0]!, load[1]!, load[2]!];
  return {
    normal: -(fx + wx * x),
    shearY: -(fy + wy * x),
    shearZ: -(fz + wz * x),
    torque: -mx,
    momentY: -(my + fz * x + (wz * x ** 2) / 2),
    momentZ: -(mz - fy * x - (wy * x ** 2) / 2),
  };
}
