import type { Bike, Stance } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import type { DrivelineSolution } from '../driveline/index.ts';
import { centerlineAt, type Frame3, type Point3, toWorld } from '../geometry/index.ts';
import { contactLean } from './lean.ts';

/** A point of the bike that may touch the ground, at the design stance. */
export interface ContactPoint {
  /** Part, as in the build file: `engine`, `pegs`, `plates.axle`. */
  readonly part: string;
  readonly at: Point3;
  /** Of a round part about that point [m]. */
  readonly radius: number;
}

export interface LeanContact {
  readonly part: string;
  readonly side: 'left' | 'right';
  /** φ [rad]. */
  readonly lean: number;
  /** The point, in the stance that leans, upright [m]. */
  readonly at: Point3;
}

/** Tubes are looked at in steps of this [m]: a bend of the usual radius strays from its chords by less than 1 mm. */
const STEP = 20e-3;
/** Of a stand's pivot bolt and bracket, where nothing is known of them [m]. @source practice */
const STAND_RADIUS = 15e-3;

/**
 * What touches first when the bike leans to each side, of pegs, engine, tubes, sprockets, discs, axle ends, stand and
 * bodies, in the loaded stance; the lowest lean of each part, rising. The tires' crowns are half their widths, and
 * between the wheels what lies between.
 * @param more points of parts that this room does not know, such as plates
 * @source derived, see `contactLean`
 */
export function leanContacts(
  build: Build,
  bike: Bike,
  driveline: DrivelineSolution,
  more: readonly ContactPoint[] = [],
): readonly LeanContact[] {
  const stance = bike.layout.stances.sag;
  const found = new Map<string, LeanContact>();
  for (const point of [...contactPoints(build, bike, driveline), ...more]) {
    const at = toWorld(stance.frame, point.at);
    const lean = contactLean({
      across: at.y,
      height: at.z,
      radius: point.radius,
      crown: crownAt(bike, stance, at.x),
    });
    if (lean === undefined) continue;
    const sides = Math.abs(at.y) > 1e-6 ? [at.y > 0 ? 'left' : 'right'] : ['left', 'right'];
    for (const side of sides as LeanContact['side'][]) {
      const key = `${side} ${point.part}`;
      const before = found.get(key);
      if (!before || lean < before.lean) found.set(key, { part: point.part, side, lean, at });
    }
  }
  return [...found.values()].sort((a, b) => a.lean - b.lean || a.part.localeCompare(b.part));
}

/** Half the tread width, no more than the tire's radius; linear along the wheelbase. */
function crownAt({ layout: { fitted } }: Bike, stance: Stance, x: number): number {
  const crown = (tire: { readonly width: number; readonly radius: number }): number =>
    Math.min(tire.width / 2, tire.radius);
  const [rear, front] = [crown(fitted.rear), crown(fitted.front)];
  return rear + (front - rear) * Math.min(1, Math.max(0, x / stance.wheelbase));
}

/** Points of the placed bike that can touch, at the design stance. */
function contactPoints(build: Build, bike: Bike, driveline: DrivelineSolution): ContactPoint[] {
  return [
    ...pegPoints(build, bike),
    ...boxPoints('engine', bike.engine.box.frame, bike.engine.box.half),
    ...bodyPoints(build, bike),
    ...bike.tubes.flatMap((tube) => tubePoints(tube)),
    ...sprocketPoints(bike, driveline),
    ...bike.brakes.flatMap((brake) =>
      discPoints(`brakes.${brake.wheel}`, brake.center, brake.radius, brake.thickness / 2),
    ),
    ...axlePoints(bike),
    ...(bike.layout.places.stand
      ? [{ part: 'seating.stand', at: bike.layout.places.stand, radius: STAND_RADIUS }]
      : []),
  ];
}

function pegPoints(build: Build, bike: Bike): ContactPoint[] {
  const { length, diameter } = build.seating.pegs;
  const { peg } = bike.layout.places;
  const y = Math.abs(peg.y) + length / 2;
  return [1, -1].map((side) => ({ part: 'seating.pegs', at: { ...peg, y: side * y }, radius: diameter / 2 }));
}

function boxPoints(part: string, frame: Frame3, half: Point3): ContactPoint[] {
  const signs = [1, -1];
  return signs.flatMap((x) =>
    signs.flatMap((y) =>
      signs.map((z) => ({
        part,
        at: toWorld(frame, { x: x * half.x, y: y * half.y, z: z * half.z }),
        radius: 0,
      })),
    ),
  );
}

function bodyPoints(build: Build, bike: Bike): ContactPoint[] {
  return Object.entries(build.bodies ?? {}).flatMap(([name, body]) => {
    const origin = bike.layout.places.bodies[name]!;
    const frame: Frame3 = {
      origin,
      x: { x: 1, y: 0, z: 0 },
      y: { x: 0, y: 1, z: 0 },
      z: { x: 0, y: 0, z: 1 },
    };
    return boxPoints(`bodies.${name}`, frame, { x: body.length / 2, y: body.width / 2, z: body.height / 2 });
  });
}

function tubePoints({ id, centerline, outside }: Bike['tubes'][number]): ContactPoint[] {
  const count = Math.max(1, Math.ceil(centerline.length / STEP));
  return Array.from({ length: count + 1 }, (_, k) => ({
    part: `tubes.${id}`,
    at: centerlineAt(centerline, (centerline.length * k) / count).point,
    radius: outside / 2,
  }));
}

function sprocketPoints(bike: Bike, driveline: DrivelineSolution): ContactPoint[] {
  return Object.values(driveline.chains).flatMap(({ stage, chain, driver, driven }) => {
    const line = bike.ladder.lines.find(({ drive }) => drive === stage.id);
    return (
      [
        ['from', driver, line?.driverY],
        ['to', driven, line?.drivenY],
      ] as const
    ).flatMap(([end, sprocket, y]) => {
      const center = bike.shafts[stage[end]];
      if (!center || y === undefined) return [];
      // The chain runs over the teeth and stands out by half its plates.
      const radius = sprocket.pitchDiameter / 2 + chain.plateHeight / 2;
      return discPoints(
        `drives.${stage.id}.${end}`,
        { ...center, y },
        Math.max(radius, sprocket.outsideDiameter / 2),
        chain.halfWidth,
      );
    });
  });
}

/** The lowest points of a disc's two faces; it stands square to the axle, so they stay the lowest in a lean. */
const discPoints = (part: string, center: Point3, radius: number, half: number): ContactPoint[] =>
  [1, -1].map((side) => ({
    part,
    at: { x: center.x, y: center.y + side * half, z: center.z - radius },
    radius: 0,
  }));

function axlePoints(bike: Bike): ContactPoint[] {
  return Object.values(bike.stacks).flatMap(({ shaft, axle }) => {
    const center = bike.shafts[shaft];
    if (!axle || !center) return [];
    return [axle.left, axle.right].map((y) => ({
      part: `stacks.${shaft}`,
      at: { ...center, y, z: center.z - axle.diameter / 2 },
      radius: 0,
    }));
  });
}
