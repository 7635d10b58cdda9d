import type { Point3 } from './point.ts';
import { add3, cross3, dot3, scale3, subtract3 } from './vec3.ts';

/** A closed or open surface of triangles; seen from outside, each runs counterclockwise. */
export interface Mesh {
  /** x, y, z of each vertex in turn [m]. */
  readonly positions: Float32Array;
  /** Three vertex numbers a triangle. */
  readonly indices: Uint32Array;
}

/** A mesh from vertices and triangles as plain lists. */
export function meshOf(
  points: readonly Point3[],
  triangles: readonly (readonly [number, number, number])[],
): Mesh {
  const positions = new Float32Array(points.length * 3);
  points.forEach((p, i) => {
    positions.set([p.x, p.y, p.z], 3 * i);
  });
  const indices = new Uint32Array(triangles.length * 3);
  triangles.forEach((t, i) => {
    indices.set(t, 3 * i);
  });
  return { positions, indices };
}

/** Several meshes as one; they are laid side by side, not united. */
export function joinMeshes(meshes: readonly Mesh[]): Mesh {
  const positions = new Float32Array(meshes.reduce((sum, m) => sum + m.positions.length, 0));
  const indices = new Uint32Array(meshes.reduce((sum, m) => sum + m.indices.length, 0));
  let [p, i] = [0, 0];
  for (const mesh of meshes) {
    const base = p / 3;
    positions.set(mesh.positions, p);
    for (let k = 0; k < mesh.indices.length; k++) indices[i + k] = mesh.indices[k]! + base;
    p += mesh.positions.length;
    i += mesh.indices.length;
  }
  return { positions, indices };
}

export const meshPoint = (mesh: Mesh, vertex: number): Point3 => ({
  x: mesh.positions[3 * vertex]!,
  y: mesh.positions[3 * vertex + 1]!,
  z: mesh.positions[3 * vertex + 2]!,
});

/**
 * Volume [m³] and center of volume [m] of a closed mesh, by tetrahedra from the first vertex; the volume is negative when
 * the triangles face inward. Throws for a mesh without volume.
 * @source derived, divergence theorem
 */
export function meshVolume(mesh: Mesh): { readonly volume: number; readonly center: Point3 } {
  const origin = meshPoint(mesh, 0);
  let volume = 0;
  let moment: Point3 = { x: 0, y: 0, z: 0 };
  for (let k = 0; k < mesh.indices.length; k += 3) {
    const [a, b, c] = [0, 1, 2].map((j) => subtract3(meshPoint(mesh, mesh.indices[k + j]!), origin)) as [
      Point3,
      Point3,
      Point3,
    ];
    const part = dot3(a, cross3(b, c)) / 6;
    volume += part;
    moment = add3(moment, scale3(add3(add3(a, b), c), part / 4));
  }
  if (volume === 0) throw new RangeError('a mesh without volume has no center');
  return { volume, center: add3(origin, scale3(moment, 1 / volume)) };
}
