/** Triangles with shared corners, as the core makes them. */
export interface SharedMesh {
  readonly positions: Float32Array;
  readonly indices: Uint32Array;
}

/** Triangles with a corner of their own each, ready to be lit, and the edges to be drawn as lines. */
export interface ShadedMesh {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  /** Two points an edge. */
  readonly edges: Float32Array;
}

/** Faces that meet flatter than this are lit as one round surface: cosine of 35 degrees. */
const ROUND_COSINE = 0.82;
/** Corners nearer than this are one [m]; ends and sides of a solid have corners of their own. */
const SAME = 1e-5;

/** Lights round surfaces round and keeps edges sharp. Triangles of no area are left out. */
export function shade({ positions, indices }: SharedMesh): ShadedMesh {
  const corner = mergedCorners(positions);
  const triangles = withArea(positions, indices, corner);
  const faces = faceNormals(positions, triangles);
  const around = facesAround(corner, triangles, positions.length / 3);
  const out = new Float32Array(triangles.length * 3);
  const normals = new Float32Array(triangles.length * 3);
  for (let k = 0; k < triangles.length; k++) {
    const face = Math.floor(k / 3);
    const vertex = triangles[k]!;
    for (let d = 0; d < 3; d++) out[3 * k + d] = positions[3 * vertex + d]!;
    let [x, y, z] = [0, 0, 0];
    for (const other of around[corner[vertex]!]!) {
      if (cosine(faces, face, other) < ROUND_COSINE) continue;
      x += faces[4 * other]! * faces[4 * other + 3]!;
      y += faces[4 * other + 1]! * faces[4 * other + 3]!;
      z += faces[4 * other + 2]! * faces[4 * other + 3]!;
    }
    const size = Math.hypot(x, y, z) || 1;
    normals.set([x / size, y / size, z / size], 3 * k);
  }
  return { positions: out, normals, edges: sharpEdges({ positions, triangles, corner, faces }) };
}

/** For each vertex, the first vertex in its place. */
function mergedCorners(positions: Float32Array): Uint32Array {
  const first = new Map<string, number>();
  return Uint32Array.from({ length: positions.length / 3 }, (_, i) => {
    const key = [0, 1, 2].map((d) => Math.round(positions[3 * i + d]! / SAME)).join();
    const known = first.get(key);
    if (known === undefined) first.set(key, i);
    return known ?? i;
  });
}

function withArea(positions: Float32Array, indices: Uint32Array, corner: Uint32Array): Uint32Array {
  const kept: number[] = [];
  for (let k = 0; k + 2 < indices.length; k += 3) {
    const [a, b, c] = [indices[k]!, indices[k + 1]!, indices[k + 2]!];
    if (corner[a] === corner[b] || corner[b] === corner[c] || corner[c] === corner[a]) continue;
    if (normalOf(positions, a, b, c)[3] > 0) kept.push(a, b, c);
  }
  return Uint32Array.from(kept);
}

/** Unit normal and twice the area of each triangle. */
function faceNormals(positions: Float32Array, triangles: Uint32Array): Float32Array {
  const faces = new Float32Array((triangles.length / 3) * 4);
  for (let k = 0; k < triangles.length; k += 3)
    faces.set(normalOf(positions, triangles[k]!, triangles[k + 1]!, triangles[k + 2]!), (k / 3) * 4);
  return faces;
}

function normalOf(p: Float32Array, a: number, b: number, c: number): [number, number, number, number] {
  const [ux, uy, uz] = [0, 1, 2].map((d) => p[3 * b + d]! - p[3 * a + d]!) as [number, number, number];
  const [vx, vy, vz] = [0, 1, 2].map((d) => p[3 * c + d]! - p[3 * a + d]!) as [number, number, number];
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const size = Math.hypot(x, y, z);
  return size > 0 ? [x / size, y / size, z / size, size] : [0, 0, 0, 0];
}

function facesAround(corner: Uint32Array, triangles: Uint32Array, count: number): readonly number[][] {
  const around: number[][] = Array.from({ length: count }, () => []);
  triangles.forEach((vertex, k) => {
    around[corner[vertex]!]!.push(Math.floor(k / 3));
  });
  return around;
}

const cosine = (faces: Float32Array, a: number, b: number): number =>
  faces[4 * a]! * faces[4 * b]! +
  faces[4 * a + 1]! * faces[4 * b + 1]! +
  faces[4 * a + 2]! * faces[4 * b + 2]!;

interface Faceted {
  readonly positions: Float32Array;
  readonly triangles: Uint32Array;
  readonly corner: Uint32Array;
  readonly faces: Float32Array;
}

/** Edges of one face, and those where two faces meet at more than the round limit. */
function sharpEdges({ positions, triangles, corner, faces }: Faceted): Float32Array {
  const count = positions.length / 3;
  const open = new Map<number, { readonly face: number; readonly from: number; readonly to: number }>();
  const edges: number[] = [];
  const add = (from: number, to: number): void => {
    for (const v of [from, to]) for (let d = 0; d < 3; d++) edges.push(positions[3 * v + d]!);
  };
  for (let k = 0; k < triangles.length; k++) {
    const face = Math.floor(k / 3);
    const [a, b] = [corner[triangles[k]!]!, corner[triangles[3 * face + ((k + 1) % 3)]!]!];
    const key = Math.min(a, b) * count + Math.max(a, b);
    const other = open.get(key);
    if (other === undefined) {
      open.set(key, { face, from: a, to: b });
      continue;
    }
    open.delete(key);
    if (cosine(faces, face, other.face) < ROUND_COSINE) add(a, b);
  }
  for (const { from, to } of open.values()) add(from, to);
  return Float32Array.from(edges);
}
