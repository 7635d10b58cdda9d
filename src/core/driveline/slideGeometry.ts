import type { SidePoint } from './tensionTypes.ts';

/** A sliding shaft against a standing one. */
export interface SlideLine {
  /** Sliding end less standing end, slide at 0 [m]. */
  readonly offset: SidePoint;
  /** Unit vector of the slide. */
  readonly direction: SidePoint;
}

/** +1: centers grow with positive travel; −1: they shrink. */
export type Branch = 1 | -1;

/**
 * Slide position on one branch at which the two shafts are C apart: u = −b ± √(b² − |o|² + C²), b = o·d.
 * @returns u [m]; undefined when the slide never brings them that close
 * @source derived, circle about the standing shaft cut by the slide's line
 */
export function slideForCenter(line: SlideLine, center: number, branch: Branch): number | undefined {
  const b = along(line);
  const square = b * b - (line.offset.x ** 2 + line.offset.z ** 2) + center * center;
  return square >= 0 ? -b + branch * Math.sqrt(square) : undefined;
}

/**
 * Slide position at which the shafts are closest: u = −b.
 * @returns u [m]
 * @source derived
 */
export function closestSlide(line: SlideLine): number {
  return -along(line);
}

/**
 * Distance between the shafts at a slide position.
 * @returns C [m]
 * @source derived
 */
export function centerAtSlide(line: SlideLine, slide: number): number {
  return Math.hypot(line.offset.x + slide * line.direction.x, line.offset.z + slide * line.direction.z);
}

/**
 * Change of center distance per slide movement, dC/du = (b + u)/C.
 * @returns −1 to 1 [m/m]
 * @source derived
 */
export function centerPerSlide(line: SlideLine, slide: number): number {
  return (along(line) + slide) / centerAtSlide(line, slide);
}

function along(line: SlideLine): number {
  return line.offset.x * line.direction.x + line.offset.z * line.direction.z;
}
