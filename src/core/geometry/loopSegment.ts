import type { Loop, LoopVertex } from './loop.ts';
import type { Point } from './point.ts';
import { between2, distance2, polar2 } from './vec2.ts';

/** One straight or round piece of a loop [m, rad]. */
export type Segment = LineSegment | ArcSegment;

export interface LineSegment {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
}

export interface ArcSegment {
  readonly kind: 'arc';
  readonly from: Point;
  readonly to: Point;
  readonly center: Point;
  /** [m], > 0 */
  readonly radius: number;
  /** Direction from the center to `from` [rad]. */
  readonly startAngle: number;
  /** Turn from `from` to `to` [rad], positive counterclockwise, −2π to 2π. */
  readonly sweep: number;
}

/** The box around a shape, along the axes [m]. */
export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** [m] */
const FLAT = 1e-9;
const QUARTER = Math.PI / 2;
const TURN = 2 * Math.PI;

/** bulge = tan(sweep / 4). */
export const bulgeOfSweep = (sweep: number): number => Math.tan(sweep / 4);

export const sweepOfBulge = (bulge: number): number => 4 * Math.atan(bulge);

/** The pieces of a loop in its own order; piece i leaves vertex i. Pieces of no length are left out. */
export function segments(loop: Loop): Segment[] {
  const pieces: Segment[] = [];
  loop.forEach((vertex, i) => {
    const next = loop[(i + 1) % loop.length]!;
    if (distance2(vertex, next) > 0) pieces.push(segmentOf(vertex, next));
  });
  return pieces;
}

/**
 * The piece from a vertex to the next. Radius = chord·(1 + b²) / (4·|b|). An arc that rises less than a nanometer over its
 * chord (chord·|b|/2) is taken as the line it is: its center would lie so far off that points on it had no digits left.
 */
export function segmentOf(from: LoopVertex, next: Point): Segment {
  const start = { x: from.x, y: from.y };
  const end = { x: next.x, y: next.y };
  const b = from.bulge;
  const chord = distance2(start, end);
  if (b === 0 || (chord > 0 && (chord * Math.abs(b)) / 2 < FLAT))
    return { kind: 'line', from: start, to: end };
  if (!(chord > 0))
    throw new RangeError('an arc needs two different ends; write a circle as two half circles');
  // The center lies left of the chord of a counterclockwise arc by chord·(1 − b²)/(4·b).
  const offset = (1 - b * b) / (4 * b);
  const middle = between2(start, end, 0.5);
  const center = { x: middle.x - (end.y - start.y) * offset, y: middle.y + (end.x - start.x) * offset };
  return {
    kind: 'arc',
    from: start,
    to: end,
    center,
    radius: (chord * (1 + b * b)) / (4 * Math.abs(b)),
    startAngle: Math.atan2(start.y - center.y, start.x - center.x),
    sweep: sweepOfBulge(b),
  };
}

/** A loop from pieces that join end to end. */
export const loopOfSegments = (pieces: readonly Segment[]): Loop =>
  pieces.map((piece) => ({ ...piece.from, bulge: piece.kind === 'arc' ? bulgeOfSweep(piece.sweep) : 0 }));

export const segmentLength = (segment: Segment): number =>
  segment.kind === 'line' ? distance2(segment.from, segment.to) : segment.radius * Math.abs(segment.sweep);

/** Point at the share `t` of the piece's length, 0 at its start, 1 at its end. */
export function segmentPoint(segment: Segment, t: number): Point {
  if (segment.kind === 'line') return between2(segment.from, segment.to, t);
  if (t === 0) return segment.from;
  if (t === 1) return segment.to;
  return polar2(segment.center, segment.radius, segment.startAngle + t * segment.sweep);
}

/** Direction of travel at the share `t` of a piece [rad, counterclockwise from x]. */
export function segmentHeading(segment: Segment, t: number): number {
  if (segment.kind === 'line') {
    return Math.atan2(segment.to.y - segment.from.y, segment.to.x - segment.from.x);
  }
  return segment.startAngle + t * segment.sweep + Math.sign(segment.sweep) * QUARTER;
}

/** How far along an arc the direction `angle` from its center lies: 0 to 1 on the arc, undefined off it. */
export function shareOfArc(arc: ArcSegment, angle: number): number | undefined {
  const turned = arc.sweep > 0 ? angle - arc.startAngle : arc.startAngle - angle;
  const inside = turned - TURN * Math.floor(turned / TURN);
  const share = inside / Math.abs(arc.sweep);
  return share <= 1 ? share : undefined;
}

/** Shares at which an arc reaches its leftmost, rightmost, lowest or highest point, its ends left out, ascending. */
export function extremeShares(arc: ArcSegment): number[] {
  return [0, 1, 2, 3]
    .map((quarter) => shareOfArc(arc, quarter * QUARTER))
    .filter((share) => share !== undefined)
    .filter((share) => share > 0 && share < 1)
    .sort((a, b) => a - b);
}

/** The exact box around a piece: its ends and, for an arc, the extreme points it passes. */
export function segmentBounds(segment: Segment): Bounds {
  const { from, to } = segment;
  const ends = {
    minX: Math.min(from.x, to.x),
    minY: Math.min(from.y, to.y),
    maxX: Math.max(from.x, to.x),
    maxY: Math.max(from.y, to.y),
  };
  if (segment.kind === 'line') return ends;
  const { center, radius } = segment;
  const passes = (quarter: number): boolean => shareOfArc(segment, quarter * QUARTER) !== undefined;
  return {
    minX: passes(2) ? Math.min(ends.minX, center.x - radius) : ends.minX,
    minY: passes(3) ? Math.min(ends.minY, center.y - radius) : ends.minY,
    maxX: passes(0) ? Math.max(ends.maxX, center.x + radius) : ends.maxX,
    maxY: passes(1) ? Math.max(ends.maxY, center.y + radius) : ends.maxY,
  };
}

/** Distance between the two lines square to the direction `angle` [rad] that just hold the pieces between them [m]. */
export function spanAlong(pieces: readonly Segment[], angle: number): number {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  let [low, high] = [Infinity, -Infinity];
  for (const piece of pieces) {
    const from = piece.from.x * c + piece.from.y * s;
    const to = piece.to.x * c + piece.to.y * s;
    low = Math.min(low, from, to);
    high = Math.max(high, from, to);
    if (piece.kind === 'line') continue;
    const center = piece.center.x * c + piece.center.y * s;
    if (shareOfArc(piece, angle) !== undefined) high = Math.max(high, center + piece.radius);
    if (shareOfArc(piece, angle + Math.PI) !== undefined) low = Math.min(low, center - piece.radius);
  }
  return high - low;
}

/** Box around points; throws for none. */
export function boundsOfPoints(points: readonly Point[]): Bounds {
  if (points.length === 0) throw new RangeError('no points have no box');
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const p of points) {
    minX = Math.min(minX, p.x);
    minY = Math.min(minY, p.y);
    maxX = Math.max(maxX, p.x);
    maxY = Math.max(maxY, p.y);
  }
  return { minX, minY, maxX, maxY };
}

/** The smallest box around boxes; throws for none. */
export function joinBounds(boxes: readonly Bounds[]): Bounds {
  if (boxes.length === 0) throw new RangeError('no boxes have no box');
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const box of boxes) {
    minX = Math.min(minX, box.minX);
    minY = Math.min(minY, box.minY);
    maxX = Math.max(maxX, box.maxX);
    maxY = Math.max(maxY, box.maxY);
  }
  return { minX, minY, maxX, maxY };
}

/** Distance between two boxes [m], 0 where they overlap. */
export function boundsGap(a: Bounds, b: Bounds): number {
  const x = Math.max(0, a.minX - b.maxX, b.minX - a.maxX);
  const y = Math.max(0, a.minY - b.maxY, b.minY - a.maxY);
  return Math.sqrt(x * x + y * y);
}
