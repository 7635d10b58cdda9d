import type { Bike, PlacedTube } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import { distance3, type Point3 } from '../geometry/index.ts';

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
  /** Height of the block under the part, with the props [m]; absent where an axle or bar is held instead. */
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
  readonly from: string;
  readonly to: string;
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
  const stations = [...datumStations(bike, lift), ...nodeStations(build, bike, lift)];
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

/** One station a node that a tube passes, under the thickest tube there. */
function nodeStations(build: Build, bike: Bike, lift: number): JigStation[] {
  const stations = new Map<string, JigStation>();
  for (const tube of bike.tubes.filter((one) => one.hand !== 'right')) {
    for (const name of build.frame.tubes[tube.entry]?.through ?? []) {
      if (!(name in build.frame.nodes) || name.endsWith('.right')) continue;
      const point = bike.layout.points[name] as Point3;
      const block = point.z + lift - tube.outside / 2;
      const before = stations.get(name);
      if (before?.block !== undefined && before.block <= block) continue;
      stations.set(name, nodeStation(build, { name, point, tube, lift, block }));
    }
  }
  return [...stations.values()].toSorted((a, b) => a.forward - b.forward);
}

function nodeStation(
  build: Build,
  {
    name,
    point,
    tube,
    lift,
    block,
  }: { name: string; point: Point3; tube: PlacedTube; lift: number; block: number },
): JigStation {
  return {
    name,
    what: `${tube.entry}${tube.centerline.bends.length > 0 ? ' (corner of its bend)' : ''}`,
    forward: point.x,
    left: point.y,
    center: point.z + lift,
    block,
    made: stackBlocks(block, build.shop?.jig?.blocks ?? [], build.shop?.jig?.shims ?? []),
    pair: point.y !== 0,
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

/** Corner to corner: each end and corner of a mirrored tube to the neck, alike on both sides, and the crossing diagonals. */
function diagonals(build: Build, bike: Bike): TramLength[] {
  const points = bike.layout.points;
  const neck = points.neckBottom as Point3;
  const mirrored = Object.values(build.frame.tubes).filter((tube) => tube.mirror && tube.through.length > 2);
  const corners = new Set(mirrored.flatMap((tube) => tube.through));
  const pairs = [...corners].filter((name) => `${name}.right` in points);
  const toNeck = pairs.map((name) => ({
    name: `neck to ${name}, left and right alike`,
    from: 'neckBottom',
    to: name,
    length: distance3(neck, points[name] as Point3),
  }));
  const ordered = pairs.toSorted((a, b) => (points[a] as Point3).x - (points[b] as Point3).x);
  const crossing = ordered.slice(1).map((name, i) => {
    const before = ordered[i] as string;
    return {
      name: `${before} left to ${name} right, and the other way`,
      from: before,
      to: `${name}.right`,
      length: distance3(points[before] as Point3, points[`${name}.right`] as Point3),
    };
  });
  return [...toNeck, ...crossing];
}
