import { cross3, dot3, length3, type Point3, scale3, subtract3, unit3 } from '../../geometry/index.ts';

/** Rows are the local x, y and z of a member in global axes; nine numbers, row by row. */
export type Axes = Float64Array;

/** sin of the angle between `up` and the member below which they do not span a plane. */
const PARALLEL = 1e-6;

const UP: Point3 = { x: 0, y: 0, z: 1 };
const FORWARD: Point3 = { x: 1, y: 0, z: 0 };

/**
 * Local axes of a member: x along it, y in the plane of x and `up` on the side of `up`, z = x × y.
 * Without `up` global Z serves, or global X for a member along Z.
 * @param from start [m]
 * @param to end [m]
 * @returns undefined when `up` is along the member or has no length
 * @source derived, orthogonal part of `up`
 */
export function memberAxes(from: Point3, to: Point3, up?: Point3): Axes | undefined {
  const x = unit3(subtract3(to, from));
  const y = up === undefined ? (across(UP, x) ?? across(FORWARD, x)) : across(up, x);
  if (y === undefined) return undefined;
  const z = cross3(x, y);
  return Float64Array.of(x.x, x.y, x.z, y.x, y.y, y.z, z.x, z.y, z.z);
}

function across(up: Point3, x: Point3): Point3 | undefined {
  const part = subtract3(up, scale3(x, dot3(up, x)));
  return length3(part) > PARALLEL * length3(up) ? unit3(part) : undefined;
}

/** R·v of the three numbers from `at` in `v`, put in place from `to` in `out`; v and out may be one. */
export function rotateToLocal(r: Axes, v: Float64Array, at: number, out: Float64Array, to: number): void {
  const x = v[at]!;
  const y = v[at + 1]!;
  const z = v[at + 2]!;
  out[to] = r[0]! * x + r[1]! * y + r[2]! * z;
  out[to + 1] = r[3]! * x + r[4]! * y + r[5]! * z;
  out[to + 2] = r[6]! * x + r[7]! * y + r[8]! * z;
}

/** Rᵀ·v, as {@link rotateToLocal}. */
export function rotateToGlobal(r: Axes, v: Float64Array, at: number, out: Float64Array, to: number): void {
  const x = v[at]!;
  const y = v[at + 1]!;
  const z = v[at + 2]!;
  out[to] = r[0]! * x + r[3]! * y + r[6]! * z;
  out[to + 1] = r[1]! * x + r[4]! * y + r[7]! * z;
  out[to + 2] = r[2]! * x + r[5]! * y + r[8]! * z;
}

/** Turns a 12 × 12 member matrix from local to global axes in its place, block by block: Rᵀ·k·R. */
export function matrixToGlobal(r: Axes, k: Float64Array): void {
  // k·R: each row is four vectors to turn back by Rᵀ.
  for (let at = 0; at < 144; at += 3) rotateToGlobal(r, k, at, k, at);
  for (let block = 0; block < 144; block += 36)
    for (let at = block; at < block + 12; at++) {
      const x = k[at]!;
      const y = k[at + 12]!;
      const z = k[at + 24]!;
      k[at] = r[0]! * x + r[3]! * y + r[6]! * z;
      k[at + 12] = r[1]! * x + r[4]! * y + r[7]! * z;
      k[at + 24] = r[2]! * x + r[5]! * y + r[8]! * z;
    }
}
