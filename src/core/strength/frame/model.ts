import type { Point3 } from '../../geometry/index.ts';

/** Movements of a node: displacements along and rotations about the axes, in the order of all vectors of six. */
export const DIRECTIONS = ['ux', 'uy', 'uz', 'rx', 'ry', 'rz'] as const;

export type Direction = (typeof DIRECTIONS)[number];

/** A value for some of the directions: [m], [N/m] … for u, [rad], [N·m/rad] … for r. */
export type ByDirection = Readonly<Partial<Record<Direction, number>>>;

/**
 * A straight prismatic member. Local x runs from `from` to `to`, local y toward `up`, z = x × y.
 * Material and section are constant along it; the line between the nodes is the line of centroids.
 */
export interface FrameMember {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  /** E [Pa], > 0. */
  readonly youngsModulus: number;
  /** G [Pa], > 0. */
  readonly shearModulus: number;
  /** A [m²], > 0. */
  readonly area: number;
  /** Iy, bending in the local x-z plane [m⁴], > 0. */
  readonly secondMomentY: number;
  /** Iz, bending in the local x-y plane [m⁴], > 0. */
  readonly secondMomentZ: number;
  /** J, Saint-Venant torsion [m⁴], > 0. */
  readonly torsionConstant: number;
  /** Effective shear areas for forces along local y and z [m²], > 0; left out: no shear deformation. */
  readonly shearAreas?: readonly [number, number];
  /** Direction in the local x-y plane on the +y side, any length; left out: Z, for a member along Z: X. */
  readonly up?: Point3;
  /** Movements of the member's ends, in local axes, that its joints do not hold. */
  readonly releases?: { readonly from?: readonly Direction[]; readonly to?: readonly Direction[] };
  /** ρ [kg/m³], ≥ 0; left out: no mass. */
  readonly density?: number;
}

export interface FrameSupport {
  readonly node: string;
  /** Directions that are held, in global axes. */
  readonly fixed: readonly Direction[];
  /** Stiffness to the ground in directions that are not fixed [N/m], [N·m/rad]; ≥ 0. */
  readonly springs?: ByDirection;
}

/** `follower` moves with `leader` as one stiff body: a plate, a bracket, an engine on its bolts. */
export interface RigidLink {
  readonly leader: string;
  readonly follower: string;
}

/** A lump of mass at a node; for a body away from the frame use a node at its center and a rigid link. */
export interface FrameMass {
  readonly node: string;
  /** [kg], ≥ 0. */
  readonly mass: number;
  /** About the node, global axes: Ixx, Iyy, Izz, Ixy, Iyz, Ixz as tensor entries [kg·m²]. */
  readonly inertia?: readonly [number, number, number, number, number, number];
}

export interface FrameModel {
  /** Position of each node by its name [m]. */
  readonly nodes: Readonly<Record<string, Point3>>;
  readonly members: readonly FrameMember[];
  readonly supports: readonly FrameSupport[];
  readonly links?: readonly RigidLink[];
  readonly masses?: readonly FrameMass[];
}

/** One load case. All loads at one place add up. */
export interface FrameLoads {
  /** Force [N] and moment [N·m] on a node, global axes. */
  readonly nodes?: readonly NodeLoad[];
  /** Uniform load on the whole of a member. */
  readonly members?: readonly MemberLoad[];
  /** Movements forced on fixed directions of supports [m], [rad]. */
  readonly settlements?: readonly Settlement[];
}

export interface NodeLoad {
  readonly node: string;
  readonly force?: Point3;
  readonly moment?: Point3;
}

export interface MemberLoad {
  readonly member: string;
  /** Force per length of the member, not of its projection [N/m]. */
  readonly w: Point3;
  /** Axes of `w`; left out: global. */
  readonly axes?: 'global' | 'local';
}

export interface Settlement {
  readonly node: string;
  readonly by: ByDirection;
}
