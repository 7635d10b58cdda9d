import type { Point, Point3 } from './point.ts';
import { add3, anyAcross3, cross3, dot3, rotate3, subtract3, unit3 } from './vec3.ts';

/** A right-handed set of axes in space: where a part's own coordinates lie in the bike. */
export interface Frame3 {
  /** Where the part's origin is [m]. */
  readonly origin: Point3;
  /** Unit vector along the part's x. */
  readonly x: Point3;
  /** Unit vector along the part's y. */
  readonly y: Point3;
  /** Unit vector along the part's z = x × y. */
  readonly z: Point3;
}

/** The bike's own axes: x forward, y left, z up. */
export const bikeFrame: Frame3 = {
  origin: { x: 0, y: 0, z: 0 },
  x: { x: 1, y: 0, z: 0 },
  y: { x: 0, y: 1, z: 0 },
  z: { x: 0, y: 0, z: 1 },
};

/** Frame with its x along `x` and its y as near to `yHint` as being square allows; throws when they are parallel. */
export function frameFromXY(origin: Point3, x: Point3, yHint: Point3): Frame3 {
  const ux = unit3(x);
  const uz = unit3(cross3(ux, yHint));
  return { origin, x: ux, y: cross3(uz, ux), z: uz };
}

/** Frame with its z along `z`; x lies as near to `xHint` as being square allows, or anywhere across z without it. */
export function frameFromZ(origin: Point3, z: Point3, xHint?: Point3): Frame3 {
  const uz = unit3(z);
  if (xHint === undefined) {
    const ux = anyAcross3(uz);
    return { origin, x: ux, y: cross3(uz, ux), z: uz };
  }
  const uy = unit3(cross3(uz, xHint));
  return { origin, x: cross3(uy, uz), y: uy, z: uz };
}

/** A part's point in the bike's axes [m]; z may be left out for a point in the part's plane. */
export const toWorld = (frame: Frame3, local: Point & { readonly z?: number }): Point3 =>
  add3(frame.origin, directionToWorld(frame, { x: local.x, y: local.y, z: local.z ?? 0 }));

/** A point of the bike in the part's axes [m]. */
export const toLocal = (frame: Frame3, world: Point3): Point3 =>
  directionToLocal(frame, subtract3(world, frame.origin));

export const directionToWorld = ({ x, y, z }: Frame3, local: Point3): Point3 => ({
  x: x.x * local.x + y.x * local.y + z.x * local.z,
  y: x.y * local.x + y.y * local.y + z.y * local.z,
  z: x.z * local.x + y.z * local.y + z.z * local.z,
});

export const directionToLocal = (frame: Frame3, world: Point3): Point3 => ({
  x: dot3(world, frame.x),
  y: dot3(world, frame.y),
  z: dot3(world, frame.z),
});

/** A point turned by `angle` [rad] about the line through `through` along `axis`, right-hand rule. */
export const rotatePointAbout = (point: Point3, through: Point3, axis: Point3, angle: number): Point3 =>
  add3(through, rotate3(subtract3(point, through), unit3(axis), angle));

/** A frame turned by `angle` [rad] about the line through `through` along `axis`, right-hand rule. */
export function rotateFrameAbout(frame: Frame3, through: Point3, axis: Point3, angle: number): Frame3 {
  const k = unit3(axis);
  return {
    origin: rotatePointAbout(frame.origin, through, k, angle),
    x: rotate3(frame.x, k, angle),
    y: rotate3(frame.y, k, angle),
    z: rotate3(frame.z, k, angle),
  };
}

export const translateFrame = (frame: Frame3, by: Point3): Frame3 => ({
  ...frame,
  origin: add3(frame.origin, by),
});

/** `inner`, given in the axes of `outer`, in the axes that `outer` is given in. */
export const composeFrames = (outer: Frame3, inner: Frame3): Frame3 => ({
  origin: toWorld(outer, inner.origin),
  x: directionToWorld(outer, inner.x),
  y: directionToWorld(outer, inner.y),
  z: directionToWorld(outer, inner.z),
});
