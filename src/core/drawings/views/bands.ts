import {
  add2,
  type Centerline,
  centerlinePlaces,
  cross2,
  distance2,
  dot2,
  type Frame3,
  flatten,
  hullLoop,
  type Loop,
  left2,
  type Point,
  type Point3,
  polar2,
  scale2,
  subtract2,
  toWorld,
  unit2,
} from '../../geometry/index.ts';
import type { FillRole, PathItem, PenRole, SheetItem } from '../sheet.ts';
import { viewCircle, viewLoop, viewPolygon } from '../view.ts';
import type { Projector } from './scene.ts';

/** How a shape is stroked and filled. */
export interface Look {
  readonly pen: PenRole | 'none';
  readonly fill: FillRole;
}

/** Step of a bend's turn in a drawing [rad]. */
const TURN_STEP = Math.PI / 60;
/** Chords of projected outlines [m]: a twentieth of a millimeter on the bike. */
const CHORD = 5e-5;
/** Points nearer than this on the plane are one [m]. */
const SAME = 1e-6;

/**
 * A round bar along a path: the silhouette of a tube of one radius is the offset of its projected centerline to both
 * sides, whatever its bends do in space. Where a bend turns away from the eye, so that the line runs back on itself, the
 * bar is drawn in two runs, the far one first; a bar seen end-on is a circle.
 */
export function band(
  p: Projector,
  path: readonly Point3[],
  radius: number,
  look: Look,
): readonly SheetItem[] {
  const runs = runsOf(p, path);
  return [...runs]
    .sort((a, b) => a.near - b.near)
    .map((run) => {
      const { points } = run;
      const length = points.slice(1).reduce((sum, q, i) => sum + distance2(points[i]!, q), 0);
      if (points.length < 2 || length < radius / 2)
        return viewCircle(p.view, points[0]!, radius, look.pen, look.fill);
      const side = (s: number): Point[] =>
        points.map((q, i) => add2(q, scale2(normalAt(points, i), s * radius)));
      const outline = [
        ...side(1),
        ...(run.roundEnd ? cap(points.at(-1)!, points.at(-2)!, radius) : []),
        ...side(-1).reverse(),
        ...(run.roundStart ? cap(points[0]!, points[1]!, radius) : []),
      ];
      return viewPolygon(p.view, outline, look.pen, look.fill);
    });
}

interface Run {
  readonly points: readonly Point[];
  readonly near: number;
  readonly roundStart: boolean;
  readonly roundEnd: boolean;
}

/** The projected path, cut where it turns back. */
function runsOf(p: Projector, path: readonly Point3[]): readonly Run[] {
  const spots = path
    .map((q) => ({ at: p.flat(q), near: p.near(q) }))
    .filter((spot, i, all) => i === 0 || distance2(spot.at, all[i - 1]!.at) > SAME);
  const cuts = spots.flatMap((spot, i) => {
    const [before, after] = [spots[i - 1], spots[i + 1]];
    if (!before || !after) return [];
    return dot2(subtract2(spot.at, before.at), subtract2(after.at, spot.at)) < 0 ? [i] : [];
  });
  const ends = [0, ...cuts, spots.length - 1];
  return ends.slice(1).map((to, k) => {
    const own = spots.slice(ends[k]!, to + 1);
    return {
      points: own.map((spot) => spot.at),
      near: own.reduce((sum, spot) => sum + spot.near, 0) / own.length,
      roundStart: k > 0,
      roundEnd: k < cuts.length,
    };
  });
}

/** Half a circle round the end of a bar that bends away from the eye, from its left to its right. */
function cap(end: Point, before: Point, radius: number): readonly Point[] {
  const way = subtract2(end, before);
  const start = Math.atan2(way.y, way.x) + Math.PI / 2;
  return Array.from({ length: 11 }, (_, k) => polar2(end, radius, start - (Math.PI * (k + 1)) / 12));
}

/** Points along a bent tube, close enough for a drawing. */
export const tubePath = (line: Centerline): readonly Point3[] =>
  centerlinePlaces(line, TURN_STEP).map((place) => place.point);

/** A bar with round ends, thick at one and thin at the other. */
export function limb(
  p: Projector,
  from: Point3,
  to: Point3,
  radii: readonly [number, number],
  look: Look,
): PathItem {
  const circles = [
    { center: p.flat(from), radius: radii[0] },
    { center: p.flat(to), radius: radii[1] },
  ];
  return viewLoop(p.view, hullLoop(circles), look.pen, look.fill);
}

/** The outline of a part in its own plane, on the plane of the view. */
export const projected = (p: Projector, frame: Frame3, loop: Loop, z = 0): readonly Point[] =>
  flatten(loop, CHORD).map((q) => p.flat(toWorld(frame, { ...q, z })));

/** A filled face with openings that what lies behind shows through, and all its edges. */
export function pierced(
  p: Projector,
  outside: readonly Point[],
  holes: readonly (readonly Point[])[],
  looks: { readonly edge: PenRole | 'none'; readonly holes: PenRole | 'none'; readonly fill: FillRole },
): readonly SheetItem[] {
  const seam = outside[0]!;
  const turn = Math.sign(area(outside)) || 1;
  const fill = [
    ...outside,
    seam,
    // The outline goes out to each hole and back along one line, so that no area lies between.
    ...holes.flatMap((hole) => {
      const against = Math.sign(area(hole)) === turn ? [...hole].reverse() : hole;
      return [...against, against[0]!, seam];
    }),
  ];
  return [
    viewPolygon(p.view, fill, 'none', looks.fill),
    ...(looks.edge === 'none' ? [] : [viewPolygon(p.view, outside, looks.edge)]),
    ...(looks.holes === 'none' ? [] : holes.map((hole) => viewPolygon(p.view, hole, looks.holes as PenRole))),
  ];
}

/** Points of a circle in the plane of the view [m]. */
export const circlePoints = (center: Point, radius: number, count = 48): readonly Point[] =>
  Array.from({ length: count }, (_, k) => polar2(center, radius, (2 * Math.PI * k) / count));

/** Corners of the smallest convex shape around the points, counterclockwise. */
export function convexHull(points: readonly Point[]): readonly Point[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const chain = (list: readonly Point[]): Point[] => {
    const kept: Point[] = [];
    for (const q of list) {
      while (
        kept.length > 1 &&
        cross2(subtract2(kept.at(-1)!, kept.at(-2)!), subtract2(q, kept.at(-1)!)) <= 0
      )
        kept.pop();
      kept.push(q);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain([...sorted].reverse())];
}

/** Twice the signed area, positive counterclockwise. */
const area = (points: readonly Point[]): number =>
  points.reduce((sum, q, i) => sum + cross2(q, points[(i + 1) % points.length]!), 0);

/** Left normal at a point of a line: the mean of its two pieces, stretched so that both stay parallel. */
function normalAt(points: readonly Point[], i: number): Point {
  const before = i > 0 ? unit2(subtract2(points[i]!, points[i - 1]!)) : undefined;
  const after = i + 1 < points.length ? unit2(subtract2(points[i + 1]!, points[i]!)) : undefined;
  const mean = add2(before ?? after!, after ?? before!);
  const size = Math.hypot(mean.x, mean.y);
  if (size < 1e-6) return left2(before!);
  return left2(scale2(mean, 2 / size ** 2));
}
