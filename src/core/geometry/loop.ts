import type { Point } from './point.ts';

/**
 * A corner of a loop and the segment from it to the next corner.
 * `bulge` = tan(sweep / 4), positive counterclockwise, 0 for a straight line (the convention of open drawing exchange).
 */
export interface LoopVertex extends Point {
  readonly bulge: number;
}

/** A closed outline of lines and arcs [m]; the last vertex joins the first. A circle is two vertices of bulge 1. */
export type Loop = readonly LoopVertex[];
