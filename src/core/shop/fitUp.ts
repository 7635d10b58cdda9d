import type { Bike } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import { distance3, type Point3 } from '../geometry/index.ts';
import { type FrameSpot, frameSpots } from './frameSpots.ts';

/** Something that the frame stands on, on the bench, besides its block. */
export interface Prop {
  readonly what: string;
  readonly thickness: number;
}

/** One place to hold, measured from the datum: bench top, center line, plumb under the rear axle. */
export interface JigStation {
  readonly name: string;
  readonly what: string;
  /** Forward of the rear axle, left of the center line [m]. */
  readonly forward: number;
  readonly left: number;
  /** Height of the part's center over the bench, with the props [m]. */
  readonly center: number;
  /** Height of the block under the part, with the props [m]; absent where it is held instead: an axle, a bar, a steep tube. */
  readonly block?: number;
  /** Blocks and shims from the shop's own that make up the block, thickest first, and what is left over [m]. */
  readonly made?: BlockStack;
  /** Mirrored on the other side. */
  readonly pair: boolean;
}

export interface BlockStack {
  readonly blocks: readonly number[];
  readonly shims: readonly number[];
  /** Block height less what is stacked [m]. */
  readonly left: number;
}

/** A length to tram after tacking [m]. */
export interface TramLength {
  readonly name: string;
  readonly from: Point3;
  readonly to: Point3;
  readonly length: number;
}

export interface FitUpSheet {
  readonly props: readonly Prop[];
  /** Sum of the props [m]. */
  readonly propHeight: number;
  /** Height over the ground of what rests on the props: the underside of the lowest frame tube [m]. */
  readonly restsAt: number;
  readonly stations: readonly JigStation[];
  readonly diagonals: readonly TramLength[];
  /** Where a plumb bob from each station must hang on the bench [m]. */
  readonly plumbMarks: readonly { readonly name: string; readonly forward: number; readonly left: number }[];
  /** Steering axis from the bench [rad]. */
  readonly headAngle: number;
}

/** Cosine of the slope beyond which a tube slides off a block instead of resting on it. @source practice, 60° */
const STEEPEST = 0.5;

/**
 * Heights, blocks and checks of the jig. Everything that props the frame (a bolt head, a plate on the table) lifts
 * all of it, so every block grows by the sum: a 1/4 in head over two 1/4 in plates makes a 10 in block 10 3/4 in.
 * @source practice, bench jigs with blocks · derived, coordinates
 */
export function fitUpSheet(build: Build, bike: Bike): FitUpSheet {
  const props = (build.shop?.jig?.props ?? []).map(({ what, thickness }) => ({ what, thickness }));
  const propHeight = props.reduce((sum, prop) => sum + prop.thickness, 0);
  const restsAt = lowestUnderside(bike);
  const lift = propHeight - restsAt;
  const stations = [...datumStations(bike, lift), ...tubeStations(build, bike, lift)];
  return {
    props,
    propHeight,
    restsAt,
    stations,
    diagonals: diagonals(build, bike),
    plumbMarks: stations.map(({ name, forward, left }) => ({ name, forward, left })),
    headAngle: bike.layout.stances.design.headAngle,
  };
}

/** Block under a part that sits `height` above what the frame rests on, props counted in [m]. */
export function blockHeight(height: number, props: readonly Prop[]): number {
  return height + props.reduce((sum, prop) => sum + prop.thickness, 0);
}

function lowestUnderside(bike: Bike): number {
  const undersides = bike.tubes.flatMap((tube) =>
    tube.centerline.pieces.map((piece) => piece.from.z - tube.outside / 2),
  );
  return undersides.length > 0 ? Math.min(...undersides) : 0;
}

function datumStations(bike: Bike, lift: number): JigStation[] {
  const at = (name: string): Point3 => bike.layout.points[name] as Point3;
  const held = (name: string, what: string): JigStation => ({
    name,
    what,
    forward: at(name).x,
    left: at(name).y,
    center: at(name).z + lift,
    pair: false,
  });
  return [
    held('rearAxle', 'dummy rear axle'),
    held('neckBottom', 'neck bar, bottom face of the neck'),
    held('neckTop', 'neck bar, top face of the neck'),
  ];
}

/** One station each place of a tube that can be held, under the thickest tube there. */
function tubeStations(build: Build, bike: Bike, lift: number): JigStation[] {
  const stations = new Map<string, JigStation>();
  for (const tube of bike.tubes.filter((one) => one.hand !== 'right')) {
    for (const spot of frameSpots(build, bike, tube)) {
      if (spot.name.endsWith('.right')) continue;
      const station = tubeStation(build, spot, lift);
      const before = stations.get(spot.name);
      if (before?.block !== undefined && before.block <= (station.block ?? Number.POSITIVE_INFINITY))
        continue;
      stations.set(spot.name, station);
    }
  }
  return [...stations.values()].toSorted((a, b) => a.forward - b.forward);
}

/** Plumb under a sloped tube its underside lies r/cos β below its center. */
function tubeStation(build: Build, { name, tube, at, direction, on }: FrameSpot, lift: number): JigStation {
  const level = Math.hypot(direction.x, direction.y);
  const center = at.z + lift;
  const base = { name, forward: at.x, left: at.y, center, pair: at.y !== 0 };
  if (level < STEEPEST) return { ...base, what: `${tube.entry}, steep here: clamp it` };
  const block = center - tube.outside / 2 / level;
  return {
    ...base,
    what: on === 'node' ? tube.entry : `${tube.entry}, mark of its bend`,
    block,
    made: stackBlocks(block, build.shop?.jig?.blocks ?? [], build.shop?.jig?.shims ?? []),
  };
}

/** Fewest blocks first, thickest first, then shims; never above the height, since a frame can be shimmed up but not down. */
export function stackBlocks(height: number, blocks: readonly number[], shims: readonly number[]): BlockStack {
  const take = (left: number, sizes: readonly number[]): [number[], number] => {
    const taken: number[] = [];
    for (const size of sizes.toSorted((a, b) => b - a)) {
      while (size > 0 && left - size >= -1e-6 && taken.length < 40) {
        taken.push(size);
        left -= size;
      }
    }
    return [taken, left];
  };
  const [taken, afterBlocks] = take(height, blocks);
  const [thin, left] = take(afterBlocks, shims);
  return { blocks: taken, shims: thin, left };
}

/**
 * From each end of a mirrored bent tube, and from the start of each of its bends, to the neck, alike on both sides; and the
 * diagonals that cross.
 */
function diagonals(build: Build, bike: Bike): TramLength[] {
  const neck = bike.layout.points.neckBottom as Point3;
  const spots = bike.tubes
    .filter((tube) => tube.hand === 'left' && (build.frame.tubes[tube.entry]?.through.length ?? 0) > 2)
    .flatMap((tube) => frameSpots(build, bike, tube))
    .filter((spot) => spot.at.y !== 0 && spot.on !== 'bend end');
  const once = [...new Map(spots.map((spot) => [spot.name, spot])).values()];
  const tram = (name: string, from: Point3, to: Point3): TramLength => ({
    name,
    from,
    to,
    length: distance3(from, to),
  });
  const toNeck = once.map(({ name, at }) => tram(`neck to ${name}, left and right alike`, neck, at));
  const ordered = once.toSorted((a, b) => a.at.x - b.at.x);
  const crossing = ordered.slice(1).map((spot, i) => {
    const before = ordered[i] as FrameSpot;
    const right = { ...spot.at, y: -spot.at.y };
    return tram(`${before.name} left to ${spot.name} right, and the other way`, before.at, right);
  });
  return [...toNeck, ...crossing];
}
