import {
  addToSkyline,
  emptySkyline,
  factorLdlt,
  type LdltFactor,
  type SkylineMatrix,
  solveLdlt,
} from '../../numerics/index.ts';
import { elementStiffness, evenLoad, nodeAt, type ShaftMesh } from './mesh.ts';
import type { Shaft } from './shaft.ts';

/** The stiffness of a shaft on its supports, alike in both planes: freedom 2·n is v, 2·n + 1 is ψ of node n. */
export interface ShaftSystem {
  readonly factor: LdltFactor;
  /** Freedoms that a rigid support holds. */
  readonly held: readonly boolean[];
}

/** A rotation stiffness where the matrix has no freedom: keeps the factor's rows. */
const HELD_DIAGONAL = 1;

export function shaftSystem(shaft: Shaft, mesh: ShaftMesh): ShaftSystem {
  const held = heldFreedoms(shaft, mesh);
  const matrix = shaftMatrix(mesh);
  mesh.elements.forEach((element, n) => {
    eachEntry(elementStiffness(element), n, (i, j, value) => {
      if (j <= i && !held[i] && !held[j]) addToSkyline(matrix, i, j, value);
    });
  });
  held.forEach((isHeld, i) => {
    if (isHeld) addToSkyline(matrix, i, i, HELD_DIAGONAL);
  });
  for (const support of shaft.supports) {
    const i = 2 * nodeAt(mesh, support.at);
    if (support.stiffness !== undefined) addToSkyline(matrix, i, i, support.stiffness);
  }
  return { factor: factorLdlt(matrix), held };
}

/** A matrix of zeros with the places of a chain of beam elements. */
export function shaftMatrix(mesh: ShaftMesh): SkylineMatrix {
  const top = Int32Array.from({ length: 2 * mesh.stations.length }, (_, i) =>
    Math.max(0, 2 * (Math.floor(i / 2) - 1)),
  );
  return emptySkyline(top);
}

/** Calls `visit` with the place in the whole and the value of each entry of element `n`. */
export function eachEntry(
  entries: readonly number[],
  n: number,
  visit: (i: number, j: number, value: number) => void,
): void {
  entries.forEach((value, k) => {
    visit(2 * n + Math.floor(k / 4), 2 * n + (k % 4), value);
  });
}

/** Displacements of one plane (0: x-y, 1: x-z): [v, ψ] of each node, ψ the slope of the section in that plane. */
export function solvePlane(shaft: Shaft, mesh: ShaftMesh, system: ShaftSystem, plane: 0 | 1): Float64Array {
  const right = nodalLoads(shaft, mesh, plane);
  mesh.elements.forEach((element, n) => {
    evenLoad(element, element.q[plane]).forEach((load, k) => {
      right[2 * n + k]! += load;
    });
  });
  const given = new Float64Array(right.length);
  for (const support of shaft.supports) {
    const i = 2 * nodeAt(mesh, support.at);
    const offset = support.offset?.[plane] ?? 0;
    if (support.stiffness === undefined) given[i] = offset;
    else right[i]! += support.stiffness * offset;
  }
  mesh.elements.forEach((element, n) => {
    eachEntry(elementStiffness(element), n, (i, j, value) => {
      if (system.held[j]) right[i]! -= value * given[j]!;
    });
  });
  system.held.forEach((isHeld, i) => {
    if (isHeld) right[i] = given[i]! * HELD_DIAGONAL;
  });
  return solveLdlt(system.factor, right);
}

/** Forces and couples at the nodes of one plane; a moment about y turns the shaft the other way in the x-z plane. */
export function nodalLoads(shaft: Shaft, mesh: ShaftMesh, plane: 0 | 1): Float64Array {
  const loads = new Float64Array(2 * mesh.stations.length);
  for (const load of shaft.loads) {
    const i = 2 * nodeAt(mesh, load.at);
    loads[i]! += load.force?.[plane] ?? 0;
    loads[i + 1]! += plane === 0 ? (load.moment?.[1] ?? 0) : -(load.moment?.[0] ?? 0);
  }
  return loads;
}

function heldFreedoms(shaft: Shaft, mesh: ShaftMesh): readonly boolean[] {
  const held = new Array<boolean>(2 * mesh.stations.length).fill(false);
  for (const support of shaft.supports) {
    const i = 2 * nodeAt(mesh, support.at);
    if (support.stiffness === undefined) held[i] = true;
    if (support.clamped) held[i + 1] = true;
  }
  return held;
}
