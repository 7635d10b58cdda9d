import {
  along3,
  distance3,
  type Frame3,
  frameFromZ,
  type Loop,
  latheMesh,
  type Mesh,
  meshOf,
  type Point,
  type Point3,
  subtract3,
  toWorld,
} from '../../geometry/index.ts';
import { mirrored } from '../placePoint.ts';

/** Rings of a ball or of a rounded body, pole to pole. */
const RINGS = 12;
const SIDES = 28;
/** Rings of one rounded end of a limb. */
const END_RINGS = 6;

/** Frame of the bike's side view at `y`: x forward, y up, z to the right. */
export const sideFrame = (y: number, at: Point = { x: 0, y: 0 }): Frame3 => ({
  origin: { x: at.x, y, z: at.y },
  x: { x: 1, y: 0, z: 0 },
  y: { x: 0, y: 0, z: 1 },
  z: { x: 0, y: -1, z: 0 },
});

/** Frame of an axle: z to the left. */
export const axleFrame = (center: Point3): Frame3 => ({
  origin: center,
  x: { x: 0, y: 0, z: 1 },
  y: { x: 1, y: 0, z: 0 },
  z: { x: 0, y: 1, z: 0 },
});

/** Tapered bar with ball ends: a limb. Radii [m] > 0. */
export function capsuleMesh(from: Point3, to: Point3, radiusFrom: number, radiusTo: number): Mesh {
  const length = distance3(from, to);
  const frame =
    length > 1e-9 ? frameFromZ(from, subtract3(to, from)) : frameFromZ(from, { x: 0, y: 0, z: 1 });
  const end = (radius: number, at: number, first: number): Point[] =>
    Array.from({ length: END_RINGS + 1 }, (_, k) => {
      const turn = first + ((Math.PI / 2) * k) / END_RINGS;
      const pole = Math.abs(Math.cos(turn)) < 1e-9;
      return { x: pole ? 0 : radius * Math.cos(turn), y: at + radius * Math.sin(turn) };
    });
  return latheMesh(frame, [...end(radiusFrom, 0, -Math.PI / 2), ...end(radiusTo, length, 0)], SIDES);
}

/** Box with rounded edges: a superellipsoid; `roundness` 1 is an ellipsoid, toward 0 a box. `half` sizes [m] > 0. */
export function roundedBoxMesh(frame: Frame3, half: Point3, roundness = 0.35): Mesh {
  const power = (value: number): number => Math.sign(value) * Math.abs(value) ** roundness;
  const points: Point3[] = [];
  for (let i = 1; i < RINGS; i++) {
    const v = -Math.PI / 2 + (Math.PI * i) / RINGS;
    for (let k = 0; k < SIDES; k++) {
      const u = (2 * Math.PI * k) / SIDES;
      const x = half.x * power(Math.cos(v)) * power(Math.cos(u));
      const y = half.y * power(Math.cos(v)) * power(Math.sin(u));
      points.push(toWorld(frame, { x, y, z: half.z * power(Math.sin(v)) }));
    }
  }
  const bottom = points.push(toWorld(frame, { x: 0, y: 0, z: -half.z })) - 1;
  const top = points.push(toWorld(frame, { x: 0, y: 0, z: half.z })) - 1;
  const triangles: (readonly [number, number, number])[] = [];
  const last = (RINGS - 2) * SIDES;
  for (let k = 0; k < SIDES; k++) {
    const next = (k + 1) % SIDES;
    triangles.push([bottom, next, k], [top, last + k, last + next]);
    for (let base = 0; base < last; base += SIDES) {
      triangles.push(
        [base + k, base + next, base + SIDES + next],
        [base + k, base + SIDES + next, base + SIDES + k],
      );
    }
  }
  return meshOf(points, triangles);
}

/** Ring of rectangular section about an axle: radii and faces along the axle [m]. */
export function ringMesh(center: Point3, inside: number, outside: number, width: number, sides = 48): Mesh {
  const [low, high] = [-width / 2, width / 2];
  return latheMesh(
    axleFrame(center),
    [
      { x: inside, y: low },
      { x: outside, y: low },
      { x: outside, y: high },
      { x: inside, y: high },
    ],
    sides,
  );
}

/** A thing on the left and its mirror image. */
export const bothSides = (point: Point3): readonly [Point3, Point3] => [point, mirrored(point)];

/** A loop of straight sides from points in order. */
export const straightLoop = (points: readonly Point[]): Loop =>
  points.map((p) => ({ x: p.x, y: p.y, bulge: 0 }));

/** The polygon moved outward by `distance` [m] at its corners, inward when negative. Counterclockwise. */
export function fattened(points: readonly Point[], distance: number): Point[] {
  const n = points.length;
  return points.map((p, i) => {
    const [a, b] = [points[(i + n - 1) % n]!, points[(i + 1) % n]!];
    const way = { x: b.x - a.x, y: b.y - a.y };
    const length = Math.hypot(way.x, way.y);
    if (!(length > 0)) return p;
    return { x: p.x + (distance * way.y) / length, y: p.y - (distance * way.x) / length };
  });
}

/** Point past `to` on the way from `from`, by `distance` [m]. */
export const beyond = (from: Point3, to: Point3, distance: number): Point3 => {
  const length = distance3(from, to);
  return along3(to, subtract3(to, from), length > 0 ? distance / length : 0);
};
