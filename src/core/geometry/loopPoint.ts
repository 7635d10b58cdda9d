import {
  type ArcSegment,
  boundsGap,
  extremeShares,
  type Segment,
  segmentPoint,
  segments,
} from './loopSegment.ts';
import { outlineOf, type Shape } from './outline.ts';
import type { Point } from './point.ts';
import {
  boxed,
  boxedMeetings,
  type Nearest,
  nearestOfBoxed,
  nearestOnSegment,
  SAME_POINT,
} from './segmentMeet.ts';
import { distance2 } from './vec2.ts';

export type Side = 'inside' | 'outside' | 'edge';

/** Nearest point of the outline to `p`; exact. */
export function nearestOnLoop(shape: Shape, p: Point): Nearest {
  const options = outlineOf(shape).pieces.map(({ piece }) => nearestOnSegment(piece, p));
  return options.reduce((best, option) => (option.distance < best.distance ? option : best));
}

/** Distance from a point to the outline, inside or out [m]; exact. */
export const distanceToLoop = (shape: Shape, p: Point): number => nearestOnLoop(shape, p).distance;

/** Nearest points of two outlines [m]; distance 0 where they cross or touch. Exact for lines and arcs. */
export const nearestOfLoops = (a: Shape, b: Shape): Nearest => nearestWithin(a, b, Number.POSITIVE_INFINITY)!;

/** {@link nearestOfLoops} where it is nearer than `within` [m], else none; pieces farther apart are passed over. */
export function nearestWithin(a: Shape, b: Shape, within: number): Nearest | undefined {
  const [one, other] = [outlineOf(a), outlineOf(b)];
  let best: Nearest | undefined;
  for (const p of one.pieces) {
    if (boundsGap(p.box, other.box) >= (best?.distance ?? within)) continue;
    for (const q of other.pieces) {
      const wanted = best?.distance ?? within;
      if (boundsGap(p.box, q.box) >= wanted) continue;
      const nearest = nearestOfBoxed(p, q);
      if (nearest.distance < wanted) best = nearest;
    }
  }
  return best;
}

/** Where a point lies; on the edge when nearer to it than a nanometer. */
export function locatePoint(shape: Shape, p: Point): Side {
  const { pieces } = outlineOf(shape);
  const at = { minX: p.x, minY: p.y, maxX: p.x, maxY: p.y };
  if (
    pieces.some(
      (one) => boundsGap(one.box, at) <= SAME_POINT && nearestOnSegment(one.piece, p).distance <= SAME_POINT,
    )
  )
    return 'edge';
  const crossings = pieces
    .filter(({ box }) => box.minY <= p.y && p.y <= box.maxY && box.maxX >= p.x)
    .flatMap(({ piece }) => monotonePieces(piece))
    .filter((piece) => crossesRay(piece, p)).length;
  return crossings % 2 === 1 ? 'inside' : 'outside';
}

/** Whether a point is inside the outline; a point on the edge is not. */
export const containsPoint = (shape: Shape, p: Point): boolean => locatePoint(shape, p) === 'inside';

/** Whether two outlines cross or touch. */
export function loopsMeet(a: Shape, b: Shape): boolean {
  const [one, other] = [outlineOf(a), outlineOf(b)];
  return one.pieces.some(
    (p) =>
      boundsGap(p.box, other.box) <= 2 * SAME_POINT &&
      other.pieces.some((q) => boxedMeetings(p, q).length > 0),
  );
}

/** Whether `inner` lies wholly inside `outer` without touching it. */
export function loopInside(inner: Shape, outer: Shape): boolean {
  const [one, other] = [outlineOf(inner), outlineOf(outer)];
  return !loopsMeet(one, other) && containsPoint(other, one.loop[0]!);
}

/** Whether the regions inside two outlines share any place, touching counted. */
export function loopsOverlap(a: Shape, b: Shape): boolean {
  const [one, other] = [outlineOf(a), outlineOf(b)];
  if (loopsMeet(one, other)) return true;
  return containsPoint(other, one.loop[0]!) || containsPoint(one, other.loop[0]!);
}

/** Whether an outline never crosses, touches or folds back on itself. A loop of fewer than two pieces is not simple. */
export function isSimpleLoop(shape: Shape): boolean {
  const pieces = 'pieces' in shape ? shape.pieces : segments(shape).map(boxed);
  const n = pieces.length;
  if (n < 2) return false;
  // Two pieces enclose something unless one runs back along the other.
  if (n === 2)
    return distance2(segmentPoint(pieces[0]!.piece, 0.5), segmentPoint(pieces[1]!.piece, 0.5)) > SAME_POINT;
  return pieces.every((a, i) =>
    pieces.every((b, j) => {
      if (j <= i) return true;
      const meetings = boxedMeetings(a, b);
      if (meetings.length === 0) return true;
      const joints = [
        ...(j === i + 1 ? [a.piece.to] : []),
        ...(i === 0 && j === n - 1 ? [a.piece.from] : []),
      ];
      return meetings.every((p) => joints.some((joint) => distance2(p, joint) <= 2 * SAME_POINT));
    }),
  );
}

/** A piece that only rises or only falls; an arc piece lies on one side of its center. */
interface MonotonePiece {
  readonly from: Point;
  readonly to: Point;
  readonly arc?: { readonly of: ArcSegment; readonly side: number };
}

// Cut at highest and lowest points, so that a level line meets each part at most once.
function monotonePieces(piece: Segment): MonotonePiece[] {
  if (piece.kind === 'line') return [{ from: piece.from, to: piece.to }];
  const shares = [0, ...extremeShares(piece), 1];
  return shares.slice(1).map((share, k) => {
    const before = shares[k]!;
    const middle = segmentPoint(piece, (before + share) / 2);
    const arc = { of: piece, side: Math.sign(middle.x - piece.center.x) };
    return { from: segmentPoint(piece, before), to: segmentPoint(piece, share), arc };
  });
}

/** Whether the ray from `p` along +x crosses the piece; an end counts when the piece lies above it. */
function crossesRay(piece: MonotonePiece, p: Point): boolean {
  const { from, to, arc } = piece;
  if (from.y > p.y === to.y > p.y) return false;
  if (arc) {
    const rise = p.y - arc.of.center.y;
    // Rounding may put p a hair above the arc's top; there the arc is straight above its center.
    const half = Math.sqrt(Math.max(0, (arc.of.radius - rise) * (arc.of.radius + rise)));
    return arc.of.center.x + arc.side * half > p.x;
  }
  return from.x + ((p.y - from.y) * (to.x - from.x)) / (to.y - from.y) > p.x;
}
