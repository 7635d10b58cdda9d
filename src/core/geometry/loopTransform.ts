import type { Loop, LoopVertex } from './loop.ts';
import { signedArea } from './loopProperties.ts';
import type { Point } from './point.ts';
import { dot2, rotate2, subtract2, unit2 } from './vec2.ts';

export const translateLoop = (loop: Loop, by: Point): Loop =>
  loop.map((v) => ({ x: v.x + by.x, y: v.y + by.y, bulge: v.bulge }));

/** Turned counterclockwise by `angle` [rad] about the origin, or about `center`. */
export const rotateLoop = (loop: Loop, angle: number, center: Point = { x: 0, y: 0 }): Loop =>
  loop.map((v) => ({ ...rotate2(v, angle, center), bulge: v.bulge }));

/** Grown by `factor` > 0 about the origin. */
export function scaleLoop(loop: Loop, factor: number): Loop {
  if (!(factor > 0)) throw new RangeError('a loop is scaled by a factor above 0');
  return loop.map((v) => ({ x: v.x * factor, y: v.y * factor, bulge: v.bulge }));
}

/** The same outline, walked the other way round. */
export function reverseLoop(loop: Loop): Loop {
  const n = loop.length;
  return loop.map((_, k): LoopVertex => {
    const vertex = loop[n - 1 - k]!;
    const left = loop[(2 * n - 2 - k) % n]!; // the piece that arrived at `vertex`
    return { x: vertex.x, y: vertex.y, bulge: left.bulge === 0 ? 0 : -left.bulge };
  });
}

/** Mirrored in the line through `through` along `direction`, and walked so that its direction of turn stays. */
export function mirrorLoop(loop: Loop, through: Point, direction: Point): Loop {
  const u = unit2(direction);
  const mirrored = loop.map((v): LoopVertex => {
    const d = subtract2(v, through);
    const k = 2 * dot2(d, u);
    return {
      x: through.x + k * u.x - d.x,
      y: through.y + k * u.y - d.y,
      bulge: v.bulge === 0 ? 0 : -v.bulge,
    };
  });
  return reverseLoop(mirrored);
}

export const isCounterclockwise = (loop: Loop): boolean => signedArea(loop) > 0;

/** The same outline, walked counterclockwise. */
export const counterclockwise = (loop: Loop): Loop => (isCounterclockwise(loop) ? loop : reverseLoop(loop));
