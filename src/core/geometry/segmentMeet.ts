import {
  type ArcSegment,
  type Bounds,
  boundsGap,
  type LineSegment,
  type Segment,
  segmentBounds,
  segmentPoint,
  shareOfArc,
} from './loopSegment.ts';
import type { Point } from './point.ts';
import { between2, cross2, distance2, dot2, left2, length2, subtract2 } from './vec2.ts';

/** Points nearer than this are one point: a nanometer, far under anything made and far over rounding [m]. */
export const SAME_POINT = 1e-9;

/** Two points, one on each of two shapes, and the distance between them [m]. */
export interface Nearest {
  readonly distance: number;
  readonly from: Point;
  readonly to: Point;
}

/** A piece with the box around it, which tells at once most of what lies too far off to matter. */
export interface BoxedSegment {
  readonly piece: Segment;
  readonly box: Bounds;
}

const HALF = Math.PI;

export const boxed = (piece: Segment): BoxedSegment => ({ piece, box: segmentBounds(piece) });

/**
 * Points that two pieces share, touching counted; for pieces that lie on each other, the ends of the shared part.
 * Exact for lines and arcs. A touch closer than {@link SAME_POINT} to tangent is one point.
 */
export const segmentMeetings = (a: Segment, b: Segment): Point[] => boxedMeetings(boxed(a), boxed(b));

/** {@link segmentMeetings} of pieces whose boxes are known. */
export function boxedMeetings(
  { piece: a, box }: BoxedSegment,
  { piece: b, box: other }: BoxedSegment,
): Point[] {
  if (boundsGap(box, other) > 2 * SAME_POINT) return [];
  const candidates =
    a.kind === 'line'
      ? b.kind === 'line'
        ? lineLine(a, b)
        : lineCircle(a, b)
      : b.kind === 'line'
        ? lineCircle(b, a)
        : circleCircle(a, b);
  const ends = [a.from, a.to].filter((p) => isOn(b, p)).concat([b.from, b.to].filter((p) => isOn(a, p)));
  const inner = candidates.map((p) => polished(a, b, p)).filter((p) => isOn(a, p) && isOn(b, p));
  return distinct(ends.concat(inner));
}

/** Point of a piece nearest to `p`; exact. */
export function nearestOnSegment(segment: Segment, p: Point): Nearest {
  if (segment.kind === 'line') {
    const t = footShare(segment, p);
    const to = t <= 0 ? segment.from : t >= 1 ? segment.to : between2(segment.from, segment.to, t);
    return { distance: distance2(p, to), from: p, to };
  }
  const share = shareOfArc(segment, Math.atan2(p.y - segment.center.y, p.x - segment.center.x));
  if (share !== undefined) {
    const distance = Math.abs(distance2(p, segment.center) - segment.radius);
    return { distance, from: p, to: segmentPoint(segment, share) };
  }
  const toStart = distance2(p, segment.from);
  const toEnd = distance2(p, segment.to);
  return toStart <= toEnd
    ? { distance: toStart, from: p, to: segment.from }
    : { distance: toEnd, from: p, to: segment.to };
}

/**
 * Nearest points of two pieces; exact. The least distance is 0 where they meet, else at an end of one of them, else
 * where the connecting line is square to both: through the arcs' centers.
 */
export const nearestOfSegments = (a: Segment, b: Segment): Nearest => nearestOfBoxed(boxed(a), boxed(b));

/** {@link nearestOfSegments} of pieces whose boxes are known. */
export function nearestOfBoxed(first: BoxedSegment, second: BoxedSegment): Nearest {
  const [meeting] = boxedMeetings(first, second);
  const [a, b] = [first.piece, second.piece];
  if (meeting) return { distance: 0, from: meeting, to: meeting };
  const options: Nearest[] = [
    nearestOnSegment(b, a.from),
    nearestOnSegment(b, a.to),
    flip(nearestOnSegment(a, b.from)),
    flip(nearestOnSegment(a, b.to)),
  ];
  if (a.kind === 'arc') options.push(...throughCenter(a, b));
  if (b.kind === 'arc') options.push(...throughCenter(b, a).map(flip));
  return options.reduce((best, option) => (option.distance < best.distance ? option : best));
}

const flip = (n: Nearest): Nearest => ({ distance: n.distance, from: n.to, to: n.from });

/** Where the line from an arc's center square to another piece crosses both. */
function throughCenter(arc: ArcSegment, other: Segment): Nearest[] {
  const directions = directionsToward(arc, other);
  return directions.flatMap((angle) => {
    const share = shareOfArc(arc, angle);
    return share === undefined ? [] : [nearestOnSegment(other, segmentPoint(arc, share))];
  });
}

function directionsToward(arc: ArcSegment, other: Segment): number[] {
  const target = other.kind === 'line' ? footOn(other, arc.center) : other.center;
  const d = subtract2(target, arc.center);
  if (length2(d) <= SAME_POINT) {
    // Concentric arcs are nearest at an end; a line through the center would have met the arc or ends inside it.
    return [];
  }
  const angle = Math.atan2(d.y, d.x);
  return [angle, angle + HALF];
}

const footOn = (line: LineSegment, p: Point): Point => between2(line.from, line.to, footShare(line, p));

/** How far along a line the foot of the perpendicular from a point lies, as a share of its length. */
function footShare({ from, to }: LineSegment, p: Point): number {
  const x = to.x - from.x;
  const y = to.y - from.y;
  return ((p.x - from.x) * x + (p.y - from.y) * y) / (x * x + y * y);
}

/**
 * A meeting point by a few Newton steps on the distances from both pieces: the closed form loses digits where an arc's
 * center lies far off. Pieces that run almost along each other are left as they are.
 */
function polished(a: Segment, b: Segment, start: Point): Point {
  let p = start;
  for (let step = 0; step < 3; step++) {
    const [f, g] = [offSegment(a, p), offSegment(b, p)];
    const det = cross2(f.normal, g.normal);
    if (Math.abs(det) < 1e-4) return p;
    p = {
      x: p.x - (f.distance * g.normal.y - g.distance * f.normal.y) / det,
      y: p.y - (g.distance * f.normal.x - f.distance * g.normal.x) / det,
    };
  }
  return p;
}

/** Signed distance of a point from the whole line or circle of a piece, and the direction in which it grows. */
function offSegment(segment: Segment, p: Point): { readonly distance: number; readonly normal: Point } {
  if (segment.kind === 'arc') {
    const d = subtract2(p, segment.center);
    const length = length2(d);
    // At the center itself any direction is as good.
    const normal = length > 0 ? { x: d.x / length, y: d.y / length } : { x: 1, y: 0 };
    return { distance: length - segment.radius, normal };
  }
  const d = subtract2(segment.to, segment.from);
  const length = length2(d);
  const normal = { x: -d.y / length, y: d.x / length };
  return { distance: dot2(subtract2(p, segment.from), normal), normal };
}

const isOn = (segment: Segment, p: Point): boolean => nearestOnSegment(segment, p).distance <= SAME_POINT;

function distinct(points: readonly Point[]): Point[] {
  return points.filter((p, i) => points.findIndex((q) => distance2(p, q) <= SAME_POINT) === i);
}

function lineLine(a: LineSegment, b: LineSegment): Point[] {
  const u = subtract2(a.to, a.from);
  const v = subtract2(b.to, b.from);
  const det = cross2(u, v);
  // Parallel lines meet only at ends, which are tested apart.
  if (Math.abs(det) <= 1e-12 * length2(u) * length2(v)) return [];
  return [between2(a.from, a.to, cross2(subtract2(b.from, a.from), v) / det)];
}

function lineCircle(line: LineSegment, arc: ArcSegment): Point[] {
  const foot = footOn(line, arc.center);
  const away = distance2(foot, arc.center);
  if (away > arc.radius + SAME_POINT) return [];
  if (away >= arc.radius - SAME_POINT) return [foot];
  const half = Math.sqrt((arc.radius - away) * (arc.radius + away));
  const d = subtract2(line.to, line.from);
  const k = half / length2(d);
  return [
    { x: foot.x - d.x * k, y: foot.y - d.y * k },
    { x: foot.x + d.x * k, y: foot.y + d.y * k },
  ];
}

function circleCircle(a: ArcSegment, b: ArcSegment): Point[] {
  const d = subtract2(b.center, a.center);
  const apart = length2(d);
  // Arcs of one circle share points only from an end of one of them on, and ends are tested apart.
  if (apart <= SAME_POINT) return [];
  const outside = apart - (a.radius + b.radius);
  const inside = Math.abs(a.radius - b.radius) - apart;
  if (outside > SAME_POINT || inside > SAME_POINT) return [];
  // Distance from a's center, along d, of the line through both meeting points.
  const x = (apart + ((a.radius - b.radius) * (a.radius + b.radius)) / apart) / 2;
  const on = { x: a.center.x + (d.x * x) / apart, y: a.center.y + (d.y * x) / apart };
  if (outside >= -SAME_POINT || inside >= -SAME_POINT) return [on];
  const half = Math.sqrt((a.radius - x) * (a.radius + x));
  const across = left2(d);
  return [-1, 1].map((side) => ({
    x: on.x + (side * across.x * half) / apart,
    y: on.y + (side * across.y * half) / apart,
  }));
}
