import type { Loop } from './loop.ts';
import {
  type ArcSegment,
  type Bounds,
  boundsGap,
  extremeShares,
  type Segment,
  segmentBounds,
  segmentPoint,
  segments,
} from './loopSegment.ts';
import type { Point } from './point.ts';
import {
  type Nearest,
  nearestOfSegments,
  nearestOnSegment,
  SAME_POINT,
  segmentMeetings,
} from './segmentMeet.ts';
import { distance2 } from './vec2.ts';

export type Side = 'inside' | 'outside' | 'edge';

/** Nearest point of the outline to `p`; exact. */
export const nearestOnLoop = (loop: Loop, p: Point): Nearest =>
  least(segments(loop).map((piece) => nearestOnSegment(piece, p)));

/** Distance from a point to the outline, inside or out [m]; exact. */
export const distanceToLoop = (loop: Loop, p: Point): number => nearestOnLoop(loop, p).distance;

/** Nearest points of two outlines [m]; distance 0 where they cross or touch. Exact for lines and arcs. */
export function nearestOfLoops(a: Loop, b: Loop): Nearest {
  const best = nearestWithin(a, b, Number.POSITIVE_INFINITY);
  if (!best) throw new RangeError('an outline needs pieces');
  return best;
}

/** {@link nearestOfLoops} where it is nearer than `within` [m], else none; pieces farther apart are passed over. */
export function nearestWithin(a: Loop, b: Loop, within: number): Nearest | undefined {
  const others = boxed(b);
  let best: Nearest | undefined;
  for (const p of boxed(a)) {
    for (const q of others) {
      const wanted = best?.distance ?? within;
      if (boundsGap(p.box, q.box) >= wanted) continue;
      const nearest = nearestOfSegments(p.piece, q.piece);
      if (nearest.distance < wanted) best = nearest;
    }
  }
  return best;
}

/** Where a point lies; on the edge when nearer to it than a nanometer. */
export function locatePoint(loop: Loop, p: Point): Side {
  const pieces = segments(loop);
  if (pieces.some((piece) => nearestOnSegment(piece, p).distance <= SAME_POINT)) return 'edge';
  const crossings = pieces.flatMap(monotonePieces).filter((piece) => crossesRay(piece, p)).length;
  return crossings % 2 === 1 ? 'inside' : 'outside';
}

/** Whether a point is inside the outline; a point on the edge is not. */
export const containsPoint = (loop: Loop, p: Point): boolean => locatePoint(loop, p) === 'inside';

/** Whether two outlines cross or touch. */
export function loopsMeet(a: Loop, b: Loop): boolean {
  const others = boxed(b);
  return boxed(a).some((p) => others.some((q) => meetings(p, q).length > 0));
}

/** Whether `inner` lies wholly inside `outer` without touching it. */
export function loopInside(inner: Loop, outer: Loop): boolean {
  const first = inner[0];
  return first !== undefined && !loopsMeet(inner, outer) && containsPoint(outer, first);
}

/** Whether the regions inside two outlines share any place, touching counted. */
export const loopsOverlap = (a: Loop, b: Loop): boolean =>
  loopsMeet(a, b) || loopInside(a, b) || loopInside(b, a);

/** Whether an outline never crosses, touches or folds back on itself. A loop of fewer than two pieces is not simple. */
export function isSimpleLoop(loop: Loop): boolean {
  const pieces = boxed(loop);
  const n = pieces.length;
  if (n < 2) return false;
  // Two pieces enclose something unless one runs back along the other.
  if (n === 2)
    return distance2(segmentPoint(pieces[0]!.piece, 0.5), segmentPoint(pieces[1]!.piece, 0.5)) > SAME_POINT;
  return pieces.every((a, i) =>
    pieces.slice(i + 1).every((b, k) => {
      const j = i + 1 + k;
      const shared = [
        ...(j === i + 1 ? [a.piece.to] : []),
        ...(i === 0 && j === n - 1 ? [a.piece.from] : []),
      ];
      return meetings(a, b).every((p) => shared.some((s) => distance2(p, s) <= 2 * SAME_POINT));
    }),
  );
}

interface Boxed {
  readonly piece: Segment;
  readonly box: Bounds;
}

const boxed = (loop: Loop): Boxed[] => segments(loop).map((piece) => ({ piece, box: segmentBounds(piece) }));

const meetings = (a: Boxed, b: Boxed): Point[] =>
  boundsGap(a.box, b.box) > 2 * SAME_POINT ? [] : segmentMeetings(a.piece, b.piece);

function least(options: readonly Nearest[]): Nearest {
  const [first, ...rest] = options;
  if (!first) throw new RangeError('an outline needs pieces');
  return rest.reduce((best, option) => (option.distance < best.distance ? option : best), first);
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
