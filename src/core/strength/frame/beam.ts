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

/** Stiffness of a member in its local axes by the few numbers that it is made of. */
export interface BeamStiffness {
  /** E·A/L [N/m] and G·J/L [N·m/rad]. */
  readonly stretch: number;
  readonly twist: number;
  /** Bending in the local x-y and x-z planes. */
  readonly bending: readonly [PlaneEntries, PlaneEntries];
}

/**
 * Stiffness of a Timoshenko beam without releases.
 * @param length L [m], > 0
 * @source przemieniecki-1968, section 5.6, from memory
 */
export function beamEntries(member: FrameMember, length: number): BeamStiffness {
  const { youngsModulus: e, shearModulus: g, area, secondMomentY, secondMomentZ, torsionConstant } = member;
  const [alongY, alongZ] = shearRatios(member, length);
  return {
    stretch: (e * area) / length,
    twist: (g * torsionConstant) / length,
    bending: [
      planeEntries(e * secondMomentZ, alongY, length),
      planeEntries(e * secondMomentY, alongZ, length),
    ],
  };
}

function planeEntries(rigidity: number, phi: number, length: number): PlaneEntries {
  const unit = rigidity / (length ** 3 * (1 + phi));
  return {
    force: 12 * unit,
    mixed: 6 * length * unit,
    near: (4 + phi) * length ** 2 * unit,
    far: (2 - phi) * length ** 2 * unit,
  };
}

/**
 * Its matrix in local axes: 12 × 12, row by row, order [ux uy uz rx ry rz] of the start, then of the end.
 * @param out filled, and returned
 * @source przemieniecki-1968, section 5.6, from memory
 */
export function beamMatrix(
  { stretch, twist, bending }: BeamStiffness,
  out = new Float64Array(144),
): Float64Array {
  out.fill(0);
  addBar(out, 0, 6, stretch);
  addBar(out, 3, 9, twist);
  addPlane(out, PLANES[0], bending[0]);
  addPlane(out, PLANES[1], bending[1]);
  return out;
}

/** The matrix of a member: {@link beamMatrix} of its {@link beamEntries}. */
export const beamStiffness = (member: FrameMember, length: number): Float64Array =>
  beamMatrix(beamEntries(member, length));

/** Entries of a plane matrix that resists only relative movement of the ends. */
export interface PlaneEntries {
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
  const [v, r, w, s] = rows;
  const m = sign * mixed;
  setPair(k, v, v, force);
  setPair(k, v, r, m);
  setPair(k, v, w, -force);
  setPair(k, v, s, m);
  setPair(k, r, r, near);
  setPair(k, r, w, -m);
  setPair(k, r, s, far);
  setPair(k, w, w, force);
  setPair(k, w, s, -m);
  setPair(k, s, s, near);
}

function setPair(k: Float64Array, row: number, column: number, value: number): void {
  k[row * 12 + column] = value;
  k[column * 12 + row] = value;
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
