import type { Force, Length, Pressure, Stiffness, Torque } from '../../quantity/index.ts';

/** Components along y and z, across the shaft; moments and slopes are in the plane or about the axis named beside. */
export type Across<Q extends number> = readonly [y: Q, z: Q];

/** A length of shaft of one diameter. */
export interface ShaftSegment {
  /** Start along the shaft [m]. */
  readonly from: Length;
  /** End along the shaft [m], > `from`. */
  readonly to: Length;
  /** d, outside diameter [m], > 0. */
  readonly diameter: Length;
  /** di, bore [m], < `diameter`; left out: solid. */
  readonly bore?: Length;
}

/** A bearing or another place that holds the shaft across, free to tilt and to turn. */
export interface ShaftSupport {
  /** Place along the shaft [m]. */
  readonly at: Length;
  /** k, of bearing and seat together, alike in y and z [N/m]; left out: rigid. */
  readonly stiffness?: Stiffness;
  /** How far the bearing's own center lies off the line of centers [m]; left out: on it. */
  readonly offset?: Across<Length>;
  /** Held against tilting as well: an axle welded or shrunk into a stiff plate. */
  readonly clamped?: boolean;
}

export interface ShaftLoad {
  /** Place along the shaft [m]. */
  readonly at: Length;
  /** Force on the shaft along y and z [N]. */
  readonly force?: Across<Force>;
  /** Moment on the shaft about the y and z axes, right-hand rule [N·m]: a moment about z bends in the x-y plane. */
  readonly moment?: Across<Torque>;
  /** Torque on the shaft about x, right-hand rule [N·m]. */
  readonly torque?: Torque;
}

export interface DistributedLoad {
  readonly from: Length;
  readonly to: Length;
  /** q, load per length along y and z [N/m]. */
  readonly q: Across<Stiffness>;
}

/** A shaft or axle along x with all that acts on it. */
export interface Shaft {
  /** In any order; together without gap or overlap. */
  readonly segments: readonly ShaftSegment[];
  readonly supports: readonly ShaftSupport[];
  readonly loads: readonly ShaftLoad[];
  readonly distributed?: readonly DistributedLoad[];
  /** E, modulus of elasticity [Pa]. */
  readonly elasticModulus: Pressure;
  /** G, shear modulus [Pa]. */
  readonly shearModulus: Pressure;
  /** Count the deflection from shear too; matters for thick shafts between near bearings. */
  readonly shearDeflection?: boolean;
}

/** Places nearer than this are one [m]. */
export const SAME_PLACE = 1e-9 as Length;

/** Cross-section of a segment. */
export interface ShaftSection {
  /** A [m²]. */
  readonly area: number;
  /** I, alike about y and z [m⁴]. */
  readonly secondMoment: number;
  /** D, for stress [m]. */
  readonly diameter: number;
  readonly bore: number;
}

export function sectionOf({ diameter, bore = 0 as Length }: ShaftSegment): ShaftSection {
  return {
    area: (Math.PI / 4) * (diameter ** 2 - bore ** 2),
    secondMoment: (Math.PI / 64) * (diameter ** 4 - bore ** 4),
    diameter,
    bore,
  };
}

/**
 * Shear coefficient κ of a solid or hollow round: κ = 6(1 + ν)(1 + m²)²/((7 + 6ν)(1 + m²)² + (20 + 12ν)m²), m = di/d.
 * @source cowper-1966, hollow circle; from memory
 */
export function shearCoefficient({ diameter, bore }: ShaftSection, poisson: number): number {
  const m = (bore / diameter) ** 2;
  const ring = (1 + m) ** 2;
  return (6 * (1 + poisson) * ring) / ((7 + 6 * poisson) * ring + (20 + 12 * poisson) * m);
}
