import type { Point3 } from './point.ts';
import { along3, rotate3 } from './vec3.ts';

/** A bend between two legs of a tube. */
export interface TubeBend {
  /** [rad], 0 < angle < π. */
  readonly angle: number;
  /**
   * Turn of the tube before the bend, from the plane of the bend before [rad], right-hand rule about the direction of
   * travel: clockwise as seen along the tube from its first end. Of no effect on the shape for the first bend.
   */
  readonly rotation: number;
}

/**
 * Corner points of a tube from its legs, measured from corner to corner along the centerline [m], and the bends between
 * them: starts at the origin along x and bends first toward y (turned by the first bend's rotation). Legs are one more than bends.
 * @source derived
 */
export function pointsOfLegs(legs: readonly number[], bends: readonly TubeBend[]): Point3[] {
  if (legs.length !== bends.length + 1) throw new RangeError('legs are one more than bends');
  let direction: Point3 = { x: 1, y: 0, z: 0 };
  let axis: Point3 = { x: 0, y: 0, z: 1 };
  const points: Point3[] = [{ x: 0, y: 0, z: 0 }];
  legs.forEach((leg, i) => {
    points.push(along3(points[i]!, direction, leg));
    const bend = bends[i];
    if (!bend) return;
    axis = rotate3(axis, direction, bend.rotation);
    direction = rotate3(direction, axis, bend.angle);
  });
  return points;
}
