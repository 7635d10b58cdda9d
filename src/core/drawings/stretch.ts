import { segmentPoint } from '../geometry/index.ts';
import { circleAsPath } from './clipPath.ts';
import { pathPieces } from './pathPieces.ts';
import type { CircleItem, PaperPoint, PathItem, PathStep } from './sheet.ts';

/** A map of the plane: multiplied by `across` and `down` about `from`, then moved so that `from` comes to `to` [mm]. */
export interface Stretch {
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  readonly across: number;
  readonly down: number;
}

/** Largest distance of a chord from an arc that is drawn as chords [mm]; a hundredth of a printed dot. */
const CHORD_ERROR = 0.001;

export const stretchPoint = (s: Stretch, p: PaperPoint): PaperPoint => ({
  x: s.to.x + (p.x - s.from.x) * s.across,
  y: s.to.y + (p.y - s.from.y) * s.down,
});

/** An unequal stretch makes ellipses of arcs; they are drawn as fine chords. */
export function stretchStroke(s: Stretch, item: PathItem | CircleItem): PathItem | CircleItem {
  if (s.across === s.down) {
    if (item.type === 'circle')
      return { ...item, center: stretchPoint(s, item.center), radius: item.radius * s.across };
    return { ...item, vertices: item.vertices.map((v) => ({ ...stretchPoint(s, v), bulge: v.bulge })) };
  }
  const path = item.type === 'circle' ? circleAsPath(item) : item;
  const points = flattened(path);
  return { ...path, vertices: points.map((p): PathStep => ({ ...stretchPoint(s, p), bulge: 0 })) };
}

/** The vertices of a path with its arcs as chords within 0.001 mm, or within `error`. */
export function flattened(
  path: Pick<PathItem, 'vertices' | 'closed'>,
  error = CHORD_ERROR,
): readonly PaperPoint[] {
  const pieces = pathPieces(path);
  const [first] = path.vertices;
  if (!first) return [];
  const points: PaperPoint[] = [{ x: first.x, y: first.y }];
  for (const piece of pieces) {
    if (piece.kind === 'line') {
      points.push(piece.to);
      continue;
    }
    const step = 2 * Math.acos(Math.max(0, 1 - error / piece.radius));
    const count = Math.max(2, Math.ceil(Math.abs(piece.sweep) / step));
    for (let i = 1; i <= count; i += 1) points.push(segmentPoint(piece, i / count));
  }
  if (path.closed && points.length > 1) points.pop();
  return points;
}
