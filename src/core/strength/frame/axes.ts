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

/** Vectors of three, one after the other, from global to local axes: R·v. */
export function toLocalAxes(axes: Axes, v: Float64Array): Float64Array {
  const out = new Float64Array(v.length);
  for (let at = 0; at < v.length; at += 3) rotateToLocal(axes, v, at, out, at);
  return out;
}

/** Vectors of three, one after the other, from local to global axes: Rᵀ·v. */
export function toGlobalAxes(axes: Axes, v: Float64Array): Float64Array {
  const out = new Float64Array(v.length);
  for (let at = 0; at < v.length; at += 3) rotateToGlobal(axes, v, at, out, at);
  return out;
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

/** A 12 × 12 member matrix from local to global axes, block by block: Rᵀ·k·R. */
export function matrixToGlobal(axes: Axes, k: Float64Array): Float64Array {
  const half = new Float64Array(144);
  // k·R: each row is four vectors to turn back by Rᵀ.
  for (let row = 0; row < 12; row++)
    half.set(toGlobalAxes(axes, k.subarray(row * 12, row * 12 + 12)), row * 12);
  const out = new Float64Array(144);
  for (let block = 0; block < 12; block += 3)
    for (let i = 0; i < 3; i++)
      for (let column = 0; column < 12; column++)
        out[(block + i) * 12 + column] =
          axes[i]! * half[block * 12 + column]! +
          axes[3 + i]! * half[(block + 1) * 12 + column]! +
          axes[6 + i]! * half[(block + 2) * 12 + column]!;
  return out;
}
