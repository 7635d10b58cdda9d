import type { FrameMember } from './model.ts';

/**
 * The two planes of bending: rows of displacement and rotation at both ends, and the sign of the rotation against
 * the slope (a rotation about y lifts z downhill).
 */
export const PLANES = [
  { rows: [1, 5, 7, 11], sign: 1 },
  { rows: [2, 4, 8, 10], sign: -1 },
] as const;

export type Plane = (typeof PLANES)[number];

/** Φ = 12·E·I/(G·As·L²), shear against bending flexibility, in the local x-y and x-z planes [-]; 0 without shear. */
export function shearRatios(member: FrameMember, length: number): readonly [number, number] {
  const { youngsModulus, shearModulus, secondMomentY, secondMomentZ, shearAreas } = member;
  if (shearAreas === undefined) return [0, 0];
  const ratio = (secondMoment: number, shearArea: number) =>
    (12 * youngsModulus * secondMoment) / (shearModulus * shearArea * length ** 2);
  return [ratio(secondMomentZ, shearAreas[0]), ratio(secondMomentY, shearAreas[1])];
}

/**
 * Stiffness of a Timoshenko beam without releases in local axes: 12 × 12, row by row, order
 * [ux uy uz rx ry rz] of the start, then of the end.
 * @param length L [m], > 0
 * @source przemieniecki-1968, section 5.6, from memory
 */
export function beamStiffness(member: FrameMember, length: number): Float64Array {
  const { youngsModulus: e, shearModulus: g, area, secondMomentY, secondMomentZ, torsionConstant } = member;
  const k = new Float64Array(144);
  addBar(k, 0, 6, (e * area) / length);
  addBar(k, 3, 9, (g * torsionConstant) / length);
  const ratios = shearRatios(member, length);
  PLANES.forEach((plane, p) => {
    const phi = ratios[p]!;
    const unit = (e * (p === 0 ? secondMomentZ : secondMomentY)) / (length ** 3 * (1 + phi));
    addPlane(k, plane, {
      force: 12 * unit,
      mixed: 6 * length * unit,
      near: (4 + phi) * length ** 2 * unit,
      far: (2 - phi) * length ** 2 * unit,
    });
  });
  return k;
}

/** Entries of a plane matrix that resists only relative movement of the ends. */
interface PlaneEntries {
  readonly force: number;
  readonly mixed: number;
  readonly near: number;
  readonly far: number;
}

/**
 * Geometric stiffness: what a normal force adds to the stiffness against sideways movement and twist.
 * N·∫v'² dx with the shape of the Timoshenko beam, and N·Ip/A·∫φ'² dx. End moments are left out.
 * @param force N, tension positive [N]
 * @param length L [m]
 * @source przemieniecki-1968, section 15.2, extended to shear by the same integral; derived
 */
export function beamGeometricStiffness(member: FrameMember, length: number, force: number): Float64Array {
  const k = new Float64Array(144);
  const ratios = shearRatios(member, length);
  PLANES.forEach((plane, p) => {
    const phi = ratios[p]!;
    const unit = force / (length * (1 + phi) ** 2);
    addPlane(k, plane, {
      force: (6 / 5 + 2 * phi + phi ** 2) * unit,
      mixed: (length / 10) * unit,
      near: (2 / 15 + phi / 6 + phi ** 2 / 12) * length ** 2 * unit,
      far: -(1 / 30 + phi / 6 + phi ** 2 / 12) * length ** 2 * unit,
    });
  });
  const polar = member.secondMomentY + member.secondMomentZ;
  addBar(k, 3, 9, (force * polar) / (member.area * length));
  return k;
}

function addBar(k: Float64Array, a: number, b: number, stiffness: number): void {
  k[a * 12 + a] = stiffness;
  k[b * 12 + b] = stiffness;
  k[a * 12 + b] = -stiffness;
  k[b * 12 + a] = -stiffness;
}

function addPlane(k: Float64Array, { rows, sign }: Plane, { force, mixed, near, far }: PlaneEntries): void {
  const m = sign * mixed;
  setSymmetric(k, rows, [
    [force, m, -force, m],
    [m, near, -m, far],
    [-force, -m, force, -m],
    [m, far, -m, near],
  ]);
}

/** Puts a 4 × 4 matrix at the rows of one plane. */
export function setSymmetric(
  k: Float64Array,
  rows: readonly number[],
  entries: readonly (readonly number[])[],
): void {
  rows.forEach((row, i) => {
    rows.forEach((column, j) => {
      k[row * 12 + column] = entries[i]![j]!;
    });
  });
}

/**
 * Forces that hold both ends of a uniformly loaded member still, exerted by the joints, local axes.
 * Shear deformation changes none of them.
 * @param w load per length in local axes [N/m]
 * @source derived, fixed beam: w·L/2 and w·L²/12
 */
export function fixedEndForces(length: number, w: readonly [number, number, number]): Float64Array {
  const half = length / 2;
  const moment = length ** 2 / 12;
  const [x, y, z] = w;
  return Float64Array.of(
    ...[-x * half, -y * half, -z * half, 0, z * moment, -y * moment],
    ...[-x * half, -y * half, -z * half, 0, -z * moment, y * moment],
  );
}
