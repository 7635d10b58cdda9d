import type { Point, Point3 } from '../../geometry/index.ts';

/** A force and a moment that enter at a point of the plate's middle plane: x, y in the plane, z out of it. */
export interface PointLoad {
  readonly at: Point;
  /** [N] */
  readonly force: Point3;
  /** [N·m], about `at` */
  readonly moment?: Point3;
}

/** Force and moment along a straight line, as of a weld; each grows evenly from one end to the other. */
export interface LineLoad {
  readonly from: Point;
  readonly to: Point;
  /** [N/m] at `from` and at `to` */
  readonly force: readonly [Point3, Point3];
  /** [N·m/m], the same all along */
  readonly moment: Point3;
}

export interface PlateLoads {
  readonly points: readonly PointLoad[];
  readonly lines: readonly LineLoad[];
}

/** Sum of forces [N] and of moments about a point [N·m]: x, y, z of each. */
export type Wrench = readonly [number, number, number, number, number, number];

/** A sum of forces and moments about `about`, added to in place. */
export class WrenchSum {
  readonly sum = new Float64Array(6);

  constructor(private readonly about: Point) {}

  addPoint({ at, force, moment }: PointLoad, sign = 1): void {
    this.add(at.x, at.y, force.x * sign, force.y * sign, force.z * sign);
    if (!moment) return;
    const { sum } = this;
    sum[3] = sum[3]! + moment.x * sign;
    sum[4] = sum[4]! + moment.y * sign;
    sum[5] = sum[5]! + moment.z * sign;
  }

  /** The part of a line load between two shares of its length; r × f is of the second order, for which Simpson's rule is exact. */
  addLine({ from, to, force: [p, q], moment }: LineLoad, start = 0, end = 1): void {
    const length = Math.hypot(to.x - from.x, to.y - from.y) * (end - start);
    for (let k = 0; k < 3; k++) {
      const t = start + ((end - start) * k) / 2;
      const w = (length * (k === 1 ? 4 : 1)) / 6;
      this.add(
        from.x + t * (to.x - from.x),
        from.y + t * (to.y - from.y),
        (p.x + t * (q.x - p.x)) * w,
        (p.y + t * (q.y - p.y)) * w,
        (p.z + t * (q.z - p.z)) * w,
      );
    }
    const { sum } = this;
    sum[3] = sum[3]! + moment.x * length;
    sum[4] = sum[4]! + moment.y * length;
    sum[5] = sum[5]! + moment.z * length;
  }

  private add(x: number, y: number, fx: number, fy: number, fz: number): void {
    const { sum } = this;
    const [dx, dy] = [x - this.about.x, y - this.about.y];
    sum[0] = sum[0]! + fx;
    sum[1] = sum[1]! + fy;
    sum[2] = sum[2]! + fz;
    sum[3] = sum[3]! + dy * fz;
    sum[4] = sum[4]! - dx * fz;
    sum[5] = sum[5]! + dx * fy - dy * fx;
  }
}

/** All loads on a plate as one force and moment about a point: nothing where they are in balance. */
export function wrenchOf({ points, lines }: PlateLoads, about: Point): Wrench {
  const sum = new WrenchSum(about);
  for (const load of points) sum.addPoint(load);
  for (const load of lines) sum.addLine(load);
  return [...sum.sum] as unknown as Wrench;
}

/**
 * What is left out of balance against the largest of the forces [-]; moments count by the size of the plate.
 * @returns 0 without loads
 */
export function unbalance(loads: PlateLoads, about: Point, size: number): number {
  const left = wrenchOf(loads, about);
  let scale = 0;
  for (const { force, moment } of loads.points)
    scale = Math.max(scale, lengthOf(force), moment ? lengthOf(moment) / size : 0);
  for (const { from, to, force, moment } of loads.lines) {
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    scale = Math.max(scale, lengthOf(force[0]) * length, lengthOf(force[1]) * length);
    scale = Math.max(scale, (lengthOf(moment) * length) / size);
  }
  if (scale === 0) return 0;
  const force = Math.hypot(left[0], left[1], left[2]);
  const moment = Math.hypot(left[3], left[4], left[5]) / size;
  return Math.max(force, moment) / scale;
}

const lengthOf = ({ x, y, z }: Point3): number => Math.hypot(x, y, z);
