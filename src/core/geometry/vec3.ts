import type { Point3 } from './point.ts';

export const add3 = (a: Point3, b: Point3): Point3 => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z });

export const subtract3 = (a: Point3, b: Point3): Point3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });

export const scale3 = (a: Point3, factor: number): Point3 => ({
  x: a.x * factor,
  y: a.y * factor,
  z: a.z * factor,
});

/** a + t·(b − a). */
export const between3 = (a: Point3, b: Point3, t: number): Point3 => ({
  x: a.x + t * (b.x - a.x),
  y: a.y + t * (b.y - a.y),
  z: a.z + t * (b.z - a.z),
});

/** `from` + `distance`·`direction`. */
export const along3 = (from: Point3, direction: Point3, distance: number): Point3 => ({
  x: from.x + direction.x * distance,
  y: from.y + direction.y * distance,
  z: from.z + direction.z * distance,
});

export const dot3 = (a: Point3, b: Point3): number => a.x * b.x + a.y * b.y + a.z * b.z;

export const cross3 = (a: Point3, b: Point3): Point3 => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});

// By the root of squares, as in vec2.
export const length3 = (a: Point3): number => Math.sqrt(a.x * a.x + a.y * a.y + a.z * a.z);

export function distance3(a: Point3, b: Point3): number {
  const x = b.x - a.x;
  const y = b.y - a.y;
  const z = b.z - a.z;
  return Math.sqrt(x * x + y * y + z * z);
}

/** Direction of `a` with length 1; throws for a vector of no length, which has no direction. */
export function unit3(a: Point3): Point3 {
  const length = length3(a);
  if (!(length > 0)) throw new RangeError('a vector of no length has no direction');
  return { x: a.x / length, y: a.y / length, z: a.z / length };
}

/** Angle between two directions [rad], 0 to π; by atan2, so that small angles keep their digits. */
export const angleBetween3 = (a: Point3, b: Point3): number => Math.atan2(length3(cross3(a, b)), dot3(a, b));

/**
 * Angle from `a` to `b` about the unit vector `axis` [rad], −π to π, right-hand rule;
 * only the parts of `a` and `b` across the axis count.
 */
export function angleAbout3(a: Point3, b: Point3, axis: Point3): number {
  const across = (v: Point3): Point3 => subtract3(v, scale3(axis, dot3(v, axis)));
  const p = across(a);
  const q = across(b);
  return Math.atan2(dot3(cross3(p, q), axis), dot3(p, q));
}

/** `a` turned by `angle` [rad] about the unit vector `axis` through the origin, right-hand rule (Rodrigues). */
export function rotate3(a: Point3, axis: Point3, angle: number): Point3 {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const k = dot3(axis, a) * (1 - c);
  const across = cross3(axis, a);
  return {
    x: a.x * c + across.x * s + axis.x * k,
    y: a.y * c + across.y * s + axis.y * k,
    z: a.z * c + across.z * s + axis.z * k,
  };
}

/** A unit vector across the unit vector `a`; the same for the same `a`. */
export function anyAcross3(a: Point3): Point3 {
  // Cross with the axis least along a, so that the product is never short.
  const ax = Math.abs(a.x);
  const ay = Math.abs(a.y);
  const az = Math.abs(a.z);
  if (az <= ax && az <= ay) return unit3(cross3({ x: 0, y: 0, z: 1 }, a));
  if (ay <= ax) return unit3(cross3({ x: 0, y: 1, z: 0 }, a));
  return unit3(cross3({ x: 1, y: 0, z: 0 }, a));
}
