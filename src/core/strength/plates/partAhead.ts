import type { Point } from '../../geometry/index.ts';
import type { CuttingPlate } from './flatPlate.ts';
import type { NetSection } from './netSection.ts';

/** Round edges are cut into chords; loads on an edge are looked for this far inside [m]. */
const INSIDE = 1e-4;

/**
 * Whether a place inside the plate lies on the part ahead of a cut whose line crosses the plate elsewhere too: within the
 * stretch of outline from one end of the cut to the other.
 */
export function isAheadOf({ walk }: CuttingPlate, section: NetSection, { x, y }: Point): boolean {
  const [from, to] = section.walk!;
  const n = walk.length;
  let i = 0;
  while (i < n && walk[i]!.key <= from) i++;
  // Round the outline past its first corner, where the stretch runs over it.
  const isRound = from >= to;
  let steps = isRound ? n - i : 0;
  for (let k = isRound ? 0 : i; k < n && walk[k]!.key < to; k++) steps++;
  let [px, py] = [section.ends[0].x, section.ends[0].y];
  let isInside = false;
  for (let k = 0; k <= steps; k++) {
    const next = k === steps ? section.ends[1] : walk[(i + k) % n]!;
    if (py > y !== next.y > y && x < px + ((y - py) * (next.x - px)) / (next.y - py)) isInside = !isInside;
    px = next.x;
    py = next.y;
  }
  const [first] = section.ends;
  if (py > y !== first.y > y && x < px + ((y - py) * (first.x - px)) / (first.y - py)) isInside = !isInside;
  return isInside;
}

/** A point on the edge or beside it moved a little inside, away from the nearest chord of the outline. */
export function insideOf({ walk }: CuttingPlate, p: Point): Point {
  let least = contains(walk, p) ? INSIDE : Number.POSITIVE_INFINITY;
  let moved = p;
  for (let i = 0; i < walk.length; i++) {
    const [a, b] = [walk[i]!, walk[(i + 1) % walk.length]!];
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const length = Math.hypot(dx, dy);
    const along = Math.min(Math.max(((p.x - a.x) * dx + (p.y - a.y) * dy) / length, 0), length);
    const foot = { x: a.x + (dx / length) * along, y: a.y + (dy / length) * along };
    const distance = Math.hypot(p.x - foot.x, p.y - foot.y);
    if (distance >= least) continue;
    least = distance;
    moved = { x: foot.x - (dy / length) * INSIDE, y: foot.y + (dx / length) * INSIDE };
  }
  return moved;
}

function contains(polygon: readonly Point[], { x, y }: Point): boolean {
  let isInside = false;
  for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i++) {
    const [p, q] = [polygon[i]!, polygon[j]!];
    if (p.y > y !== q.y > y && x < p.x + ((y - p.y) * (q.x - p.x)) / (q.y - p.y)) isInside = !isInside;
  }
  return isInside;
}
