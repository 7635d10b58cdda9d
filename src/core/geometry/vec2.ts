import type { Point } from './point.ts';

export const add2 = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });

export const subtract2 = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });

export const scale2 = (a: Point, factor: number): Point => ({ x: a.x * factor, y: a.y * factor });

/** a + t·(b − a). */
export const between2 = (a: Point, b: Point, t: number): Point => ({
  x: a.x + t * (b.x - a.x),
  y: a.y + t * (b.y - a.y),
});

export const dot2 = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;

/** z of a × b: positive when b lies counterclockwise of a. */
export const cross2 = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;

// By the root of squares: Math.hypot guards against overflow, which lengths in meters can't reach, at twenty times the time.
export const length2 = (a: Point): number => Math.sqrt(a.x * a.x + a.y * a.y);

export function distance2(a: Point, b: Point): number {
  const x = b.x - a.x;
  const y = b.y - a.y;
  return Math.sqrt(x * x + y * y);
}

/** Direction of `a` with length 1; throws for a vector of no length, which has no direction. */
export function unit2(a: Point): Point {
  const length = length2(a);
  if (!(length > 0)) throw new RangeError('a vector of no length has no direction');
  return { x: a.x / length, y: a.y / length };
}

/** `a` turned a quarter counterclockwise: its left normal. */
export const left2 = (a: Point): Point => ({ x: -a.y, y: a.x });

/** `a` turned counterclockwise by `angle` [rad] about the origin, or about `center`. */
export function rotate2(a: Point, angle: number, center: Point = { x: 0, y: 0 }): Point {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const x = a.x - center.x;
  const y = a.y - center.y;
  return { x: center.x + c * x - s * y, y: center.y + s * x + c * y };
}

/** Point at `radius` from `center` in direction `angle` [rad, counterclockwise from x]. */
export const polar2 = (center: Point, radius: number, angle: number): Point => ({
  x: center.x + radius * Math.cos(angle),
  y: center.y + radius * Math.sin(angle),
});
