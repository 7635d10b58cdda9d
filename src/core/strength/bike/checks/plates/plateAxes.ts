import {
  add3,
  cross3,
  directionToLocal,
  type Frame3,
  type Point,
  type Point3,
  subtract3,
  toWorld,
} from '../../../../geometry/index.ts';
import type { FlatPattern } from '../../../../plates/index.ts';
import { type Holder, heldBy, type PointLoad } from '../../../plates/index.ts';

/** A placed copy of a plate. */
export interface PlacedPlate {
  readonly pattern: FlatPattern;
  readonly index: number;
  readonly hand: FlatPattern['placed'][number]['hand'];
  readonly frame: Frame3;
  /** Node of the model. */
  readonly node: string;
}

const ZERO: Point3 = { x: 0, y: 0, z: 0 };

/** Copies of all plates that have a place, as the model names them. */
export const placedPlates = (patterns: readonly FlatPattern[]): readonly PlacedPlate[] =>
  patterns.flatMap((pattern) =>
    pattern.placed.map(({ hand, frame }, index) => ({
      pattern,
      index,
      hand,
      frame,
      node: `plate:${pattern.id}.${hand}`,
    })),
  );

/** A force in the bike, brought to where it enters the plate: force and moment there in the plate's own axes. */
export function enteringAt(
  { frame, pattern }: PlacedPlate,
  entry: Point,
  load: { readonly at: Point3; readonly force?: Point3; readonly moment?: Point3 },
): PointLoad {
  const { force = ZERO, moment = ZERO } = load;
  const arm = subtract3(load.at, toWorld(frame, { ...entry, z: pattern.thickness / 2 }));
  return {
    at: entry,
    force: directionToLocal(frame, force),
    moment: directionToLocal(frame, add3(moment, cross3(arm, force))),
  };
}

/** A load shared by several bolts, as a bolt group shares it. */
export function sharedBy(load: PointLoad, bolts: readonly Point[], radius: number): readonly PointLoad[] {
  if (bolts.length === 0) return [load];
  const holders = bolts.map((at): Holder => ({ by: 'point', at }));
  const minus = (v: Point3): Point3 => ({ x: -v.x, y: -v.y, z: -v.z });
  return heldBy({ points: [load], lines: [] }, holders, radius).points.map(({ at, force, moment }) => ({
    at,
    force: minus(force),
    ...(moment ? { moment: minus(moment) } : {}),
  }));
}

/** One load for all that enter at one place. */
export function sumAt(at: Point, loads: readonly PointLoad[]): PointLoad {
  return {
    at,
    force: loads.reduce((sum, { force }) => add3(sum, force), ZERO),
    moment: loads.reduce((sum, { moment }) => add3(sum, moment ?? ZERO), ZERO),
  };
}

/**
 * A moment out of the plane that a bolt or a bearing brings in: it presses on the two faces, or on the bore, its radius to
 * either side of the middle, so half of it enters on each side.
 * @source derived, a couple of forces ±M/(2·r) at ±r
 */
export function pressedIn(load: PointLoad, radius: number): readonly PointLoad[] {
  const { at, force, moment } = load;
  const size = moment ? Math.hypot(moment.x, moment.y) : 0;
  if (!moment || size === 0) return [load];
  // r × F = M with F along z and r square to M: r = r·(−My, Mx)/|M| turned so that (y·Fz, −x·Fz) = (Mx, My).
  const [rx, ry] = [(-radius * moment.y) / size, (radius * moment.x) / size];
  const pair = size / (2 * radius);
  return [
    { at, force, moment: { x: 0, y: 0, z: moment.z } },
    { at: { x: at.x + rx, y: at.y + ry }, force: { x: 0, y: 0, z: pair } },
    { at: { x: at.x - rx, y: at.y - ry }, force: { x: 0, y: 0, z: -pair } },
  ];
}
