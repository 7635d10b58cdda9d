import type { Bike, PlacedTube, PlacedTubeEnd } from '../bike/index.ts';
import type { Build, MaterialName } from '../build/index.ts';
import { type BarPlan, type CutPiece, planCuts } from './barCutting.ts';

/** Saw kerf where the shop does not say [m]. */
const USUAL_KERF = 1.6e-3;

/** A tube to cut; a mirrored pair is one row of two. */
export interface CutRow {
  readonly tube: string;
  readonly tubing: string;
  readonly outside: number;
  readonly wall: number;
  readonly material: MaterialName;
  readonly count: number;
  readonly pair: boolean;
  /** Developed length, longest point to longest point of the finished ends [m]. */
  readonly length: number;
  /** Length to saw: with what is left on to trim at fit-up [m]. */
  readonly sawn: number;
  readonly ends: readonly [CutEnd, CutEnd];
  readonly bends: number;
  /** One tube, finished [kg]. */
  readonly mass: number;
  readonly purpose?: string;
}

export interface CutEnd {
  readonly joint: PlacedTubeEnd['joint'];
  readonly onto?: string;
  /** Between the two axes [rad]. */
  readonly angle?: number;
  /** From the longest to the shortest point of the cut [m]. */
  readonly depth: number;
  readonly leaveLong: number;
}

/** How one size of tube is cut from its bars. */
export interface TubingPlan {
  readonly tubing: string;
  readonly bars: readonly BarPlan[];
  /** Pieces that no bar on hand gives. */
  readonly missing: readonly CutPiece[];
  /** Length to buy, sawn pieces with kerfs [m]. */
  readonly total: number;
  /** Nothing is said to be on hand; bars are then planned in the length that is usual to buy. */
  readonly noStock: boolean;
}

export interface CutList {
  readonly rows: readonly CutRow[];
  readonly plans: readonly TubingPlan[];
  readonly kerf: number;
}

/** Bars are usually sold in this length [m]: 20 ft. Practice. */
const USUAL_BAR = 6.096;

export function cutList(build: Build, bike: Bike): CutList {
  const kerf = build.shop?.saw?.kerf ?? USUAL_KERF;
  const rows = bike.tubes.filter((tube) => tube.hand !== 'right').map((tube) => cutRow(build, tube));
  const tubings = [...new Set(rows.map((row) => row.tubing))];
  return { rows, plans: tubings.map((tubing) => tubingPlan(build, tubing, rows, kerf)), kerf };
}

/** Developed length between the longest points of the two cuts [m]. */
export function finishedLength(tube: PlacedTube): number {
  return tube.centerline.length - tube.ends[0].longPoint - tube.ends[1].longPoint;
}

function cutRow(build: Build, tube: PlacedTube): CutRow {
  const entry = build.frame.tubes[tube.entry];
  const length = finishedLength(tube);
  const pair = tube.hand === 'left';
  return {
    tube: tube.entry,
    tubing: entry?.tubing ?? '',
    outside: tube.outside,
    wall: tube.wall,
    material: tube.material,
    count: pair ? 2 : 1,
    pair,
    length,
    sawn: length + tube.ends[0].leaveLong + tube.ends[1].leaveLong,
    ends: [cutEnd(tube.ends[0]), cutEnd(tube.ends[1])],
    bends: tube.centerline.bends.length,
    mass: tube.mass,
    ...(tube.purpose === undefined ? {} : { purpose: tube.purpose }),
  };
}

function cutEnd(end: PlacedTubeEnd): CutEnd {
  return {
    joint: end.joint,
    ...(end.onto === undefined ? {} : { onto: end.onto }),
    ...(end.angle === undefined ? {} : { angle: end.angle }),
    depth: end.shortPoint - end.longPoint,
    leaveLong: end.leaveLong,
  };
}

function tubingPlan(build: Build, tubing: string, rows: readonly CutRow[], kerf: number): TubingPlan {
  const pieces = rows
    .filter((row) => row.tubing === tubing)
    .flatMap((row): CutPiece[] =>
      row.pair
        ? ['left', 'right'].map((hand) => ({ id: `${row.tube} ${hand}`, length: row.sawn }))
        : [{ id: row.tube, length: row.sawn }],
    );
  const onHand = (build.shop?.tubeStock ?? []).filter((bar) => bar.tubing === tubing);
  const stock = onHand.map((bar) => ({
    length: bar.length,
    ...(bar.count === undefined ? {} : { count: bar.count }),
  }));
  const plan = planCuts(pieces, stock.length > 0 ? stock : [{ length: USUAL_BAR }], kerf);
  const total = pieces.reduce((sum, piece) => sum + piece.length + kerf, 0);
  return { tubing, ...plan, total, noStock: stock.length === 0 };
}
