import { addToSkyline, largestOfPencil } from '../../numerics/index.ts';
import type { AngularSpeed, Density, Length, Mass, Outcome } from '../../quantity/index.ts';
import { bad, good } from '../../quantity/index.ts';
import { meshOf, nodeAt, type ShaftElement } from './mesh.ts';
import type { Shaft } from './shaft.ts';
import { shaftIssues } from './shaftIssues.ts';
import { eachEntry, shaftMatrix, shaftSystem } from './shaftSystem.ts';

/** A sprocket, rotor or wheel as a mass at one place. */
export interface ShaftMass {
  /** x [m]. */
  readonly at: Length;
  /** m [kg]. */
  readonly mass: Mass;
}

/** Elements along the shaft; the first speed of an even shaft is then right to 1e-6. */
const ELEMENTS = 40;

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
  const mesh = meshOf(withStations, length / ELEMENTS);
  const system = shaftSystem(withStations, mesh);
  if (system.factor.nullModes.length > 0)
    return bad({ code: 'conflict', path: 'supports', reason: 'the shaft is not held' });
  const mass = shaftMatrix(mesh);
  const add = (i: number, j: number, value: number): void => {
    if (j <= i && !system.held[i] && !system.held[j]) addToSkyline(mass, i, j, value);
  };
  mesh.elements.forEach((element, n) => {
    eachEntry(elementMass(element, density), n, add);
  });
  for (const { at, mass: m } of masses) add(2 * nodeAt(mesh, at), 2 * nodeAt(mesh, at), m);
  const found = largestOfPencil(system.factor, mass, 1);
  const theta = found.ok ? found.pairs[0]?.value : undefined;
  if (theta === undefined)
    return bad({
      code: 'conflict',
      path: 'density',
      reason: 'neither the shaft nor anything on it has mass',
    });
  return good(Math.sqrt(1 / theta) as AngularSpeed);
}

/** Consistent mass of a slender beam element, m = ρAL/420·[156, 22L, 54, −13L …]. @source bathe-1996, section 4.2 */
function elementMass({ length: l, section }: ShaftElement, density: number): readonly number[] {
  const unit = (density * section.area * l) / 420;
  const [a, b, c, d] = [156 * unit, 22 * l * unit, 54 * unit, 13 * l * unit];
  const [e, f] = [4 * l * l * unit, 3 * l * l * unit];
  return [a, b, c, -d, b, e, d, -f, c, d, a, -b, -d, -f, -b, e];
}
