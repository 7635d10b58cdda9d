import type { Loop } from './loop.ts';
import { type Segment, segmentPoint, segments } from './loopSegment.ts';
import type { Point } from './point.ts';

/**
 * Corners of a polygon that leaves the outline by at most `chordTolerance` [m] > 0; all points lie on the outline.
 * An arc is cut into equal turns of at most 2·acos(1 − tolerance/r).
 */
export function flatten(loop: Loop, chordTolerance: number): Point[] {
  if (!(chordTolerance > 0)) throw new RangeError('the chord tolerance must be above 0');
  return segments(loop).flatMap((piece) => {
    const cuts = cutsOf(piece, chordTolerance);
    return Array.from({ length: cuts }, (_, k) => segmentPoint(piece, k / cuts));
  });
}

function cutsOf(piece: Segment, tolerance: number): number {
  if (piece.kind === 'line') return 1;
  // acos(1 − x) = 2·asin(√(x/2)) keeps its digits for a small x; a chord never turns by more than a third of a circle.
  const step = 4 * Math.asin(Math.sqrt(Math.min(tolerance / piece.radius, 0.5) / 2));
  return Math.max(1, Math.ceil(Math.abs(piece.sweep) / step - 1e-9));
}
