import type { Bike, PlacedTube } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import {
  type DrivelineSolution,
  type SolvedChain,
  type StraightRun,
  straightRuns,
} from '../driveline/index.ts';
import {
  between3,
  centerlinePlaces,
  distance3,
  length2,
  length3,
  type Point3,
  rotatePointAbout,
  toLocal,
} from '../geometry/index.ts';
import { practice, type SourceRef } from '../quantity/index.ts';

/** Room between two parts, or how far one is inside the other (negative) [m]. */
export interface Clearance {
  readonly rule:
    | 'chain-tube'
    | 'sprocket-tube'
    | 'sprocket-ground'
    | 'tire-tube'
    | 'locked-tire-tube'
    | 'engine-tube'
    | 'engine-tire'
    | 'tire-shaft';
  readonly parts: readonly [string, string];
  readonly gap: number;
  readonly limit: number;
  readonly within: boolean;
  /** Where they come nearest [m]. */
  readonly at: Point3;
  readonly source: SourceRef;
}

/** Room a chain wants beside a tube: it whips, and a coat of paint is not much. */
const CHAIN_ROOM = 5e-3;
const TIRE_ROOM = 10e-3;
const ENGINE_ROOM = 5e-3;
/** Least height of a sprocket over the ground, bike upright. */
const GROUND_ROOM = 40e-3;
/** Tubes are looked at in steps of this along their straights, finer in bends [m]. */
const STEP = 4e-3;
const BEND_STEP = 0.05;

/**
 * The room between chains, sprockets, tires and engine on one side and frame tubes, ground and each other on the
 * other, at the design stance; the front tire also turned to both locks. Parts joined on purpose are not compared.
 * Tubes are looked at point by point every 4 mm, so a gap can come out up to 0.2 mm too large.
 * @source practice for the limits; derived, distances between a disc, a box, a prism or a torus and points of a tube
 */
export function clearances(build: Build, bike: Bike, drives: DrivelineSolution): readonly Clearance[] {
  const tubes = bike.tubes.map((tube) => ({ tube, points: pointsOf(tube) }));
  const chains = Object.values(drives.chains);
  return [
    ...chains.flatMap((chain) => chainClearances(bike, chain, tubes)),
    ...chains.flatMap((chain) => sprocketGround(bike, chain)),
    ...tireClearances(build, bike, tubes),
    ...engineClearances(bike, tubes),
    ...tireShafts(build, bike),
  ];
}

interface SampledTube {
  readonly tube: PlacedTube;
  readonly points: readonly Point3[];
}

function pointsOf(tube: PlacedTube): Point3[] {
  const places = centerlinePlaces(tube.centerline, BEND_STEP).map((place) => place.point);
  const points: Point3[] = [];
  places.forEach((place, i) => {
    const before = places[i - 1];
    const cuts = before ? Math.floor(distance3(before, place) / STEP) + 1 : 1;
    for (let k = 1; k < cuts; k++) points.push(between3(before!, place, k / cuts));
    points.push(place);
  });
  return points;
}

interface Found {
  readonly gap: number;
  readonly at: Point3;
}

/**
 * The nearest of a tube's points by a distance that is already less the tube's radius; none that is `within` or more
 * away. A distance changes by no more than the way walked, and points are at most a step apart, so points too near to
 * one that is far off are passed over.
 */
function nearest(
  { tube, points }: SampledTube,
  within: number,
  distance: (point: Point3) => number,
): Found | undefined {
  let gap = within;
  let at: Point3 | undefined;
  for (let i = 0; i < points.length; ) {
    const here = distance(points[i]!) - tube.outside / 2;
    if (here < gap) {
      gap = here;
      at = points[i]!;
    }
    i += Math.floor((here - gap) / STEP) + 1;
  }
  return at && { gap, at };
}

/** The worst of each pair of parts, so that a mirrored tube does not repeat what the left one said. */
function judged(
  rule: Clearance['rule'],
  parts: readonly [string, string],
  found: Found,
  limit: number,
): Clearance {
  return { rule, parts, ...found, limit, within: found.gap >= limit, source: practice(`room for ${rule}`) };
}

/** The plane that a chain runs in: the driven one, which the ladder compares with the driving one. */
function planeOf(bike: Bike, drive: string): number | undefined {
  return bike.ladder.lines.find((line) => line.drive === drive)?.drivenY;
}

function chainClearances(bike: Bike, solved: SolvedChain, tubes: readonly SampledTube[]): Clearance[] {
  const y = planeOf(bike, solved.stage.id);
  const [from, to] = [bike.shafts[solved.stage.from], bike.shafts[solved.stage.to]];
  if (y === undefined || !from || !to) return [];
  const [upper, lower] = straightRuns(
    from,
    to,
    solved.driver.pitchDiameter / 2,
    solved.driven.pitchDiameter / 2,
  );
  const half = { width: solved.chain.halfWidth, height: solved.chain.plateHeight / 2 };
  const [driver, driven] = [solved.driver.outsideDiameter / 2, solved.driven.outsideDiameter / 2];
  return tubes.flatMap((sampled): Clearance[] => {
    const run = nearest(sampled, 4 * CHAIN_ROOM, (point) =>
      Math.min(prismDistance(point, upper, y, half), prismDistance(point, lower, y, half)),
    );
    const disc = nearest(sampled, 4 * CHAIN_ROOM, (point) =>
      Math.min(
        discDistance(point, from, driver, y, half.width),
        discDistance(point, to, driven, y, half.width),
      ),
    );
    const parts = [solved.stage.id, sampled.tube.id] as const;
    return [
      ...(run ? [judged('chain-tube', parts, run, CHAIN_ROOM)] : []),
      ...(disc ? [judged('sprocket-tube', parts, disc, CHAIN_ROOM)] : []),
    ];
  });
}

/** From a point to a straight run of chain, a bar of rectangular section; 0 inside it. */
function prismDistance(
  point: Point3,
  [a, b]: StraightRun,
  y: number,
  half: { readonly width: number; readonly height: number },
): number {
  const [dx, dz] = [b.x - a.x, b.z - a.z];
  const along = ((point.x - a.x) * dx + (point.z - a.z) * dz) / (dx * dx + dz * dz);
  const t = Math.max(0, Math.min(1, along));
  const side = length2({ x: point.x - a.x - t * dx, y: point.z - a.z - t * dz });
  return length2({
    x: Math.max(0, side - half.height),
    y: Math.max(0, Math.abs(point.y - y) - half.width),
  });
}

/** Distance of two points seen from the side of the bike [m]. */
const fromAside = (a: Point3, b: Point3): number => length2({ x: a.x - b.x, y: a.z - b.z });

function discDistance(point: Point3, center: Point3, radius: number, y: number, halfWidth: number): number {
  const out = fromAside(point, center) - radius;
  return length2({ x: Math.max(0, out), y: Math.max(0, Math.abs(point.y - y) - halfWidth) });
}

function sprocketGround(bike: Bike, solved: SolvedChain): Clearance[] {
  const y = planeOf(bike, solved.stage.id) ?? 0;
  return ([solved.stage.from, solved.stage.to] as const).flatMap((shaft, i) => {
    const center = bike.shafts[shaft];
    const sprocket = i === 0 ? solved.driver : solved.driven;
    if (!center) return [];
    const gap = center.z - sprocket.outsideDiameter / 2 - solved.chain.plateHeight / 2;
    const at = { x: center.x, y, z: gap };
    return gap < 2 * GROUND_ROOM
      ? [judged('sprocket-ground', [solved.stage.id, shaft], { gap, at }, GROUND_ROOM)]
      : [];
  });
}

interface PlacedTire {
  readonly name: string;
  readonly center: Point3;
  readonly radius: number;
  /** Half the width with growth [m]. */
  readonly half: number;
}

function tiresOf(build: Build, bike: Bike): readonly [PlacedTire, PlacedTire] {
  const { layout } = bike;
  const tire = (end: 'rear' | 'front'): PlacedTire => {
    const size = end === 'rear' ? layout.rearTire : layout.frontTire;
    return {
      name: `${end} tire`,
      center: bike.shafts[`${end}Axle`] as Point3,
      radius: size.radius,
      half: size.width / 2 + (build.wheels[end].growth ?? 0),
    };
  };
  return [tire('rear'), tire('front')];
}

/** From a point to a tire whose section is a half round of the tread on straight sidewalls; 0 inside it. */
function tireDistance(point: Point3, tire: PlacedTire): number {
  const crown = Math.min(tire.half, tire.radius);
  const out = fromAside(point, tire.center) - (tire.radius - crown);
  const side = Math.abs(point.y - tire.center.y);
  return out > 0 ? length2({ x: out, y: side }) - crown : side - tire.half;
}

function tireClearances(build: Build, bike: Bike, tubes: readonly SampledTube[]): Clearance[] {
  const [rear, front] = tiresOf(build, bike);
  const pivot = bike.layout.points.neckBottom as Point3;
  const lock = build.steering.lock ?? 0;
  const turned = (point: Point3, angle: number) =>
    rotatePointAbout(point, pivot, bike.layout.steeringAxis, -angle);
  return tubes.flatMap((sampled): Clearance[] => {
    const near = (distance: (point: Point3) => number) => nearest(sampled, 3 * TIRE_ROOM, distance);
    const straight = [rear, front].flatMap((tire) => {
      const found = near((p) => tireDistance(p, tire));
      return found ? [judged('tire-tube', [tire.name, sampled.tube.id], found, TIRE_ROOM)] : [];
    });
    if (!(lock > 0)) return straight;
    const locked = near((p) =>
      Math.min(tireDistance(turned(p, lock), front), tireDistance(turned(p, -lock), front)),
    );
    if (!locked) return straight;
    return [...straight, judged('locked-tire-tube', [front.name, sampled.tube.id], locked, TIRE_ROOM)];
  });
}

function engineClearances(bike: Bike, tubes: readonly SampledTube[]): Clearance[] {
  const { frame, half } = bike.engine.box;
  const distance = (point: Point3) => {
    const local = toLocal(frame, point);
    const out = (value: number, limit: number) => Math.max(0, Math.abs(value) - limit);
    return length3({ x: out(local.x, half.x), y: out(local.y, half.y), z: out(local.z, half.z) });
  };
  return tubes.flatMap((sampled) => {
    const found = nearest(sampled, 2 * ENGINE_ROOM, distance);
    return found ? [judged('engine-tube', ['engine', sampled.tube.id], found, ENGINE_ROOM)] : [];
  });
}

/** Shafts that stand in the way of the rear tire. */
function tireShafts(build: Build, bike: Bike): Clearance[] {
  const [rear] = tiresOf(build, bike);
  return Object.entries(build.driveline.shafts).flatMap(([name, shaft]) => {
    const center = bike.shafts[name];
    if (!shaft.at || !center || shaft.diameter === undefined) return [];
    const gap = fromAside(center, rear.center) - rear.radius - shaft.diameter / 2;
    return gap < 3 * TIRE_ROOM
      ? [judged('tire-shaft', [rear.name, name], { gap, at: center }, TIRE_ROOM)]
      : [];
  });
}
