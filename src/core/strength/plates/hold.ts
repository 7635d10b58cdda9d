import { distance2, type Point, type Point3 } from '../../geometry/index.ts';
import { type LineLoad, type PlateLoads, type PointLoad, wrenchOf } from './plateLoads.ts';

/** What holds a plate: a bolt, or a straight stretch of weld or of a clamped edge. */
export type Holder =
  | { readonly by: 'point'; readonly at: Point }
  | { readonly by: 'line'; readonly from: Point; readonly to: Point };

/** Square of a reach that is none [m²]. */
const NOWHERE = 1e-14;

interface Spot {
  readonly holder: Holder;
  readonly middle: Point;
  /** Bolts count alike, lines by their length. */
  readonly weight: number;
}

/**
 * Forces by which holders keep a plate at rest: f = F/Σw + β × d a unit of weight, β by the moment about the middle of
 * the holders, of which, out of the plane, ρ² a unit goes as a moment into the holder itself, as when stress is linear over holders that
 * have a radius of inertia ρ. Without it, holders in one line could not stop the plate from turning about that line.
 * @param acts loads on the plate
 * @param radius ρ: t/√12 of a weld all through a plate of thickness t, d/4 of a bolt [m]
 * @returns the loads by the holders alone
 * @source derived, least squares with equilibrium; shigley-9, section 8-12 and 9-4 for the same in a plane
 */
export function heldBy(acts: PlateLoads, holders: readonly Holder[], radius: number): PlateLoads {
  const spots = holders.map(spotOf);
  const whole = spots.reduce((sum, { weight }) => sum + weight, 0);
  if (!(whole > 0)) return { points: [], lines: [] };
  const middle = {
    x: spots.reduce((sum, spot) => sum + spot.weight * spot.middle.x, 0) / whole,
    y: spots.reduce((sum, spot) => sum + spot.weight * spot.middle.y, 0) / whole,
  };
  const own = whole * radius ** 2;
  let [xx, yy, xy] = [0, 0, 0];
  for (const spot of spots) {
    const [dx, dy] = [spot.middle.x - middle.x, spot.middle.y - middle.y];
    const [lx, ly] = reachOf(spot.holder);
    xx += spot.weight * (dx * dx + (lx * lx) / 12);
    yy += spot.weight * (dy * dy + (ly * ly) / 12);
    xy += spot.weight * (dx * dy + (lx * ly) / 12);
  }
  const [fx, fy, fz, mx, my, mz] = wrenchOf(acts, middle).map((value) => -value) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const reach = xx + yy;
  const isSingle = reach <= NOWHERE * whole;
  // Rows of ∫(d² − d·dᵀ) in the plane, with what the holders take by themselves.
  const det = (yy + own) * (xx + own) - xy * xy;
  const turn: Point3 = {
    x: (mx * (xx + own) + my * xy) / det,
    y: (my * (yy + own) + mx * xy) / det,
    // In the plane the reach of the holders alone counts, but for a single bolt.
    z: mz / (reach + (isSingle ? own : 0)),
  };
  const force = { x: fx / whole, y: fy / whole, z: fz / whole };
  const at = (p: Point): Point3 => {
    const [dx, dy] = [p.x - middle.x, p.y - middle.y];
    return {
      x: force.x - turn.z * dy,
      y: force.y + turn.z * dx,
      z: force.z + turn.x * dy - turn.y * dx,
    };
  };
  const moment = {
    x: turn.x * radius ** 2,
    y: turn.y * radius ** 2,
    z: isSingle ? turn.z * radius ** 2 : 0,
  };
  const points: PointLoad[] = [];
  const lines: LineLoad[] = [];
  for (const { holder } of spots)
    if (holder.by === 'point') points.push({ at: holder.at, force: at(holder.at), moment });
    else lines.push({ from: holder.from, to: holder.to, force: [at(holder.from), at(holder.to)], moment });
  return { points, lines };
}

function spotOf(holder: Holder): Spot {
  if (holder.by === 'point') return { holder, middle: holder.at, weight: 1 };
  const { from, to } = holder;
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  return { holder, middle, weight: distance2(from, to) };
}

const reachOf = (holder: Holder): readonly [number, number] =>
  holder.by === 'point' ? [0, 0] : [holder.to.x - holder.from.x, holder.to.y - holder.from.y];
