import { bad, good, type Issue, type Outcome } from '../quantity/index.ts';
import type { Loop, LoopVertex } from './loop.ts';
import { bulgeOfSweep } from './loopSegment.ts';
import { counterclockwise } from './loopTransform.ts';
import type { Point } from './point.ts';
import { add2, cross2, distance2, dot2, polar2, scale2, subtract2, unit2 } from './vec2.ts';

/** A corner of an outline, rounded to `radius` [m] when that is above 0. */
export interface RoundedCorner extends Point {
  /** [m], ≥ 0; none is a sharp corner. */
  readonly radius?: number;
}

/** [m] */
export interface Circle {
  readonly center: Point;
  /** [m] */
  readonly radius: number;
}

/** Lengths below this are no lengths: a nanometer, far under anything made and far over rounding [m]. */
const NOTHING = 1e-9;

/** Two half circles, counterclockwise from the rightmost point. `radius` [m] > 0. */
export function circleLoop(center: Point, radius: number): Loop {
  needsPositive(radius, 'a circle needs a radius above 0');
  return [
    { x: center.x + radius, y: center.y, bulge: 1 },
    { x: center.x - radius, y: center.y, bulge: 1 },
  ];
}

/** Rectangle on the middle point `center`, sides along the axes, counterclockwise from the lower left corner [m]. */
export function rectangleLoop(center: Point, width: number, height: number): Loop {
  needsPositive(width, 'a rectangle needs a width above 0');
  needsPositive(height, 'a rectangle needs a height above 0');
  return rectangleCorners(center, width, height).map((p) => ({ ...p, bulge: 0 }));
}

/** Rectangle with all corners rounded; issue when the radius is over half the shorter side. */
export function roundedRectangleLoop(
  center: Point,
  width: number,
  height: number,
  radius: number,
): Outcome<Loop> {
  needsPositive(width, 'a rectangle needs a width above 0');
  needsPositive(height, 'a rectangle needs a height above 0');
  const max = Math.min(width, height) / 2;
  if (!(radius >= 0 && radius <= max + NOTHING)) {
    return bad({
      code: 'out-of-range',
      path: 'radius',
      given: radius * 1e3,
      min: 0,
      max: max * 1e3,
      unit: 'mm',
    });
  }
  return roundedPolygonLoop(rectangleCorners(center, width, height).map((p) => ({ ...p, radius })));
}

/** Obround of `width` with the centers of its ends at `a` and `b`; a circle when they are the same point. */
export function slotLoop(a: Point, b: Point, width: number): Loop {
  needsPositive(width, 'a slot needs a width above 0');
  const radius = width / 2;
  if (distance2(a, b) <= NOTHING) return circleLoop(a, radius);
  const u = unit2(subtract2(b, a));
  const right = { x: u.y * radius, y: -u.x * radius };
  return [
    { ...add2(a, right), bulge: 0 },
    { ...add2(b, right), bulge: 1 },
    { ...subtract2(b, right), bulge: 0 },
    { ...subtract2(a, right), bulge: 1 },
  ];
}

/** Straight-sided outline through the points, turned counterclockwise; at least three points. */
export function polygonLoop(points: readonly Point[]): Loop {
  if (points.length < 3) throw new RangeError('a polygon needs three points');
  return counterclockwise(points.map((p) => ({ x: p.x, y: p.y, bulge: 0 })));
}

/**
 * Polygon whose corners are replaced by arcs tangent to both sides: tangent length = r·tan(turn/2), bulge = tan(turn/4).
 * Counterclockwise. Issues (paths `corners[i]`): a corner where the outline turns straight back, radii that need more
 * of a side than it has, two corners in one place.
 * @source derived, tangent arc in a corner
 */
export function roundedPolygonLoop(corners: readonly RoundedCorner[]): Outcome<Loop> {
  if (corners.length < 3)
    return bad({ code: 'conflict', path: 'corners', reason: 'an outline needs three corners' });
  const issues: Issue[] = [];
  const n = corners.length;
  const cuts = corners.map((corner, i) => {
    const cut = cornerCut(corners[(i + n - 1) % n]!, corner, corners[(i + 1) % n]!);
    if (typeof cut === 'string') issues.push({ code: 'conflict', path: `corners[${i}]`, reason: cut });
    return typeof cut === 'string' ? { tangent: 0, turn: 0 } : cut;
  });
  cuts.forEach((cut, i) => {
    const side = distance2(corners[i]!, corners[(i + 1) % n]!);
    const wanted = cut.tangent + cuts[(i + 1) % n]!.tangent;
    if (wanted > side + NOTHING) issues.push(sideTooShort(i, (i + 1) % n, wanted, side));
  });
  const [first, ...rest] = issues;
  if (first) return bad(first, ...rest);
  const vertices = corners.flatMap((corner, i) =>
    cornerVertices(corners[(i + n - 1) % n]!, corner, corners[(i + 1) % n]!, cuts[i]!),
  );
  return good(counterclockwise(withoutRepeats(vertices)));
}

/**
 * The outline of the convex hull of circles: arcs of the circles joined by common tangents, counterclockwise.
 * A radius of 0 is a point. Where the outline passes from circle i to circle j, the normal stands at
 * δ − acos((ri − rj)/d), with d and δ the distance and direction from i to j. Throws without a circle above size 0.
 * @source derived, support function of a disc h(φ) = c·n(φ) + r
 */
export function hullLoop(circles: readonly Circle[]): Loop {
  const spans = hullSpans(circles);
  const only = spans.length === 1 ? spans[0] : undefined;
  if (only) return circleLoop(only.circle.center, only.circle.radius);
  if (spans.length === 0) throw new RangeError('a hull needs a circle');
  const vertices = spans.flatMap(({ circle, from, to }): LoopVertex[] => {
    if (circle.radius === 0) return [{ x: circle.center.x, y: circle.center.y, bulge: 0 }];
    const parts = to - from > Math.PI ? 2 : 1; // bulges stay at 1 or below
    const arcs = Array.from({ length: parts }, (_, k) => ({
      ...polar2(circle.center, circle.radius, from + ((to - from) * k) / parts),
      bulge: bulgeOfSweep((to - from) / parts),
    }));
    return [...arcs, { ...polar2(circle.center, circle.radius, to), bulge: 0 }];
  });
  return withoutRepeats(vertices);
}

function needsPositive(value: number, message: string): void {
  if (!(value > 0 && Number.isFinite(value))) throw new RangeError(message);
}

function rectangleCorners(center: Point, width: number, height: number): Point[] {
  const [w, h] = [width / 2, height / 2];
  return [
    { x: center.x - w, y: center.y - h },
    { x: center.x + w, y: center.y - h },
    { x: center.x + w, y: center.y + h },
    { x: center.x - w, y: center.y + h },
  ];
}

interface CornerCut {
  /** Length taken from each side [m]. */
  readonly tangent: number;
  /** Turn of the outline at the corner [rad], positive left. */
  readonly turn: number;
}

/** What a corner takes from its sides, or why it can't be made. */
function cornerCut(before: Point, corner: RoundedCorner, after: Point): CornerCut | string {
  const arriving = subtract2(corner, before);
  const leaving = subtract2(after, corner);
  const shortest = Math.min(Math.hypot(arriving.x, arriving.y), Math.hypot(leaving.x, leaving.y));
  if (!(shortest > NOTHING)) return 'two corners lie in one place';
  const turn = Math.atan2(cross2(arriving, leaving), dot2(arriving, leaving));
  const radius = corner.radius ?? 0;
  if (!(radius >= 0 && Number.isFinite(radius))) return 'a corner radius is 0 or more';
  if (radius === 0) return { tangent: 0, turn };
  if (Math.PI - Math.abs(turn) < 1e-9)
    return 'the outline turns straight back here and can have no corner radius';
  return { tangent: radius * Math.tan(Math.abs(turn) / 2), turn };
}

function sideTooShort(from: number, to: number, wanted: number, side: number): Issue {
  return {
    code: 'conflict',
    path: `corners[${from}]`,
    reason: `the corner radii at corners ${from} and ${to} need ${(wanted * 1e3).toFixed(3)} mm of the side between them, which is ${(side * 1e3).toFixed(3)} mm long`,
  };
}

function cornerVertices(before: Point, corner: RoundedCorner, after: Point, cut: CornerCut): LoopVertex[] {
  if (cut.tangent <= NOTHING) return [{ x: corner.x, y: corner.y, bulge: 0 }];
  const back = scale2(unit2(subtract2(before, corner)), cut.tangent);
  const on = scale2(unit2(subtract2(after, corner)), cut.tangent);
  return [
    { ...add2(corner, back), bulge: bulgeOfSweep(cut.turn) },
    { ...add2(corner, on), bulge: 0 },
  ];
}

// Two arcs that meet leave a straight piece of no length between them.
const withoutRepeats = (vertices: readonly LoopVertex[]): Loop =>
  vertices.filter((v, i) => v.bulge !== 0 || distance2(v, vertices[(i + 1) % vertices.length]!) > NOTHING);

interface HullSpan {
  readonly circle: Circle;
  /** Directions of the outline's normal while it follows this circle [rad]; from ≤ to. */
  readonly from: number;
  readonly to: number;
}

/** Which circle reaches farthest in each direction, all the way round. */
function hullSpans(given: readonly Circle[]): HullSpan[] {
  for (const c of given) if (!(c.radius >= 0)) throw new RangeError('a circle has no negative radius');
  const circles = given.filter((c, i) => !given.some((other, j) => i !== j && isHeld(c, other, i < j)));
  const breaks = circles.flatMap((a) => circles.flatMap((b) => handover(a, b))).sort((a, b) => a - b);
  const clean = breaks.filter((phi, k) => k === 0 || phi - breaks[k - 1]! > 1e-12);
  const startsAt = clean[0];
  if (startsAt === undefined) {
    const circle = farthest(circles, 0);
    return circle && circle.radius > 0 ? [{ circle, from: 0, to: 2 * Math.PI }] : [];
  }
  const spans: HullSpan[] = [];
  clean.forEach((from, k) => {
    const to = clean[k + 1] ?? startsAt + 2 * Math.PI;
    const circle = farthest(circles, (from + to) / 2)!;
    const last = spans.at(-1);
    if (last?.circle === circle) spans[spans.length - 1] = { circle, from: last.from, to };
    else spans.push({ circle, from, to });
  });
  const [head, tail] = [spans[0]!, spans.at(-1)!];
  if (spans.length === 1 || head.circle !== tail.circle) return spans;
  return [{ circle: head.circle, from: tail.from - 2 * Math.PI, to: head.to }, ...spans.slice(1, -1)];
}

/** Whether `other` holds `c`; of two that are the same, the first is kept. */
function isHeld(c: Circle, other: Circle, isFirst: boolean): boolean {
  const d = distance2(c.center, other.center);
  if (d <= NOTHING && Math.abs(c.radius - other.radius) <= NOTHING) return !isFirst;
  return d + c.radius <= other.radius + NOTHING;
}

/** Direction of the normal at which b begins to reach farther than a [rad, 0 to 2π]; none when one holds the other. */
function handover(a: Circle, b: Circle): number[] {
  const d = distance2(a.center, b.center);
  if (a === b || d <= Math.abs(a.radius - b.radius) + NOTHING) return [];
  const direction = Math.atan2(b.center.y - a.center.y, b.center.x - a.center.x);
  const phi = direction - Math.acos((a.radius - b.radius) / d);
  return [phi - 2 * Math.PI * Math.floor(phi / (2 * Math.PI))];
}

function farthest(circles: readonly Circle[], phi: number): Circle | undefined {
  const n = { x: Math.cos(phi), y: Math.sin(phi) };
  let best: Circle | undefined;
  for (const c of circles) {
    if (!best || dot2(c.center, n) + c.radius > dot2(best.center, n) + best.radius) best = c;
  }
  return best;
}
