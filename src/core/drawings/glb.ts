/** Triangles of one part in the bike's axes [m]: x, y, z of each corner in turn, and corners by threes. */
export interface PartMesh {
  readonly positions: ArrayLike<number>;
  readonly indices: ArrayLike<number>;
}

/** What a part is made of, as far as the eye is concerned. */
export type SurfaceRole =
  | 'frame'
  | 'fork'
  | 'plate'
  | 'shaft'
  | 'engine'
  | 'drive'
  | 'brake'
  | 'tire'
  | 'rim'
  | 'seat'
  | 'rider'
  | 'ground';

export interface MeshPart {
  readonly name: string;
  readonly mesh: PartMesh;
  readonly color: SurfaceRole;
}

/** How a surface looks: color with linear components 0 to 1, metalness and roughness 0 to 1, opacity. */
export interface SurfaceLook {
  readonly color: readonly [number, number, number];
  readonly metallic: number;
  readonly roughness: number;
  readonly opacity: number;
}

const look = (
  r: number,
  g: number,
  b: number,
  metallic: number,
  roughness: number,
  opacity = 1,
): SurfaceLook => ({
  color: [r, g, b],
  metallic,
  roughness,
  opacity,
});

/** One table of looks for the file and for the screen: shop materials, nothing shiny. */
export const surfaceLooks: Readonly<Record<SurfaceRole, SurfaceLook>> = {
  frame: look(0.05, 0.09, 0.12, 0.3, 0.55),
  fork: look(0.42, 0.43, 0.44, 0.7, 0.4),
  plate: look(0.3, 0.31, 0.32, 0.6, 0.5),
  shaft: look(0.5, 0.5, 0.5, 0.8, 0.35),
  engine: look(0.22, 0.22, 0.21, 0.4, 0.6),
  drive: look(0.2, 0.18, 0.15, 0.7, 0.45),
  brake: look(0.36, 0.36, 0.37, 0.8, 0.35),
  tire: look(0.012, 0.012, 0.012, 0, 0.9),
  rim: look(0.35, 0.35, 0.35, 0.6, 0.45),
  seat: look(0.035, 0.025, 0.02, 0, 0.8),
  rider: look(0.45, 0.42, 0.38, 0, 1, 0.35),
  ground: look(0.5, 0.5, 0.48, 0, 1),
};

/**
 * Parts as one binary glTF 2.0 in meters. The file's axes are y up, so a point (x, y, z) of the bike becomes
 * (x, z, −y). Every triangle has its own flat normal; triangles of no area are left out.
 * @throws RangeError for an index outside the corners or a coordinate that is not finite
 */
export async function glbOfMeshes(parts: readonly MeshPart[], title = 'bike'): Promise<Uint8Array> {
  const { Document, WebIO } = await import('@gltf-transform/core');
  const doc = new Document();
  doc.getRoot().getAsset().generator = 'jigwright';
  const buffer = doc.createBuffer();
  const scene = doc.createScene(title);
  doc.getRoot().setDefaultScene(scene);
  const materials = new Map<SurfaceRole, ReturnType<typeof doc.createMaterial>>();
  const materialOf = (role: SurfaceRole) => {
    const known = materials.get(role);
    if (known) return known;
    const { color, metallic, roughness, opacity } = surfaceLooks[role];
    const made = doc
      .createMaterial(role)
      .setBaseColorFactor([...color, opacity])
      .setMetallicFactor(metallic);
    made
      .setRoughnessFactor(roughness)
      .setAlphaMode(opacity < 1 ? 'BLEND' : 'OPAQUE')
      .setDoubleSided(true);
    materials.set(role, made);
    return made;
  };
  for (const part of parts) {
    const flat = flatTriangles(part);
    if (flat.positions.length === 0) continue;
    const accessor = (array: Float32Array) =>
      doc
        .createAccessor()
        .setType('VEC3')
        .setArray(array as Float32Array<ArrayBuffer>)
        .setBuffer(buffer);
    const primitive = doc
      .createPrimitive()
      .setAttribute('POSITION', accessor(flat.positions))
      .setAttribute('NORMAL', accessor(flat.normals))
      .setMaterial(materialOf(part.color));
    scene.addChild(doc.createNode(part.name).setMesh(doc.createMesh(part.name).addPrimitive(primitive)));
  }
  return new WebIO().writeBinary(doc);
}

function flatTriangles(part: MeshPart): { readonly positions: Float32Array; readonly normals: Float32Array } {
  const { positions, indices } = part.mesh;
  const corners: number[] = [];
  const normals: number[] = [];
  for (let i = 0; i + 2 < indices.length; i += 3) {
    const a = cornerOf(positions, indices[i] as number, part.name);
    const b = cornerOf(positions, indices[i + 1] as number, part.name);
    const c = cornerOf(positions, indices[i + 2] as number, part.name);
    const u = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
    const v = [c[0] - a[0], c[1] - a[1], c[2] - a[2]] as const;
    const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]] as const;
    const length = Math.hypot(...n);
    if (length === 0) continue;
    corners.push(...a, ...b, ...c);
    for (let k = 0; k < 3; k += 1) normals.push(n[0] / length, n[1] / length, n[2] / length);
  }
  return { positions: new Float32Array(corners), normals: new Float32Array(normals) };
}

type Corner = readonly [number, number, number];

function cornerOf(positions: ArrayLike<number>, index: number, name: string): Corner {
  const [x, y, z] = [positions[3 * index], positions[3 * index + 1], positions[3 * index + 2]];
  if (!Number.isFinite(x) || !Number.isFinite(y) || !Number.isFinite(z)) {
    throw new RangeError(`mesh of ${name}: corner ${index} is not a point`);
  }
  return [x as number, z as number, 0 - (y as number)];
}
