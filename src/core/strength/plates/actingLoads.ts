import { between2, type Point } from '../../geometry/index.ts';
import type { CutPlate } from './cutPlate.ts';
import { type LineLoad, type PlateLoads, WrenchSum } from './plateLoads.ts';

/** Loads made ready to be summed on one side of many cuts: each as force and moment about the plate's origin. */
export interface ActingLoads {
  /** Points first, then lines. */
  readonly points: number;
  readonly lines: readonly LineLoad[];
  /** Six a load. */
  readonly wrenches: Float64Array;
  /** Place of each point; both ends of each line, four numbers, after all points. */
  readonly places: Float64Array;
  /** A place of each load well inside the plate, for cuts whose line meets the plate more than once. */
  readonly inside: (load: number) => Point;
}

const ORIGIN: Point = { x: 0, y: 0 };

export function actingLoads({ inside }: CutPlate, { points, lines }: PlateLoads): ActingLoads {
  const count = points.length + lines.length;
  const wrenches = new Float64Array(count * 6);
  const places = new Float64Array(points.length * 2 + lines.length * 4);
  const sum = new WrenchSum(ORIGIN);
  for (let i = 0; i < count; i++) {
    const point = points[i];
    const line = lines[i - points.length];
    sum.sum.fill(0);
    if (point) sum.addPoint(point);
    else sum.addLine(line!);
    wrenches.set(sum.sum, i * 6);
  }
  points.forEach(({ at }, i) => {
    places.set([at.x, at.y], i * 2);
  });
  lines.forEach(({ from, to }, i) => {
    places.set([from.x, from.y, to.x, to.y], points.length * 2 + i * 4);
  });
  return {
    points: points.length,
    lines,
    wrenches,
    places,
    inside: (load) => {
      const line = lines[load - points.length];
      return inside(line ? between2(line.from, line.to, 0.5) : points[load]!.at);
    },
  };
}
