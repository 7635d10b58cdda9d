import { gaussPanel } from './gaussLegendre.ts';
import type { Loop } from './loop.ts';
import { type ArcSegment, type Bounds, type Segment, segmentLength, segments } from './loopSegment.ts';
import { loopBounds, piecesOf, type Shape } from './outline.ts';
import type { Point } from './point.ts';
import { between2, distance2, subtract2 } from './vec2.ts';

/** What a flat region measures. The moments are about its own centroid, along x and y. */
export interface RegionProperties {
  /** A [m²], > 0 whichever way the outline is walked. */
  readonly area: number;
  /** Length of all edges, holes included [m]. */
  readonly perimeter: number;
  /** [m] */
  readonly centroid: Point;
  /** Ixx = ∫ y² dA about the centroid [m⁴]. */
  readonly ixx: number;
  /** Iyy = ∫ x² dA about the centroid [m⁴]. */
  readonly iyy: number;
  /** Ixy = ∫ x·y dA about the centroid [m⁴], positive when the region leans into the first and third quadrant. */
  readonly ixy: number;
  /** Exact box, arcs' extreme points included [m]. */
  readonly bounds: Bounds;
}

/** ∫ 1, x, y, y², x², x·y dA about a reference point. */
interface Moments {
  readonly a: number;
  readonly x: number;
  readonly y: number;
  readonly yy: number;
  readonly xx: number;
  readonly xy: number;
}

const NONE: Moments = { a: 0, x: 0, y: 0, yy: 0, xx: 0, xy: 0 };
const QUARTER = Math.PI / 2;

/** Enclosed area [m²], positive when the loop is walked counterclockwise. */
export const signedArea = (loop: Loop): number => momentsOf(segments(loop), loop[0] ?? { x: 0, y: 0 }).a;

export const loopPerimeter = (loop: Loop): number => lengthOf(segments(loop));

/** Area, centroid and second moments of the region inside one loop; see {@link regionProperties}. */
export const loopProperties = (loop: Loop): RegionProperties => regionProperties(loop, []);

/**
 * Area, centroid and second moments of an outline less its holes, by Green's theorem on the true lines and arcs:
 * the polygon of the chords plus, for each arc, the circular segment on its chord. Right to rounding; no arc is
 * cut into chords. The outline must be simple and the holes inside it and apart from each other
 * (`isSimpleLoop`, `loopInside`). Throws when nothing is enclosed.
 * @source derived, Green's theorem; checked against closed forms and a general geometry library
 */
export function regionProperties(outline: Shape, holes: readonly Shape[]): RegionProperties {
  const edge = piecesOf(outline);
  const inner = holes.map(piecesOf);
  const reference = edge[0]?.from ?? { x: 0, y: 0 };
  const m = inner.reduce(
    (sum, hole) => combine(sum, unsigned(momentsOf(hole, reference)), -1),
    unsigned(momentsOf(edge, reference)),
  );
  if (!(m.a > 0)) throw new RangeError('the outline encloses no area');
  const cx = m.x / m.a;
  const cy = m.y / m.a;
  return {
    area: m.a,
    perimeter: [edge, ...inner].reduce((sum, pieces) => sum + lengthOf(pieces), 0),
    centroid: { x: reference.x + cx, y: reference.y + cy },
    ixx: m.yy - m.a * cy * cy,
    iyy: m.xx - m.a * cx * cx,
    ixy: m.xy - m.a * cx * cy,
    bounds: loopBounds(outline),
  };
}

const lengthOf = (pieces: readonly Segment[]): number =>
  pieces.reduce((sum, piece) => sum + segmentLength(piece), 0);

const combine = (p: Moments, q: Moments, k: number): Moments => ({
  a: p.a + k * q.a,
  x: p.x + k * q.x,
  y: p.y + k * q.y,
  yy: p.yy + k * q.yy,
  xx: p.xx + k * q.xx,
  xy: p.xy + k * q.xy,
});

const unsigned = (m: Moments): Moments => (m.a < 0 ? combine(NONE, m, -1) : m);

function momentsOf(pieces: readonly Segment[], reference: Point): Moments {
  return pieces.reduce((sum, piece) => {
    const p = subtract2(piece.from, reference);
    const q = subtract2(piece.to, reference);
    const withChord = combine(sum, triangleMoments(p, q), 1);
    return piece.kind === 'line' ? withChord : combine(withChord, arcMoments(piece, reference), 1);
  }, NONE);
}

/** The triangle of the reference point and a chord, signed. */
function triangleMoments(p: Point, q: Point): Moments {
  const twice = p.x * q.y - p.y * q.x;
  return {
    a: twice / 2,
    x: (twice * (p.x + q.x)) / 6,
    y: (twice * (p.y + q.y)) / 6,
    yy: (twice * (p.y * p.y + p.y * q.y + q.y * q.y)) / 12,
    xx: (twice * (p.x * p.x + p.x * q.x + q.x * q.x)) / 12,
    xy: (twice * (2 * p.x * p.y + p.x * q.y + q.x * p.y + 2 * q.x * q.y)) / 24,
  };
}

/**
 * The circular segment between an arc and its chord. In axes with u along the chord from its middle and w toward the
 * arc, w(t) = 2R·sin((α+t)/2)·sin((α−t)/2) loses no digits however flat the arc, unlike R·(cos t − cos α).
 */
function arcMoments(arc: ArcSegment, reference: Point): Moments {
  const sign = Math.sign(arc.sweep);
  const alpha = Math.abs(arc.sweep) / 2;
  const r = arc.radius;
  // Panels of a quarter turn at most. Written out: a visitor would make an object of every number.
  const panels = Math.max(1, Math.ceil((2 * alpha) / QUARTER - 1e-9));
  const half = alpha / panels;
  let [a, sw, ww, uu] = [0, 0, 0, 0];
  for (let k = 0; k < panels; k++) {
    for (let i = 0; i < gaussPanel.nodes.length; i++) {
      const t = -alpha + (2 * k + 1) * half + half * gaussPanel.nodes[i]!;
      const w = 2 * r * Math.sin((alpha + t) / 2) * Math.sin((alpha - t) / 2);
      const strip = sign * w * r * Math.cos(t) * (half * gaussPanel.weights[i]!);
      a += strip;
      sw += (w / 2) * strip;
      ww += ((w * w) / 3) * strip;
      uu += (r * Math.sin(t)) ** 2 * strip;
    }
  }

  const chord = distance2(arc.from, arc.to);
  const e = { x: (arc.to.x - arc.from.x) / chord, y: (arc.to.y - arc.from.y) / chord };
  const n = { x: sign * e.y, y: -sign * e.x };
  const m = subtract2(between2(arc.from, arc.to, 0.5), reference);
  return {
    a,
    x: a * m.x + sw * n.x,
    y: a * m.y + sw * n.y,
    yy: a * m.y * m.y + 2 * sw * m.y * n.y + uu * e.y * e.y + ww * n.y * n.y,
    xx: a * m.x * m.x + 2 * sw * m.x * n.x + uu * e.x * e.x + ww * n.x * n.x,
    xy: a * m.x * m.y + sw * (m.x * n.y + m.y * n.x) + uu * e.x * e.y + ww * n.x * n.y,
  };
}
