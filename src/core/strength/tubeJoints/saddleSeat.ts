import type { Force, Length, Torque } from '../../quantity/index.ts';

/** A plate across a tube, hollowed to it and welded along the hollow. */
export interface SaddleSeat {
  /** d0 [m], > 0. */
  readonly outside: Length;
  /** Width of the plate at the tube [m], > 0, < d0. */
  readonly width: Length;
}

/** What the plate brings, in its plane, about the middle of the tube; signs do not matter. */
export interface SaddleLoad {
  /** Toward or away from the tube. */
  readonly normal: Force;
  /** Round the tube. */
  readonly across: Force;
  /** About the axis of the tube: it turns the tube, and presses the wall nowhere. */
  readonly twist: Torque;
}

/**
 * Largest force on a length of the hollow: √((N/s)² + (V/s + T/(r·s))²), s = 2·r·asin(b/d0) [N/m]. A straight edge takes a
 * moment by pressing in one end and pulling out the other; a hollow turns it into the wall as shear along its arc.
 * @source derived, forces along a weld treated as a line, as in shigley-9, section 9-3
 */
export function saddleLine({ outside, width }: SaddleSeat, { normal, across, twist }: SaddleLoad): number {
  const radius = outside / 2;
  const arc = 2 * radius * Math.asin(width / outside);
  return Math.hypot(normal / arc, (Math.abs(across) + Math.abs(twist) / radius) / arc);
}
