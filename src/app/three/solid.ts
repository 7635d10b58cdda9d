import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DoubleSide,
  LineBasicMaterial,
  LineSegments,
  type Material,
  Mesh,
  MeshStandardMaterial,
  type Object3D,
} from 'three';
import { EDGE_COLOR, lookOf, MARK_COLOR } from './looks.ts';
import { markUsed, usedSolid } from './usedSolid.ts';

/** How dark edges are: of solid parts, and of clear ones for each of their opacity. */
const SOLID_EDGE = 0.55;
const CLEAR_EDGE = 0.9;

/** A part as triangles with corners of their own, and its sharp edges. */
export interface DrawnPart {
  readonly name: string;
  readonly part: string;
  readonly look: string;
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  readonly edges: Float32Array;
  /** At each corner the use of the limit [-] and the place along the part [m]: colored by it instead of by its look. */
  readonly use?: Float32Array;
  readonly along?: Float32Array;
}

/** A part as something that can be drawn; `userData` says which part it is and whether one sees through it. */
export function solidOf(drawn: DrawnPart): Mesh {
  const { name, part, look, positions, normals, edges, use, along } = drawn;
  const { opacity } = lookOf(look);
  const isClear = opacity < 1;
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(positions, 3));
  geometry.setAttribute('normal', new BufferAttribute(normals, 3));
  const solid =
    use && along ? usedSolid(geometry, use, along) : new Mesh(geometry, materialOf(look, isClear));
  solid.name = name;
  solid.userData = { ...solid.userData, part, isClear };
  solid.castShadow = !isClear;
  solid.receiveShadow = !isClear;
  if (edges.length > 0) solid.add(outlineOf(edges, opacity));
  return solid;
}

/** Marks a solid, or takes the mark off. */
export function markSolid(solid: Mesh, isMarked: boolean): void {
  if (markUsed(solid, isMarked)) return;
  const material = solid.material as MeshStandardMaterial;
  material.emissive.set(isMarked ? MARK_COLOR : 0x000000);
  material.emissiveIntensity = isMarked ? 0.75 : 0;
}

/** Gives back the memory of a solid and of what is drawn with it. */
export function disposeSolid(solid: Object3D): void {
  solid.traverse((drawn) => {
    const { geometry, material } = drawn as Mesh<BufferGeometry, Material>;
    geometry?.dispose();
    material?.dispose();
  });
}

function materialOf(look: string, isClear: boolean): MeshStandardMaterial {
  const { color, opacity, roughness, metalness } = lookOf(look);
  return new MeshStandardMaterial({
    color: new Color(color),
    roughness,
    metalness,
    opacity,
    transparent: isClear,
    depthWrite: !isClear,
    side: DoubleSide,
    // Edges lie in the surfaces they bound and must win there.
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 1,
  });
}

function outlineOf(edges: Float32Array, opacity: number): LineSegments {
  const outline = new BufferGeometry();
  outline.setAttribute('position', new BufferAttribute(edges, 3));
  return new LineSegments(
    outline,
    new LineBasicMaterial({
      color: EDGE_COLOR,
      transparent: true,
      opacity: Math.min(SOLID_EDGE, opacity * CLEAR_EDGE),
    }),
  );
}
