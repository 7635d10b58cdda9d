import { addToSkyline, emptySkyline, factorLdlt, largestOfPencil } from '../../numerics/index.ts';
import type { AngularSpeed, Density, Length, Mass, Outcome } from '../../quantity/index.ts';
import { bad, good } from '../../quantity/index.ts';
import { meshOf, type ShaftMesh, type ShaftPiece, stationAt } from './mesh.ts';
import { SAME_PLACE, type Shaft } from './shaft.ts';
import { shaftIssues } from './shaftIssues.ts';

/** A sprocket, rotor or wheel as a mass at one place. */
export interface ShaftMass {
  /** x [m]. */
  readonly at: Length;
  /** m [kg]. */
  readonly mass: Mass;
}

/** Elements along the shaft; the first speed of an even shaft is then right to 1e-6. */
const ELEMENTS = 40;
/** Stations nearer than this share of the length are one here: a step moved so little does not show in the speed. */
const FINEST = 4000;

/**
 * First critical speed: the lowest natural frequency of bending, K·u = ω²·M·u with the consistent masses of the shaft
 * and the added ones. Whirl without gyroscopic effect and without rotary inertia; supports as they stand, offsets do
 * not matter.
 * @returns ω [rad/s]
 * @issue conflict, out-of-range — as for the shaft itself; a mass off the shaft; nothing that has mass
 * @source bathe-1996, section 11.5; shigley-9, section 7-6
 */
export function criticalSpeed(
  shaft: Shaft,
  density: Density,
  masses: readonly ShaftMass[] = [],
): Outcome<AngularSpeed> {
  // Masses are stations too; a load of nothing makes them nodes.
  const withStations = { ...shaft, loads: [...shaft.loads, ...masses.map(({ at }) => ({ at }))] };
  const [first, ...rest] = shaftIssues(withStations);
  if (first) return bad(first, ...rest);
  const length =
    Math.max(...shaft.segments.map(({ to }) => to)) - Math.min(...shaft.segments.map(({ from }) => from));
  const mesh = meshOf(withStations, {
    longest: length / ELEMENTS,
    apart: Math.max(SAME_PLACE, length / FINEST),
  });
  const { stiffness, held } = stiffnessOf(withStations, mesh);
  const factor = factorLdlt(stiffness);
  if (factor.nullModes.length > 0)
    return bad({ code: 'conflict', path: 'supports', reason: 'the shaft is not held' });
  const mass = matrixOf(mesh, held, (piece) => pieceMass(piece, density));
  for (const { at, mass: m } of masses) {
    const i = 2 * stationAt(mesh, at);
    if (!held[i]) addToSkyline(mass, i, i, m);
  }
  const found = largestOfPencil(factor, mass, 1);
  const theta = found.ok ? found.pairs[0]?.value : undefined;
  if (theta === undefined)
    return bad({
      code: 'conflict',
      path: 'density',
      reason: 'neither the shaft nor anything on it has mass',
    });
  return good(Math.sqrt(1 / theta) as AngularSpeed);
}

function stiffnessOf(shaft: Shaft, mesh: ShaftMesh) {
  const held = new Array<boolean>(2 * mesh.stations.length).fill(false);
  for (const support of shaft.supports) {
    const i = 2 * stationAt(mesh, support.at);
    if (support.stiffness === undefined) held[i] = true;
    if (support.clamped) held[i + 1] = true;
  }
  const stiffness = matrixOf(mesh, held, pieceStiffness);
  for (const support of shaft.supports) {
    const i = 2 * stationAt(mesh, support.at);
    if (support.stiffness !== undefined) addToSkyline(stiffness, i, i, support.stiffness);
  }
  held.forEach((isHeld, i) => {
    if (isHeld) addToSkyline(stiffness, i, i, 1);
  });
  return { stiffness, held };
}

/** The whole of [v, ψ] at the stations from the matrices of the pieces; held freedoms stay 0. */
function matrixOf(mesh: ShaftMesh, held: readonly boolean[], of: (piece: ShaftPiece) => readonly number[]) {
  const top = Int32Array.from({ length: held.length }, (_, i) => Math.max(0, 2 * (i >> 1) - 2));
  const matrix = emptySkyline(top);
  mesh.pieces.forEach((piece, n) => {
    of(piece).forEach((value, k) => {
      const [i, j] = [2 * n + (k >> 2), 2 * n + (k % 4)];
      if (j <= i && !held[i] && !held[j]) addToSkyline(matrix, i, j, value);
    });
  });
  return matrix;
}

/** Beam element for [v1, ψ1, v2, ψ2], row by row; Φ = 12·EI/(κGA·L²). @source bathe-1996, section 5.4.1 */
function pieceStiffness({ length: l, bending, shear }: ShaftPiece): readonly number[] {
  const phi = (12 * bending) / (shear * l * l);
  const unit = bending / (l ** 3 * (1 + phi));
  const [a, b, near, far] = [12 * unit, 6 * l * unit, (4 + phi) * l * l * unit, (2 - phi) * l * l * unit];
  return [a, b, -a, b, b, near, -b, far, -a, -b, a, -b, b, far, -b, near];
}

/** Consistent mass of a slender beam element, m = ρAL/420·[156, 22L, 54, −13L …]. @source bathe-1996, section 4.2 */
function pieceMass({ length: l, section }: ShaftPiece, density: number): readonly number[] {
  const unit = (density * section.area * l) / 420;
  const [a, b, c, d] = [156 * unit, 22 * l * unit, 54 * unit, 13 * l * unit];
  const [e, f] = [4 * l * l * unit, 3 * l * l * unit];
  return [a, b, c, -d, b, e, d, -f, c, d, a, -b, -d, -f, -b, e];
}
