import type { Force, Length, Torque } from '../../quantity/index.ts';

/** A plate across a tube, hollowed to it and welded along the hollow. */
export interface SaddleSeat {
  /** d0 [m], > 0. */
  readonly outside: Length;
  /** Width of the plate at the tube [m], > 0, < d0. */
  readonly width: Length;
}

/** What the plate brings, in its plane, about the middle of the tube: y away from the tube, x to the right of y. */
export interface SaddleLoad {
  /** Along y: away from the tube. */
  readonly normal: Force;
  /** Along x: round the tube. */
  readonly across: Force;
  /** From x to y. */
  readonly twist: Torque;
}

/**
 * Largest force on a length of the hollow, its weld taken as a line of arc 2·α, sin α = b/d0 [N/m]:
 * f(φ) = (V/s − M·(r·cos φ − c)/J, N/s + M·r·sin φ/J) with s = 2·r·α, c = r·sin α/α from the middle of the tube to the
 * center of the line, J = s·(r² − c²) about it, M = T + V·c. Square of f: a constant − 2·k·cos φ + 2·h·sin φ, so the
 * largest is at an end of the arc or where that sinusoid peaks. A nearly flat hollow comes to N/s + 6·M/s².
 * @source derived, forces along a weld treated as a line, as in shigley-9, section 9-3
 */
export function saddleLine({ outside, width }: SaddleSeat, { normal, across, twist }: SaddleLoad): number {
  const radius = outside / 2;
  const half = Math.asin(width / outside);
  const length = outside * half;
  const center = (radius * Math.sin(half)) / half;
  const turn = (twist + across * center) / (length * (radius ** 2 - center ** 2));
  const along = across / length + turn * center;
  const out = normal / length;
  const at = (angle: number): number =>
    Math.hypot(along - turn * radius * Math.cos(angle), out + turn * radius * Math.sin(angle));
  const peak = Math.atan2(out * turn, -along * turn);
  const inside = Math.abs(peak) < half ? [peak] : [];
  return Math.max(...[-half, half, ...inside].map(at));
}
