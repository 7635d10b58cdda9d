import { rotateToLocal } from './axes.ts';
import type { BeamStiffness } from './beam.ts';
import type { FrameElement } from './element.ts';
import { condenseForces } from './release.ts';

/**
 * Forces that hold both ends of a uniformly loaded member still, exerted by the joints, local axes.
 * Shear deformation changes none of them.
 * @param w load per length in local axes [N/m]
 * @source derived, fixed beam: w·L/2 and w·L²/12
 */
export function fixedEndForces(length: number, w: readonly [number, number, number]): Float64Array {
  const ends = new Float64Array(12);
  addFixedEnds(ends, 0, length, w[0], w[1], w[2]);
  return ends;
}

/**
 * Adds, to twelve forces a member, what holds the ends of loaded members still.
 * @param loads three a member, local axes [N/m]
 */
export function addHeldEnds(
  elements: readonly FrameElement[],
  loads: Float64Array,
  ends: Float64Array,
): void {
  for (let m = 0; m < elements.length; m++) {
    const x = loads[m * 3]!;
    const y = loads[m * 3 + 1]!;
    const z = loads[m * 3 + 2]!;
    if (x === 0 && y === 0 && z === 0) continue;
    const { length, released } = elements[m]!;
    if (released === undefined) addFixedEnds(ends, m * 12, length, x, y, z);
    else {
      const held = condenseForces(released.follow, fixedEndForces(length, [x, y, z]));
      for (let i = 0; i < 12; i++) ends[m * 12 + i] = ends[m * 12 + i]! + held[i]!;
    }
  }
}

/**
 * Adds, to twelve forces a member, what the joints exert on members that follow their movements: k·u, local axes.
 * @param moved six a node, global axes
 */
export function addEndForces(
  elements: readonly FrameElement[],
  moved: Float64Array,
  ends: Float64Array,
): void {
  const u = new Float64Array(12);
  for (let m = 0; m < elements.length; m++) {
    const { from, to, axes, beam, released } = elements[m]!;
    rotateToLocal(axes, moved, from * 6, u, 0);
    rotateToLocal(axes, moved, from * 6 + 3, u, 3);
    rotateToLocal(axes, moved, to * 6, u, 6);
    rotateToLocal(axes, moved, to * 6 + 3, u, 9);
    if (released === undefined) addBeam(beam, u, ends, m * 12);
    else addProduct(released.stiffness, u, ends, m * 12);
  }
}

function addFixedEnds(ends: Float64Array, at: number, length: number, x: number, y: number, z: number): void {
  const half = length / 2;
  const moment = length ** 2 / 12;
  for (let i = at; i <= at + 6; i += 6) {
    ends[i] = ends[i]! - x * half;
    ends[i + 1] = ends[i + 1]! - y * half;
    ends[i + 2] = ends[i + 2]! - z * half;
  }
  ends[at + 4] = ends[at + 4]! + z * moment;
  ends[at + 5] = ends[at + 5]! - y * moment;
  ends[at + 10] = ends[at + 10]! - z * moment;
  ends[at + 11] = ends[at + 11]! + y * moment;
}

/** By the few numbers of the beam: differences of movements first, so that a ride along leaves no rounding. */
function addBeam(
  { stretch, twist, bending }: BeamStiffness,
  u: Float64Array,
  ends: Float64Array,
  at: number,
): void {
  const inXy = bending[0];
  const inXz = bending[1];
  const normal = stretch * (u[0]! - u[6]!);
  const torque = twist * (u[3]! - u[9]!);
  // A turn about y lifts z downhill: the turns of the x-z plane count the other way round.
  const dy = u[1]! - u[7]!;
  const a = u[5]!;
  const b = u[11]!;
  const dz = u[2]! - u[8]!;
  const c = -u[4]!;
  const d = -u[10]!;
  const shearY = inXy.force * dy + inXy.mixed * (a + b);
  const shearZ = inXz.force * dz + inXz.mixed * (c + d);
  ends[at] = ends[at]! + normal;
  ends[at + 1] = ends[at + 1]! + shearY;
  ends[at + 2] = ends[at + 2]! + shearZ;
  ends[at + 3] = ends[at + 3]! + torque;
  ends[at + 4] = ends[at + 4]! - (inXz.mixed * dz + inXz.near * c + inXz.far * d);
  ends[at + 5] = ends[at + 5]! + (inXy.mixed * dy + inXy.near * a + inXy.far * b);
  ends[at + 6] = ends[at + 6]! - normal;
  ends[at + 7] = ends[at + 7]! - shearY;
  ends[at + 8] = ends[at + 8]! - shearZ;
  ends[at + 9] = ends[at + 9]! - torque;
  ends[at + 10] = ends[at + 10]! - (inXz.mixed * dz + inXz.far * c + inXz.near * d);
  ends[at + 11] = ends[at + 11]! + (inXy.mixed * dy + inXy.far * a + inXy.near * b);
}

function addProduct(k: Float64Array, u: Float64Array, ends: Float64Array, at: number): void {
  for (let i = 0; i < 12; i++) {
    let sum = 0;
    for (let j = 0; j < 12; j++) sum += k[i * 12 + j]! * u[j]!;
    ends[at + i] = ends[at + i]! + sum;
  }
}
