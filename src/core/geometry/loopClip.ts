import type { Loop, LoopVertex } from './loop.ts';
import {
  type ArcSegment,
  type Bounds,
  bulgeOfSweep,
  joinBounds,
  type LineSegment,
  type Segment,
  segmentBounds,
  segmentPoint,
  segments,
  shareOfArc,
} from './loopSegment.ts';
import type { Point } from './point.ts';
import { SAME_POINT } from './segmentMeet.ts';
import { dot2, subtract2 } from './vec2.ts';

/** The half of the plane on the side of `out` of the line through `at` square to it. */
export interface HalfPlane {
  readonly at: Point;
  /** Length 1. */
  readonly out: Point;
}

/**
 * The part of the region inside a loop that lies in a half plane; lines stay lines and arcs stay arcs. Empty where
 * nothing lies there. A region that falls apart comes as one loop whose parts are joined by edges that run to and fro
 * along the line: they enclose nothing, so areas and moments are right, but such a loop isn't simple.
 * @source derived, each piece cut at the line and its parts beyond left out
 */
export function clipLoop(loop: Loop, half: HalfPlane): Loop {
  const pieces = segments(loop);
  if (pieces.length === 0) return [];
  const [least, most] = depthsOf(half, joinBounds(pieces.map(segmentBounds)));
  if (least >= 0) return loop;
  if (most <= SAME_POINT) return [];
  const kept = pieces.flatMap((piece) => partsIn(piece, half));
  return kept.flatMap(({ from, to, bulge }, i): LoopVertex[] => {
    const next = kept[(i + 1) % kept.length]!.from;
    const joins = next.x === to.x && next.y === to.y;
    return [{ ...from, bulge }, ...(joins ? [] : [{ ...to, bulge: 0 }])];
  });
}

interface Part {
  readonly from: Point;
  readonly to: Point;
  readonly bulge: number;
}

function partsIn(piece: Segment, half: HalfPlane): Part[] {
  const shares = [0, ...cutsOf(piece, half), 1];
  return shares.slice(1).flatMap((to, i): Part[] => {
    const from = shares[i]!;
    const points = [from, (from + to) / 2, to].map((share) => pointAt(piece, share));
    // A part along the line itself is left out: the edge that joins its ends lies in the same place.
    if (points.every((p) => depth(half, p) <= SAME_POINT)) return [];
    const bulge = piece.kind === 'line' ? 0 : bulgeOfSweep(piece.sweep * (to - from));
    return [{ from: points[0]!, to: points[2]!, bulge }];
  });
}

// An end is given back to the last digit, so that pieces that joined still do.
const pointAt = (piece: Segment, share: number): Point =>
  share === 1 ? piece.to : segmentPoint(piece, share);

/** How far a point lies inside the half plane [m]; negative outside it. */
const depth = ({ at, out }: HalfPlane, p: Point): number => dot2(subtract2(p, at), out);

/** Least and greatest depth in a box. */
function depthsOf(half: HalfPlane, { minX, minY, maxX, maxY }: Bounds): readonly [number, number] {
  const middle = depth(half, { x: (minX + maxX) / 2, y: (minY + maxY) / 2 });
  const reach = (Math.abs(half.out.x) * (maxX - minX) + Math.abs(half.out.y) * (maxY - minY)) / 2;
  return [middle - reach, middle + reach];
}

/** Shares of a piece, its ends left out, at which it crosses the edge of the half plane, ascending. */
function cutsOf(piece: Segment, half: HalfPlane): number[] {
  const shares = piece.kind === 'line' ? lineCuts(piece, half) : arcCuts(piece, half);
  return shares.filter((share) => share > 0 && share < 1).sort((a, b) => a - b);
}

function lineCuts(line: LineSegment, half: HalfPlane): number[] {
  const [a, b] = [depth(half, line.from), depth(half, line.to)];
  return a < 0 === b < 0 ? [] : [a / (a - b)];
}

/** The depth at the direction θ of an arc is that of its center and r·cos(θ − direction of `out`). */
function arcCuts(arc: ArcSegment, half: HalfPlane): number[] {
  const cosine = -depth(half, arc.center) / arc.radius;
  if (Math.abs(cosine) >= 1) return [];
  const toward = Math.atan2(half.out.y, half.out.x);
  return [-1, 1]
    .map((side) => shareOfArc(arc, toward + side * Math.acos(cosine)))
    .filter((share) => share !== undefined);
}
