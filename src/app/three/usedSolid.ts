import {
  BackSide,
  BufferAttribute,
  type BufferGeometry,
  ClampToEdgeWrapping,
  Color,
  DataTexture,
  Mesh,
  MeshBasicMaterial,
  NearestFilter,
  RepeatWrapping,
  SRGBColorSpace,
} from 'three';
import { EDGE_COLOR, MARK_COLOR } from './looks.ts';
import { OVER_STEP, STEP_WIDTH, STRIPE_COLOR, STRIPE_LENGTH, USE_STEPS } from './useScale.ts';

/** Thickness of the dark line round a tube [m]. */
const OUTLINE = 0.0025;
/** Of a marked one [m]. */
const THICK_OUTLINE = 0.005;

const SCALE = scaleTexture();

/**
 * A tube colored by its use, in the colors of the legend: unlit, since shade would read as more use. The steps and
 * stripes come from a small picture, so that a step ends where the use passes its limit and not at a corner.
 */
export function usedSolid(geometry: BufferGeometry, use: Float32Array, along: Float32Array): Mesh {
  const width = STEP_WIDTH * (USE_STEPS.length + 1);
  const places = new Float32Array(use.length * 2);
  use.forEach((value, i) => {
    places[2 * i] = value / width;
    places[2 * i + 1] = along[i]! / STRIPE_LENGTH;
  });
  geometry.setAttribute('uv', new BufferAttribute(places, 2));
  const solid = new Mesh(geometry, new MeshBasicMaterial({ map: SCALE, toneMapped: false }));
  const outline = new Mesh(
    geometry.clone(),
    new MeshBasicMaterial({ color: EDGE_COLOR, side: BackSide, toneMapped: false }),
  );
  solid.userData = { outline };
  grow(outline, geometry, OUTLINE);
  solid.add(outline);
  return solid;
}

/** Marks a tube that is colored by its use by its outline, as its color is taken; false for any other solid. */
export function markUsed(solid: Mesh, isMarked: boolean): boolean {
  const outline = solid.userData.outline as Mesh | undefined;
  if (!outline) return false;
  (outline.material as MeshBasicMaterial).color.set(isMarked ? MARK_COLOR : EDGE_COLOR);
  grow(outline, solid.geometry, isMarked ? THICK_OUTLINE : OUTLINE);
  return true;
}

/** The corners of a solid pushed out by a distance. */
function grow(outline: Mesh, { attributes }: BufferGeometry, by: number): void {
  const [positions, normals] = [attributes.position!.array, attributes.normal!.array];
  const grown = Float32Array.from(positions, (value, i) => value + by * normals[i]!);
  outline.geometry.setAttribute('position', new BufferAttribute(grown, 3));
}

/** Two rows, which take turns along a tube: both the steps, and over the limit two colors. */
function scaleTexture(): DataTexture {
  const steps = USE_STEPS.map(({ color }) => color);
  const colors = [...steps, OVER_STEP.color, ...steps, STRIPE_COLOR];
  const bytes = colors.flatMap((color) => {
    const hex = new Color(color).getHex();
    return [hex >> 16, (hex >> 8) & 255, hex & 255, 255];
  });
  const texture = new DataTexture(Uint8Array.from(bytes), steps.length + 1, 2);
  texture.colorSpace = SRGBColorSpace;
  texture.magFilter = NearestFilter;
  texture.minFilter = NearestFilter;
  texture.wrapS = ClampToEdgeWrapping;
  texture.wrapT = RepeatWrapping;
  texture.needsUpdate = true;
  return texture;
}
