import type { Obstacle } from './labelPlace.ts';
import type { PaperPoint } from './sheet.ts';

/** A check line nearer than this to a line of the part is hard to tell from it [mm]. */
const CROWDED = 4;

/** Distance from a point to the nearest line of a drawing [mm]. */
export function clearance(obstacles: readonly Obstacle[], p: PaperPoint): number {
  return obstacles.reduce((least, [a, b]) => Math.min(least, distanceToPiece(p, a, b)), Infinity);
}

/** How much of the drawing a line comes near: one for each of its points, every 5 mm, within 4 mm of a stroke. */
export function crowding(obstacles: readonly Obstacle[], from: PaperPoint, to: PaperPoint): number {
  const count = Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 5);
  const [left, right] = [Math.min(from.x, to.x) - CROWDED, Math.max(from.x, to.x) + CROWDED];
  const [low, high] = [Math.min(from.y, to.y) - CROWDED, Math.max(from.y, to.y) + CROWDED];
  const close = obstacles.filter(
    ([a, b]) =>
      Math.max(a.x, b.x) > left &&
      Math.min(a.x, b.x) < right &&
      Math.max(a.y, b.y) > low &&
      Math.min(a.y, b.y) < high,
  );
  let near = 0;
  for (let i = 0; i <= count; i += 1) {
    const p = { x: from.x + ((to.x - from.x) * i) / count, y: from.y + ((to.y - from.y) * i) / count };
    if (close.some(([a, b]) => distanceToPiece(p, a, b) < CROWDED)) near += 1;
  }
  return near;
}

function distanceToPiece(p: PaperPoint, a: PaperPoint, b: PaperPoint): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square));
  return Math.hypot(a.x + t * dx - p.x, a.y + t * dy - p.y);
}
