import { type Frame3, frameFromXY, type Point3, scale3, translateFrame } from '../geometry/index.ts';
import type { PlateContext } from './plan.ts';

export const FORWARD: Point3 = { x: 1, y: 0, z: 0 };
export const LEFT: Point3 = { x: 0, y: 1, z: 0 };
export const UP: Point3 = { x: 0, y: 0, z: 1 };

/** The planes a plate may be drawn in: its x and y axes in the bike. */
export const planeAxes: Readonly<Record<'side' | 'level' | 'across', readonly [Point3, Point3]>> = {
  side: [FORWARD, UP],
  level: [FORWARD, LEFT],
  across: [LEFT, UP],
};

/** Frame of a plate whose middle plane passes through `center`: its z = 0 face lies half a thickness before it. */
export function middleFrame(center: Point3, x: Point3, y: Point3, thickness: number): Frame3 {
  const frame = frameFromXY(center, x, y);
  return translateFrame(frame, scale3(frame.z, -thickness / 2));
}

/** Mirror image of a plate's place on the other side of the center plane; right-handed again, so its z turns round. */
export function mirroredFrame(frame: Frame3, thickness: number): Frame3 {
  const flip = (p: Point3): Point3 => ({ x: p.x, y: -p.y, z: p.z });
  const mirrored = frameFromXY(flip(frame.origin), flip(frame.x), flip(frame.y));
  return translateFrame(mirrored, scale3(mirrored.z, -thickness));
}

/** Where a plate that stands fore and aft is across the bike [m]: by its stack item, else as given. */
export function standingY(
  context: PlateContext,
  shaft: string,
  entry: { readonly inStack?: string | undefined; readonly y?: number | undefined },
): number | undefined {
  if (entry.inStack === undefined) return entry.y;
  const stack = Object.values(context.bike.stacks).find((one) => one.shaft === shaft);
  const item = stack?.items.find((one) => one.id === entry.inStack);
  return item ? (item.left + item.right) / 2 : entry.y;
}

/** Frame of a plate that stands fore and aft at `y`, x forward and y up from a shaft center; none without `y`. */
export function standingFrame(
  context: PlateContext,
  shaft: string,
  y: number | undefined,
  thickness: number,
): { readonly frame?: Frame3 } {
  const center = context.bike.layout.shafts[shaft];
  if (!center || y === undefined) return {};
  return { frame: middleFrame({ ...center, y }, FORWARD, UP, thickness) };
}

/** Diameter of an axle or shaft [m]: as given, by its stack, or by the driveline. */
export function shaftDiameter(
  context: PlateContext,
  shaft: string,
  given: number | undefined,
): number | undefined {
  const stack = Object.values(context.build.stacks).find((one) => one.shaft === shaft);
  return given ?? stack?.axle?.diameter ?? context.build.driveline.shafts[shaft]?.diameter;
}
