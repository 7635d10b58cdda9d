import type { Point } from '../../geometry/index.ts';

/** A weld on the plate: a seam at its edge or on its face. */
export interface PlateWeld {
  readonly from: Point;
  readonly to: Point;
}

/** Distance from a straight cut to the nearest seam [m]; Infinity without. */
export function gapToSeams(a: Point, b: Point, welds: readonly PlateWeld[]): number {
  let gap = Number.POSITIVE_INFINITY;
  for (const { from, to } of welds) gap = Math.min(gap, squareGap(a, b, from, to));
  return Math.sqrt(gap);
}

/** Square of the distance between two straight lines [m²]. */
function squareGap(a: Point, b: Point, c: Point, d: Point): number {
  if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return 0;
  return Math.min(toLine(a, c, d), toLine(b, c, d), toLine(c, a, b), toLine(d, a, b));
}

const side = (p: Point, q: Point, r: Point): number => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);

function toLine(p: Point, a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square)) : 0;
  return (p.x - a.x - t * dx) ** 2 + (p.y - a.y - t * dy) ** 2;
}
