import { originalName, type Placement } from '../build/index.ts';
import { add3, distance3, type Point3, scale3, subtract3, unit3 } from '../geometry/index.ts';
import { bad, good, type Outcome } from '../quantity/index.ts';

/** Points by name; a plain table or, while they are being found, a map. */
export type NamedPoints = Readonly<Record<string, Point3>> | ReadonlyMap<string, Point3>;

/** Below this the way from one point to another has no direction [m]. */
const NO_WAY = 1e-9;

/**
 * The point of a placement [m]: from a named point, first along the way to another, then by offsets in the bike's
 * axes; `height` and `side` are absolute. `name.right` is the mirror image of `name` on the other side.
 * @issue unknown-name — a name that `points` does not hold
 * @issue conflict — `along` between two points in one place
 * @source derived, coordinates along datums
 */
export function placePoint(points: NamedPoints, placement: Placement): Outcome<Point3> {
  const start = namedPoint(points, placement.from);
  if (!start)
    return bad({ code: 'unknown-name', path: 'from', given: placement.from, wanted: 'datum, shaft or node' });
  const moved = placement.along ? movedAlong(points, start, placement.along) : good(start);
  if (!moved.ok) return moved;
  const { x, y, z } = moved.value;
  return good({
    x: x + (placement.forward ?? 0),
    y: placement.side ?? y + (placement.left ?? 0),
    z: placement.height ?? z + (placement.up ?? 0),
  });
}

/** A point or the mirror image of one by its name; undefined when there is none. */
export function namedPoint(points: NamedPoints, reference: string): Point3 | undefined {
  const name = originalName(reference);
  const point =
    points instanceof Map ? points.get(name) : ownPoint(points as Readonly<Record<string, Point3>>, name);
  return point && name !== reference ? mirrored(point) : point;
}

/** Mirror image in the center plane. */
export const mirrored = (point: Point3): Point3 => ({
  x: point.x,
  y: point.y === 0 ? 0 : -point.y,
  z: point.z,
});

/** A point of the engine in the bike: forward and up in the axes of the tilted base, left as it is [m]. */
export function enginePoint(
  base: Point3,
  tilt: number,
  at: { readonly forward: number; readonly left: number; readonly up: number },
): Point3 {
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
  return {
    x: base.x + at.forward * c - at.up * s,
    y: base.y + at.left,
    z: base.z + at.forward * s + at.up * c,
  };
}

function movedAlong(
  points: NamedPoints,
  start: Point3,
  along: NonNullable<Placement['along']>,
): Outcome<Point3> {
  const goal = namedPoint(points, along.toward);
  if (!goal)
    return bad({
      code: 'unknown-name',
      path: 'along.toward',
      given: along.toward,
      wanted: 'datum, shaft or node',
    });
  if (!(distance3(start, goal) > NO_WAY)) {
    const reason = 'this point lies where the placement starts, so there is no direction to move in';
    return bad({ code: 'conflict', path: 'along.toward', reason });
  }
  return good(add3(start, scale3(unit3(subtract3(goal, start)), along.distance)));
}

/** A table's own entry, not what every object inherits. */
const ownPoint = (points: Readonly<Record<string, Point3>>, name: string): Point3 | undefined =>
  Object.hasOwn(points, name) ? points[name] : undefined;
