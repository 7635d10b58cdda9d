import { type Centerline, centerlinePlaces } from './centerline.ts';
import { faceTriangles, type Triangle } from './faceTriangles.ts';
import { type Frame3, frameFromZ, toWorld } from './frame3.ts';
import type { Loop } from './loop.ts';
import { flatten } from './loopFlatten.ts';
import { counterclockwise, reverseLoop } from './loopTransform.ts';
import { type Mesh, meshOf } from './mesh.ts';
import type { Point, Point3 } from './point.ts';
import { add3, cross3, distance3, scale3, subtract3 } from './vec3.ts';

/** How finely round things are cut: sides of a full circle, at least 3. */
export const DEFAULT_SIDES = 24;

const TURN = 2 * Math.PI;

/** Solid round bar swept along a centerline, ends closed; `radius` [m] below the bends' centerline radius. */
export function sweptTubeMesh(line: Centerline, radius: number, sides: number = DEFAULT_SIDES): Mesh {
  const rings = centerlinePlaces(line, TURN / sides).map((place) => {
    const left = cross3(place.direction, place.up);
    return ring(sides, (c, s) =>
      add3(place.point, add3(scale3(place.up, radius * c), scale3(left, radius * s))),
    );
  });
  return cappedRings(rings);
}

/** Solid cylinder from `from` to `to`; `radius` [m] > 0. */
export function cylinderMesh(from: Point3, to: Point3, radius: number, sides: number = DEFAULT_SIDES): Mesh {
  const height = distance3(from, to);
  const profile = [
    { x: 0, y: 0 },
    { x: radius, y: 0 },
    { x: radius, y: height },
    { x: 0, y: height },
  ];
  return latheMesh(frameFromZ(from, subtract3(to, from)), profile, sides);
}

/** Box centered on the frame's origin; `size` along the frame's axes [m]. */
export function boxMesh(frame: Frame3, size: Point3): Mesh {
  const [x, y] = [size.x / 2, size.y / 2];
  const corners = [
    { x: -x, y: -y },
    { x, y: -y },
    { x, y },
    { x: -x, y },
  ].map((p) => ({ ...p, bulge: 0 }));
  return extrudedMesh({
    frame,
    outline: corners,
    holes: [],
    from: -size.z / 2,
    to: size.z / 2,
    chordTolerance: 1,
  });
}

/** Torus: a tire. `axis` is the direction of its axle; radii [m], tube radius below ring radius. */
export function torusMesh(
  torus: {
    readonly center: Point3;
    readonly axis: Point3;
    readonly ringRadius: number;
    readonly tubeRadius: number;
  },
  sides: number = 2 * DEFAULT_SIDES,
): Mesh {
  const section = Math.max(8, Math.round(sides / 3));
  const profile = Array.from({ length: section }, (_, k) => ({
    x: torus.ringRadius + torus.tubeRadius * Math.cos((TURN * k) / section),
    y: torus.tubeRadius * Math.sin((TURN * k) / section),
  }));
  return latheMesh(frameFromZ(torus.center, torus.axis), profile, sides);
}

/**
 * Closed profile revolved about the frame's z: x of a profile point is its distance from the axis [m, ≥ 0], y its height
 * along z. The profile runs counterclockwise (outward at the bottom, inward at the top); points on the axis become one vertex.
 */
export function latheMesh(frame: Frame3, profile: readonly Point[], sides: number = DEFAULT_SIDES): Mesh {
  if (profile.length < 3) throw new RangeError('a profile needs three points');
  if (profile.some((p) => !(p.x >= 0))) throw new RangeError('a profile lies on one side of its axis');
  const points: Point3[] = [];
  const rings = profile.map((p) => {
    const count = p.x === 0 ? 1 : sides;
    const first = points.length;
    points.push(...ring(count, (c, s) => toWorld(frame, { x: p.x * c, y: p.x * s, z: p.y })));
    return (k: number): number => first + (k % count);
  });
  const triangles: Triangle[] = [];
  rings.forEach((low, i) => {
    const high = rings[(i + 1) % rings.length]!;
    for (let k = 0; k < sides; k++) triangles.push(...quad(low(k), low(k + 1), high(k + 1), high(k)));
  });
  return meshOf(points, triangles);
}

export interface Extrusion {
  /** The outline lies in the frame's xy; the plate grows along its z. */
  readonly frame: Frame3;
  readonly outline: Loop;
  readonly holes: readonly Loop[];
  /** z of the lower and the upper face [m], from < to. */
  readonly from: number;
  readonly to: number;
  /** Largest distance of a chord from its arc [m]. */
  readonly chordTolerance: number;
}

/** Plate with holes: flat faces by ear clipping, walls square to them. */
export function extrudedMesh(plate: Extrusion): Mesh {
  const { frame, from, to } = plate;
  if (!(to > from)) throw new RangeError('a plate needs a thickness above 0');
  const loops = [
    counterclockwise(plate.outline),
    ...plate.holes.map((hole) => reverseLoop(counterclockwise(hole))),
  ];
  const rims = loops.map((loop) => flatten(loop, plate.chordTolerance));
  const flat = rims.flat();
  const n = flat.length;
  const points = [from, to].flatMap((z) => flat.map((p) => toWorld(frame, { x: p.x, y: p.y, z })));
  const triangles: Triangle[] = [];
  for (const [a, b, c] of faceTriangles(rims)) triangles.push([a, c, b], [n + a, n + b, n + c]);
  let base = 0;
  for (const rim of rims) {
    rim.forEach((_, k) => {
      const [i, j] = [base + k, base + ((k + 1) % rim.length)];
      triangles.push(...quad(i, j, n + j, n + i));
    });
    base += rim.length;
  }
  return meshOf(points, triangles);
}

const ring = (count: number, at: (cos: number, sin: number) => Point3): Point3[] =>
  Array.from({ length: count }, (_, k) => at(Math.cos((TURN * k) / count), Math.sin((TURN * k) / count)));

/** Two triangles of a four-cornered face; a triangle with a doubled corner is left out. */
function quad(a: number, b: number, c: number, d: number): Triangle[] {
  const both: Triangle[] = [
    [a, b, c],
    [a, c, d],
  ];
  return both.filter(([p, q, r]) => p !== q && q !== r && r !== p);
}

/** Rings of equally many points in order, joined, with a flat fan on each end. */
function cappedRings(rings: readonly (readonly Point3[])[]): Mesh {
  const count = rings[0]!.length;
  const triangles: Triangle[] = [];
  for (let i = 0; i + 1 < rings.length; i++) {
    for (let k = 0; k < count; k++) {
      const [a, b] = [i * count + k, i * count + ((k + 1) % count)];
      triangles.push(...quad(a, b, b + count, a + count));
    }
  }
  const last = (rings.length - 1) * count;
  for (let k = 1; k + 1 < count; k++) {
    triangles.push([0, k + 1, k], [last, last + k, last + k + 1]);
  }
  return meshOf(rings.flat(), triangles);
}
